/** Chance with a seed: the same seed gives the same dogs, sessions and pictures, on any machine. */

/** The next number, uniform in [0, 1). */
export type Chance = () => number;

/** A small generator of 2^32 period (Mulberry32, public domain); good enough for dogs, not for secrets. */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function between(chance: Chance, low: number, high: number): number {
  return low + (high - low) * chance();
}

/** Normal by Box and Muller (1958). */
export function normal(chance: Chance, mean: number, spread: number): number {
  const radius = Math.sqrt(-2 * Math.log(1 - chance()));
  return mean + spread * radius * Math.cos(2 * Math.PI * chance());
}

/** Always above 0; `median` is its middle, `spread` that of its logarithm. */
export function logNormal(chance: Chance, median: number, spread: number): number {
  return median * Math.exp(normal(chance, 0, spread));
}
