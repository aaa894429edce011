/** Tells a word said by itself from a piece of running talk: how far does the sound fall before and after it? */
import { HOP_S } from './front.ts';
import type { Loudness } from './loudness.ts';

export interface Pause {
  /** How far the quietest moment just before the word lies under the word's own level, dB. */
  readonly beforeDb: number;
  /** The same just after it, as far as it has been heard. */
  readonly afterDb: number;
  /** Level of the word, dB: its loudest tenth left out. */
  readonly levelDb: number;
}

/** Where the quiet before is looked for, s before the onset. */
const BEFORE_FROM_S = 0.25;
const BEFORE_TO_S = 0.02;
/** Three frames are averaged, so that a single dip does not pass for a pause. */
const SMOOTH = 3;

function levelsBetween(loudness: Loudness, fromS: number, toS: number): number[] {
  const levels: number[] = [];
  for (let t = fromS; t <= toS; t += HOP_S) levels.push(loudness.at(t));
  return levels;
}

function quietest(levels: readonly number[]): number {
  let least = Infinity;
  for (let i = 0; i + SMOOTH <= levels.length; i++) {
    let sum = 0;
    for (let k = 0; k < SMOOTH; k++) sum += levels[i + k] as number;
    least = Math.min(least, sum / SMOOTH);
  }
  return least;
}

export function pauseAround(loudness: Loudness, startedAtS: number, endedAtS: number, nowS: number): Pause {
  const inside = levelsBetween(loudness, startedAtS, endedAtS).sort((a, b) => b - a);
  const levelDb = inside[Math.floor(0.2 * inside.length)] ?? -120;
  const before = quietest(levelsBetween(loudness, startedAtS - BEFORE_FROM_S, startedAtS - BEFORE_TO_S));
  const after = quietest(levelsBetween(loudness, endedAtS - 0.02, nowS));
  return { beforeDb: levelDb - before, afterDb: levelDb - after, levelDb };
}
