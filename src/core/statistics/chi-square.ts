/** Gives the upper tail of the chi-square distribution with one degree of freedom. */
import { gammaAbove } from './gamma.ts';

/**
 * Chance that a chi-square(1) variable is at least x.
 * @throws RangeError for x below 0 or not a number.
 */
export function chiSquareTail(x: number): number {
  if (!(x >= 0)) throw new RangeError(`expected a chi-square of at least 0, got ${x}`);
  return gammaAbove(0.5, x / 2);
}
