/** When two stretches of a session count as the same: the rule of the scorer of composed sessions. */

/** Moments in s. */
export interface Span {
  readonly startedAtS: number;
  readonly endedAtS: number;
}

const ONSETS_S = 0.4;

export const near = (a: Span, b: Span): boolean =>
  (a.startedAtS < b.endedAtS && b.startedAtS < a.endedAtS) || Math.abs(a.startedAtS - b.startedAtS) < ONSETS_S;
