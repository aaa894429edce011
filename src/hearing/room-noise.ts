/** Makes the noise of an imagined room, so that a word taught in quiet is also known in noise. Always the same noise: nothing here is left to chance. */

/** Slope of -3 dB an octave from three leaky sums (Kellet's filter, public domain, as quoted on musicdsp.org). */
const POLES = [0.99765, 0.963, 0.57] as const;
const GAINS = [0.099046, 0.2965164, 1.0526913] as const;
const DIRECT = 0.1848;

/** Uniform in 0...1 from a counter (mulberry32, public domain). */
function createDice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Pink noise of mean power 1. */
export function pinkNoise(length: number, seed: number): Float32Array {
  const dice = createDice(seed);
  const state = [0, 0, 0];
  const noise = Float32Array.from({ length }, () => {
    const white = Math.sqrt(-2 * Math.log(dice() + 1e-12)) * Math.cos(2 * Math.PI * dice());
    let sum = DIRECT * white;
    for (let p = 0; p < POLES.length; p++)
      sum += state[p] = (POLES[p] as number) * (state[p] as number) + (GAINS[p] as number) * white;
    return sum;
  });
  let power = 0;
  for (const x of noise) power += x * x;
  const scale = 1 / Math.sqrt(power / Math.max(1, length));
  return noise.map((x) => x * scale);
}
