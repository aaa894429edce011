/** Says how many events are to be expected, from how many there were before. */
import { betaBelow } from './beta.ts';
import { requireCount } from './counts.ts';
import { type Interval, TAIL_95 } from './interval.ts';

/**
 * 95 % interval for a Poisson count to come over `ahead`, after `count` over `past` of the same unit. Exact: given their sum, the earlier
 * count is binomial; a later one belongs to it while neither tail is below 2.5 % (Nelson 1970, IEEE Trans. Reliability R-19:42-49, M).
 * Never too narrow for a steady pace, often too wide.
 * @throws RangeError unless `count` is a whole number of at least 0, `past` above 0 and `ahead` at least 0.
 */
export function countAhead(count: number, past: number, ahead: number): Interval {
  requireCount(count);
  if (!(past > 0 && ahead >= 0 && Number.isFinite(past + ahead)))
    throw new RangeError(`expected something past and nothing negative ahead, got ${past} and ${ahead}`);
  if (ahead === 0) return { lower: 0, upper: 0 };
  const share = past / (past + ahead);
  // Given y later ones: the chance of at most, and of at least, so many earlier ones.
  const atMost = (y: number) => (y === 0 ? 1 : betaBelow(1 - share, y, count + 1));
  const atLeast = (y: number) => (count === 0 ? 1 : betaBelow(share, count, y + 1));
  return { lower: firstWhere((y) => atLeast(y) > TAIL_95), upper: firstWhere((y) => atMost(y + 1) <= TAIL_95) };
}

/** The smallest whole number of at least 0 from which on it holds: doubled until it does, then halved. */
function firstWhere(holds: (y: number) => boolean): number {
  if (holds(0)) return 0;
  let high = 1;
  while (!holds(high)) high *= 2;
  let low = high >> 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}
