/** Keeps the handler's speech at the level at which the templates were made, by following how loud speech has lately been. */

/** Level that every take and the stream are brought to: mean power of speech, dB below full scale (.06 of full scale). */
export const SPEECH_LEVEL_DB = -24.4;
/** Frames this far over the room count as speech. */
const SPEECH_OVER_NOISE_DB = 12;
/** How fast the estimate moves with every frame of speech: time constant 2 s of speech. */
const RATE = 1 / 200;
/** No gain beyond this in either direction, dB. */
const LARGEST_DB = 40;

export interface Gain {
  frame(levelDb: number, noiseDb: number): void;
  factor(): number;
}

/** `taughtDb` is where the estimate starts. */
export function createGain(taughtDb: number): Gain {
  let speechDb = taughtDb;
  return {
    frame(levelDb, noiseDb) {
      if (levelDb > noiseDb + SPEECH_OVER_NOISE_DB) speechDb += RATE * (levelDb - speechDb);
    },
    factor: () => 10 ** (Math.max(-LARGEST_DB, Math.min(LARGEST_DB, SPEECH_LEVEL_DB - speechDb)) / 20),
  };
}
