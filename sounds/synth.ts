/** Turns a recipe into samples: pure arithmetic, no chance, so that the same recipe always gives the same sound. */
import type { Decibels, Hertz, Seconds } from '../src/core/units.ts';
import type { Partial, Recipe, Stroke, Timbre } from './recipes.ts';

/** The rate of the files; the browser resamples to whatever the device runs at. */
export const SAMPLE_RATE_HZ: Hertz = 44_100;

export function fromDb(levelDb: Decibels): number {
  return 10 ** (levelDb / 20);
}

/** Samples of a sound, mono, -1..1, at SAMPLE_RATE_HZ; begins and ends at zero and holds no DC. */
export function synthesise(recipe: Recipe): Float64Array {
  const lengthS = Math.max(...recipe.strokes.map((stroke) => stroke.atS + stroke.lengthS));
  const samples = new Float64Array(Math.round(lengthS * SAMPLE_RATE_HZ) + 1);
  for (const stroke of recipe.strokes) mix(samples, strokeSamples(stroke, recipe.timbre), stroke.atS);
  return scaledToPeak(samples, fromDb(recipe.peakDb));
}

function strokeSamples(stroke: Stroke, timbre: Timbre): Float64Array {
  const envelope = edges(stroke.lengthS, timbre);
  const samples = envelope.map((edge, i) => edge * ringing(timbre.partials, stroke.pitchHz, i / SAMPLE_RATE_HZ));
  // A windowed, decaying sine keeps a trace of DC; taken out under the same envelope, so both ends stay at zero.
  const trace = sum(samples) / sum(envelope);
  const level = fromDb(stroke.levelDb);
  return samples.map((sample, i) => level * (sample - trace * (envelope[i] ?? 0)));
}

function ringing(partials: readonly Partial[], pitchHz: Hertz, timeS: Seconds): number {
  let value = 0;
  for (const { ratio, levelDb, decayS } of partials) {
    const decay = decayS === undefined ? 1 : Math.exp(-timeS / decayS);
    value += fromDb(levelDb) * decay * Math.sin(2 * Math.PI * pitchHz * ratio * timeS);
  }
  return value;
}

/** Raised-cosine edges: 0 → 1 over the attack, 1 → 0 over the release; the smoothest start for the fewest high partials. */
function edges(lengthS: Seconds, { attackS, releaseS }: Timbre): Float64Array {
  const count = Math.round(lengthS * SAMPLE_RATE_HZ) + 1;
  return new Float64Array(count).map((_, i) => {
    const fromStart = i / SAMPLE_RATE_HZ / attackS;
    const toEnd = (count - 1 - i) / SAMPLE_RATE_HZ / releaseS;
    return raised(fromStart) * raised(toEnd);
  });
}

function raised(progress: number): number {
  return progress >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * progress);
}

function mix(into: Float64Array, samples: Float64Array, atS: Seconds): void {
  const offset = Math.round(atS * SAMPLE_RATE_HZ);
  samples.forEach((sample, i) => {
    if (offset + i < into.length) into[offset + i] = (into[offset + i] ?? 0) + sample;
  });
}

function scaledToPeak(samples: Float64Array, peak: number): Float64Array {
  const found = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  return samples.map((sample) => (sample * peak) / found);
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}
