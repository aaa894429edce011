/** Takes the middle of a list of numbers. */
import { requireFinite } from './counts.ts';

/**
 * The median, in the unit of the numbers (a latency: seconds from cue to onset); null for an empty list.
 * Of an even number it is the mean of the middle two.
 * @throws RangeError for a number that is not finite.
 */
export function median(numbers: readonly number[]): number | null {
  requireFinite(numbers);
  const sorted = [...numbers].sort((a, b) => a - b);
  const low = sorted[(sorted.length - 1) >> 1];
  const high = sorted[sorted.length >> 1];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
