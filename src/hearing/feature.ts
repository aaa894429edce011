/** What every kind of feature offers the listener: samples in, one vector a step out. Two kinds: fused (network and cepstra) and cepstra alone. */

export type FeatureKind = 'fused' | 'cepstra';

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

/** Normalises `vector` in place at `into[at...]`: every dimension to mean 0 and spread 1, then every part to length 1. */
export function normalise(
  vector: Float32Array,
  normaliser: Normaliser,
  parts: readonly Part[],
  into: Float32Array,
  at: number,
): void {
  let d = 0;
  for (const part of parts) {
    const from = d;
    let power = 0;
    for (; d < from + part.dims; d++) {
      const value = ((vector[d] as number) - (normaliser.mean[d] as number)) / (normaliser.spread[d] as number);
      into[at + d] = value;
      power += value * value;
    }
    const scale = power > 0 ? 1 / Math.sqrt(power) : 0;
    for (let i = from; i < d; i++) into[at + i] = (into[at + i] as number) * scale;
  }
}
