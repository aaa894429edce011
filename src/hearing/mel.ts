/** Gathers a power spectrum into bands spaced as the ear hears pitch. */

/** O'Shaughnessy's mel, as most speech work has it: 2595 log10(1 + f/700). */
export const hertzToMel = (hertz: number): number => 2595 * Math.log10(1 + hertz / 700);
export const melToHertz = (mel: number): number => 700 * (10 ** (mel / 2595) - 1);

/** One triangular band: the first spectrum bin it touches and its weights from there. */
export interface MelBand {
  readonly firstBin: number;
  readonly weights: Float32Array;
}

function band(leftHz: number, midHz: number, rightHz: number, binHz: number, bins: number): MelBand {
  const firstBin = Math.max(0, Math.ceil(leftHz / binHz));
  const lastBin = Math.min(bins - 1, Math.floor(rightHz / binHz));
  const weights = Float32Array.from({ length: Math.max(0, lastBin - firstBin + 1) }, (_, i) => {
    const hertz = (firstBin + i) * binHz;
    return Math.max(0, hertz <= midHz ? (hertz - leftHz) / (midHz - leftHz) : (rightHz - hertz) / (rightHz - midHz));
  });
  return { firstBin, weights };
}

/** `count` triangular bands, evenly spaced in mel from `lowHz` to `highHz`, over a transform of `size` samples. */
export function melBands(count: number, lowHz: number, highHz: number, size: number, rateHz: number): readonly MelBand[] {
  const low = hertzToMel(lowHz);
  const step = (hertzToMel(highHz) - low) / (count + 1);
  const edge = (i: number): number => melToHertz(low + i * step);
  return Array.from({ length: count }, (_, i) => band(edge(i), edge(i + 1), edge(i + 2), rateHz / size, size / 2 + 1));
}

/** Adds up the power in each band. */
export function gather(power: Float32Array, bands: readonly MelBand[], into: Float32Array, at: number): void {
  for (let b = 0; b < bands.length; b++) {
    const { firstBin, weights } = bands[b] as MelBand;
    let sum = 0;
    for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (power[firstBin + i] as number);
    into[at + b] = sum;
  }
}
