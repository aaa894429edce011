/** Cuts a 16 kHz stream into overlapping frames and gives each frame's band powers: the one place where samples become a spectrum. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { createFourier, hamming } from './fourier.ts';
import { gather, melBands } from './mel.ts';

/** One frame every 10 ms, in samples. */
export const HOP = 160;
/** One frame spans 25 ms, in samples. */
export const SPAN = 400;
export const HOP_S = HOP / EAR_RATE_HZ;
/** Middle of a frame after its first sample, s. */
export const MIDDLE_S = SPAN / 2 / EAR_RATE_HZ;
/** Bands from 80 to 4000 Hz: what a telephone carries is enough to tell words apart (figures of the ear's recipe). */
export const BANDS = 26;
const LOW_HZ = 80;
const HIGH_HZ = 4_000;
const FFT_SIZE = 512;
/** Lifts the upper bands, where consonants live (common practice in speech work). */
const PRE_EMPHASIS = 0.97;

const WINDOW = hamming(SPAN);
const MEL = melBands(BANDS, LOW_HZ, HIGH_HZ, FFT_SIZE, EAR_RATE_HZ);

/** Called once a frame with its band powers (length `BANDS`, linear, overwritten afterwards). */
export type TakeFrame = (bandPower: Float32Array) => void;

export interface Front {
  push(samples: Float32Array, takeFrame: TakeFrame): void;
}

export function createFront(): Front {
  const fourier = createFourier(FFT_SIZE);
  const power = new Float32Array(FFT_SIZE / 2 + 1);
  const bandPower = new Float32Array(BANDS);
  const frame = new Float32Array(SPAN);
  let filled = 0;
  let before = 0;

  function emit(takeFrame: TakeFrame): void {
    fourier.power(frame, 0, WINDOW, power);
    gather(power, MEL, bandPower, 0);
    takeFrame(bandPower);
    frame.copyWithin(0, HOP);
    filled = SPAN - HOP;
  }

  return {
    push(samples, takeFrame) {
      for (let i = 0; i < samples.length; i++) {
        const sample = samples[i] as number;
        frame[filled++] = sample - PRE_EMPHASIS * before;
        before = sample;
        if (filled === SPAN) emit(takeFrame);
      }
    },
  };
}
