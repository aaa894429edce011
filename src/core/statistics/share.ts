/** Gives the share of trials kept its interval, and the difference of two shares theirs. */
import { betaQuantile } from './beta.ts';
import { requireCounts } from './counts.ts';
import { type Interval, TAIL_95, Z_95 } from './interval.ts';

/**
 * Wilson's score interval for k of n, 95 % (Wilson 1927; method 3 of Newcombe 1998, Stat Med 17:857-872).
 * @throws RangeError unless 0 <= k <= n, n >= 1, whole numbers.
 */
export function wilson(k: number, n: number): Interval {
  requireCounts(k, n);
  const zz = Z_95 * Z_95;
  const half = Z_95 * Math.sqrt(zz + (4 * k * (n - k)) / n);
  const below = (2 * k + zz - half) / (2 * (n + zz));
  const above = (2 * k + zz + half) / (2 * (n + zz));
  // At 0 of n and n of n the ends are exactly 0 and 1; rounding would leave 1e-17.
  return { lower: k === 0 ? 0 : below, upper: k === n ? 1 : above };
}

/**
 * Clopper & Pearson's exact interval for k of n, 95 % (1934): never too short, often too long.
 * @throws RangeError unless 0 <= k <= n, n >= 1, whole numbers.
 */
export function clopperPearson(k: number, n: number): Interval {
  requireCounts(k, n);
  return {
    lower: k === 0 ? 0 : betaQuantile(TAIL_95, k, n - k + 1),
    upper: k === n ? 1 : betaQuantile(1 - TAIL_95, k + 1, n - k),
  };
}

/** Two shares and what lies between them: `difference` = first - second. */
export interface ShareDifference {
  readonly difference: number;
  readonly interval: Interval;
}

/**
 * Interval for k1/n1 - k2/n2, 95 %: Wilson limits squared and added (Newcombe 1998, Stat Med 17:873-890, method 10).
 * @throws RangeError as `wilson`.
 */
export function newcombe(k1: number, n1: number, k2: number, n2: number): ShareDifference {
  const [p1, p2] = [k1 / n1, k2 / n2];
  const [w1, w2] = [wilson(k1, n1), wilson(k2, n2)];
  const difference = p1 - p2;
  return {
    difference,
    interval: {
      lower: difference - Math.hypot(p1 - w1.lower, w2.upper - p2),
      upper: difference + Math.hypot(w1.upper - p1, p2 - w2.lower),
    },
  };
}
