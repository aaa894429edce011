/** The filter between two sample rates: a sinc under a Kaiser window. */

/** Kaiser shape for some 80 dB (Kaiser 1974: beta = .1102 (A - 8.7)). */
const KAISER_BETA = 7.86;

function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; k < 40; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

/**
 * One value of the filter: `x` in samples from its middle, `cutoff` as a share of half the sample rate, 0 from `halfWidth` samples on.
 * Values a sample apart add up to about 1.
 */
export function lowPassAt(x: number, cutoff: number, halfWidth: number): number {
  const edge = x / halfWidth;
  if (Math.abs(edge) >= 1) return 0;
  return (cutoff * sinc(cutoff * x) * besselI0(KAISER_BETA * Math.sqrt(1 - edge * edge))) / besselI0(KAISER_BETA);
}

/** Share of the band that is kept: leaves the filter room to fall. */
const PASS_SHARE = 0.92;

/** The taps of a filter, 2 x `half` + 1 of them, that keeps about `share` of the band; they add up to 1. */
export function lowPass(half: number, share: number): Float32Array {
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, tap) => lowPassAt(tap - half, PASS_SHARE * share, half + 1));
  const sum = taps.reduce((a, b) => a + b, 0);
  return Float32Array.from(taps, (tap) => tap / sum);
}
