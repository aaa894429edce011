/** Learns how one and the same word differs from itself, in other noise and from take to take, so that such differences count for little. */
import { type Normaliser, normalise, type Part } from './feature.ts';

/** The rows of one take that are the word, room by room. The rooms are in step: row n is the same moment of the word in each. */
export interface InRooms {
  readonly word: string | undefined;
  readonly rooms: readonly (readonly Float32Array[])[];
}

/** Weight of how takes of a word differ, beside how a take differs from itself in other noise (0, .3, .5 and 1 tried on composed sessions). */
const TAKES_WEIGHT = 0.5;
/** Added to the variance of every direction, in mean variances: what never moved in a few takes may yet move (.2 to 2 tried). */
const CAUTION = 2;

const triangle = (n: number): number => (n * (n + 1)) / 2;

/** Sums of products of differences: the lower triangle, row by row. */
interface Scatter {
  readonly sums: Float64Array;
  readonly from: number;
  readonly dims: number;
}

function add({ sums, from, dims }: Scatter, difference: Float64Array, weight: number): void {
  for (let i = 0, at = 0; i < dims; i++) {
    const scaled = weight * (difference[from + i] as number);
    for (let j = 0; j <= i; j++, at++) sums[at] = (sums[at] as number) + scaled * (difference[from + j] as number);
  }
}

/** Lower triangle of the Cholesky factor, in place. The caution keeps every pivot above zero. */
function factor({ sums, dims }: Scatter): Float32Array {
  const at = (i: number, j: number): number => triangle(i) + j;
  let trace = 0;
  for (let i = 0; i < dims; i++) trace += sums[at(i, i)] as number;
  const extra = trace > 0 ? (CAUTION * trace) / dims : 1;
  for (let i = 0; i < dims; i++) {
    sums[at(i, i)] = (sums[at(i, i)] as number) + extra;
    for (let j = 0; j <= i; j++) {
      let sum = sums[at(i, j)] as number;
      for (let k = 0, a = at(i, 0), b = at(j, 0); k < j; k++) sum -= (sums[a + k] as number) * (sums[b + k] as number);
      sums[at(i, j)] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / (sums[at(j, j)] as number);
    }
  }
  return Float32Array.from(sums);
}

/** Pairs of rows that dynamic time warping lays side by side (steps weigh 1-2-1). */
function align(
  a: readonly Float32Array[],
  b: readonly Float32Array[],
  distance: (i: number, j: number) => number,
): [number, number][] {
  const width = b.length + 1;
  const cost = new Float64Array((a.length + 1) * width).fill(Infinity);
  const step = new Uint8Array(cost.length);
  cost[0] = 0;
  for (let i = 1; i <= a.length; i++) {
    for (let j = 1; j < width; j++) {
      const d = distance(i - 1, j - 1);
      const both = (cost[(i - 1) * width + j - 1] as number) + 2 * d;
      const first = (cost[(i - 1) * width + j] as number) + d;
      const second = (cost[i * width + j - 1] as number) + d;
      const least = Math.min(both, first, second);
      cost[i * width + j] = least;
      step[i * width + j] = least === both ? 0 : least === first ? 1 : 2;
    }
  }
  const pairs: [number, number][] = [];
  for (let i = a.length, j = b.length; i > 0 && j > 0; ) {
    pairs.push([i - 1, j - 1]);
    const way = step[i * width + j];
    if (way !== 2) i--;
    if (way !== 1) j--;
  }
  return pairs;
}

/** As far apart as the listener would find two rows before anything is evened out. */
function distanceOf(parts: readonly Part[], a: Float32Array, b: Float32Array): number {
  let d = 0;
  let sum = 0;
  for (const part of parts) {
    let power = 0;
    for (const end = d + part.dims; d < end; d++) power += ((a[d] as number) - (b[d] as number)) ** 2;
    sum += part.weight * Math.sqrt(power);
  }
  return sum;
}

/** For each part the lower triangle by which `normalise` evens it out, for rows already brought to mean 0 and spread 1. */
export function fitWhitening(takes: readonly InRooms[], plain: Normaliser, parts: readonly Part[]): Float32Array[] {
  const dims = plain.mean.length;
  let from = 0;
  const scatters = parts.map((part): Scatter => {
    from += part.dims;
    return { sums: new Float64Array(triangle(part.dims)), from: from - part.dims, dims: part.dims };
  });
  const difference = new Float64Array(dims);
  const take = (a: Float32Array, b: Float32Array | Float64Array, weight: number): void => {
    for (let d = 0; d < dims; d++) difference[d] = ((a[d] as number) - (b[d] as number)) / (plain.spread[d] as number);
    for (const scatter of scatters) add(scatter, difference, weight);
  };
  addRooms(takes, dims, take);
  addTakes(takes, plain, parts, take);
  return scatters.map(factor);
}

type TakeDifference = (a: Float32Array, b: Float32Array | Float64Array, weight: number) => void;

/** The variance over rooms, the same moment of the same take in each. */
function addRooms(takes: readonly InRooms[], dims: number, take: TakeDifference): void {
  const moments = takes.reduce((sum, { rooms }) => sum + (rooms[0]?.length ?? 0), 0);
  const mean = new Float64Array(dims);
  for (const { rooms } of takes) {
    for (let r = 0; rooms.length > 1 && r < (rooms[0]?.length ?? 0); r++) {
      for (let d = 0; d < dims; d++)
        mean[d] = rooms.reduce((sum, room) => sum + ((room[r] as Float32Array)[d] as number), 0) / rooms.length;
      for (const room of rooms) take(room[r] as Float32Array, mean, 1 / (moments * (rooms.length - 1)));
    }
  }
}

/** The variance over takes of a word, in the quietest room. */
function addTakes(takes: readonly InRooms[], plain: Normaliser, parts: readonly Part[], take: TakeDifference): void {
  const unit = new Map<Float32Array, Float32Array>();
  const unitOf = (row: Float32Array): Float32Array => {
    const known = unit.get(row) ?? new Float32Array(row.length);
    if (!unit.has(row)) {
      normalise(row, plain, parts, known, 0);
      unit.set(row, known);
    }
    return known;
  };
  const pairs = takes.flatMap(({ word, rooms: [a = []] }, i) =>
    takes
      .slice(0, i)
      .filter((other) => word !== undefined && other.word === word)
      .flatMap(({ rooms: [b = []] }) =>
        align(a, b, (p, q) => distanceOf(parts, unitOf(a[p] as Float32Array), unitOf(b[q] as Float32Array))).map(
          ([p, q]) => [a[p] as Float32Array, b[q] as Float32Array] as const,
        ),
      ),
  );
  // Half of a squared difference is a variance.
  for (const [a, b] of pairs) take(a, b, TAKES_WEIGHT / (2 * pairs.length));
}
