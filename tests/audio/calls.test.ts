/** Checks when calls sound: between reps, clear of the handler's words, the latest one, once. */
import { describe, expect, test } from 'vitest';
import { createCalls } from '../../src/audio/calls.ts';
import { createFakeClock } from '../../src/audio/clock.fake.ts';
import { type CallState, whenMayCall } from '../../src/audio/may-call.ts';
import type { CueMode } from '../../src/audio/names.ts';
import { createFakeSchedule } from '../../src/audio/schedule.fake.ts';
import type { Speaker } from '../../src/audio/speaker.ts';
import { createFakeTick } from '../../src/audio/tick.fake.ts';

const QUIET: CallState = { holding: false, lastVoiceS: null, lastCallToS: null };

describe('may a call sound?', () => {
  test('in quiet, at once', () => {
    expect(whenMayCall(QUIET, 10)).toBe(10);
  });

  test('never during a hold, however long ago the last word was', () => {
    expect(whenMayCall({ ...QUIET, holding: true }, 10)).toBeNull();
    expect(whenMayCall({ ...QUIET, holding: true, lastVoiceS: 1 }, 10)).toBeNull();
  });

  test('half a second after a word of the handler, not sooner', () => {
    expect(whenMayCall({ ...QUIET, lastVoiceS: 9.8 }, 10)).toBeCloseTo(10.3);
    expect(whenMayCall({ ...QUIET, lastVoiceS: 9.4 }, 10)).toBe(10);
  });

  test('not into the call before it', () => {
    expect(whenMayCall({ ...QUIET, lastCallToS: 10.2 }, 10)).toBeCloseTo(10.5);
  });
});

interface Voice extends Speaker {
  readonly said: string[];
  hushed: number;
}

function fakeVoice(lengthS: number | null): Voice {
  const voice: Voice = {
    said: [],
    hushed: 0,
    say: (words) => {
      if (lengthS !== null) voice.said.push(words);
      return lengthS;
    },
    hush: () => {
      voice.hushed += 1;
    },
  };
  return voice;
}

function bench({ mode = 'sound' as CueMode, speaker = fakeVoice(null), soundS = 0.5 } = {}) {
  const clock = createFakeClock(100);
  const schedule = createFakeSchedule(clock, soundS);
  const tick = createFakeTick();
  const ownSounds: [number, number][] = [];
  const flashed: string[] = [];
  const calls = createCalls({
    clock,
    schedule,
    tick,
    speaker,
    onOwnSound: (fromS, toS) => ownSounds.push([fromS, toS]),
    onFlash: (kind) => flashed.push(kind),
    mode: () => mode,
  });
  const pass = (forS: number) => {
    for (let i = 0; i < Math.round(forS / 0.025); i++) {
      clock.advance(0.025);
      tick.tick();
    }
  };
  const heard = () => schedule.heard().map(({ name }) => name);
  return { clock, schedule, calls, ownSounds, flashed, pass, heard };
}

describe('after a rep', () => {
  test('the call comes half a second after the word that ended it', () => {
    const { calls, pass, schedule } = bench();
    calls.holdBegan();
    pass(3);
    calls.voice(102.8);
    calls.holdEnded();
    calls.call('raise');
    pass(1);
    expect(schedule.notes).toHaveLength(1);
    expect(schedule.notes[0]?.fromS).toBeGreaterThanOrEqual(103.3);
    expect(schedule.notes[0]?.fromS).toBeLessThan(103.36);
  });

  test('the ear is told of the call before it sounds', () => {
    const { calls, ownSounds, schedule } = bench();
    calls.call('rest');
    expect(ownSounds).toEqual([[schedule.notes[0]?.fromS, schedule.notes[0]?.toS]]);
    expect(schedule.notes[0]?.fromS).toBeGreaterThan(100);
  });

  test('of two calls that wait, the latest is the one that is true', () => {
    const { calls, pass, heard } = bench();
    calls.voice(100);
    calls.call('raise');
    calls.call('return');
    pass(2);
    expect(heard()).toEqual(['return']);
  });

  test('a rep that brings a step back and a rest is told both, the step first', () => {
    const { calls, pass, heard, schedule } = bench();
    calls.voice(100);
    calls.call('return');
    calls.call('rest');
    pass(4);
    expect(heard()).toEqual(['return', 'rest']);
    expect(schedule.notes[1]?.fromS).toBeGreaterThanOrEqual((schedule.notes[0]?.toS ?? 0) + 0.3);
  });

  test('a raise and a rest are two flashes when the dog minds sounds', () => {
    const { calls, pass, flashed } = bench({ mode: 'flash' });
    calls.voice(100);
    calls.call('raise');
    calls.call('rest');
    pass(1);
    expect(flashed).toEqual(['raise']);
    pass(2);
    expect(flashed).toEqual(['raise', 'rest']);
  });

  test.each(['raise', 'return', 'split', 'rest', 'lost'] as const)(
    '"say it again" never takes the place of a %s that waits',
    (kind) => {
      const { calls, pass, heard } = bench();
      calls.voice(100);
      calls.call(kind);
      calls.call('unsure');
      pass(4);
      expect(heard()).toEqual([kind]);
    },
  );

  test('a decision takes the place of "say it again"', () => {
    const { calls, pass, heard } = bench();
    calls.voice(100);
    calls.call('unsure');
    calls.call('raise');
    pass(4);
    expect(heard()).toEqual(['raise']);
  });

  test('that it cannot hear comes before all that waits, and keeps it', () => {
    const { calls, pass, heard } = bench();
    calls.voice(100);
    calls.call('return');
    calls.call('rest');
    calls.call('lost');
    pass(5);
    expect(heard()).toEqual(['lost', 'return', 'rest']);
  });

  test('the step that waited is dropped when the next hold begins, the rest is told after it', () => {
    const { calls, pass, heard } = bench();
    calls.voice(100);
    calls.call('return');
    calls.call('rest');
    calls.holdBegan();
    pass(3);
    calls.holdEnded();
    pass(2);
    expect(heard()).toEqual(['rest']);
  });

  test('one call waits for the end of another, and each sounds once', () => {
    const { calls, pass, heard, schedule } = bench();
    calls.call('split');
    calls.call('lost');
    pass(3);
    expect(heard()).toEqual(['split', 'lost']);
    expect(schedule.notes[1]?.fromS).toBeGreaterThanOrEqual((schedule.notes[0]?.toS ?? 0) + 0.3);
  });
});

