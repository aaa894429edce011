/**
 * Says, as data, what every sound of the app is made of. Told apart by rhythm first and pitch second.
 * For dogs: 400-1000 Hz, few partials, soft onsets, quiet (FACTS, Heffner 1983 R; Grigg et al. 2021 R).
 */
import type { Decibels, Hertz, Seconds } from '../src/core/units.ts';

/** One partial of a stroke. `decayS` is the time to fall to 1/e; without it the partial lasts as long as the note. */
export interface Partial {
  readonly ratio: number;
  readonly levelDb: Decibels;
  readonly decayS?: Seconds;
}

/** What a stroke is struck on: its partials, and how softly it begins and ends. */
export interface Timbre {
  readonly partials: readonly Partial[];
  readonly attackS: Seconds;
  readonly releaseS: Seconds;
}

/** One tap or note. `levelDb` is relative to the loudest stroke of the sound. */
export interface Stroke {
  readonly atS: Seconds;
  readonly lengthS: Seconds;
  readonly pitchHz: Hertz;
  readonly levelDb: Decibels;
}

export interface Recipe {
  readonly timbre: Timbre;
  readonly strokes: readonly Stroke[];
  /** Peak of the finished sound, dB re full scale. */
  readonly peakDb: Decibels;
}

/** A small wooden block under felt: a fundamental, and one inharmonic mode that dies sooner and makes it wood, not a beep. */
const WOOD: Timbre = {
  partials: [
    { ratio: 1, levelDb: 0, decayS: 0.03 },
    { ratio: 2.43, levelDb: -15, decayS: 0.011 },
  ],
  attackS: 0.011,
  releaseS: 0.03,
};

/** The same block, larger: its overtone lies lower, and it rings a little longer. */
const LOW_WOOD: Timbre = {
  partials: [
    { ratio: 1, levelDb: 0, decayS: 0.03 },
    { ratio: 2.2, levelDb: -16, decayS: 0.014 },
  ],
  attackS: 0.011,
  releaseS: 0.02,
};

/** A hummed note: fundamental, and a little octave so that a small loudspeaker still carries the low ones. */
const HUM: Timbre = {
  partials: [
    { ratio: 1, levelDb: 0 },
    { ratio: 2, levelDb: -18 },
    { ratio: 3, levelDb: -34 },
  ],
  attackS: 0.04,
  releaseS: 0.07,
};

/** The long note comes and goes like a breath out. */
const BREATH: Timbre = { ...HUM, attackS: 0.09, releaseS: 0.4 };

function stroke(atS: Seconds, lengthS: Seconds, pitchHz: Hertz, levelDb: Decibels = 0): Stroke {
  return { atS, lengthS, pitchHz, levelDb };
}

export const RECIPES = {
  beat: { timbre: WOOD, strokes: [stroke(0, 0.14, 620)], peakDb: -14 },
  // The second tap is the lighter one: "ta-tap" would read as a new beat, "TAP-ta" as the same beat answered.
  enough: { timbre: WOOD, strokes: [stroke(0, 0.13, 620), stroke(0.15, 0.14, 620, -2)], peakDb: -14 },
  // Short-long and up a fourth; down is its mirror, long-short, so that the rhythm alone tells them apart.
  raise: { timbre: HUM, strokes: [stroke(0, 0.15, 500), stroke(0.17, 0.34, 667)], peakDb: -16 },
  return: { timbre: HUM, strokes: [stroke(0, 0.33, 667), stroke(0.35, 0.15, 500)], peakDb: -16 },
  split: { timbre: HUM, strokes: [stroke(0, 0.2, 580), stroke(0.26, 0.2, 580)], peakDb: -16 },
  rest: { timbre: BREATH, strokes: [stroke(0, 0.95, 420)], peakDb: -16 },
  lost: { timbre: LOW_WOOD, strokes: [stroke(0, 0.11, 430), stroke(0.115, 0.11, 430), stroke(0.23, 0.12, 430)], peakDb: -14 },
  // Two short hums with a pause between: the only sound that waits in the middle, as the ear does.
  unsure: {
    timbre: { ...HUM, attackS: 0.03, releaseS: 0.05 },
    strokes: [stroke(0, 0.1, 520), stroke(0.42, 0.1, 520)],
    peakDb: -20,
  },
} as const satisfies Record<string, Recipe>;

export type RecipeName = keyof typeof RECIPES;
