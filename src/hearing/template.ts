/** Makes templates from a take: the word in a quiet and in a noisy room, as rows of features. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import type { Feature } from './feature.ts';
import { SPEECH_LEVEL_DB } from './gain.ts';
import { pinkNoise } from './room-noise.ts';

/** Speech over noise of the imagined rooms, dB. Two rooms beat one by far on composed sessions (see tests/bench/ear.md). */
export const ROOMS_DB: readonly number[] = [25, 10];
/** Loud rooms besides, for an ear that takes the noise out: without, templates of loud rooms are templates of noise. */
export const LOUD_ROOMS_DB: readonly number[] = [4, -2];
/** For an ear that does not: a room too loud for templates, that only shows what noise does to a word. */
export const DROWNED_ROOM_DB = 5;
/** Noise alone before and after the word, s: the network looks back .76 s, mostly at its later part. */
export const BEFORE_S = 0.5;
const AFTER_S = 0.3;
/** First and last row kept: the network's window must have seen this much of the word, and this much of what follows it. */
export const START_LAG_S = 0.12;
export const END_LAG_S = 0.14;
/** A template has at least so many rows. */
export const FEWEST_ROWS = 3;

/** A whole recording at 16 kHz in, as long and in the same place out. */
export type Clean = (samples: Float32Array) => Float32Array;
export const asItComes: Clean = (samples) => samples;

/** One take in one room: all its rows (noise before and after included), and which of them are the word. */
export interface Staged {
  /** Row-major [step][dim], as the feature gave them. */
  readonly rows: readonly Float32Array[];
  readonly from: number;
  readonly to: number;
  /** Seconds from the last row kept back to the end of the word, and from the first back to its beginning. */
  readonly startLagS: number;
  readonly endLagS: number;
}

/** The word in a room, with the room alone before and after it, at 16 kHz. */
export function stagedSamples(speech: Float32Array, snrDb: number, seed: number): Float32Array {
  const before = Math.round(BEFORE_S * EAR_RATE_HZ);
  const out = pinkNoise(before + speech.length + Math.round(AFTER_S * EAR_RATE_HZ), seed);
  const noiseGain = 10 ** ((SPEECH_LEVEL_DB - snrDb) / 20);
  for (let i = 0; i < out.length; i++) out[i] = (out[i] as number) * noiseGain;
  let power = 0;
  for (const x of speech) power += x * x;
  const gain = 10 ** (SPEECH_LEVEL_DB / 20) / Math.sqrt(power / Math.max(1, speech.length) + 1e-12);
  for (let i = 0; i < speech.length; i++) out[before + i] = (out[before + i] as number) + gain * (speech[i] as number);
  return out;
}

/** Time after the stream's start at which the newest frame of a step has its middle. */
export const stepTimeS = (feature: Pick<Feature, 'stepSamples' | 'firstSamples'>, step: number): number =>
  (step * feature.stepSamples + feature.firstSamples) / EAR_RATE_HZ;

/** @param clean what is done to the stream before it is heard. */
export function stage(feature: Feature, speech: Float32Array, snrDb: number, seed: number, clean: Clean): Staged {
  const rows: Float32Array[] = [];
  feature.push(clean(stagedSamples(speech, snrDb, seed)), (vector) => rows.push(vector.slice()));
  const startS = BEFORE_S + START_LAG_S;
  const endS = BEFORE_S + speech.length / EAR_RATE_HZ + END_LAG_S;
  const stepS = feature.stepSamples / EAR_RATE_HZ;
  const from = Math.max(0, Math.ceil((startS - stepTimeS(feature, 0)) / stepS));
  const to = Math.min(rows.length, Math.max(from + FEWEST_ROWS, Math.floor((endS - stepTimeS(feature, 0)) / stepS) + 1));
  return { rows, from, to, startLagS: START_LAG_S, endLagS: END_LAG_S };
}
