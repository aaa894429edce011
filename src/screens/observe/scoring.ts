/** What the second observer has in hand: words noted, and how the two clocks are lined up. Pure; the screen holds it. */
import { type Alignment, alignmentAt, bestAlignment, byFirstHold } from '../../core/observe/align.ts';
import { type Comparison, compareObservers, sharedSpan, WINDOW_S } from '../../core/observe/compare.ts';
import { type Observation, type Observed, shifted } from '../../core/observe/observation.ts';
import type { Seconds } from '../../core/units.ts';

export interface Scoring {
  readonly by: Observation['by'];
  /** On the recording's clock, in order. */
  readonly words: readonly Observed[];
  /** The one noted last, wherever the film stood; null: it was taken back. */
  readonly latest: Observed | null;
  /** Shown only when asked for: who scores must not look. */
  readonly compared: boolean;
  readonly lineUp: LineUp;
}

export type LineUp = { readonly how: 'best' | 'first-hold' } | { readonly how: 'by-hand'; readonly offsetS: Seconds };

export const NOTHING_SCORED: Scoring = { by: 'keys', words: [], latest: null, compared: false, lineUp: { how: 'best' } };

export function note(scoring: Scoring, word: Observed): Scoring {
  return { ...scoring, latest: word, words: [...scoring.words, word].toSorted((a, b) => a.atS - b.atS) };
}

export function strike(scoring: Scoring, struck: Observed): Scoring {
  const { words, latest } = scoring;
  return { ...scoring, words: words.filter((each) => each !== struck), latest: latest === struck ? null : latest };
}

/** Takes back the word noted last. */
export function takeBack(scoring: Scoring): Scoring {
  return scoring.latest ? strike(scoring, scoring.latest) : scoring;
}

export interface SessionSeen {
  readonly words: readonly Observed[];
  readonly lengthS: Seconds;
}

/** Null: the two have nothing in common to be lined up by. */
export function lineUp(session: SessionSeen, { words, lineUp: wish }: Scoring): Alignment | null {
  if (wish.how === 'by-hand') return alignmentAt(session.words, words, wish.offsetS, WINDOW_S);
  if (wish.how === 'best') return bestAlignment(session.words, words, WINDOW_S);
  const offsetS = byFirstHold(session.words, words);
  return offsetS === null ? null : alignmentAt(session.words, words, offsetS, WINDOW_S);
}

/** Null: the recording shows nothing of the session at this offset. */
export function compareAt(
  session: SessionSeen,
  words: readonly Observed[],
  lengthS: Seconds,
  offsetS: Seconds,
): Comparison | null {
  const span = sharedSpan(session.lengthS, lengthS, offsetS);
  return span && compareObservers(session.words, shifted(words, offsetS), span);
}
