/** Remembers the last seconds of a stream, so that what was heard can still be learnt from: its features, and its sound where that is wished. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import type { Stretch } from '../core/stretch.ts';
import type { Feature } from './feature.ts';
import { LOUD, pack } from './stretch.ts';
import { END_LAG_S, FEWEST_ROWS, START_LAG_S, stepTimeS } from './template.ts';

/** What is kept of one hearing. */
export interface Kept {
  readonly stretch: Stretch;
  /** 16 kHz mono; only where the handler wished it. */
  readonly sound?: Int16Array;
}

export interface Memory {
  vector(vector: Float32Array): void;
  /** 16 kHz, as the microphone gave it. */
  sound(samples: Float32Array): void;
  /**
   * The stretch between two moments of the 16 kHz stream; null: it is no longer remembered. What only the templates of loud rooms told is kept as of
   * another kind: as a take it would be one of a quiet room.
   */
  cut(startedAtS: number, endedAtS: number, loudAlone: boolean): Kept | null;
}

/** Longest that is remembered, s: the longest word, what decides on it, and what lies before it. */
const REMEMBERED_S = 3.5;
/** Rows before the word that are kept with it, s: the matching begins in them. */
const LEAD_S = 0.4;
/** Sound kept of a word, s. */
export const SOUND_S = 1.5;
/** Rows stand at whole steps; what a float adds must not make one more. */
const HAIR = 1e-6;

export function createMemory(feature: Feature, withSound: boolean): Memory {
  const stepS = feature.stepSamples / EAR_RATE_HZ;
  const kept = Math.ceil(REMEMBERED_S / stepS);
  const ring = new Float32Array(kept * feature.dims);
  const sound = new Int16Array(withSound ? SOUND_S * EAR_RATE_HZ : 0);
  let steps = 0;
  let samples = 0;

  const row = (step: number): Float32Array => ring.slice((step % kept) * feature.dims, ((step % kept) + 1) * feature.dims);
  const stepAt = (atS: number): number => (atS - stepTimeS(feature, 0)) / stepS;

  function latestSound(): Int16Array {
    const latest = Int16Array.from({ length: Math.min(samples, sound.length) });
    for (let i = 0; i < latest.length; i++) latest[i] = sound[(samples - latest.length + i) % sound.length] as number;
    return latest;
  }

  return {
    vector(vector) {
      ring.set(vector, (steps % kept) * feature.dims);
      steps++;
    },
    sound(block) {
      if (!withSound) return;
      for (const x of block) sound[samples++ % sound.length] = Math.max(-32_768, Math.min(32_767, Math.round(32_768 * x)));
    },
    cut(startedAtS, endedAtS, loudAlone) {
      const begin = Math.max(0, Math.ceil(stepAt(startedAtS + START_LAG_S) - HAIR));
      const end = Math.min(steps, Math.floor(stepAt(endedAtS + END_LAG_S) + HAIR) + 1);
      if (begin < steps - kept || end - begin < FEWEST_ROWS) return null;
      const first = Math.max(0, steps - kept, begin - Math.round(LEAD_S / stepS));
      const rows = Array.from({ length: steps - first }, (_, i) => row(first + i));
      const stretch = pack({
        features: loudAlone ? `${feature.kind}${LOUD}` : feature.kind,
        rows,
        from: begin - first,
        to: end - first,
      });
      return withSound ? { stretch, sound: latestSound() } : { stretch };
    },
  };
}
