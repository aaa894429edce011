/**
 * Short sounds made by code for the tests and the confusion table of the click detector: two that a handler may teach, and what else
 * sounds in a kitchen. All figures are our own guesses at such sounds ("common practice, no source"): real recordings may differ.
 */

/** The next number of a seeded row, -1 to 1. */
export type Chance = () => number;

export function chanceFrom(seed: number): Chance {
  let state = (seed * 2_654_435_761) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  };
}

interface Ring {
  readonly hertz: number;
  /** Time in which it falls to 1/e, ms. */
  readonly decayMs: number;
  readonly gain: number;
}

const RATE_HZ = 16_000;
const blank = (lengthS: number): Float32Array => new Float32Array(Math.round(lengthS * RATE_HZ));

/** Adds resonances that ring from `atS` on. */
function strike(into: Float32Array, atS: number, rings: readonly Ring[], gain = 1): void {
  const from = Math.round(atS * RATE_HZ);
  for (let i = from; i < into.length; i++) {
    const t = (i - from) / RATE_HZ;
    for (const ring of rings)
      into[i] =
        (into[i] as number) + gain * ring.gain * Math.exp((-1000 * t) / ring.decayMs) * Math.sin(2 * Math.PI * ring.hertz * t);
  }
}

/** One device: a metal strip that snaps in and out again. */
export function clicker(device: number): (chance: Chance) => Float32Array {
  const own = chanceFrom(device);
  const gapS = 0.03 + 0.008 * own();
  const rings = [0, 1, 2].map((k) => ({ hertz: 2_400 + 1_300 * k + 400 * own(), decayMs: 2.5 + own(), gain: 1 - 0.25 * k }));
  return (chance) => {
    const out = blank(0.09);
    const bent = rings.map((ring) => ({ ...ring, hertz: ring.hertz * (1 + 0.015 * chance()) }));
    strike(out, 0.002, bent);
    strike(out, 0.002 + gapS + 0.002 * chance(), bent, 0.7 + 0.2 * chance());
    return out;
  };
}

/** One mouth: a hollow that rings, and the tongue that lands. */
export function tongue(mouth: number): (chance: Chance) => Float32Array {
  const own = chanceFrom(mouth + 50);
  const hollowHz = 1_500 + 350 * own();
  return (chance) => {
    const out = blank(0.06);
    const hertz = hollowHz * (1 + 0.06 * chance());
    strike(out, 0.002, [
      { hertz, decayMs: 5 + chance(), gain: 1 },
      { hertz: 2.6 * hertz, decayMs: 2.5, gain: 0.35 + 0.1 * chance() },
      { hertz: 380 + 40 * chance(), decayMs: 9, gain: 0.3 },
    ]);
    return out;
  };
}

/** A knuckle on wood, a phone put down. */
export function knock(chance: Chance): Float32Array {
  const out = blank(0.15);
  strike(out, 0.002, [
    { hertz: 190 + 70 * chance(), decayMs: 22 + 8 * chance(), gain: 1 },
    { hertz: 640 + 200 * chance(), decayMs: 9, gain: 0.5 },
    { hertz: 2_100 + 600 * chance(), decayMs: 2, gain: 0.12 },
  ]);
  return out;
}

export function clap(chance: Chance): Float32Array {
  const out = blank(0.2);
  const decayMs = 16 + 6 * chance();
  let low = 0;
  let lower = 0;
  for (let i = 32; i < out.length; i++) {
    low += 0.45 * (chance() - low);
    lower += 0.12 * (low - lower);
    out[i] = 3 * (low - lower) * Math.exp((-1000 * (i - 32)) / RATE_HZ / decayMs);
  }
  return out;
}

export function bark(chance: Chance): Float32Array {
  const lengthS = 0.16 + 0.04 * chance();
  const out = blank(lengthS);
  const pitchHz = 480 + 120 * chance();
  for (let i = 0; i < out.length; i++) {
    const t = i / RATE_HZ;
    const swell = Math.min(1, t / 0.012) * Math.min(1, (lengthS - t) / 0.06);
    let sum = 0.35 * chance();
    for (let k = 1; k < 7; k++) sum += Math.sin(2 * Math.PI * k * pitchHz * t * (1 - 0.8 * t)) / k;
    out[i] = 0.5 * swell * sum;
  }
  return out;
}

/** A spoon on a bowl. */
export function dish(chance: Chance): Float32Array {
  const out = blank(0.5);
  strike(
    out,
    0.002,
    [1_900, 3_300, 5_200].map((hertz, k) => ({ hertz: hertz * (1 + 0.1 * chance()), decayMs: 90 - 20 * k, gain: 1 / (k + 1) })),
  );
  return out;
}

/** Treats shaken in a tin. */
export function rattle(chance: Chance): Float32Array {
  const out = blank(0.7);
  for (let atS = 0.002; atS < 0.6; atS += 0.018 + 0.014 * Math.abs(chance()))
    strike(out, atS, [{ hertz: 4_200 + 1_500 * chance(), decayMs: 2.5 + chance(), gain: 0.6 + 0.4 * chance() }]);
  return out;
}

/** A key, a latch: one hard small click, unlike the clicker's pair. */
export function latch(chance: Chance): Float32Array {
  const out = blank(0.06);
  strike(out, 0.002, [
    { hertz: 3_000 + 900 * chance(), decayMs: 3.5 + chance(), gain: 1 },
    { hertz: 1_100 + 300 * chance(), decayMs: 5, gain: 0.5 },
  ]);
  return out;
}

export const OTHER_SOUNDS = { knock, clap, bark, dish, rattle, latch } as const;

/** What a small furnished room does to it: a tail of noise that falls by 60 dB in .35 s, 12 dB under the sound itself. */
export function inRoom(sound: Float32Array, chance: Chance, tailS = 0.25): Float32Array {
  const tail = blank(tailS);
  for (let i = 40; i < tail.length; i++) tail[i] = chance() * 10 ** ((-60 * i) / RATE_HZ / 0.35 / 20);
  const power = (x: Float32Array) => x.reduce((sum, v) => sum + v * v, 0);
  const gain = Math.sqrt(10 ** (-12 / 10) / power(tail));
  const out = new Float32Array(sound.length + tail.length);
  for (let i = 0; i < sound.length; i++) {
    const x = sound[i] as number;
    if (x === 0) continue;
    out[i] = (out[i] as number) + x;
    for (let k = 40; k < tail.length; k++) out[i + k] = (out[i + k] as number) + gain * x * (tail[k] as number);
  }
  return out;
}

/** A track of sounds at given moments over a hiss; each sound's peak is brought to `peak`. */
export function track(
  lengthS: number,
  placed: readonly { readonly sound: Float32Array; readonly atS: number; readonly peak: number }[],
  chance: Chance,
  hiss = 0.002,
): Float32Array {
  const out = blank(lengthS).map(() => hiss * chance());
  for (const { sound, atS, peak } of placed) {
    const loudest = sound.reduce((m, x) => Math.max(m, Math.abs(x)), 0);
    const from = Math.round(atS * RATE_HZ);
    for (let i = 0; i < sound.length && from + i < out.length; i++)
      out[from + i] = (out[from + i] as number) + ((sound[i] as number) * peak) / loudest;
  }
  return out;
}
