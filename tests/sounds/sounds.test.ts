/** Checks what the sound files are: made by our script, soft, low, quiet, and told apart by rhythm. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { RECIPES, type RecipeName } from '../../sounds/recipes.ts';
import { SAMPLE_RATE_HZ, synthesise } from '../../sounds/synth.ts';
import { wavBytes } from '../../sounds/wav.ts';
import { SOUND_NAMES } from '../../src/audio/names.ts';
import { attackS, part, peakDb, readPlainWav, rmsDb, shareDb, strokes, strongestHz } from './measure.ts';

const NAMES = Object.keys(RECIPES) as RecipeName[];
const SOUNDS = new Map(NAMES.map((name) => [name, readPlainWav(fileBytes(name))]));
const TAPS: readonly RecipeName[] = ['beat', 'enough', 'lost'];
const NOTES = NAMES.filter((name) => !TAPS.includes(name));

/** Pitch of each stroke, Hz, in order. Written out, so that a change to a recipe has to be meant. */
const PITCHES_HZ: Record<RecipeName, readonly number[]> = {
  beat: [620],
  enough: [620, 620],
  raise: [500, 667],
  return: [667, 500],
  split: [580, 580],
  rest: [420],
  lost: [430, 430, 430],
  unsure: [520, 520],
};

function fileBytes(name: RecipeName): Uint8Array {
  return readFileSync(new URL(`../../sounds/${name}.wav`, import.meta.url));
}

function soundOf(name: RecipeName) {
  const sound = SOUNDS.get(name);
  if (!sound) throw new Error(`no sound ${name}`);
  return sound;
}

describe('the files', () => {
  test.each(NAMES)('%s sounds exactly as its recipe says: made again, the file is the same', (name) => {
    const made = wavBytes(synthesise(RECIPES[name]), SAMPLE_RATE_HZ);
    expect(Buffer.compare(made, fileBytes(name))).toBe(0);
  });

  test('every sound the app can ask for has a file, and no file is left over', () => {
    expect([...NAMES].sort()).toEqual([...SOUND_NAMES].sort());
  });

  test('all sounds together stay small enough to keep on the phone', () => {
    const bytes = NAMES.reduce((sum, name) => sum + fileBytes(name).length, 0);
    expect(bytes).toBeLessThan(350_000);
  });
});

describe('kind to a dog', () => {
  test.each(NAMES)('%s begins and ends in silence and pushes the loudspeaker to neither side', (name) => {
    const { samples } = soundOf(name);
    expect(Math.abs(samples[0] ?? 1)).toBeLessThanOrEqual(1 / 32_768);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThanOrEqual(1 / 32_768);
    const mean = samples.reduce((sum, value) => sum + value, 0) / samples.length;
    expect(Math.abs(mean)).toBeLessThan(1 / 32_768);
  });

  test.each(NAMES)('%s is quiet: its peak leaves 12 dB, and it is not so faint that a room swallows it', (name) => {
    expect(peakDb(soundOf(name))).toBeLessThanOrEqual(-12);
    expect(peakDb(soundOf(name))).toBeGreaterThanOrEqual(-21);
    expect(rmsDb(soundOf(name))).toBeLessThanOrEqual(-20);
    expect(rmsDb(soundOf(name))).toBeGreaterThanOrEqual(-32);
  });

  test.each(NAMES)('%s has next to nothing above 2 kHz, where dogs hear best and startle most', (name) => {
    expect(shareDb(soundOf(name), 2000, SAMPLE_RATE_HZ / 2)).toBeLessThan(-30);
  });

  test.each(TAPS)('%s is a soft tap: it takes 5 ms to come up', (name) => {
    expect(attackS(soundOf(name))).toBeGreaterThanOrEqual(0.005);
  });

  test.each(NOTES)('%s is a soft note: it takes 15 ms from a tenth of its level to nine tenths', (name) => {
    expect(attackS(soundOf(name))).toBeGreaterThanOrEqual(0.015);
  });

  test.each(NAMES)('%s is over within a second', (name) => {
    expect(soundOf(name).samples.length / SAMPLE_RATE_HZ).toBeLessThanOrEqual(1);
  });
});

describe('what is heard', () => {
  test.each(NAMES)('%s has the strokes it should, each at its pitch between 400 and 1000 Hz', (name) => {
    const spans = strokes(soundOf(name));
    const heardHz = spans.map((span) => strongestHz(part(soundOf(name), span)));
    expect(heardHz).toHaveLength(PITCHES_HZ[name].length);
    PITCHES_HZ[name].forEach((pitchHz, i) => {
      // A short tap has no sharper pitch than this: its spectrum is some 20 Hz wide.
      expect(Math.abs((heardHz[i] ?? 0) - pitchHz)).toBeLessThan(0.03 * pitchHz);
      expect(heardHz[i]).toBeGreaterThan(400);
      expect(heardHz[i]).toBeLessThan(1000);
    });
  });

  test('a tap is heard at once: it stands at a fifth of its level 4 ms after it was due', () => {
    expect(strokes(soundOf('beat'))[0]?.fromS).toBeLessThan(0.004);
  });

  test('raise goes up and return comes down; split stays', () => {
    const pitches = (name: RecipeName) => strokes(soundOf(name)).map((span) => strongestHz(part(soundOf(name), span)));
    const [raise, back, split] = [pitches('raise'), pitches('return'), pitches('split')];
    expect(raise[1]).toBeGreaterThan(1.25 * (raise[0] ?? 0));
    expect(back[0]).toBeGreaterThan(1.25 * (back[1] ?? 0));
    expect(split[0]).toBeCloseTo(split[1] ?? 0, 0);
  });
});

/** What makes a rhythm: how many strokes, how far apart, how long each. */
function rhythm(name: RecipeName) {
  const spans = strokes(soundOf(name));
  const gaps = spans.slice(1).map((span, i) => span.fromS - (spans[i]?.fromS ?? 0));
  return { count: spans.length, gaps, lengths: spans.map((span) => span.toS - span.fromS) };
}

/** The largest ratio between two lists of times, stroke by stroke. */
function apart(a: readonly number[], b: readonly number[]): number {
  return Math.max(1, ...a.map((value, i) => Math.max(value, b[i] ?? value) / Math.min(value, b[i] ?? value)));
}

const PAIRS = NAMES.flatMap((a, i) => NAMES.slice(i + 1).map((b) => [a, b] as const));

test.each(PAIRS)('%s and %s differ in rhythm, so that pitch need not be heard', (a, b) => {
  const [one, other] = [rhythm(a), rhythm(b)];
  if (one.count !== other.count) return;
  const most = Math.max(apart(one.gaps, other.gaps), apart(one.lengths, other.lengths));
  // Half as long again is beyond what anyone takes for the same rhythm (judgement; the smallest noticed change is 2.5 %).
  expect(most).toBeGreaterThan(1.5);
});
