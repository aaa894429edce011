/** Finds the half step between two hold times: more of the rise early, where a second is long. */
import type { Seconds } from '../units.ts';

/**
 * sqrt((a + .5)(b + .5)) - .5 to the half second, a half of that grid rounding down (the easier side); 3, 5 -> 4 and 5, 10 -> 7.
 * Null when the steps are less than 1 s apart: no further split (CRITERION, confirmed).
 * @throws RangeError unless 0 <= easierS < harderS.
 */
export function halfwayS(easierS: Seconds, harderS: Seconds): Seconds | null {
  if (!(easierS >= 0 && harderS > easierS)) throw new RangeError(`expected 0 <= easier < harder, got ${easierS} and ${harderS}`);
  if (harderS - easierS < 1) return null;
  const middle = Math.sqrt((easierS + 0.5) * (harderS + 0.5)) - 0.5;
  // Rounds to the half second with ties down; the slack keeps a tie a tie after the square root.
  return Math.ceil(middle * 2 - 0.5 - 1e-9) / 2;
}
