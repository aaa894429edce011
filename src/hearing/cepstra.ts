/** Turns the band powers of one frame into cepstra: the shape of its spectrum without its level. */
import { BANDS } from './front.ts';

/** Cepstra kept; the zeroth (level) is left out. */
export const CEPSTRA = 12;
/** Sine lifter, evens out the variance of the coefficients (Juang, Rabiner & Wilpon 1987). */
const LIFTER = 22;
/** Keeps the logarithm finite: about -100 dB. */
const LOWEST_POWER = 1e-8;

/** Cosine transform with the lifter folded in, row-major [cepstrum][band]. */
const TRANSFORM = Float32Array.from({ length: CEPSTRA * BANDS }, (_, i) => {
  const k = Math.floor(i / BANDS) + 1;
  const band = i % BANDS;
  const lift = 1 + (LIFTER / 2) * Math.sin((Math.PI * k) / LIFTER);
  return lift * Math.sqrt(2 / BANDS) * Math.cos((Math.PI * k * (band + 0.5)) / BANDS);
});

const logs = new Float32Array(BANDS);

export function cepstrumInto(bandPower: Float32Array, into: Float32Array): void {
  for (let b = 0; b < BANDS; b++) logs[b] = Math.log(Math.max(LOWEST_POWER, bandPower[b] as number));
  for (let k = 0; k < CEPSTRA; k++) {
    let sum = 0;
    for (let b = 0; b < BANDS; b++) sum += (TRANSFORM[k * BANDS + b] as number) * (logs[b] as number);
    into[k] = sum;
  }
}
