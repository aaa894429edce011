/** The only file that touches IndexedDB: its tables, their migrations, opening and reopening, and what its errors mean. */
import { Dexie, type Table, type Transaction } from 'dexie';
import type { StoredEvent } from '../core/event.ts';
import type { Milliseconds } from '../core/units.ts';
import { failure, type Result, type StoreProblem, success } from './problem.ts';
import type { KeptDigest, KeptHead, KeptHeard, KeptTogether, Rows, Shelf } from './shelf.ts';

/** As stored since version 1: one append-only table of events, and the name of this device. */
export interface StoredV1 {
  readonly events: StoredEvent;
  /** `usedUpTo` came later and needs no migration: absent is 0. */
  readonly meta: { readonly key: 'device'; readonly value: string; readonly usedUpTo?: number } | SyncNotes;
}

/** Came later, into the same table, and needs no migration: absent is "not switched on". Never exported. */
interface SyncNotes {
  readonly key: 'sync';
  readonly notes: unknown;
}

/** Since version 2: what is kept of heard words, apart from their sounds, which are few and large. */
interface StoredV2 extends StoredV1 {
  readonly heard: Omit<KeptHeard, 'sound'>;
  readonly sounds: { readonly id: string; readonly atMs: Milliseconds; readonly sound: Int16Array };
}

/** Since version 3: what can be made anew from the events. */
interface StoredV3 extends StoredV2 {
  readonly digests: KeptDigest | KeptTogether;
}

/** Since version 4: likewise. */
interface StoredV4 extends StoredV3 {
  readonly heads: KeptHead;
}

interface Migration {
  readonly version: number;
  readonly stores: Readonly<Record<string, string>>;
  readonly upgrade?: (transaction: Transaction) => PromiseLike<void>;
}

/** Append only: a version that has been out is never edited. Each has its fixture, tests/store/fixtures/v<version>.json. */
export const MIGRATIONS: readonly Migration[] = [
  { version: 1, stores: { events: '&id, session, [device+seq], type', meta: '&key' } },
  { version: 2, stores: { heard: '&id, atMs', sounds: '&id, atMs' } },
  { version: 3, stores: { digests: '&id' } },
  { version: 4, stores: { heads: '&id' } },
];

/** Calls once after so long; returns how to call it off. */
export type After = (ms: Milliseconds, then: () => void) => () => void;

export interface DatabaseOptions {
  readonly name: string;
  readonly after: After;
  /** Whose storage to use; the page's own when left out. */
  readonly from?: { readonly indexedDB: IDBFactory; readonly IDBKeyRange: typeof IDBKeyRange };
}

/** Opening takes some ms, a slow phone a second; private windows of some browsers never answer. */
export const OPEN_WITHIN_MS: Milliseconds = 5_000;
/** A connection that was severed in the background can leave a request without any answer. */
export const ANSWER_WITHIN_MS: Milliseconds = 15_000;

const LATE = Symbol('no answer in time');

/** Opens, and from then on opens again by itself: once for each piece of work whose connection broke. */
export async function openDatabase(options: DatabaseOptions): Promise<Result<Shelf>> {
  let connection = connect(options);
  let closed = false;
  const first = await connection;
  if (!first.ok) return first;

  function reopened(broken: typeof connection): typeof connection {
    // Work that ran at the same time may have reopened already.
    if (connection !== broken) return connection;
    letGo(broken);
    connection = connect(options);
    return connection;
  }

  async function run<T>(
    mode: 'r' | 'rw',
    work: (rows: Rows) => Promise<Result<T>>,
    withinMs: Milliseconds = ANSWER_WITHIN_MS,
  ): Promise<Result<T>> {
    const how = { mode, withinMs, after: options.after };
    if (closed) return failure({ kind: 'severed', cause: 'the store was closed' });
    const before = connection;
    const once = await attempt(await before, work, how);
    if (!once.mayReopen || closed) return once.result;
    return (await attempt(await reopened(before), work, how)).result;
  }

  return success({
    read: (look, withinMs) => run('r', async (rows) => success(await look(rows)), withinMs),
    write: (work, withinMs) => run('rw', work, withinMs),
    close: () => {
      closed = true;
      letGo(connection);
    },
  });
}

function letGo(connection: Promise<Result<Dexie>>): void {
  void connection.then((held) => held.ok && held.value.close());
}

