/** How high a voice speaks: other people in the room often speak much higher or lower than the handler did while teaching. */
import { PitchDetector } from 'pitchy';
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { median } from '../core/statistics/median.ts';

/** Pitch is looked for at a quarter of the rate: the resonances of the mouth above 2 kHz only mislead. */
const EVERY = 4;
const RATE_HZ = EAR_RATE_HZ / EVERY;
/** Smoothing before samples are left out: a raised cosine over so many samples to both sides. */
const REACH = 8;
/** Two periods of a low voice, 40 ms. */
const WINDOW = 160;
const HOP = RATE_HZ / 100;
/** The method's own measure of what counts as a peak (McLeod & Wyvill 2005 use .8 to 1): high, or vowels give an octave too much. */
const PEAK_SHARE = 0.95;
/** Windows less clear than this have no pitch; so have those this much quieter than the loudest, dB (tried: tests/bench/ear.md, *Who speaks*). */
const CLEAREST = 0.6;
const QUIETER_DB = 12;
/** What people speak at, Hz (from memory; a little wider than men's, women's and children's speech in Baken & Orlikoff 2000). */
const LOWEST_HZ = 70;
const HIGHEST_HZ = 400;
/** With fewer windows nothing is said. */
const FEWEST = 3;

const smoothing = Float32Array.from({ length: 2 * REACH + 1 }, (_, i) => 0.5 - 0.5 * Math.cos((Math.PI * (i + 1)) / (REACH + 1)));

const detector = PitchDetector.forFloat32Array(WINDOW);
detector.clarityThreshold = PEAK_SHARE;

function quartered(samples: Float32Array): Float32Array {
  return Float32Array.from({ length: Math.floor(samples.length / EVERY) }, (_, i) => {
    let sum = 0;
    for (let k = -REACH; k <= REACH; k++) sum += (samples[EVERY * i + k] ?? 0) * (smoothing[k + REACH] as number);
    return sum / (REACH + 1);
  });
}

const powerOf = (window: Float32Array): number => window.reduce((sum, x) => sum + x * x, 0);

/**
 * Pitch of a stretch of speech.
 *
 * @param samples 16 kHz, finite.
 * @returns octaves over 1 Hz (base-two logarithm of the frequency), the median of its voiced windows; null: hardly anything is voiced.
 */
export function pitchOf(samples: Float32Array): number | null {
  const low = quartered(samples);
  const windows = Array.from({ length: Math.max(0, Math.floor((low.length - WINDOW) / HOP) + 1) }, (_, n) =>
    low.subarray(n * HOP, n * HOP + WINDOW),
  );
  const loudest = windows.reduce((most, window) => Math.max(most, powerOf(window)), 0);
  const found = windows.flatMap((window) => {
    if (loudest === 0 || powerOf(window) < loudest / 10 ** (QUIETER_DB / 10)) return [];
    const [hertz, clarity] = detector.findPitch(window, RATE_HZ);
    return clarity > CLEAREST && hertz > LOWEST_HZ && hertz < HIGHEST_HZ ? [Math.log2(hertz)] : [];
  });
  return found.length < FEWEST ? null : median(found);
}

/**
 * How high the handler spoke while teaching, octaves over 1 Hz: the quartiles of the takes, so that calm and excited takes both count and a
 * single one that was misread does not. Empty: unknown. Plain data.
 */
export interface Voice {
  readonly taught: readonly number[];
  readonly words: Readonly<Record<string, readonly number[]>>;
}

/** Pitches that were spoken, never a mean of two. */
function quartilesOf(values: readonly number[]): readonly number[] {
  const sorted = values.toSorted((a, b) => a - b);
  const last = sorted.length - 1;
  const places = [Math.floor(last / 4), Math.floor(last / 2), Math.ceil(last / 2), Math.ceil((3 * last) / 4)];
  return [...new Set(places.flatMap((place) => sorted[place] ?? []))];
}

export function voiceOf(takes: readonly { readonly word: string; readonly speech: Float32Array }[]): Voice {
  const pitches = takes.map(({ word, speech }) => ({ word, octaves: pitchOf(speech) }));
  const spread = (wanted: (word: string) => boolean): readonly number[] =>
    quartilesOf(pitches.flatMap(({ word, octaves }) => (octaves !== null && wanted(word) ? [octaves] : [])));
  const names = [...new Set(pitches.map(({ word }) => word))];
  return { taught: spread(() => true), words: Object.fromEntries(names.map((name) => [name, spread((word) => word === name)])) };
}

/** Tried on composed sessions (tests/bench/ear.md, *Who speaks*). A word may be said two semitones higher or lower than it was taught. */
const FREE_OCTAVES = 0.15;
/** Widths of doubt an octave beyond that, and at most: a handler who is excited is still heard, if clearly. */
const WIDTHS_AN_OCTAVE = 8;
const MOST_WIDTHS = 1.5;

/** How much clearer a stretch must be for being said in another pitch than the word, and than the handler's words altogether; widths of doubt. */
export function strangeness(voice: Voice, word: string, octaves: number | null): number {
  const known = [...(voice.words[word] ?? []), ...voice.taught];
  if (octaves === null || known.length === 0) return 0;
  const apart = Math.min(...known.map((pitch) => Math.abs(pitch - octaves)));
  return Math.min(MOST_WIDTHS, WIDTHS_AN_OCTAVE * Math.max(0, apart - FREE_OCTAVES));
}

/** Remembers the last seconds of a stream of 16 kHz. */
export interface PitchMemory {
  push(samples: Float32Array): void;
  /** Pitch between two moments of the stream, as far as it is remembered. */
  between(fromS: number, toS: number): number | null;
}

/** As long as the longest word, and what decides on it. */
const REMEMBERED = 3.5 * EAR_RATE_HZ;
/** Looked at besides, s: a word's end and beginning are known to some frames. */
const MARGIN_S = 0.03;

export function createPitchMemory(): PitchMemory {
  const ring = new Float32Array(REMEMBERED);
  let count = 0;
  return {
    push(samples) {
      for (const x of samples) ring[count++ % REMEMBERED] = x;
    },
    between(fromS, toS) {
      const from = Math.max(0, count - REMEMBERED, Math.round((fromS - MARGIN_S) * EAR_RATE_HZ));
      const to = Math.min(count, Math.round((toS + MARGIN_S) * EAR_RATE_HZ));
      return pitchOf(Float32Array.from({ length: Math.max(0, to - from) }, (_, i) => ring[(from + i) % REMEMBERED] as number));
    },
  };
}