describe('during a hold', () => {
  test('nothing is called; what came up in it is called after it', () => {
    const { calls, pass, heard } = bench();
    calls.holdBegan();
    calls.call('rest');
    pass(5);
    expect(heard()).toEqual([]);
    calls.holdEnded();
    pass(1);
    expect(heard()).toEqual(['rest']);
  });

  test('a call still waiting when the next hold begins is dropped: later it would seem to speak of that hold', () => {
    const { calls, pass, heard } = bench();
    calls.voice(100);
    calls.call('raise');
    pass(0.2);
    calls.holdBegan();
    pass(3);
    calls.holdEnded();
    pass(3);
    expect(heard()).toEqual([]);
  });

  test('but that the ear cannot hear is said at once: a deaf ear would wait for ever for the end of the hold', () => {
    const { calls, pass, heard } = bench();
    calls.holdBegan();
    calls.call('lost');
    pass(0.5);
    expect(heard()).toEqual(['lost']);
  });

  test('a call that is sounding as the chin comes down falls silent', () => {
    const { calls, pass, schedule, clock } = bench();
    calls.call('rest');
    pass(0.2);
    calls.holdBegan();
    expect(schedule.notes[0]?.withdrawnAtS).toBe(clock.now());
  });
});

describe('the handler speaks', () => {
  test('a call under way gives way, and is not said twice', () => {
    const { calls, pass, schedule, clock } = bench();
    calls.call('raise');
    pass(0.2);
    calls.voice(clock.now());
    pass(3);
    expect(schedule.notes).toHaveLength(1);
    expect(schedule.notes[0]?.withdrawnAtS).toBeCloseTo(100.2);
  });

  test('a call that had not begun waits until the handler is done', () => {
    const { calls, pass, schedule, heard } = bench();
    calls.call('raise');
    calls.voice(100);
    pass(2);
    expect(heard()).toEqual(['raise']);
    expect(schedule.notes.at(-1)?.fromS).toBeGreaterThanOrEqual(100.5);
  });

  test('a word told late, and long over, does not cut off the call that waited for it', () => {
    const { calls, pass, schedule } = bench();
    calls.call('raise');
    pass(0.1);
    calls.voice(99.4);
    expect(schedule.notes[0]?.withdrawnAtS).toBeNull();
  });

  test('"say it again" is not asked two seconds after the word it is about', () => {
    const { calls, pass, heard } = bench();
    calls.holdBegan();
    calls.call('unsure');
    pass(2.1);
    calls.holdEnded();
    pass(2);
    expect(heard()).toEqual([]);
  });
});

describe('other ways to call', () => {
  test('spoken calls replace the sound when switched on and a voice is there', () => {
    const speaker = fakeVoice(1.2);
    const { calls, heard, ownSounds } = bench({ speaker });
    calls.setSpoken(true);
    calls.call('raise', 'Up: three seconds');
    expect(speaker.said).toEqual(['Up: three seconds']);
    expect(heard()).toEqual([]);
    expect(ownSounds).toEqual([[100, 101.2]]);
  });

  test('spoken calls are off until they are asked for', () => {
    const speaker = fakeVoice(1.2);
    const { calls, heard } = bench({ speaker });
    calls.call('raise', 'Up: three seconds');
    expect(speaker.said).toEqual([]);
    expect(heard()).toEqual(['raise']);
  });

  test('a phone without a voice of its own sounds the call instead', () => {
    const { calls, heard } = bench({ speaker: fakeVoice(null) });
    calls.setSpoken(true);
    calls.call('raise', 'Up: three seconds');
    expect(heard()).toEqual(['raise']);
  });

  test('a voice is hushed when a hold begins', () => {
    const speaker = fakeVoice(2);
    const { calls, pass } = bench({ speaker });
    calls.setSpoken(true);
    calls.call('raise', 'Up: three seconds');
    pass(0.5);
    calls.holdBegan();
    expect(speaker.hushed).toBe(1);
  });

  test('a flash alone keeps to the same moments and makes no sound', () => {
    const { calls, pass, heard, flashed } = bench({ mode: 'flash' });
    calls.holdBegan();
    calls.call('rest');
    expect(flashed).toEqual([]);
    calls.holdEnded();
    pass(0.1);
    expect(flashed).toEqual(['rest']);
    expect(heard()).toEqual([]);
  });

  test('both flash and sound', () => {
    const { calls, heard, flashed } = bench({ mode: 'both' });
    calls.call('split');
    expect([heard(), flashed]).toEqual([['split'], ['split']]);
  });

  test('silence drops what waits and what sounds', () => {
    const { calls, pass, heard, schedule } = bench();
    calls.call('split');
    calls.call('raise');
    calls.silence();
    pass(3);
    expect(schedule.notes).toHaveLength(1);
    expect(heard()).toEqual([]);
  });
});
