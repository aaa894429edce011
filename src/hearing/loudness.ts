/** Remembers how loud the last seconds were, frame by frame, and how loud the room is: what pauses, gain and the level display are read from. */
import { BANDS, createFront, HOP_S, MIDDLE_S } from './front.ts';
import { createNoiseFloor } from './noise-floor.ts';

/** Frames remembered: 8 s. */
const MEMORY = 800;
/** Band power of a full-scale sine after window and transform, for decibels below full scale (computed: (.54 * 400 / 2)^2 * some band weight). */
const FULL_SCALE_POWER = 1.2e4;
/** Frames this far above the room are taken for speech, dB. */
const SPEECH_DB = 10;

export interface Loudness {
  push(samples: Float32Array): void;
  /** Level of the frame nearest to a moment of the 16 kHz stream, dB; the oldest kept one when it is gone. */
  at(seconds: number): number;
  noiseDb(): number;
  nowDb(): number;
  speaking(): boolean;
}

export const toDb = (power: number): number => 10 * Math.log10(power / FULL_SCALE_POWER + 1e-12);

function total(bandPower: Float32Array): number {
  let sum = 0;
  for (let b = 0; b < BANDS; b++) sum += bandPower[b] as number;
  return sum;
}

export function createLoudness(onFrame?: (levelDb: number, noiseDb: number) => void): Loudness {
  const front = createFront();
  const floor = createNoiseFloor();
  const levels = new Float32Array(MEMORY).fill(-120);
  let frames = 0;
  let noise = -120;
  let now = -120;
  const takeFrame = (bandPower: Float32Array): void => {
    floor.take(bandPower);
    noise = toDb(total(floor.power));
    now = toDb(total(bandPower));
    levels[frames % MEMORY] = now;
    frames++;
    onFrame?.(now, noise);
  };
  return {
    push: (samples) => front.push(samples, takeFrame),
    at(seconds) {
      const frame = Math.round((seconds - MIDDLE_S) / HOP_S);
      const kept = Math.min(frames - 1, Math.max(frame, frames - MEMORY, 0));
      return levels[kept % MEMORY] as number;
    },
    noiseDb: () => noise,
    nowDb: () => now,
    speaking: () => now > noise + SPEECH_DB,
  };
}
