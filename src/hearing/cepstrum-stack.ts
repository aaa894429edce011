/** Keeps the cepstra of the newest frames side by side, oldest first: the order of sounds within one vector. */
import { CEPSTRA, cepstrumInto } from './cepstra.ts';
import { createFront } from './front.ts';

export interface CepstrumStack {
  /** Row-major [frame][cepstrum]; moves on as samples are pushed. */
  readonly values: Float32Array;
  /** Frames seen so far. */
  frames(): number;
  push(samples: Float32Array, onFrame?: () => void): void;
}

export function createCepstrumStack(height: number): CepstrumStack {
  const front = createFront();
  const values = new Float32Array(height * CEPSTRA);
  const newest = values.subarray((height - 1) * CEPSTRA);
  let frames = 0;
  let told: (() => void) | undefined;
  const takeFrame = (bandPower: Float32Array): void => {
    values.copyWithin(0, CEPSTRA);
    cepstrumInto(bandPower, newest);
    frames++;
    told?.();
  };
  return {
    values,
    frames: () => frames,
    push(samples, onFrame) {
      told = onFrame;
      front.push(samples, takeFrame);
    },
  };
}
