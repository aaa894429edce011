/** Says whether a measure rises or falls over sessions: a slope that outliers do not move, and an exact test. */
import { requireFinite } from './counts.ts';
import { median } from './median.ts';

/** One session: x its day or number, y what was measured. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Theil & Sen's slope, y per x: the median over all pairs with different x (Theil 1950, Sen 1968); null when there is no such pair.
 * @throws RangeError for a number that is not finite.
 */
export function theilSen(points: readonly Point[]): number | null {
  requireFinite(points.flatMap(({ x, y }) => [x, y]));
  const slopes = points.flatMap((a, i) =>
    points
      .slice(i + 1)
      .filter((b) => b.x !== a.x)
      .map((b) => (b.y - a.y) / (b.x - a.x)),
  );
  return median(slopes);
}

/** Fewer sessions are drawn, not tested (CRITERION). */
export const FEWEST_FOR_TREND = 8;

/** S = rising pairs - falling pairs; tied pairs count as neither. */
export type Trend =
  | { readonly kind: 'too-few'; readonly n: number; readonly s: number }
  | {
      readonly kind: 'tested';
      readonly n: number;
      readonly s: number;
      /** Were there ties? Then `p` is exact given these ties. */
      readonly ties: boolean;
      /** Chance of an S at least as large if order meant nothing. */
      readonly pRise: number;
      /** Chance of an S at least as small. */
      readonly pFall: number;
      /** Chance of an |S| at least as large. */
      readonly pTwoSided: number;
    };

/**
 * Mann & Kendall's test, exact (Mann 1945, Kendall 1948), for values in the order of their sessions.
 * Ties: the values are taken as they are and all their orders as equally likely, so p is the permutation test's, exact given the ties;
 * no normal approximation, no tie correction.
 * @throws RangeError for a value that is not finite.
 */
export function mannKendall(values: readonly number[]): Trend {
  requireFinite(values);
  const n = values.length;
  const s = kendallS(values);
  if (n < FEWEST_FOR_TREND) return { kind: 'too-few', n, s };
  const groups = tieGroups(values);
  const chances = inversions(groups);
  const [pRise, pFall] = [tail(chances, s), tail(chances, -s)];
  return {
    kind: 'tested',
    n,
    s,
    ties: groups.length < n,
    pRise,
    pFall,
    pTwoSided: s === 0 ? 1 : Math.min(1, 2 * Math.min(pRise, pFall)),
  };
}

/** Rising pairs minus falling pairs. */
export function kendallS(values: readonly number[]): number {
  let s = 0;
  values.forEach((a, i) => {
    for (const b of values.slice(i + 1)) s += Math.sign(b - a);
  });
  return s;
}

/** Sizes of the groups of equal values; all 1 without ties. */
function tieGroups(values: readonly number[]): number[] {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()];
}

/** Chance that S >= s when all orders of values with these groups of ties (1 for each untied value) are equally likely. */
export function kendallTail(groups: readonly number[], s: number): number {
  return tail(inversions(groups), s);
}

/** With i falling pairs S = (pairs that are not tied) - 2 i, so S >= s means i <= (pairs - s) / 2. S is spread evenly about 0. */
function tail(chances: readonly number[], s: number): number {
  const most = Math.floor((chances.length - 1 - s) / 2);
  return Math.min(
    1,
    chances.slice(0, Math.max(0, most + 1)).reduce((sum, chance) => sum + chance, 0),
  );
}

/** [falling pairs]: chance of so many among all orders of values with these groups of ties. One group joins after the other. */
function inversions(groups: readonly number[]): number[] {
  let chances = [1];
  let placed = 0;
  for (const size of groups) {
    chances = convolve(chances, fallsOnJoining(placed, size));
    placed += size;
  }
  return chances;
}

/**
 * [falling pairs between them]: chance when `m` values and `t` equal larger ones are shuffled (Mann & Whitney 1947).
 * Recurrence on whose value comes last: a smaller one after all t larger makes t falls, a larger one makes none.
 */
function fallsOnJoining(m: number, t: number): number[] {
  // rows[j]: distribution for i smaller and j larger values, i going up to m.
  let rows = Array.from({ length: t + 1 }, () => [1]);
  for (let i = 1; i <= m; i++) {
    const next: number[][] = [[1]];
    for (let j = 1; j <= t; j++) next.push(mix(rows[j] as number[], j, i / (i + j), next[j - 1] as number[]));
    rows = next;
  }
  return rows[t] as number[];
}

/** weight · (a shifted up by `shift`) + (1 - weight) · b. */
function mix(a: readonly number[], shift: number, weight: number, b: readonly number[]): number[] {
  const out = new Array<number>(Math.max(a.length + shift, b.length)).fill(0);
  a.forEach((x, i) => {
    out[i + shift] = (out[i + shift] as number) + weight * x;
  });
  b.forEach((x, i) => {
    out[i] = (out[i] as number) + (1 - weight) * x;
  });
  return out;
}

function convolve(a: readonly number[], b: readonly number[]): number[] {
  const out = new Array<number>(a.length + b.length - 1).fill(0);
  // Plain loops: a year of sessions takes some 10^7 of these.
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j < b.length; j++) out[i + j] = (out[i + j] as number) + (a[i] as number) * (b[j] as number);
  return out;
}
