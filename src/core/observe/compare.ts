/** Holds two scorings of one session against each other: the trade's measures of agreement, and where they differ. */
import { REP_WORDS, type RepWord } from '../correction.ts';
import { type EndedRep, hearInRep, type Phase, WAITING } from '../rep.ts';
import {
  exactCount,
  type IntervalCounts,
  intervalByInterval,
  type Kappa,
  kappa,
  meanCountPerInterval,
  timeWindow,
  totalCount,
  type WindowAgreement,
} from '../statistics/agreement.ts';
import { matchWithin } from '../statistics/match.ts';
import type { Seconds, Share } from '../units.ts';
import type { Observed } from './observation.ts';

/** Words this near each other are one word seen twice, s (Mudford et al. 2009, JABA 42:165-169, use windows of 1 to 5 s; P for 1). */
export const WINDOW_S: Seconds = 1;
/** Length of an interval, s (10 s is common practice, no source). */
export const INTERVAL_S: Seconds = 10;

/** The part of the session that both have seen, s on its clock. */
export interface Span {
  readonly fromS: Seconds;
  readonly toS: Seconds;
}

export interface Measures {
  readonly firstCount: number;
  readonly secondCount: number;
  readonly intervals: number;
  readonly total: Share;
  readonly meanPerInterval: Share;
  readonly exactPerInterval: Share;
  readonly intervalByInterval: Share;
  readonly window: WindowAgreement;
}

/** How a rep ended, as an observer sees it. Kept or short is for the engine to say. */
export const ENDS = ['marked', 'lifted', 'no trial'] as const;
export type End = (typeof ENDS)[number];

export interface Outcomes {
  /** [what the first saw][what the second saw], in the order of ENDS; reps that both saw begin. */
  readonly table: readonly (readonly number[])[];
  /** Null: no rep that both saw. */
  readonly kappa: Kappa | null;
  readonly onlyFirst: number;
  readonly onlySecond: number;
}

/** One place where they differ, at a moment of the session, s. */
export type Disagreement =
  | { readonly kind: 'only-first' | 'only-second'; readonly word: RepWord; readonly atS: Seconds }
  | { readonly kind: 'other-word'; readonly word: RepWord; readonly second: RepWord; readonly atS: Seconds };

export interface Comparison {
  readonly span: Span;
  /** Words that only one of them had the chance to see. */
  readonly outside: number;
  readonly byWord: readonly (Measures & { readonly word: RepWord })[];
  /** Each word's intervals, one list after the other: a mark never agrees with a lift. Null: nothing was scored. */
  readonly all: Measures | null;
  readonly outcomes: Outcomes;
  readonly disagreements: readonly Disagreement[];
}

/** @param first, second words on one clock, in order. */
export function compareObservers(first: readonly Observed[], second: readonly Observed[], span: Span): Comparison {
  const [a, b] = [within(first, span), within(second, span)];
  const used = REP_WORDS.filter((name) => [...a, ...b].some(({ word }) => word === name));
  const byWord = used.map((word) => ({ word, ...measure([timesOf(a, word)], [timesOf(b, word)], span) }));
  return {
    span,
    outside: first.length + second.length - a.length - b.length,
    byWord,
    all:
      used.length === 0
        ? null
        : measure(
            used.map((word) => timesOf(a, word)),
            used.map((word) => timesOf(b, word)),
            span,
          ),
    outcomes: outcomesOf(a, b),
    disagreements: disagreementsOf(a, b),
  };
}

/** What both have seen: the session from its beginning to its end, as far as the recording reaches. Null: nothing. */
export function sharedSpan(sessionS: Seconds, recordingS: Seconds, offsetS: Seconds): Span | null {
  const span = { fromS: Math.max(0, offsetS), toS: Math.min(sessionS, offsetS + recordingS) };
  return span.toS > span.fromS ? span : null;
}

function within(words: readonly Observed[], { fromS, toS }: Span): readonly Observed[] {
  return words.filter(({ atS }) => atS >= fromS && atS <= toS).toSorted((x, y) => x.atS - y.atS);
}

function timesOf(words: readonly Observed[], name: RepWord): readonly Seconds[] {
  return words.filter(({ word }) => word === name).map(({ atS }) => atS);
}