async function connect(options: DatabaseOptions): Promise<Result<Dexie>> {
  const db = define(options);
  let isBlocked = false;
  db.on('blocked', () => {
    isBlocked = true;
    return false;
  });
  // Another tab upgrades or deletes: let go at once; the next piece of work finds out what became of it.
  db.on('versionchange', () => {
    db.close();
    return false;
  });
  try {
    const opened = await within(OPEN_WITHIN_MS, db.open(), options.after);
    if (opened !== LATE && !isNewerThanUs(db)) return success(db);
    db.close();
    if (opened !== LATE) return failure({ kind: 'outdated' });
    return failure(isBlocked ? { kind: 'blocked' } : { kind: 'unavailable', cause: `no answer in ${OPEN_WITHIN_MS} ms` });
  } catch (error) {
    const { problem } = meaningOf(error);
    return failure(problem.kind === 'quota' ? problem : { kind: 'unavailable', cause: causeOf(error) });
  }
}

function define({ name, from }: DatabaseOptions): Dexie {
  // Strict: a rep is safe when the disk has it, also when the battery dies.
  const db = new Dexie(name, { autoOpen: false, cache: 'disabled', chromeTransactionDurability: 'strict', ...from });
  for (const { version, stores, upgrade } of MIGRATIONS) {
    const defined = db.version(version).stores(stores);
    if (upgrade) defined.upgrade(upgrade);
  }
  return db;
}

function isNewerThanUs(db: Dexie): boolean {
  // dexie keeps ten times its version in the browser's number, and opens newer ones without a word.
  return db.backendDB().version >= 10 * ((MIGRATIONS.at(-1)?.version ?? 0) + 1);
}

/** How it went, and whether it is worth another try on a new connection. */
interface Attempt<T> {
  readonly result: Result<T>;
  readonly mayReopen: boolean;
}

async function attempt<T>(
  connected: Result<Dexie>,
  work: (rows: Rows) => Promise<Result<T>>,
  { mode, withinMs, after }: { mode: 'r' | 'rw'; withinMs: Milliseconds; after: After },
): Promise<Attempt<T>> {
  if (!connected.ok) return { result: connected, mayReopen: true };
  const db = connected.value;
  try {
    const done = db.transaction(mode, ['events', 'meta', 'heard', 'sounds', 'digests', 'heads'], () => work(rowsOf(db)));
    const answer = await within(withinMs, done, after);
    if (answer !== LATE) return { result: answer, mayReopen: false };
    return { result: failure({ kind: 'severed', cause: `no answer in ${withinMs} ms` }), mayReopen: true };
  } catch (error) {
    const { problem, mayReopen } = meaningOf(error);
    return { result: failure(problem), mayReopen };
  }
}

function within<T>(ms: Milliseconds, work: PromiseLike<T>, after: After): Promise<T | typeof LATE> {
  return new Promise((resolve, reject) => {
    const callOff = after(ms, () => resolve(LATE));
    work.then(
      (value) => {
        callOff();
        resolve(value);
      },
      (error) => {
        callOff();
        reject(error);
      },
    );
  });
}

