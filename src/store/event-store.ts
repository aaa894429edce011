/** Keeps events for good: appends in turn, reads back checked. The same on a database and in memory. */
import type { LibraryEvent, SessionEvent, StoredEvent } from '../core/event.ts';
import type { Milliseconds } from '../core/units.ts';
import { type DatabaseOptions, openDatabase } from './database.ts';
import { failure, type Result, success } from './problem.ts';
import { type Reading, sortOut } from './reading.ts';
import { checkEvent, isStretch, SESSION_TYPES } from './record-check.ts';
import { sameContent } from './same-content.ts';
import { type Heads, keptHeads, makeHeads, newestFirst } from './session-heads.ts';
import type { Device, KeptDigest, KeptHeard, Rows, Shelf } from './shelf.ts';

export interface EventStore {
  /** Who writes here, and the number of the next event. */
  writer(): Promise<Result<{ device: string; nextSeq: number }>>;
  /**
   * All or nothing, in one transaction that also checks that the numbers go on where this device stopped.
   * Events that are kept already with the same content are passed over: appending again is safe.
   */
  append(events: readonly StoredEvent[]): Promise<Result<void>>;
  /** Union with events of any device, as from an export: what is new is added, what is known stays, a conflict refuses all. */
  merge(events: readonly StoredEvent[]): Promise<Result<{ added: number; known: number }>>;
  /** Looks how events of any device stand to what is kept; writes nothing. */
  compare(events: readonly StoredEvent[]): Promise<Result<Compared>>;
  /** Deletes for good what `matches` picks, in one transaction. Its numbers are never used again. */
  erase(matches: (event: StoredEvent) => boolean): Promise<Result<{ erased: number }>>;
  /** Beside the event of this id, for a month: what can be learnt from. No event depends on it. */
  keepHeard(heard: KeptHeard): Promise<Result<void>>;
  heard(ids: readonly string[]): Promise<Result<readonly KeptHeard[]>>;
  /** Deletes what is kept of words that were heard before that moment. */
  forgetHeardBefore(atMs: Milliseconds): Promise<Result<void>>;
  forgetSounds(): Promise<Result<void>>;
  countSounds(): Promise<Result<number>>;
  /** Digests kept for these sessions, in any order; those without one are left out. */
  digests(sessions: readonly string[]): Promise<Result<readonly KeptDigest[]>>;
  /** In place of those kept for the same sessions. Nothing hangs on them. */
  keepDigests(digests: readonly KeptDigest[]): Promise<Result<void>>;
  /** The same, kept in one row under a name of its own: read at once, written at once. */
  digestsTogether(id: string): Promise<Result<readonly KeptDigest[]>>;
  keepDigestsTogether(id: string, digests: readonly KeptDigest[]): Promise<Result<void>>;
  session(id: string): Promise<Result<Reading<SessionEvent>>>;
  /** Newest first. */
  sessionHeads(): Promise<Result<Heads>>;
  library(): Promise<Result<Reading<LibraryEvent>>>;
  /** How many events there are, damaged ones too: quick, however many. */
  count(): Promise<Result<number>>;
  /** Ids of all events of these sessions. */
  idsOf(sessions: readonly string[]): Promise<Result<readonly string[]>>;
  /** Those of these that are kept. */
  pick(ids: readonly string[]): Promise<Result<Reading<StoredEvent>>>;
  /** What sync remembers on this device: never exported, gone when it is switched off. Undefined: nothing. */
  syncNotes(): Promise<Result<unknown>>;
  keepSyncNotes(notes: unknown): Promise<Result<void>>;
  /** From now on this device writes under another name: the old one turned out to be used elsewhere too. */
  rename(name: string): Promise<Result<{ device: string; nextSeq: number }>>;
  /** Every event, for export. The only reading that finds a record whose very session or type is damaged. */
  all(): Promise<Result<Reading<StoredEvent>>>;
  close(): void;
}

export interface Compared {
  readonly fresh: readonly StoredEvent[];
  readonly known: number;
  readonly conflicts: readonly { readonly id: string; readonly kept: unknown; readonly offered: StoredEvent }[];
}

/** Opens the store on this device's database. */
export async function openEventStore(options: DatabaseOptions & { newId: () => string }): Promise<Result<EventStore>> {
  const shelf = await openDatabase(options);
  return shelf.ok ? success(createEventStore(shelf.value, options.newId)) : shelf;
}

/** What looks at everything may take minutes on a slow phone; an answer that is called late may still have been written. */
const ALL_WITHIN_MS: Milliseconds = 180_000;
/** From so many events on a piece of work counts as everything. */
const MANY = 1_000;

const allWithinMs = (events: number): Milliseconds | undefined => (events < MANY ? undefined : ALL_WITHIN_MS);

