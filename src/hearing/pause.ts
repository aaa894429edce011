/** Tells a word said by itself from a piece of running talk: how far does the sound fall before and after it? */
import { HOP_S } from './front.ts';
import type { Loudness } from './loudness.ts';
import type { OwnSound } from './own-sound.ts';

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

/** What the app itself sounded is left out: its beat just before a word does not make the word a piece of talk. */
function levelsBetween(loudness: Loudness, own: OwnSound, fromS: number, toS: number): number[] {
  const levels: number[] = [];
  for (let t = fromS; t <= toS; t += HOP_S) if (!own.at(t)) levels.push(loudness.at(t));
  return levels;
}

/** Where nothing is left to look at (the app sounded all the time), nothing speaks against a pause. */
function quietest(levels: readonly number[]): number {
  if (levels.length < SMOOTH) return Number.NEGATIVE_INFINITY;
  let least = Infinity;
  for (let i = 0; i + SMOOTH <= levels.length; i++) {
    let sum = 0;
    for (let k = 0; k < SMOOTH; k++) sum += levels[i + k] as number;
    least = Math.min(least, sum / SMOOTH);
  }
  return least;
}

export function pauseAround(loudness: Loudness, own: OwnSound, startedAtS: number, endedAtS: number, nowS: number): Pause {
  const inside = levelsBetween(loudness, own, startedAtS, endedAtS).sort((a, b) => b - a);
  // Where the app sounded all through the word, nothing can be said of its level: it counts as loud.
  const levelDb = inside[Math.floor(0.2 * inside.length)] ?? 0;
  const before = quietest(levelsBetween(loudness, own, startedAtS - BEFORE_FROM_S, startedAtS - BEFORE_TO_S));
  const after = quietest(levelsBetween(loudness, own, endedAtS - 0.02, nowS));
  return { beforeDb: levelDb - before, afterDb: levelDb - after, levelDb };
}
