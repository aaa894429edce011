/** Pairs the moments of two observers, one to one, as many as can lie within a window of each other. */
import type { Seconds } from '../units.ts';

/** Indices into the two lists; null: the other saw nothing near. */
export interface Match {
  readonly first: number | null;
  readonly second: number | null;
}

/** Times that differ by exactly the window agree, whatever rounding made of them. */
const SLACK_S: Seconds = 1e-9;

/**
 * @param first, second moments on one clock, s, in order.
 * Pairing from the left, earliest with earliest, gives the most pairs when all windows are equally wide.
 */
export function matchWithin(first: readonly Seconds[], second: readonly Seconds[], windowS: Seconds): readonly Match[] {
  const matches: Match[] = [];
  let [i, j] = [0, 0];
  while (i < first.length || j < second.length) {
    const gapS = (first[i] ?? Number.POSITIVE_INFINITY) - (second[j] ?? Number.POSITIVE_INFINITY);
    if (Math.abs(gapS) <= windowS + SLACK_S) matches.push({ first: i++, second: j++ });
    else if (gapS < 0 || j >= second.length) matches.push({ first: i++, second: null });
    else matches.push({ first: null, second: j++ });
  }
  return matches;
}
