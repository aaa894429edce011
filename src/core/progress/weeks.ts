/** How long heads stay down, week by week: survival curves on which a mark is the end of looking, not the end of the hold. */
import { type Hold, type HoldCurve, holdCurve, type MedianHold, medianHold } from '../statistics/hold-time.ts';
import { FEWEST_FOR_INTERVAL } from '../statistics/interval.ts';
import { type Week, weekOf } from './day.ts';
import type { SessionDigest } from './digest.ts';
import { groupBy } from './group.ts';

export interface HoldWeek {
  readonly week: Week;
  readonly sessions: number;
  readonly holds: number;
  readonly lifts: number;
  readonly curve: HoldCurve;
  readonly median: MedianHold;
  /** Moments of the marks, s: where the curve is looked at for the last time of each. */
  readonly markedS: readonly number[];
}

export function holdsOf({ steps }: SessionDigest): readonly Hold[] {
  return steps.flatMap(({ markedS, liftedS }) => [
    ...markedS.map((heldForS) => ({ heldForS, end: 'marked' as const })),
    ...liftedS.map((heldForS) => ({ heldForS, end: 'lifted' as const })),
  ]);
}

/**
 * The latest weeks with enough holds to draw a curve, oldest first. Curves of different weeks may stand on different steps: the
 * longer the criterion, the further a curve can be seen.
 */
export function holdWeeks(chosen: readonly SessionDigest[], latest: number): readonly HoldWeek[] {
  const byWeek = groupBy(chosen, ({ day }) => weekOf(day));
  return [...byWeek]
    .toSorted(([a], [b]) => b - a)
    .filter(([, digests]) => countHolds(digests) >= FEWEST_FOR_INTERVAL)
    .slice(0, latest)
    .map(([week, digests]) => weekFrom(week, digests))
    .reverse();
}

function countHolds(digests: readonly SessionDigest[]): number {
  return digests.reduce((sum, { steps }) => sum + steps.reduce((n, step) => n + step.markedS.length + step.liftedS.length, 0), 0);
}

function weekFrom(week: Week, digests: readonly SessionDigest[]): HoldWeek {
  const holds = digests.flatMap(holdsOf);
  const curve = holdCurve(holds);
  const markedS = holds.filter(({ end }) => end === 'marked').map(({ heldForS }) => heldForS);
  const counts = { sessions: digests.length, holds: holds.length, lifts: holds.length - markedS.length };
  return { week, ...counts, curve, median: medianHold(curve), markedS };
}
