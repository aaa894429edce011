/** What every kind of feature offers the listener: samples in, one vector a step out. */

/** Network and cepstra of cleaned sound, the same of sound as it comes, or cepstra alone. */
export type FeatureKind = 'cleaned' | 'fused' | 'cepstra';

/** A vector is made of parts; each is scaled to unit length, and distances are added up with these weights. */
export interface Part {
  readonly dims: number;
  readonly weight: number;
}

/** Called once a step; `vector` is overwritten afterwards. */
export type TakeVector = (vector: Float32Array) => void;

export interface Feature {
  readonly kind: FeatureKind;
  readonly parts: readonly Part[];
  readonly dims: number;
  /** Samples at 16 kHz between two vectors. */
  readonly stepSamples: number;
  /** Samples from the stream's start to the middle of the newest frame that the first vector saw. */
  readonly firstSamples: number;
  push(samples: Float32Array, takeVector: TakeVector): void;
}

/** Mean and spread of every dimension, learnt from the handler's own takes and talk. */
export interface Normaliser {
  readonly mean: Float32Array;
  readonly spread: Float32Array;
  /** For each part the lower triangle, row by row, that evens out what differs within a word (see whitening.ts); absent: nothing is evened out. */
  readonly whitening?: readonly Float32Array[];
}

/** Keeps a dimension that never moves from being blown up. */
const SMALLEST_SPREAD = 1e-3;

export function fitNormaliser(vectors: readonly Float32Array[], dims: number): Normaliser {
  const mean = new Float32Array(dims);
  const spread = new Float32Array(dims);
  const n = Math.max(1, vectors.length);
  for (const v of vectors) for (let d = 0; d < dims; d++) mean[d] = (mean[d] as number) + (v[d] as number) / n;
  for (const v of vectors)
    for (let d = 0; d < dims; d++) spread[d] = (spread[d] as number) + ((v[d] as number) - (mean[d] as number)) ** 2 / n;
  for (let d = 0; d < dims; d++) spread[d] = Math.max(SMALLEST_SPREAD, Math.sqrt(spread[d] as number));
  return { mean, spread };
}

/** Solves L y = x in place for `into[at...at + dims)`, with L the lower triangle row by row. */
function evenOut(lower: Float32Array, into: Float32Array, at: number, dims: number): void {
  for (let i = 0, l = 0; i < dims; i++) {
    let sum = into[at + i] as number;
    for (let j = 0; j < i; j++, l++) sum -= (lower[l] as number) * (into[at + j] as number);
    into[at + i] = sum / (lower[l++] as number);
  }
}

/** Normalises `vector` into `into[at...]`: every dimension to mean 0 and spread 1, evened out where that was learnt, then every part to length 1. */
export function normalise(
  vector: Float32Array,
  normaliser: Normaliser,
  parts: readonly Part[],
  into: Float32Array,
  at: number,
): void {
  let from = 0;
  for (let p = 0; p < parts.length; p++) {
    const { dims } = parts[p] as Part;
    for (let d = from; d < from + dims; d++)
      into[at + d] = ((vector[d] as number) - (normaliser.mean[d] as number)) / (normaliser.spread[d] as number);
    const lower = normaliser.whitening?.[p];
    if (lower) evenOut(lower, into, at + from, dims);
    let power = 0;
    for (let d = from; d < from + dims; d++) power += (into[at + d] as number) ** 2;
    const scale = power > 0 ? 1 / Math.sqrt(power) : 0;
    for (let d = from; d < from + dims; d++) into[at + d] = (into[at + d] as number) * scale;
    from += dims;
  }
}
