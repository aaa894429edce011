/** Lines a second scoring up with the first: finds how far the recording's clock lies behind the session's. */
import { REP_WORDS, type RepWord } from '../correction.ts';
import { matchWithin } from '../statistics/match.ts';
import { median } from '../statistics/median.ts';
import type { Seconds } from '../units.ts';
import type { Observed } from './observation.ts';

/** What to add to a moment of the second to have it on the clock of the first, and how well they then meet. */
export interface Alignment {
  readonly offsetS: Seconds;
  /** Same words within the window of each other. */
  readonly met: number;
  readonly first: number;
  readonly second: number;
}

/** Both observers' first hold is one moment. Null: one of them has none. */
export function byFirstHold(first: readonly Observed[], second: readonly Observed[]): Seconds | null {
  const [a, b] = [first, second].map((words) => words.find(({ word }) => word === 'hold')?.atS);
  return a === undefined || b === undefined ? null : a - b;
}

export function alignmentAt(
  first: readonly Observed[],
  second: readonly Observed[],
  offsetS: Seconds,
  windowS: Seconds,
): Alignment {
  const gaps = gapsAt(timesByWord(first), timesByWord(second), offsetS, windowS);
  return { offsetS, met: gaps.length, first: first.length, second: second.length };
}

/** Candidates within one such step of each other are one, s: finer than any observer. */
const STEP_S: Seconds = 0.25;
/** So many of the likeliest candidates are tried in full. */
const TRIED = 40;

/**
 * The offset at which the most words meet; between equals the one at which they lie closest. Settled on the middle of what is
 * left, so that an observer who is always late is not late any more. Null: no word that both have.
 */
export function bestAlignment(first: readonly Observed[], second: readonly Observed[], windowS: Seconds): Alignment | null {
  const [a, b] = [timesByWord(first), timesByWord(second)];
  const tried = candidates(a, b).map((offsetS) => {
    const gaps = gapsAt(a, b, offsetS, windowS);
    return { offsetS, met: gaps.length, spreadS: spread(gaps) };
  });
  const [best] = tried.toSorted((x, y) => y.met - x.met || x.spreadS - y.spreadS);
  if (!best) return null;
  const settledS = best.offsetS + (median(gapsAt(a, b, best.offsetS, windowS)) ?? 0);
  const settled = alignmentAt(first, second, settledS, windowS);
  // Moving to the middle may cost a pair at the very edge of the window; then it is not moved.
  return settled.met >= best.met ? settled : alignmentAt(first, second, best.offsetS, windowS);
}

type Times = Readonly<Record<RepWord, readonly Seconds[]>>;

function timesByWord(words: readonly Observed[]): Times {
  const of = (name: RepWord) =>
    words
      .filter(({ word }) => word === name)
      .map(({ atS }) => atS)
      .toSorted((x, y) => x - y);
  return { hold: of('hold'), mark: of('mark'), lifted: of('lifted'), void: of('void') };
}

/** How far the first still lies behind the second in each pair that meets, s. */
function gapsAt(a: Times, b: Times, offsetS: Seconds, windowS: Seconds): readonly Seconds[] {
  return REP_WORDS.flatMap((word) => {
    const moved = b[word].map((atS) => atS + offsetS);
    return matchWithin(a[word], moved, windowS).flatMap(({ first, second }) =>
      first === null || second === null ? [] : [(a[word][first] as Seconds) - (moved[second] as Seconds)],
    );
  });
}

/** Mean distance from the middle: a constant delay costs nothing. */
function spread(gaps: readonly Seconds[]): Seconds {
  const middle = median(gaps) ?? 0;
  return gaps.reduce((sum, gap) => sum + Math.abs(gap - middle), 0) / Math.max(1, gaps.length);
}

/** Every difference between two same words could be the offset; those that most pairs share come first. */
function candidates(a: Times, b: Times): readonly Seconds[] {
  const shared = new Map<number, { count: number; sumS: Seconds }>();
  for (const word of REP_WORDS)
    for (const atS of a[word])
      for (const otherS of b[word]) {
        const cell = Math.round((atS - otherS) / STEP_S);
        const { count, sumS } = shared.get(cell) ?? { count: 0, sumS: 0 };
        shared.set(cell, { count: count + 1, sumS: sumS + atS - otherS });
      }
  const likely = [...shared.values()].toSorted((x, y) => y.count - x.count || Math.abs(x.sumS) - Math.abs(y.sumS));
  return likely.slice(0, TRIED).map(({ count, sumS }) => sumS / count);
}
