/** Decides when a sleeping loudspeaker is woken first, and with what: Bluetooth swallows the first 0.1-1 s after idle (PITFALLS). */
import type { Decibels, Hertz, Seconds } from '../core/units.ts';

/** How long the waking sound lasts. Most of the swallowed part, and still well under the pause between two reps. */
export const PRE_ROLL_S: Seconds = 0.3;

/** After this much silence a wireless loudspeaker may have gone to sleep. Shorter than any seen, to be safe. */
const IDLE_S: Seconds = 3;

/** A tone far below what a room lets anyone hear, dog or person, but not digital silence, which would wake nothing. */
const LEVEL_DB: Decibels = -72;

/** Too low for the loudspeaker of a phone. */
const PITCH_HZ: Hertz = 200;

/** `lastToS`: end of the last sound that was scheduled, −∞ if there was none. */
export function needsPreRoll(lastToS: Seconds, atS: Seconds): boolean {
  return atS - lastToS > IDLE_S;
}

/** Mono, -1..1, at `sampleRateHz`; begins and ends at zero, for 0.3 s hold 60 whole waves. */
export function preRollSamples(sampleRateHz: Hertz): Float32Array<ArrayBuffer> {
  const peak = 10 ** (LEVEL_DB / 20);
  const samples = new Float32Array(Math.round(PRE_ROLL_S * sampleRateHz));
  return samples.map((_, i) => peak * Math.sin((2 * Math.PI * PITCH_HZ * i) / sampleRateHz));
}
