/** Remembers what the cleaner took for voice and what for noise in the last seconds: how far does a stretch stand out of the room? */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';

/** Samples of 10 ms. */
const CELL = EAR_RATE_HZ / 100;
const CELLS_A_S = EAR_RATE_HZ / CELL;
/** Cells remembered: 10 s, longer than the room is looked back on and the longest word together. */
const MEMORY = 10 * CELLS_A_S;
/** How far back the noise of the room is taken from, s: clatter that has gone by still says what room it is. */
const ROOM_S = 6;
/** Power of digital silence, so that ratios stay finite. */
const SILENCE = 1e-12;

export interface NoiseMemory {
  /** One sample at 16 kHz in its two parts. */
  take(voice: number, noise: number): void;
  /** Mean power of the voice in a stretch over that of the noise in the same stretch, dB; moments of the 16 kHz stream. Infinity where the app sounded all through it. */
  aboveNoiseDb(fromS: number, toS: number): number;
  /** The same over the noise of the last seconds up to its end. */
  aboveRoomDb(fromS: number, toS: number): number;
}

/** @param isOwn moments at which the app itself sounds: they say nothing of the room. */
export function createNoiseMemory(isOwn: (seconds: number) => boolean = () => false): NoiseMemory {
  const voices = new Float32Array(MEMORY);
  const noises = new Float32Array(MEMORY);
  let cells = 0;
  let filled = 0;
  let voicePower = 0;
  let noisePower = 0;

  /** Null: nothing is left to look at. */
  function meanOf(powers: Float32Array, fromS: number, toS: number): number | null {
    const from = Math.max(0, cells - MEMORY, Math.round(fromS * CELLS_A_S));
    const to = Math.min(cells, Math.round(toS * CELLS_A_S));
    let sum = 0;
    let count = 0;
    for (let cell = from; cell < to; cell++) {
      if (isOwn(cell / CELLS_A_S)) continue;
      sum += powers[cell % MEMORY] as number;
      count++;
    }
    return count === 0 ? null : sum / count + SILENCE;
  }
  const ratioDb = (voice: number | null, noise: number | null): number =>
    voice === null || noise === null ? Number.POSITIVE_INFINITY : 10 * Math.log10(voice / noise);

  return {
    take(voice, noise) {
      voicePower += voice * voice;
      noisePower += noise * noise;
      if (++filled < CELL) return;
      voices[cells % MEMORY] = voicePower / CELL;
      noises[cells % MEMORY] = noisePower / CELL;
      cells++;
      filled = voicePower = noisePower = 0;
    },
    aboveNoiseDb: (fromS, toS) => ratioDb(meanOf(voices, fromS, toS), meanOf(noises, fromS, toS)),
    aboveRoomDb: (fromS, toS) => ratioDb(meanOf(voices, fromS, toS), meanOf(noises, toS - ROOM_S, toS)),
  };
}
