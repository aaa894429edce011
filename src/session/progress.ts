/** Gathers what the progress screen folds: a digest of every session, and today. */
import { type Day, dayOf } from '../core/progress/day.ts';
import type { SessionDigest } from '../core/progress/digest.ts';
import { digestsOf } from './digests.ts';
import type { Rooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

/** What the progress screen folds. */
export interface Progress {
  /** Of practice alone: an examination is no training. */
  readonly digests: readonly SessionDigest[];
  readonly exams: readonly SessionDigest[];
  /** Sessions of which no digest can be made; they are said, not hidden. */
  readonly unread: number;
  readonly today: Day;
}

/** Reads what is new since the last time. Null when the store cannot be read (the problem is shown). */
export async function readProgress(rooms: Rooms): Promise<Progress | null> {
  // Those on the screen: to list them anew takes seconds when there are thousands.
  const { heads } = rooms.use.getState();
  const made = await digestsOf(rooms, heads);
  if (!made) return null;
  const all = [...made.values()].flatMap((digest) => digest ?? []);
  return {
    digests: all.filter(({ kind }) => kind !== 'exam'),
    exams: all.filter(({ kind }) => kind === 'exam'),
    unread: made.size - all.length,
    today: dayOf(isoWithOffset(rooms.parts.wall.now())),
  };
}