export function createEventStore(shelf: Shelf, newId: () => string): EventStore {
  let lastWrite: Promise<unknown> = Promise.resolve();
  // One after the other: a write that is tried again must not be overtaken by the next.
  function write<T>(work: (rows: Rows) => Promise<Result<T>>, withinMs?: Milliseconds): Promise<Result<T>> {
    const written = lastWrite.then(() => shelf.write(work, withinMs));
    lastWrite = written;
    return written;
  }
  return {
    writer: () => write(async (rows) => success(await turnOf(rows, newId))),
    append: (events) => write((rows) => append(rows, events)),
    merge: (events) => write((rows) => merge(rows, events), allWithinMs(events.length)),
    compare: (events) =>
      shelf.read(async (rows) => compared(await rows.get(events.map(({ id }) => id)), events), allWithinMs(events.length)),
    erase: (matches) => write((rows) => erase(rows, matches), ALL_WITHIN_MS),
    keepHeard: (heard) => write((rows) => done(rows.keepHeard(heard))),
    // What another version kept in another shape teaches nothing; its event is whole all the same.
    heard: (ids) => shelf.read(async (rows) => (await rows.heardOf(ids)).filter(isKeptHeard)),
    forgetHeardBefore: (atMs) => write((rows) => done(rows.removeHeardBefore(atMs))),
    forgetSounds: () => write((rows) => done(rows.removeSounds())),
    countSounds: () => shelf.read((rows) => rows.countSounds()),
    digests: (sessions) => shelf.read(async (rows) => (await rows.digestsOf(sessions)).filter(isKeptDigest)),
    keepDigests: (digests) => write((rows) => done(rows.keepDigests(digests))),
    digestsTogether: (id) =>
      shelf.read(async (rows) => {
        const { together } = ((await rows.digestsTogether(id)) ?? {}) as { together?: unknown };
        return Array.isArray(together) ? together.filter(isKeptDigest) : [];
      }),
    keepDigestsTogether: (id, together) => write((rows) => done(rows.keepDigestsTogether({ id, together }))),
    session: (id) => shelf.read(async (rows) => sortOut(await rows.ofSession(id)) as Reading<SessionEvent>),
    sessionHeads: async () => {
      const kept = await shelf.read(keptHeads, ALL_WITHIN_MS);
      if (!kept.ok) return kept;
      const { heads, unknown } = kept.value;
      const make = (rows: Rows) => makeHeads(rows, unknown);
      // Made and kept in one transaction: no event comes between. A device that is full lists its sessions all the same.
      const written =
        unknown.length === 0 ? success(NO_HEADS) : await write(async (rows) => keepMade(rows, await make(rows)), ALL_WITHIN_MS);
      const made = written.ok ? written : await shelf.read(make, ALL_WITHIN_MS);
      return made.ok ? success({ heads: newestFirst([...heads, ...made.value.heads]), damaged: made.value.damaged }) : made;
    },
    library: () => shelf.read(readLibrary),
    count: () => shelf.read((rows) => rows.count()),
    idsOf: (sessions) =>
      shelf.read(async (rows) => (await Promise.all(sessions.map((id) => rows.idsOfSession(id)))).flat(), ALL_WITHIN_MS),
    pick: (ids) => shelf.read(async (rows) => sortOut((await rows.get(ids)).filter((record) => record !== undefined))),
    syncNotes: () => shelf.read((rows) => rows.syncNotes()),
    keepSyncNotes: (notes) => write((rows) => done(rows.setSyncNotes(notes))),
    rename: (name) =>
      write(async (rows) => {
        await rows.setDevice({ name, usedUpTo: 0 });
        return success(await turnOf(rows, newId));
      }),
    all: () => shelf.read(async (rows) => sortOut(await rows.everything()), ALL_WITHIN_MS),
    close: shelf.close,
  };
}

const NO_HEADS: Heads = { heads: [], damaged: [] };

async function keepMade(rows: Rows, { whole, ...made }: Awaited<ReturnType<typeof makeHeads>>): Promise<Result<Heads>> {
  await rows.keepHeads(whole);
  return success(made);
}

async function done(work: Promise<unknown>): Promise<Result<void>> {
  await work;
  return success(undefined);
}

function isKeptHeard(row: unknown): row is KeptHeard {
  return isStretch((row as Partial<KeptHeard> | null)?.stretch);
}

/** Light: the stamp names the version that made it, and a digest that cannot be read is made anew. */
function isKeptDigest(row: unknown): row is KeptDigest {
  const { id, stamp, digest } = (row ?? {}) as Partial<KeptDigest>;
  return typeof id === 'string' && typeof stamp === 'string' && (digest === null || Array.isArray(digest?.steps));
}

