/** Tests two shares of few trials exactly. */
import { requireCount } from './counts.ts';
import { logChoose } from './gamma.ts';

/** Tables as likely as the observed one up to rounding count as such. */
const ROUNDING = 1 + 1e-7;

/**
 * Fisher's exact test of the table [[a, b], [c, d]], two-sided: the chance, margins given, of a table no likelier than this one (Fisher 1935).
 * @throws RangeError unless all four are whole numbers of at least 0.
 */
export function fisherTwoSided(a: number, b: number, c: number, d: number): number {
  for (const count of [a, b, c, d]) requireCount(count);
  const [row, column, all] = [a + b, a + c, a + b + c + d];
  const chance = (x: number) => Math.exp(logChoose(row, x) + logChoose(all - row, column - x) - logChoose(all, column));
  const limit = chance(a) * ROUNDING;
  let p = 0;
  for (let x = Math.max(0, row + column - all); x <= Math.min(row, column); x++) if (chance(x) <= limit) p += chance(x);
  return Math.min(1, p);
}
