/** Small sounds made by code for the tests of the ear: noise, and "words" of gliding vowels that differ like words do. */

/** Uniform noise in -1...1 from a counter, the same every time. */
export function noise(length: number, seed: number, gain = 1): Float32Array {
  let state = seed >>> 0;
  return Float32Array.from({ length }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return gain * (state / 2 ** 31 - 1);
  });
}

/** A vowel glide: the first two resonances (Hz) at the beginning and at the end. */
export interface Glide {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly lengthS: number;
  /** A hiss before it, s: stands for a consonant. */
  readonly hissS?: number;
}

/** Three taught words and three that are only talk. Formant values in the range of Peterson & Barney 1952. */
export const GLIDES = {
  hold: { from: [570, 840], to: [300, 870], lengthS: 0.42 },
  mark: { from: [270, 2290], to: [660, 1720], lengthS: 0.3, hissS: 0.08 },
  lifted: { from: [730, 1090], to: [270, 2290], lengthS: 0.5 },
  good: { from: [440, 1020], to: [440, 1020], lengthS: 0.3 },
  come: { from: [640, 1190], to: [490, 1350], lengthS: 0.4, hissS: 0.1 },
  name: { from: [530, 1840], to: [390, 1990], lengthS: 0.55 },
} as const satisfies Record<string, Glide>;

export type GlideName = keyof typeof GLIDES;

function resonate(input: Float32Array, hertz: (t: number) => number, bandwidthHz: number, rateHz: number): Float32Array {
  let y1 = 0;
  let y2 = 0;
  const r = Math.exp((-Math.PI * bandwidthHz) / rateHz);
  return input.map((x, i) => {
    const y = (1 - r) * x + 2 * r * Math.cos((2 * Math.PI * hertz(i / input.length)) / rateHz) * y1 - r * r * y2;
    y2 = y1;
    y1 = y;
    return y;
  });
}

/** One saying: a buzz of `pitchHz` through two gliding resonances. `seed` varies pitch, speed and breath as a person does. */
export function say(name: GlideName, seed: number, rateHz = 16_000): Float32Array {
  const glide: Glide = GLIDES[name];
  const wobble = noise(8, 1000 + seed);
  const lengthS = glide.lengthS * (1 + 0.08 * (wobble[3] as number));
  const pitchHz = 118 * (1 + 0.06 * (wobble[4] as number));
  const voiced = Math.round(lengthS * rateHz);
  const hiss = Math.round((glide.hissS ?? 0) * rateHz);
  const breath = noise(voiced + hiss, seed, 0.03);
  const buzz = Float32Array.from({ length: voiced }, (_, i) => (((i * pitchHz) / rateHz) % 1 < pitchHz / rateHz ? 1 : 0)).map(
    (x, i) => x + (breath[i] as number),
  );
  const at = (k: 0 | 1) => (t: number) =>
    (glide.from[k] + (glide.to[k] - glide.from[k]) * t) * (1 + 0.03 * (wobble[5 + k] as number));
  const one = resonate(buzz, at(0), 80, rateHz);
  const two = resonate(buzz, at(1), 110, rateHz);
  const edge = 0.02 * rateHz;
  const body = one.map((x, i) => (x + 0.7 * (two[i] as number)) * Math.min(1, i / edge, (voiced - i) / edge));
  const out = new Float32Array(hiss + voiced);
  for (let i = 0; i < hiss; i++) out[i] = 0.2 * (breath[i] as number);
  out.set(body, hiss);
  const rms = Math.sqrt(out.reduce((sum, x) => sum + x * x, 0) / out.length);
  return out.map((x) => (0.06 * x) / rms);
}

export interface Placed {
  readonly name: GlideName;
  readonly atS: number;
  readonly seed: number;
}

/** A room with a faint hiss in which words are said at given moments. */
export function room(lengthS: number, placed: readonly Placed[], rateHz = 16_000, hiss = 0.004): Float32Array {
  const track = noise(Math.round(lengthS * rateHz), 77, hiss);
  for (const { name, atS, seed } of placed) {
    const word = say(name, seed, rateHz);
    const from = Math.round(atS * rateHz);
    for (let i = 0; i < word.length && from + i < track.length; i++)
      track[from + i] = (track[from + i] as number) + (word[i] as number);
  }
  return track;
}