async function turnOf(rows: Rows, newId: () => string): Promise<{ device: string; nextSeq: number }> {
  const known = await rows.device();
  const device = known ?? { name: newId(), usedUpTo: 0 };
  if (known === undefined) await rows.setDevice(device);
  return { device: device.name, nextSeq: await nextSeqOf(rows, device) };
}

/** Steps over a name that is taken by a record whose number is damaged: one bad record must not stop all writing. */
async function nextSeqOf(rows: Rows, { name, usedUpTo }: Device): Promise<number> {
  let seq = Math.max(await rows.lastSeq(name), usedUpTo) + 1;
  while ((await rows.get([`${name}:${seq}`]))[0] !== undefined) seq += 1;
  return seq;
}

async function append(rows: Rows, events: readonly StoredEvent[]): Promise<Result<void>> {
  const fresh = await withoutKnown(rows, events);
  if (!fresh.ok) return fresh;
  const turn = (await rows.device()) ?? { name: '', usedUpTo: 0 };
  const device = turn.name;
  const nextSeq = await nextSeqOf(rows, turn);
  const stray = fresh.value.find((event, nth) => event.device !== device || event.seq !== nextSeq + nth || !isNamedRight(event));
  if (stray) return failure({ kind: 'out-of-turn', device, nextSeq, got: stray.id });
  await add(rows, fresh.value);
  return success(undefined);
}

/** The heads of their sessions are no longer right. */
async function add(rows: Rows, fresh: readonly StoredEvent[]): Promise<void> {
  await rows.removeHeads([...new Set(fresh.flatMap(({ session }) => session ?? []))]);
  await rows.add(fresh);
}

// Only the name is checked on the way in: a body that a reader would refuse is better kept and told than lost.
function isNamedRight({ id, device, seq }: StoredEvent): boolean {
  return id === `${device}:${seq}`;
}

async function merge(rows: Rows, events: readonly StoredEvent[]): Promise<Result<{ added: number; known: number }>> {
  const damaged = events.flatMap((event) => {
    const checked = checkEvent(event);
    return checked.ok ? [] : [checked.damage];
  });
  if (damaged.length > 0) return failure({ kind: 'damaged', damaged });
  const fresh = await withoutKnown(rows, events);
  if (!fresh.ok) return fresh;
  await add(rows, fresh.value);
  return success({ added: fresh.value.length, known: events.length - fresh.value.length });
}

/** The events that are not kept yet, each once; a conflict when one is kept with other content. */
async function withoutKnown(rows: Rows, events: readonly StoredEvent[]): Promise<Result<readonly StoredEvent[]>> {
  const { fresh, conflicts } = compared(await rows.get(events.map(({ id }) => id)), events);
  const [first] = conflicts;
  return first ? failure({ kind: 'conflict', ...first }) : success(fresh);
}

/** Not async: dexie loses its transaction behind one promise too many. `kept`: what stands under the id of each event, in their order. */
function compared(kept: readonly unknown[], events: readonly StoredEvent[]): Compared {
  const fresh = new Map<string, StoredEvent>();
  const conflicts: { id: string; kept: unknown; offered: StoredEvent }[] = [];
  for (const [nth, offered] of events.entries()) {
    const same = kept[nth] ?? fresh.get(offered.id);
    if (same === undefined) fresh.set(offered.id, offered);
    else if (!sameContent(same, offered)) conflicts.push({ id: offered.id, kept: same, offered });
  }
  return { fresh: [...fresh.values()], known: events.length - fresh.size - conflicts.length, conflicts };
}

async function erase(rows: Rows, matches: (event: StoredEvent) => boolean): Promise<Result<{ erased: number }>> {
  const ids = (await rows.everything()).flatMap((record) => {
    const { id } = (record ?? {}) as { id?: unknown };
    return typeof id === 'string' && matches(record as StoredEvent) ? [id] : [];
  });
  const device = await rows.device();
  // A copy made earlier still holds these numbers: used again they would mean two things.
  if (device) await rows.setDevice({ ...device, usedUpTo: (await nextSeqOf(rows, device)) - 1 });
  await rows.remove(ids);
  await rows.removeHeard(ids);
  // All of them: what came back from a copy later could look like what a digest was made of.
  await rows.removeDigests();
  await rows.removeAllHeads();
  return success({ erased: ids.length });
}

async function readLibrary(rows: Rows): Promise<Reading<LibraryEvent>> {
  // By what they are not: a type that this version does not know must be told, not passed over.
  const records = await rows.notOfTypes(SESSION_TYPES);
  return sortOut(records.filter((record) => (record as StoredEvent).session === null)) as Reading<LibraryEvent>;
}
