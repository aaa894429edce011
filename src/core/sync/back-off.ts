/** Says how long to wait before a server is asked again: longer with every failure, and never all devices at once. */
import type { Milliseconds } from '../units.ts';

/** The first wait at most, ms. Common practice, no source. */
const FIRST_MS: Milliseconds = 1_000;
/** No wait is longer: a phone that comes back into reach should not lie idle. Common practice, no source. */
export const LONGEST_WAIT_MS: Milliseconds = 300_000;

/**
 * @param failures in a row, 1 for the first.
 * @param chance from 0 to 1: half of the wait hangs on it ("equal jitter"), so that devices cut off together come back one by one.
 */
export function backOffMs(failures: number, chance: number): Milliseconds {
  const wholeMs = Math.min(LONGEST_WAIT_MS, FIRST_MS * 2 ** Math.min(failures - 1, 30));
  return Math.round(wholeMs * (0.5 + 0.5 * chance));
}
