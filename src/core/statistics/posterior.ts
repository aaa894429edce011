/** Says what k kept of n make of the true success when nothing was known before: the flat prior's answer. */
import type { Share } from '../units.ts';
import { betaBelow, logBeta } from './beta.ts';
import { requireCounts } from './counts.ts';
import { logChoose } from './gamma.ts';

/**
 * Chance that the true success is at least `x` after k kept of n, every success being equally likely beforehand: 1 - I_x(k + 1, n - k + 1).
 * @throws RangeError unless 0 <= k <= n, n >= 1, whole numbers.
 */
export function chanceAtLeast(x: Share, k: number, n: number): Share {
  requireCounts(k, n);
  // The mirror image, so that a small tail is not the rest of a subtraction.
  return betaBelow(1 - x, n - k + 1, k + 1);
}

/**
 * Chance that at least `atLeast` of the next `next` trials are kept after k of n, flat prior (beta-binomial).
 * @throws RangeError unless both pairs are counts.
 */
export function chanceNext(atLeast: number, next: number, k: number, n: number): Share {
  requireCounts(k, n);
  requireCounts(atLeast, next);
  const [a, b] = [k + 1, n - k + 1];
  let sum = 0;
  for (let j = atLeast; j <= next; j++) sum += Math.exp(logChoose(next, j) + logBeta(a + j, b + next - j) - logBeta(a, b));
  return Math.min(1, sum);
}
