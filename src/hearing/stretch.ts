/** Packs rows of features into bytes and back: some 20 kB a word instead of 60. */
import type { Stretch } from '../core/stretch.ts';
import type { FeatureKind } from './feature.ts';

const LEVELS = 255;

/** Ends the kind of ear where the templates of loud rooms alone told a word: it teaches nothing. */
export const LOUD = ', loud';

export interface Rows {
  readonly features: FeatureKind | `${FeatureKind}${typeof LOUD}`;
  /** As the feature gave them, before any normaliser: [step][dim]. */
  readonly rows: readonly Float32Array[];
  readonly from: number;
  readonly to: number;
}

/** Every dimension has its own range, so that a small one loses no more than a large one. */
export function pack({ features, rows, from, to }: Rows): Stretch {
  const dims = rows[0]?.length ?? 0;
  const base = new Float32Array(dims).fill(Number.POSITIVE_INFINITY);
  const scale = new Float32Array(dims).fill(Number.NEGATIVE_INFINITY);
  for (const row of rows)
    for (let d = 0; d < dims; d++) {
      base[d] = Math.min(base[d] as number, row[d] as number);
      scale[d] = Math.max(scale[d] as number, row[d] as number);
    }
  for (let d = 0; d < dims; d++) scale[d] = ((scale[d] as number) - (base[d] as number)) / LEVELS;
  const bytes = new Uint8Array(rows.length * dims);
  rows.forEach((row, step) => {
    for (let d = 0; d < dims; d++) {
      const width = scale[d] as number;
      bytes[step * dims + d] = width > 0 ? Math.round(((row[d] as number) - (base[d] as number)) / width) : 0;
    }
  });
  return { features, dims, steps: rows.length, from, to, bytes, base, scale };
}

export function unpack({ dims, steps, bytes, base, scale }: Stretch): Float32Array[] {
  return Array.from({ length: steps }, (_, step) =>
    Float32Array.from(
      { length: dims },
      (_, d) => (base[d] as number) + (scale[d] as number) * (bytes[step * dims + d] as number),
    ),
  );
}