function rowsOf(db: Dexie): Rows {
  const events: Table<StoredV4['events'], string> = db.table('events');
  const meta: Table<StoredV4['meta'], string> = db.table('meta');
  const heard: Table<StoredV4['heard'], string> = db.table('heard');
  const sounds: Table<StoredV4['sounds'], string> = db.table('sounds');
  const digests: Table<StoredV4['digests'], string> = db.table('digests');
  const heads: Table<StoredV4['heads'], string> = db.table('heads');
  return {
    device: async () => {
      const kept = await meta.get('device');
      return kept?.key === 'device' ? { name: kept.value, usedUpTo: kept.usedUpTo ?? 0 } : undefined;
    },
    setDevice: ({ name, usedUpTo }) => meta.put({ key: 'device', value: name, usedUpTo }),
    syncNotes: async () => {
      const kept = await meta.get('sync');
      return kept?.key === 'sync' ? kept.notes : undefined;
    },
    setSyncNotes: (notes) => (notes === undefined ? meta.delete('sync') : meta.put({ key: 'sync', notes })),
    lastSeq: async (device) => {
      // Whole numbers only: a damaged record may hold anything that sorts after them.
      const own = events.where('[device+seq]').between([device, 1], [device, Number.MAX_SAFE_INTEGER], true, false);
      return Math.floor((await own.last())?.seq ?? 0);
    },
    get: (ids) => events.bulkGet([...ids]),
    ofSession: (session) => events.where('session').equals(session).toArray(),
    idsOfSession: (session) => events.where('session').equals(session).primaryKeys(),
    idsOfType: (type) => events.where('type').equals(type).primaryKeys(),
    ofTypes: (types) => events.where('type').anyOf(types).toArray(),
    // By the gaps between them: noneOf walks over every row, and a quarter of a million of words take seconds.
    notOfTypes: async (types) => {
      const sorted = types.toSorted();
      const [first = '', ...others] = sorted;
      const gaps = [
        events.where('type').below(first),
        ...others.map((type, nth) => events.where('type').between(sorted[nth], type, false, false)),
        events.where('type').above(sorted.at(-1) ?? first),
      ];
      return (await Promise.all(gaps.map((gap) => gap.toArray()))).flat();
    },
    everything: () => events.toArray(),
    count: () => events.count(),
    add: (added) => events.bulkAdd(added),
    remove: (ids) => events.bulkDelete([...ids]),
    keepHeard: async ({ id, atMs, stretch, sound }) => {
      await heard.put({ id, atMs, stretch });
      if (sound) await sounds.put({ id, atMs, sound });
    },
    heardOf: async (ids) => {
      const kept = await heard.bulkGet([...ids]);
      const said = await sounds.bulkGet([...ids]);
      return kept.flatMap((row, nth) => (row ? [{ ...row, sound: said[nth]?.sound ?? null }] : []));
    },
    removeHeard: async (ids) => {
      await heard.bulkDelete([...ids]);
      await sounds.bulkDelete([...ids]);
    },
    removeHeardBefore: async (atMs) => {
      await heard.where('atMs').below(atMs).delete();
      await sounds.where('atMs').below(atMs).delete();
    },
    removeSounds: () => sounds.clear(),
    countSounds: () => sounds.count(),
    digestsOf: async (sessions) => (await digests.bulkGet([...sessions])).filter((row) => row !== undefined),
    keepDigests: (rows) => digests.bulkPut(rows),
    digestsTogether: (id) => digests.get(id),
    keepDigestsTogether: (row) => digests.put(row),
    removeDigests: () => digests.clear(),
    heads: () => heads.toArray(),
    keepHeads: (rows) => heads.bulkPut(rows),
    removeHeads: (sessions) => heads.bulkDelete([...sessions]),
    removeAllHeads: () => heads.clear(),
  };
}

/** Names under which browsers report a connection that is no more (WebKit in the background, storage cleared, tab frozen). */
const SEVERED = new Set([
  ...['InvalidStateError', 'DatabaseClosedError', 'UnknownError', 'TransactionInactiveError', 'NotFoundError'],
]);

/** What an error means, and whether the work is worth another try on a new connection. */
function meaningOf(error: unknown): { problem: StoreProblem; mayReopen: boolean } {
  const names = namesIn(error);
  const cause = causeOf(error);
  if (names.includes('QuotaExceededError')) return { problem: { kind: 'quota', cause }, mayReopen: false };
  if (names.some((name) => SEVERED.has(name))) return { problem: { kind: 'severed', cause }, mayReopen: true };
  // Nobody here aborts. What remains an abort on a new connection is a full device in disguise (WebKit).
  if (names.includes('AbortError')) return { problem: { kind: 'quota', cause }, mayReopen: true };
  return { problem: { kind: 'unknown', cause }, mayReopen: false };
}

interface Layered {
  readonly name?: string;
  readonly message?: string;
  readonly inner?: unknown;
  readonly failures?: readonly unknown[];
}

/** dexie wraps: one error may hold the browser's inside, or one for each row. */
function namesIn(error: unknown): readonly string[] {
  if (typeof error !== 'object' || !error) return [];
  const { name = '', inner, failures = [] } = error as Layered;
  return [name, ...[inner, ...failures].filter((held) => held !== error).flatMap(namesIn)];
}

function causeOf(error: unknown): string {
  const { name, message } = (error ?? {}) as Layered;
  return name ? `${name}: ${message}` : String(error);
}