/** @param first, second [word][event]: moments, s. */
function measure(first: readonly (readonly Seconds[])[], second: readonly (readonly Seconds[])[], span: Span): Measures {
  const counts = (lists: readonly (readonly Seconds[])[]) => lists.flatMap((times) => countsIn(times, span));
  const [a, b] = [counts(first), counts(second)];
  return {
    ...{ firstCount: first.flat().length, secondCount: second.flat().length, intervals: a.length },
    total: totalCount(a, b),
    meanPerInterval: meanCountPerInterval(a, b),
    exactPerInterval: exactCount(a, b),
    intervalByInterval: intervalByInterval(a, b),
    window: together(first.map((times, nth) => timeWindow(times, second[nth] ?? [], WINDOW_S))),
  };
}

/** The last interval may be shorter: what happened in it counts. */
export function countsIn(times: readonly Seconds[], { fromS, toS }: Span): IntervalCounts {
  const counts = new Array<number>(Math.max(1, Math.ceil((toS - fromS) / INTERVAL_S))).fill(0);
  for (const atS of times) {
    const nth = Math.min(counts.length - 1, Math.floor((atS - fromS) / INTERVAL_S));
    counts[nth] = (counts[nth] as number) + 1;
  }
  return counts;
}

function together(parts: readonly WindowAgreement[]): WindowAgreement {
  const sum = (of: 'agreed' | 'onlyFirst' | 'onlySecond') => parts.reduce((total, part) => total + part[of], 0);
  const [agreed, onlyFirst, onlySecond] = [sum('agreed'), sum('onlyFirst'), sum('onlySecond')];
  const all = agreed + onlyFirst + onlySecond;
  return { agreed, onlyFirst, onlySecond, share: all === 0 ? null : agreed / all };
}

/** Reps as the rep machine tells them; a criterion of 0 makes every marker a good one. */
function repsOf(words: readonly Observed[]): readonly EndedRep[] {
  let phase: Phase = WAITING;
  return words.flatMap(({ word, atS }) => {
    const heard = { word, startedAtS: atS, endedAtS: atS, decidedAtS: atS, confidence: 1, by: 'recording' } as const;
    const after = hearInRep(phase, heard, 0);
    phase = after.phase;
    return after.rep ? [after.rep] : [];
  });
}

function endOf({ outcome }: EndedRep): End {
  if (outcome === 'void') return 'no trial';
  return outcome === 'lifted' ? 'lifted' : 'marked';
}

function outcomesOf(first: readonly Observed[], second: readonly Observed[]): Outcomes {
  const [a, b] = [repsOf(first), repsOf(second)];
  const begins = (reps: readonly EndedRep[]) => reps.map(({ holdAtS }) => holdAtS);
  const table = ENDS.map(() => ENDS.map(() => 0));
  let [onlyFirst, onlySecond] = [0, 0];
  for (const { first: i, second: j } of matchWithin(begins(a), begins(b), WINDOW_S)) {
    if (i === null) onlySecond++;
    else if (j === null) onlyFirst++;
    else {
      const row = table[ENDS.indexOf(endOf(a[i] as EndedRep))] as number[];
      const column = ENDS.indexOf(endOf(b[j] as EndedRep));
      row[column] = (row[column] as number) + 1;
    }
  }
  const seen = table.flat().some((count) => count > 0);
  return { table, kappa: seen ? kappa(table) : null, onlyFirst, onlySecond };
}

/** What no word of the same name answers; two that answer each other under different names are one disagreement. */
function disagreementsOf(first: readonly Observed[], second: readonly Observed[]): readonly Disagreement[] {
  const [a, b] = [unanswered(first, second), unanswered(second, first)];
  const pairs = matchWithin(
    a.map(({ atS }) => atS),
    b.map(({ atS }) => atS),
    WINDOW_S,
  );
  return pairs.map(({ first: i, second: j }): Disagreement => {
    const [mine, other] = [a[i ?? -1], b[j ?? -1]];
    if (mine && other) return { kind: 'other-word', word: mine.word, second: other.word, atS: mine.atS };
    if (mine) return { kind: 'only-first', ...mine };
    return { kind: 'only-second', ...(other as Observed) };
  });
}

function unanswered(words: readonly Observed[], by: readonly Observed[]): readonly Observed[] {
  const left = REP_WORDS.flatMap((name) => {
    const mine = words.filter(({ word }) => word === name);
    const matches = matchWithin(
      mine.map(({ atS }) => atS),
      timesOf(by, name),
      WINDOW_S,
    );
    return matches.flatMap(({ first, second }) => (first !== null && second === null ? [mine[first] as Observed] : []));
  });
  return left.toSorted((x, y) => x.atS - y.atS);
}
