/** Chooses the next criterion from the last holds themselves: the percentile schedule, for shaping hold times without a marker. */
import type { Seconds, Share } from '../units.ts';
import { requireFinite } from './counts.ts';

/**
 * Rank k = (m + 1)(1 - w) (Platt 1973, Galbicka 1994, JABA 27:739-760): a rep is paid when it beats the k-th lowest of the last m,
 * so that a share w is paid as long as nothing changes. May be no whole number; see `percentileCriterion`.
 * @throws RangeError unless m is a whole number of at least 1 and 0 < w < 1.
 */
export function percentileRank(m: number, w: Share): number {
  if (!(Number.isInteger(m) && m >= 1 && w > 0 && w < 1))
    throw new RangeError(`expected m >= 1 and 0 < w < 1, got ${m} and ${w}`);
  // (4 + 1)(1 - .8) must be 1, not .9999999999999998, which would round down to 0.
  return Math.round((m + 1) * (1 - w) * 1e9) / 1e9;
}

/** What the next hold has to beat. */
export type PercentileCriterion =
  | { readonly kind: 'too-few'; readonly have: number; readonly need: number }
  | { readonly kind: 'any' }
  | { readonly kind: 'beat'; readonly holdS: Seconds; readonly rank: number };

/**
 * The hold to beat, from the last `m` of `holdsS` (latest last). A rank between two whole numbers takes the lower, which is the easier;
 * a rank below 1 pays any hold. Not for marked holds: the marker cuts them short.
 * @throws RangeError as `percentileRank`, and for a hold that is not finite.
 */
export function percentileCriterion(holdsS: readonly Seconds[], m = 10, w: Share = 0.5): PercentileCriterion {
  requireFinite(holdsS);
  const rank = Math.floor(percentileRank(m, w));
  if (holdsS.length < m) return { kind: 'too-few', have: holdsS.length, need: m };
  const lowest = holdsS.slice(-m).sort((a, b) => a - b);
  const holdS = lowest[rank - 1];
  return holdS === undefined ? { kind: 'any' } : { kind: 'beat', holdS, rank };
}
