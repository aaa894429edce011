/** Cuts what is said out of a stream while words are being taught: one stretch of sound between two silences is one take. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { clickOf } from './click.ts';
import { createResampler } from './resample.ts';
import { DROWNING_DB } from './take.ts';

/** One stretch of sound, 16 kHz mono. Times are seconds of stream time. */
export interface Caught {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly startedAtS: number;
  readonly endedAtS: number;
  /** It was longer than a word can be and was cut there. */
  readonly cut: boolean;
}

export interface CatchLevel {
  /** Level of the latest 10 ms, dB re full scale. */
  readonly nowDb: number;
  /** The quiet of the room, dB re full scale. */
  readonly floorDb: number;
  readonly speaking: boolean;
  /** What went wrong in the last seconds that no take will tell of. */
  readonly trouble: CatchTrouble | null;
}

/** Too loud for the microphone · a sound so short that no take was made of it · a room in which no word stands out. */
export type CatchTrouble = 'clipped' | 'too-short' | 'loud-room';

export interface TakeCatcher {
  push(block: Float32Array): readonly Caught[];
  level(): CatchLevel;
}

const FRAME = EAR_RATE_HZ / 100;
/** Above the floor by this much, dB, for START_FRAMES of the last 4 frames: somebody speaks (tried by ear, no source). */
const START_ABOVE_DB = 12;
const START_FRAMES = 3;
const END_ABOVE_DB = 7;
/** One frame this far above the floor begins a take alone: a click is over in a frame, dB. */
const CLICK_ABOVE_DB = 22;
/** Below this nothing is speech, dB re full scale. */
const LOWEST_DB = -58;
/** Quiet that ends a take, frames: longer than the stop inside a word, shorter than the pause between two. */
const QUIET_FRAMES = 35;
/** Sound kept on either side of the take, frames. */
const PAD_FRAMES = 15;
/** A take has at least so many frames of sound, or is a click. */
const SHORTEST_FRAMES = 6;
/** The floor falls to a quieter frame at once and creeps up by this much a frame, dB: 3 dB a second. */
const FLOOR_RISE_DB = 0.03;
const SILENCE_DB = -100;
/** A stretch is kept in memory while it lasts, and no floor is found within it: past this it is the room, s. */
export const LONGEST_STRETCH_S = 5;
/** Trouble is told for so long, frames: time to read three words. */
const TOLD_FRAMES = 200;
/** Samples at full scale that make clipping of a peak, in one block (tried on made sounds, no source). */
const CLIPPED_SAMPLES = 3;
const FULL_SCALE = 0.99;

/** @param sampleRateHz of the blocks pushed. @param longestS a longer stretch is cut there, s; at most and by default LONGEST_STRETCH_S. */
export function createTakeCatcher(sampleRateHz: number, longestS = LONGEST_STRETCH_S): TakeCatcher {
  const resampler = createResampler(sampleRateHz);
  const longest = Math.round(100 * Math.min(longestS, LONGEST_STRETCH_S));
  let partial = new Float32Array(0);
  let frames: Float32Array[] = [];
  let firstFrame = 0;
  let floorDb = LOWEST_DB;
  let nowDb = SILENCE_DB;
  let begunAt: number | null = null;
  let loudFrames = 0;
  let quiet = 0;
  let quietestDb = 0;
  let latest: boolean[] = [];
  let told: { readonly trouble: CatchTrouble; readonly untilFrame: number } | null = null;

  const tell = (trouble: CatchTrouble): void => {
    told = { trouble, untilFrame: nextFrame() + TOLD_FRAMES };
  };
  const nextFrame = () => firstFrame + frames.length;

  function endTake(cut: boolean): Caught | null {
    const begun = begunAt ?? 0;
    const next = nextFrame();
    const end = next - (cut ? 0 : Math.max(0, quiet - PAD_FRAMES));
    const kept = frames.slice(Math.max(0, begun - firstFrame), end - firstFrame);
    const sound = joined(kept);
    const take = { samples: sound, sampleRateHz: EAR_RATE_HZ };
    const counts = loudFrames >= SHORTEST_FRAMES || clickOf(take) !== null;
    begunAt = null;
    latest = [];
    // Never quieter than this for so long: that is the room, not somebody speaking.
    if (cut) floorDb = Math.max(floorDb, quietestDb);
    frames = frames.slice(-PAD_FRAMES);
    firstFrame = next - frames.length;
    quiet = 0;
    if (!counts) tell('too-short');
    return counts ? { ...take, startedAtS: begun / 100, endedAtS: end / 100, cut } : null;
  }

  function takeFrame(frame: Float32Array): Caught | null {
    frames.push(frame);
    nowDb = levelDb(frame);
    const loud = nowDb > Math.max(LOWEST_DB, floorDb + (begunAt === null ? START_ABOVE_DB : END_ABOVE_DB));
    if (begunAt === null) {
      floorDb = Math.max(SILENCE_DB, Math.min(floorDb + FLOOR_RISE_DB, nowDb));
      latest = [...latest, loud].slice(-4);
      if (latest.filter(Boolean).length >= START_FRAMES || nowDb > Math.max(LOWEST_DB, floorDb + CLICK_ABOVE_DB)) {
        begunAt = Math.max(firstFrame, nextFrame() - PAD_FRAMES - latest.length);
        loudFrames = latest.filter(Boolean).length;
        quietestDb = nowDb;
      } else if (frames.length > 2 * PAD_FRAMES) {
        frames.shift();
        firstFrame++;
      }
      return null;
    }
    loudFrames += loud ? 1 : 0;
    quietestDb = Math.min(quietestDb, nowDb);
    quiet = loud ? 0 : quiet + 1;
    if (quiet >= QUIET_FRAMES) return endTake(false);
    return nextFrame() - begunAt >= longest ? endTake(true) : null;
  }

  return {
    push(block) {
      if (isClipped(block)) tell('clipped');
      const ready = resampler.push(block);
      const all = new Float32Array(partial.length + ready.length);
      all.set(partial);
      all.set(ready, partial.length);
      const whole = Math.floor(all.length / FRAME);
      partial = all.slice(whole * FRAME);
      return Array.from({ length: whole }, (_, i) => takeFrame(all.slice(i * FRAME, (i + 1) * FRAME))).filter(
        (caught) => caught !== null,
      );
    },
    level: () => {
      const lasting: CatchTrouble | null = floorDb > DROWNING_DB ? 'loud-room' : null;
      const trouble = told && told.untilFrame > nextFrame() ? told.trouble : lasting;
      return { nowDb, floorDb, speaking: begunAt !== null, trouble };
    },
  };
}

function isClipped(block: Float32Array): boolean {
  let full = 0;
  for (const x of block) if (Math.abs(x) >= FULL_SCALE) full++;
  return full >= CLIPPED_SAMPLES;
}

function levelDb(frame: Float32Array): number {
  let sum = 0;
  for (const x of frame) sum += Number.isFinite(x) ? x * x : 0;
  return Math.max(SILENCE_DB, 10 * Math.log10(sum / frame.length + 1e-10));
}

function joined(frames: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(frames.reduce((length, frame) => length + frame.length, 0));
  let at = 0;
  for (const frame of frames) {
    whole.set(frame, at);
    at += frame.length;
  }
  return whole;
}
