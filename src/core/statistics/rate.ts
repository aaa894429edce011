/** Turns a count of events over time into a rate per minute with its exact interval. */
import type { Seconds } from '../units.ts';
import { requireCount } from './counts.ts';
import { gammaBelow } from './gamma.ts';
import { type Interval, TAIL_95 } from './interval.ts';
import { solveRising } from './solve.ts';

/** Events per minute. */
export interface Rate {
  readonly perMinute: number;
  readonly interval: Interval;
}

/**
 * Exact interval for the mean of a Poisson count, 95 % (Garwood 1936), in events.
 * @throws RangeError unless `count` is a whole number of at least 0.
 */
export function garwood(count: number): Interval {
  requireCount(count);
  // Beyond 60 spreads above the count nothing is left to find.
  const far = count + 60 * Math.sqrt(count + 1);
  return {
    lower: count === 0 ? 0 : solveRising((x) => gammaBelow(count, x), TAIL_95, 0, far),
    upper: solveRising((x) => gammaBelow(count + 1, x), 1 - TAIL_95, 0, far),
  };
}

/**
 * Count per minute; assumes that events come independently at a steady rate, else the interval is too short.
 * @throws RangeError unless `count` is a whole number of at least 0 and `spanS` is above 0.
 */
export function ratePerMinute(count: number, spanS: Seconds): Rate {
  if (!(spanS > 0 && Number.isFinite(spanS))) throw new RangeError(`expected a span above 0 s, got ${spanS}`);
  const { lower, upper } = garwood(count);
  const minutes = spanS / 60;
  return { perMinute: count / minutes, interval: { lower: lower / minutes, upper: upper / minutes } };
}
