/** Lists sessions without reading them: the head of each is made once and kept beside its events until one more is written. */
import type { SessionEvent, SessionStart, StoredEvent } from '../core/event.ts';
import { inOrder } from '../core/library.ts';
import { standingEvents, writtenInReview } from '../core/standing.ts';
import type { IsoTime } from '../core/units.ts';
import type { Damage } from './problem.ts';
import { sortOut } from './reading.ts';
import type { KeptHead, Rows } from './shelf.ts';

type Started = SessionEvent & { readonly type: 'session-started' };

/** How a session began, without its ladder and what it carried over: these are long, and thousands of heads are held at once. */
export type HeadStart = Omit<Started, 'body'> & { readonly body: Omit<SessionStart, 'steps' | 'carried'> };

/** Enough of a session to list it. */
export interface SessionHead {
  readonly id: string;
  readonly started: HeadStart;
  /** False after a crash, or when the end was taken back: the session can go on. */
  readonly ended: boolean;
  readonly lastAt: IsoTime;
  /** How many events it has. */
  readonly events: number;
}

export interface Heads {
  /** Newest first. */
  readonly heads: readonly SessionHead[];
  readonly damaged: readonly Damage[];
}

/** Counted up when a head holds something else than before, or is made in another way. */
const VERSION = 1;
/** What a head is made of; of the other events only the numbers. */
const HEAD_TYPES = ['session-started', 'session-ended', 'undone', 'corrected'];
/** With so many sessions to read, one reading of every beginning and end is quicker than one for each session. */
const MANY = 100;

/** The heads that are kept, and the beginnings of the sessions that have none. */
export async function keptHeads(rows: Rows): Promise<{ heads: readonly SessionHead[]; unknown: readonly string[] }> {
  const [startIds, kept] = await Promise.all([rows.idsOfType('session-started'), rows.heads()]);
  const byStart = new Map(kept.filter(isKeptHead).map(({ startId, head }) => [startId, head]));
  return {
    heads: startIds.flatMap((id) => byStart.get(id) ?? []),
    unknown: startIds.filter((id) => !byStart.has(id)),
  };
}

/** The heads of the sessions that begin with these events. `whole`: those that may be kept; damage is to be told each time. */
export async function makeHeads(
  rows: Rows,
  startIds: readonly string[],
): Promise<Heads & { readonly whole: readonly KeptHead[] }> {
  const starts = await rows.get(startIds);
  const wanted = [...new Set(starts.flatMap((record) => sessionOf(record) ?? []))];
  const records = wanted.length < MANY ? await eachSession(rows, wanted) : await allAtOnce(rows, wanted);
  const headRecords = [...starts, ...records.flatMap(({ head }) => head)];
  const { events, damaged } = sortOut(withoutTwins(headRecords));
  const reviewed = writtenInReview(events as readonly SessionEvent[]);
  const sessions = bySession(events as readonly SessionEvent[]);
  // A review weeks later does not make the session younger.
  const lasts = records.map(({ ids }) => lastOfEachDevice(ids.filter((id) => !reviewed.has(id))));
  const lastRecords = await rows.get(lasts.flat());
  const last = sortOut(lastRecords);
  const lastAt = new Map(last.events.map((event) => [event.session, event.at]));
  const heads = records.flatMap(({ session, ids }): SessionHead[] => {
    const ends = sessions.get(session) ?? [];
    const started = ends.find((event) => event.type === 'session-started');
    if (!started) return [];
    const ended = standingEvents(ends).some((event) => event.type === 'session-ended');
    return [
      { id: session, started: withoutLadder(started), ended, lastAt: lastAt.get(session) ?? started.at, events: ids.length },
    ];
  });
  const told = [...damaged, ...last.damaged];
  const hurt = told.length === 0 ? new Set() : damagedSessions([...headRecords, ...lastRecords]);
  const whole = heads
    .filter(({ id }) => !hurt.has(id))
    .map((head) => ({ id: head.id, startId: head.started.id, version: VERSION, head }));
  return { heads, damaged: [...new Map(told.map((one) => [one.path, one])).values()], whole };
}

