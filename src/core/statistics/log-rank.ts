/** Compares two sets of holds: do heads lift sooner in one than in the other? */
import { chiSquareTail } from './chi-square.ts';
import { type Hold, riskAt, riskTable } from './hold-time.ts';

/** `expected` are the lifts that each set would have had if both lifted alike. */
export interface LogRank {
  readonly observed: readonly [number, number];
  readonly expected: readonly [number, number];
  /** One degree of freedom; hypergeometric variance, no continuity correction. */
  readonly chiSquare: number;
  /** Two-sided, large-sample: with few lifts take it as a hint. */
  readonly p: number;
}

/** Mantel's log-rank test (1966); null when no lift leaves anything to compare (no lift, or none while both sets were at risk). */
export function logRank(first: readonly Hold[], second: readonly Hold[]): LogRank | null {
  let [observed1, expected1, variance, lifts] = [0, 0, 0, 0];
  for (const { atS, atRisk: n, lifts: d } of riskTable([...first, ...second])) {
    const one = riskAt(first, atS);
    const share = one.atRisk / n;
    observed1 += one.lifts;
    expected1 += d * share;
    lifts += d;
    if (n > 1) variance += (d * share * (1 - share) * (n - d)) / (n - 1);
  }
  if (variance === 0) return null;
  const chiSquare = (observed1 - expected1) ** 2 / variance;
  return {
    observed: [observed1, lifts - observed1],
    expected: [expected1, lifts - expected1],
    chiSquare,
    p: chiSquareTail(chiSquare),
  };
}
