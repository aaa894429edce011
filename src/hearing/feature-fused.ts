/** The fused feature: embedding and middle map of the network, and the cepstra of the same 40 ms side by side. One vector every 40 ms. */
import { createCepstrumStack } from './cepstrum-stack.ts';

import type { Feature } from './feature.ts';
import { createFourier } from './fourier.ts';
import { createNetwork, EMBEDDING_DIMS, MIDDLE_DIMS, type Network, ROWS_A_STEP } from './network.ts';
import { MEL_BANDS, MEL_BINS, MEL_WINDOW, type NetworkWeights } from './weights/shape.ts';

const HOP = 160;
/** Weight of the cepstra beside the two of the network (1 and 1.7 tried on composed sessions; 1.7 finds more at the same false accepts). */
const CEPSTRA_WEIGHT = 1.7;
/** The network was trained on 16-bit samples as they are. */
const FULL_SCALE = 32_768;
/** Its spectrum is log10 of power, never below -10 dB, plus two (as published). */
const LOWEST_POWER = 0.1;
const OFFSET = 2;

/** The network's bands, each with only the bins that it touches. */
function sparse(mel: Float32Array): { from: number; weights: Float32Array }[] {
  return Array.from({ length: MEL_BANDS }, (_, band) => {
    const column = Float32Array.from({ length: MEL_BINS }, (_, bin) => mel[bin * MEL_BANDS + band] as number);
    const from = column.findIndex((w) => w !== 0);
    const to = column.findLastIndex((w) => w !== 0) + 1;
    return { from: Math.max(0, from), weights: column.slice(Math.max(0, from), to) };
  });
}

/**
 * @param kind whether the sound it is given was cleaned.
 * @param network to lend one that was made before; it is emptied, so that of those that share one only the newest may be used.
 */
export function createFusedFeature(
  weights: NetworkWeights,
  kind: 'cleaned' | 'fused',
  network: Network = createNetwork(weights),
): Feature {
  network.reset();
  const fourier = createFourier(MEL_WINDOW);
  const bands = sparse(weights.mel);
  const power = new Float32Array(MEL_BINS);
  const frame = new Float32Array(MEL_WINDOW);
  const rows = new Float32Array(ROWS_A_STEP * MEL_BANDS);
  const stack = createCepstrumStack(ROWS_A_STEP);
  const vector = new Float32Array(EMBEDDING_DIMS + MIDDLE_DIMS + stack.values.length);
  let filled = 0;
  let row = 0;

  function fillRow(): void {
    fourier.power(frame, 0, weights.window, power);
    for (let b = 0; b < MEL_BANDS; b++) {
      const band = bands[b] as { from: number; weights: Float32Array };
      let sum = 0;
      for (let i = 0; i < band.weights.length; i++) sum += (band.weights[i] as number) * (power[band.from + i] as number);
      rows[row * MEL_BANDS + b] = Math.log10(Math.max(LOWEST_POWER, sum)) + OFFSET;
    }
    frame.copyWithin(0, HOP);
    filled = MEL_WINDOW - HOP;
    row++;
  }

  function emit(takeVector: (vector: Float32Array) => void): void {
    row = 0;
    network.step(rows);
    vector.set(network.embedding);
    vector.set(network.middle, EMBEDDING_DIMS);
    vector.set(stack.values, EMBEDDING_DIMS + MIDDLE_DIMS);
    takeVector(vector);
  }

  return {
    kind,
    parts: [
      { dims: EMBEDDING_DIMS, weight: 1 },
      { dims: MIDDLE_DIMS, weight: 1 },
      { dims: stack.values.length, weight: CEPSTRA_WEIGHT },
    ],
    dims: vector.length,
    stepSamples: ROWS_A_STEP * HOP,
    firstSamples: (ROWS_A_STEP - 1) * HOP + MEL_WINDOW / 2,
    push(samples, takeVector) {
      for (let at = 0; at < samples.length; ) {
        // Never past the end of a row: both fronts must have seen the same sound when a vector is made, whatever the blocks.
        const piece = samples.subarray(at, at + MEL_WINDOW - filled);
        for (let i = 0; i < piece.length; i++) frame[filled + i] = (piece[i] as number) * FULL_SCALE;
        filled += piece.length;
        at += piece.length;
        stack.push(piece);
        if (filled === MEL_WINDOW) fillRow();
        if (row === ROWS_A_STEP) emit(takeVector);
      }
    },
  };
}
