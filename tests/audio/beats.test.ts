/** Checks that beats are scheduled ahead, on their second, and taken back in time; with a clock and a tick moved by hand. */
import { describe, expect, test } from 'vitest';
import { createBeats, HORIZON_S } from '../../src/audio/beats.ts';
import { createFakeClock } from '../../src/audio/clock.fake.ts';
import type { CueMode } from '../../src/audio/names.ts';
import { createFakeSchedule } from '../../src/audio/schedule.fake.ts';
import { createFakeTick } from '../../src/audio/tick.fake.ts';

function bench(mode: CueMode = 'sound') {
  const clock = createFakeClock(100);
  const schedule = createFakeSchedule(clock);
  const tick = createFakeTick();
  const ownSounds: [number, number][] = [];
  const flashed: string[] = [];
  const beats = createBeats({
    clock,
    schedule,
    tick,
    onOwnSound: (fromS, toS) => ownSounds.push([fromS, toS]),
    onFlash: (kind) => flashed.push(`${kind} ${clock.now().toFixed(3)}`),
    mode: () => mode,
  });
  /** Time goes by in steps of 25 ms, with a tick each, as in a page that has nothing else to do. */
  const pass = (forS: number) => {
    for (let i = 0; i < Math.round(forS / 0.025); i++) {
      clock.advance(0.025);
      tick.tick();
    }
  };
  const heard = () => schedule.heard().map(({ name, atS }) => `${name} ${Number(atS.toFixed(6))}`);
  return { clock, schedule, tick, beats, ownSounds, flashed, pass, heard };
}

describe('a hold', () => {
  test('is tapped on each second from the word, and enough is told at the criterion', () => {
    const { clock, beats, pass, heard } = bench();
    clock.advance(0.3);
    beats.start({ onsetS: 100, criterionS: 3 });
    pass(4.2);
    beats.stop();
    expect(heard()).toEqual(['beat 101', 'beat 102', 'enough 103', 'beat 104']);
  });

  test('every beat is asked for before it is due, and the ear is told of it just then', () => {
    const { beats, schedule, ownSounds, pass } = bench();
    beats.start({ onsetS: 100, criterionS: 5 });
    pass(8);
    for (const note of schedule.notes) expect(note.fromS - note.askedAtS).toBeGreaterThan(0.5);
    expect(ownSounds).toEqual(schedule.notes.map(({ fromS, toS }) => [fromS, toS]));
  });

  test('keeps its beats though the page is busy for half a second, or ticks but once a second', () => {
    const { clock, tick, beats, heard, pass } = bench();
    beats.start({ onsetS: 100, criterionS: 10 });
    for (const gapS of [0.5, 1, 0.5, 1.5, 0.5]) {
      clock.advance(gapS);
      tick.tick();
    }
    beats.stop();
    pass(1);
    expect(heard()).toEqual(['beat 101', 'beat 102', 'beat 103', 'beat 104']);
    expect(HORIZON_S).toBeGreaterThanOrEqual(1.5);
  });

  test('after a page that slept through beats, the next one comes on its second and none is made up for', () => {
    const { clock, tick, beats, pass, schedule, heard } = bench();
    beats.start({ onsetS: 100, criterionS: 20 });
    clock.advance(4.4);
    tick.tick();
    pass(1);
    beats.stop();
    expect(heard()).toEqual(['beat 101', 'beat 105']);
    for (const note of schedule.notes) expect(note.fromS).toBeGreaterThan(note.askedAtS);
  });

  test('a word understood two seconds late begins with the third tap', () => {
    const { clock, beats, pass, heard } = bench();
    clock.advance(2.1);
    beats.start({ onsetS: 100, criterionS: 2 });
    pass(1);
    beats.stop();
    expect(heard()).toEqual(['beat 103']);
  });
});

describe('the head lifts', () => {
  test('and no further beat sounds, though some were scheduled', () => {
    const { beats, pass, heard, schedule } = bench();
    beats.start({ onsetS: 100, criterionS: 10 });
    pass(1.9);
    beats.stop(101.6);
    pass(3);
    expect(heard()).toEqual(['beat 101']);
    expect(schedule.notes.length).toBeGreaterThan(1);
  });

  test('a tap that has begun rings out: cut short it would be another sound', () => {
    const { beats, pass, schedule } = bench();
    beats.start({ onsetS: 100, criterionS: 10 });
    pass(1.025);
    beats.stop();
    expect(schedule.notes[0]?.withdrawnAtS).toBeNull();
  });

  test('a stop that lies ahead lets the beats before it sound', () => {
    const { beats, pass, heard } = bench();
    beats.start({ onsetS: 100, criterionS: 10 });
    pass(0.5);
    beats.stop(101.5);
    pass(3);
    expect(heard()).toEqual(['beat 101']);
  });

  test('a second hold begins its own count, and the first is no longer heard', () => {
    const { beats, pass, heard } = bench();
    beats.start({ onsetS: 100, criterionS: 10 });
    pass(1.5);
    beats.start({ onsetS: 101.25, criterionS: 2 });
    pass(2.2);
    beats.stop();
    expect(heard()).toEqual(['beat 101', 'beat 102.25', 'enough 103.25']);
  });

  test('stopping when nothing runs is no harm, and a room that was left stays silent', () => {
    const { beats, pass, heard } = bench();
    beats.stop();
    beats.start({ onsetS: 100, criterionS: 10 });
    beats.dispose();
    pass(3);
    expect(heard()).toEqual([]);
  });
});

describe('a dog that minds sounds', () => {
  test('is counted by flashes alone: each within a tick of its second, and nothing is sounded', () => {
    const { beats, pass, heard, flashed, ownSounds } = bench('flash');
    beats.start({ onsetS: 100.01, criterionS: 2 });
    pass(3.1);
    beats.stop();
    expect(heard()).toEqual([]);
    expect(ownSounds).toEqual([]);
    expect(flashed).toEqual(['beat 101.025', 'enough 102.025', 'beat 103.025']);
  });

  test('with both, it taps and flashes; with sound alone, the screen keeps still', () => {
    const both = bench('both');
    both.beats.start({ onsetS: 100, criterionS: 9 });
    both.pass(1.1);
    expect(both.flashed).toHaveLength(1);
    expect(both.schedule.notes.length).toBeGreaterThan(0);
    const sound = bench('sound');
    sound.beats.start({ onsetS: 100, criterionS: 9 });
    sound.pass(1.1);
    expect(sound.flashed).toEqual([]);
  });

  test('a page that slept flashes once when it wakes, not once for every second', () => {
    const { clock, tick, beats, flashed } = bench('flash');
    beats.start({ onsetS: 100, criterionS: 0 });
    clock.advance(1.55);
    tick.tick();
    clock.advance(1.5);
    tick.tick();
    expect(flashed).toHaveLength(2);
  });
});