export function newestFirst(heads: readonly SessionHead[]): readonly SessionHead[] {
  const place = new Map(inOrder(heads.map(({ started }) => started)).map((started, nth) => [started.id, nth]));
  return heads.toSorted((a, b) => (place.get(b.started.id) as number) - (place.get(a.started.id) as number));
}

/** The records a head is made of, and the ids of all there are. */
interface SessionRecords {
  readonly session: string;
  readonly head: readonly unknown[];
  readonly ids: readonly string[];
}

async function eachSession(rows: Rows, sessions: readonly string[]): Promise<readonly SessionRecords[]> {
  const read = await Promise.all(sessions.map((session) => rows.ofSession(session)));
  return read.map((records, nth) => ({
    session: sessions[nth] as string,
    head: records.filter((record) => HEAD_TYPES.includes((record as Partial<StoredEvent>).type ?? '')),
    ids: records.map((record) => (record as StoredEvent).id),
  }));
}

async function allAtOnce(rows: Rows, sessions: readonly string[]): Promise<readonly SessionRecords[]> {
  const head = await rows.ofTypes(HEAD_TYPES);
  // All asked at once: one after the other, thousands of sessions take seconds.
  const ids = await Promise.all(sessions.map((session) => rows.idsOfSession(session)));
  const heads = new Map<unknown, unknown[]>();
  for (const record of head) {
    const session = sessionOf(record);
    const others = heads.get(session);
    if (others) others.push(record);
    else heads.set(session, [record]);
  }
  // What names no session is told with the first.
  const stray = heads.get(undefined) ?? [];
  return sessions.map((session, nth) => ({
    session,
    head: [...(heads.get(session) ?? []), ...(nth === 0 ? stray : [])],
    ids: ids[nth] ?? [],
  }));
}

/** A record is told once, though it was read by two ways. */
function withoutTwins(records: readonly unknown[]): readonly unknown[] {
  return [...new Map(records.map((record) => [(record as StoredEvent).id, record])).values()];
}

function damagedSessions(records: readonly unknown[]): ReadonlySet<unknown> {
  return new Set(records.filter((record) => sortOut([record]).damaged.length > 0).map(sessionOf));
}

function sessionOf(record: unknown): string | undefined {
  const { session } = (record ?? {}) as { session?: unknown };
  return typeof session === 'string' ? session : undefined;
}

function withoutLadder({ body: { steps: _, carried: __, ...body }, ...started }: Started): HeadStart {
  return { ...started, body };
}

/** Light: only this version writes them, and they are gone as soon as their session has one event more. */
function isKeptHead(row: unknown): row is KeptHead {
  const { version, startId, head } = (row ?? {}) as Partial<KeptHead>;
  return version === VERSION && typeof startId === 'string' && typeof head?.started?.body?.dogId === 'string';
}

function bySession(events: readonly SessionEvent[]): ReadonlyMap<string, readonly SessionEvent[]> {
  const sessions = new Map<string, SessionEvent[]>();
  for (const event of events) {
    const id = event.session as string;
    const others = sessions.get(id);
    if (others) others.push(event);
    else sessions.set(id, [event]);
  }
  return sessions;
}

/** From ids alone, so that listing sessions does not load them. */
function lastOfEachDevice(ids: readonly string[]): readonly string[] {
  const last = new Map<string, string>();
  for (const id of ids) {
    const device = id.slice(0, id.lastIndexOf(':'));
    const before = last.get(device);
    if (before === undefined || seqIn(id) > seqIn(before)) last.set(device, id);
  }
  return [...last.values()];
}

function seqIn(id: string): number {
  return Number(id.slice(id.lastIndexOf(':') + 1));
}
