/** Keeps a digest of every session in memory for the progress screen: each is made once, and anew when its log has grown. */
import { isSessionEvent, type SessionEvent } from '../core/event.ts';
import { type Day, dayOf } from '../core/progress/day.ts';
import { digestLog, type SessionDigest } from '../core/progress/digest.ts';
import { groupBy } from '../core/progress/group.ts';
import { readLog } from './read-back.ts';
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

/** A digest and how many events it was made of; null: none could be made. */
interface Made {
  readonly events: number;
  readonly digest: SessionDigest | null;
}

/** With so many sessions to read, one reading of everything is quicker than one for each. */
const MANY = 20;
/** After so many the screen may draw: some 30 ms of work. */
const BATCH = 100;

const madeFor = new WeakMap<Rooms, Map<string, Made>>();

/** Reads what is new since the last time. Null when the store cannot be read (the problem is shown). */
export async function readProgress(rooms: Rooms): Promise<Progress | null> {
  const made = madeOf(rooms);
  // Those on the screen: to list them anew takes seconds when there are thousands.
  const { heads } = rooms.use.getState();
  const kept = new Set(heads.map(({ id }) => id));
  for (const id of made.keys()) if (!kept.has(id)) made.delete(id);
  const stale = heads.filter(({ id, events }) => made.get(id)?.events !== events);
  const logs = await readLogs(
    rooms,
    stale.map(({ id }) => id),
  );
  if (!logs) return null;
  for (const [nth, { id, events }] of stale.entries()) {
    if (nth % BATCH === BATCH - 1) await new Promise<void>((ready) => rooms.parts.timers.after(0, ready));
    made.set(id, { events, digest: digestLog(logs.get(id) ?? []) });
  }
  const all = [...made.values()].flatMap(({ digest }) => digest ?? []);
  return {
    digests: all.filter(({ kind }) => kind !== 'exam'),
    exams: all.filter(({ kind }) => kind === 'exam'),
    unread: made.size - all.length,
    today: dayOf(isoWithOffset(rooms.parts.wall.now())),
  };
}

function madeOf(rooms: Rooms): Map<string, Made> {
  const known = madeFor.get(rooms);
  if (known) return known;
  const made = new Map<string, Made>();
  madeFor.set(rooms, made);
  // A review may have put its session right, and the list of sessions does not count that.
  rooms.use.subscribe(({ reviewed }, before) => {
    if (reviewed && reviewed !== before.reviewed) made.delete(reviewed.sessionId);
  });
  return made;
}

async function readLogs(rooms: Rooms, ids: readonly string[]): Promise<ReadonlyMap<string, readonly SessionEvent[]> | null> {
  if (ids.length <= MANY) {
    const logs = await Promise.all(ids.map((id) => readLog(rooms, id)));
    // One that could not be read now may be read the next time: it must not be remembered as one of which nothing can be made.
    return logs.every((log) => log !== null) ? new Map(logs.map((log, nth) => [ids[nth] ?? '', log])) : null;
  }
  const all = await rooms.store.all();
  if (!all.ok) {
    rooms.use.setState({ writeProblem: all.problem });
    return null;
  }
  return groupBy([...all.value.events, ...rooms.writer.waiting()].filter(isSessionEvent), ({ session }) => session ?? '');
}
