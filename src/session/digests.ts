/**
 * Hands out digests of sessions: made once, kept in memory for the visit and on the device for the next, and made anew when the
 * session's log has grown. What is kept on the device can be thrown away at any time.
 */
import { isSessionEvent, type SessionEvent } from '../core/event.ts';
import { DIGEST_VERSION, digestLog, type SessionDigest } from '../core/progress/digest.ts';
import { groupBy } from '../core/progress/group.ts';
import type { SessionHead } from '../store/session-heads.ts';
import type { KeptDigest } from '../store/shelf.ts';
import { readLog } from './read-back.ts';
import type { Rooms } from './rooms.ts';

/** With so many sessions to read, and most of all there are, one reading of everything is quicker than one for each. */
const MANY = 20;
/** After so many the screen may draw: some 30 ms of work. */
const BATCH = 100;

/** By session. Null when the store cannot be read (the problem is shown). */
export async function digestsOf(
  rooms: Rooms,
  heads: readonly SessionHead[],
): Promise<ReadonlyMap<string, SessionDigest | null> | null> {
  const { made } = rooms.digested;
  const stale = heads.filter(({ id, events }) => made.get(id)?.events !== events);
  const unknown = await takeKept(rooms, stale);
  for (let from = 0; from < unknown.length; ) {
    const batch = isMost(rooms, unknown) ? unknown : unknown.slice(from, from + BATCH);
    if (!(await makeAll(rooms, batch))) return null;
    from += batch.length;
  }
  return new Map(heads.map(({ id }) => [id, made.get(id)?.digest ?? null]));
}

/** Where the desk's digests are kept together. */
const OF_THE_DESK = 'of the desk';

/** The same, for what is asked for together each time: kept in one row, and kept anew when that has changed. */
export async function digestsOfDesk(
  rooms: Rooms,
  heads: readonly SessionHead[],
): Promise<ReadonlyMap<string, SessionDigest | null> | null> {
  const known = await takeKeptOfDesk(rooms, heads);
  const digests = await digestsOf(rooms, heads);
  const isSame = known.size === heads.length && heads.every((head) => known.get(head.id) === stampOf(head));
  const rows = digests && !isSame ? mayBeKept(rooms, heads) : [];
  if (rows.length > 0) {
    rooms.digested.ofDesk = null;
    void rooms.store.keepDigestsTogether(OF_THE_DESK, rows);
  }
  return digests;
}

/** Takes over the row the desk's digests are kept in, once until the sessions change; returns what each was made of, by session. */
export function takeKeptOfDesk(rooms: Rooms, heads: readonly SessionHead[]): Promise<ReadonlyMap<string, string>> {
  rooms.digested.ofDesk ??= rooms.store.digestsTogether(OF_THE_DESK).then((together) => {
    // Nothing hangs on it: what cannot be read is made.
    const kept = together.ok ? together.value : [];
    takeOver(rooms, heads, kept);
    return new Map(kept.map(({ id, stamp }) => [id, stamp]));
  });
  return rooms.digested.ofDesk;
}

/** What a kept digest must have been made of to be as good as a new one. */
const stampOf = ({ events, lastAt }: SessionHead): string => `${DIGEST_VERSION}/${events}/${lastAt}`;

/** Takes over what is kept on the device; returns what has to be made. */
async function takeKept(rooms: Rooms, stale: readonly SessionHead[]): Promise<readonly SessionHead[]> {
  const { made, putRight } = rooms.digested;
  const asked = stale.filter(({ id }) => !putRight.has(id));
  if (asked.length === 0) return stale;
  const kept = await rooms.store.digests(asked.map(({ id }) => id));
  // Nothing hangs on it: what cannot be read is made.
  takeOver(rooms, asked, kept.ok ? kept.value : []);
  return stale.filter(({ id, events }) => made.get(id)?.events !== events);
}

function takeOver({ digested: { made, putRight } }: Rooms, heads: readonly SessionHead[], kept: readonly KeptDigest[]): void {
  const stamped = new Map(kept.map((row) => [row.id, row]));
  for (const head of heads) {
    const row = stamped.get(head.id);
    if (row?.stamp === stampOf(head) && !putRight.has(head.id)) made.set(head.id, { events: head.events, digest: row.digest });
  }
}

function isMost(rooms: Rooms, unknown: readonly SessionHead[]): boolean {
  return unknown.length > MANY && 2 * unknown.length > rooms.use.getState().heads.length;
}

async function makeAll(rooms: Rooms, heads: readonly SessionHead[]): Promise<boolean> {
  const logs = await readLogs(rooms, heads);
  if (!logs) return false;
  const { made } = rooms.digested;
  for (let from = 0; from < heads.length; from += BATCH) {
    const batch = heads.slice(from, from + BATCH);
    for (const { id, events } of batch) made.set(id, { events, digest: digestLog(logs.get(id) ?? []) });
    keep(rooms, batch);
    if (from + BATCH < heads.length) await new Promise<void>((ready) => rooms.parts.timers.after(0, ready));
  }
  return true;
}

/** For the next visit. */
function keep(rooms: Rooms, heads: readonly SessionHead[]): void {
  const rows = mayBeKept(rooms, heads);
  if (rows.length > 0) void rooms.store.keepDigests(rows);
}

/** Nothing while a log holds what the device does not have yet. */
function mayBeKept(rooms: Rooms, heads: readonly SessionHead[]): readonly KeptDigest[] {
  if (rooms.writer.waiting().length > 0) return [];
  const { made, putRight } = rooms.digested;
  return heads
    .filter(({ id }) => made.has(id) && !putRight.has(id))
    .map((head) => ({ id: head.id, stamp: stampOf(head), digest: made.get(head.id)?.digest ?? null }));
}

async function readLogs(
  rooms: Rooms,
  heads: readonly SessionHead[],
): Promise<ReadonlyMap<string, readonly SessionEvent[]> | null> {
  if (!isMost(rooms, heads)) {
    const logs = await Promise.all(heads.map(async ({ id }) => [id, await readLog(rooms, id)] as const));
    // One that could not be read now may be read the next time: it must not be remembered as one of which nothing can be made.
    return logs.every(hasLog) ? new Map(logs) : null;
  }
  const all = await rooms.store.all();
  if (!all.ok) {
    rooms.use.setState({ writeProblem: all.problem });
    return null;
  }
  return groupBy([...all.value.events, ...rooms.writer.waiting()].filter(isSessionEvent), ({ session }) => session ?? '');
}

function hasLog(read: readonly [string, readonly SessionEvent[] | null]): read is readonly [string, readonly SessionEvent[]] {
  return read[1] !== null;
}
