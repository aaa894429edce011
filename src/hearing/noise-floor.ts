/** Follows the noise of the room, band by band, as the quiet quarter of the last seconds; talk lifts it little, a fan is learned in seconds. */
import { BANDS } from './front.ts';

/** How far back the floor looks, frames of 10 ms: longer than a sentence, so that its pauses are seen. */
const MEMORY = 400;
/** Frames between two looks; in between the floor stands. */
const EVERY = 10;
/** Which share of the remembered frames lies below the floor. */
const QUIET_SHARE = 0.25;
/** From the quiet quarter to the mean of steady noise in such bands, as a power ratio (measured on white noise: 2.2 dB). */
const TO_MEAN = 10 ** 0.22;
/** No room is quieter, linear band power: keeps ratios finite in digital silence. */
const LOWEST_POWER = 1e-7;

export interface NoiseFloor {
  /** Mean noise power in each band, linear. */
  readonly power: Float32Array;
  take(bandPower: Float32Array): void;
}

export function createNoiseFloor(): NoiseFloor {
  const memory = new Float32Array(BANDS * MEMORY);
  const sorted = new Float32Array(MEMORY);
  const power = new Float32Array(BANDS).fill(LOWEST_POWER);
  let seen = 0;

  function look(): void {
    const count = Math.min(seen, MEMORY);
    const rank = Math.floor(QUIET_SHARE * count);
    for (let b = 0; b < BANDS; b++) {
      const view = sorted.subarray(0, count);
      view.set(memory.subarray(b * MEMORY, b * MEMORY + count));
      view.sort();
      power[b] = Math.max(LOWEST_POWER, (view[rank] as number) * TO_MEAN);
    }
  }

  return {
    power,
    take(bandPower) {
      const slot = seen % MEMORY;
      for (let b = 0; b < BANDS; b++) memory[b * MEMORY + slot] = bandPower[b] as number;
      seen++;
      if (seen % EVERY === 0 || seen < EVERY) look();
    },
  };
}
