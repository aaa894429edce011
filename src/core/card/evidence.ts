/** Says what is known of one step: the counts of its latest sessions, on how many days, where and when, and whether it is kept for good. */
import type { Day } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { groupBy } from '../progress/group.ts';
import { type Standing, standingOf, type Visit, verdictOf } from '../progress/mastery.ts';

/**
 * Counted are always the latest three sessions with a trial on the step: as many as keeping for good asks for. A fixed number, so that
 * neither lifts of long ago nor a good day that was picked out can colour it.
 */
export const LATEST_SESSIONS = 3;

export interface Evidence {
  /** Trials of the latest three sessions. */
  readonly kept: number;
  readonly of: number;
  readonly sessions: number;
  readonly days: number;
  readonly lastDay: Day;
  /** Where the latest session that can tell was at 9 in 10, the most used place first. */
  readonly keptIn: readonly string[];
  /** Every other place where it was tried. */
  readonly triedIn: readonly string[];
  readonly standing: Exclude<Standing, { readonly kind: 'never' }>;
}

/** Null: the step was never tried. @param digests of practice, in any order. */
export function evidenceOf(digests: readonly SessionDigest[], planId: string, stepId: string): Evidence | null {
  const visits = visitsTo(digests, planId, stepId);
  const standing = standingOf(visits);
  const latest = visits.slice(-LATEST_SESSIONS);
  const last = latest.at(-1);
  if (!last || standing.kind === 'never') return null;
  return {
    kept: latest.reduce((sum, { kept }) => sum + kept, 0),
    of: latest.reduce((sum, { of }) => sum + of, 0),
    sessions: latest.length,
    days: new Set(latest.map(({ day }) => day)).size,
    lastDay: last.day,
    ...placesOf(visits),
    standing,
  };
}

/** Oldest first. */
function visitsTo(digests: readonly SessionDigest[], planId: string, stepId: string): readonly Visit[] {
  const own = digests.filter((digest) => digest.planId === planId).toSorted((a, b) => a.atMs - b.atMs || (a.id < b.id ? -1 : 1));
  return own.flatMap(({ day, place, handler, steps }) =>
    steps.flatMap((step) => {
      const of = step.kept + step.lifted;
      return step.stepId === stepId && of > 0 ? [{ day, place, handler, kept: step.kept, of }] : [];
    }),
  );
}

function placesOf(visits: readonly Visit[]): Pick<Evidence, 'keptIn' | 'triedIn'> {
  const places = [...groupBy(visits, ({ place }) => place)].toSorted(([, a], [, b]) => b.length - a.length);
  const isMet = (there: readonly Visit[]) => {
    const telling = there.findLast((visit) => verdictOf(visit) !== 'too-few');
    return telling !== undefined && verdictOf(telling) === 'met';
  };
  const names = (met: boolean) => places.filter(([, there]) => isMet(there) === met).map(([place]) => place);
  return { keptIn: names(true), triedIn: names(false) };
}
