/** Says in shares what can be expected of each taught word, and what would help. */
import type { Rehearsed } from './calibrate.ts';
import type { TaughtWord } from './model.ts';

export type Advice =
  | { readonly kind: 'too-few-takes'; readonly takes: number }
  | { readonly kind: 'takes-unlike'; readonly take: number }
  /** `share`: of the other's takes, those that would be taken for this word. */
  | { readonly kind: 'too-like'; readonly other: string; readonly share: number }
  | { readonly kind: 'too-little-talk'; readonly takes: number };

export interface WordForecast {
  readonly word: string;
  /** A click is told apart by other means than speech, and is promised less. */
  readonly heardAs: 'speech' | 'click';
  readonly takes: number;
  /** Expected share of sayings that are missed or unsure. */
  readonly expectedMissShare: number;
  /** Expected share of other short sayings of the handler that would be taken for this word. */
  readonly expectedFalseShare: number;
  readonly advice: Advice[];
}

/** Takes from which the figures of the recipe hold. */
const ENOUGH_TAKES = 3;
const ENOUGH_TALK = 6;
/** Shares from which an advice is given. */
const WORRYING_SHARE = 0.1;

/** Smooth count of scores on the wrong side: each counts by how far it is over, in widths of doubt. */
function shareOver(scores: readonly number[], threshold: number, width: number): number {
  if (scores.length === 0) return 0;
  return scores.reduce((sum, score) => sum + 1 / (1 + Math.exp((threshold - score) / width)), 0) / scores.length;
}

export function forecastOf(rehearsed: readonly Rehearsed[], words: readonly TaughtWord[]): WordForecast[] {
  const talk = rehearsed.filter((r) => r.word === undefined);
  return words.map(({ word, threshold, width }, w) => {
    const own = rehearsed.filter((r) => r.word === word);
    const score = (r: Rehearsed): number => r.best[w] as number;
    const advice: Advice[] = [];
    if (own.length < ENOUGH_TAKES) advice.push({ kind: 'too-few-takes', takes: own.length });
    if (talk.length < ENOUGH_TALK) advice.push({ kind: 'too-little-talk', takes: talk.length });
    for (const r of own) if (own.length > 1 && score(r) < threshold) advice.push({ kind: 'takes-unlike', take: r.take });
    for (const other of words) {
      const scores = rehearsed.filter((r) => r.word === other.word).map(score);
      const share = shareOver(scores, threshold, width);
      if (other.word !== word && share > WORRYING_SHARE) advice.push({ kind: 'too-like', other: other.word, share });
    }
    return {
      word,
      heardAs: 'speech' as const,
      takes: own.length,
      expectedMissShare: own.length > 1 ? 1 - shareOver(own.map(score), threshold, width) : 0.5,
      expectedFalseShare: shareOver(talk.map(score), threshold, width),
      advice,
    };
  });
}
