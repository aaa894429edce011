/** Says what is known of one step: the counts of its latest sessions, on how many days, where and when, and whether it is kept for good. */
import type { Day } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { type Standing, standingOf, type Visit } from '../progress/mastery.ts';

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
  /** Every place where it was ever tried, the most used first. */
  readonly places: readonly string[];
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
    places: placesOf(visits),
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

function placesOf(visits: readonly Visit[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { place } of visits) counts.set(place, (counts.get(place) ?? 0) + 1);
  return [...counts].toSorted(([, a], [, b]) => b - a).map(([place]) => place);
}
