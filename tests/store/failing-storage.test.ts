/** Storage that fails as phones make it fail: full, severed, silent, switched off, held by another tab, emptied under the app. */
import * as fake from 'fake-indexeddb';
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { StoredEvent } from '../../src/core/event.ts';
import { type After, ANSWER_WITHIN_MS, MIGRATIONS, OPEN_WITHIN_MS } from '../../src/store/database.ts';
import { type EventStore, openEventStore } from '../../src/store/event-store.ts';
import { DEVICE, firstEvening, freshDatabase, kindOf, playedSession, value } from './event-samples.ts';

const session = playedSession('s');
const before = session.slice(0, 4);
const next = session.slice(4, 9);

afterEach(() => {
  vi.restoreAllMocks();
});

async function storeWith(events: readonly StoredEvent[] = before, options = freshDatabase()): Promise<EventStore> {
  const store = await value(openEventStore(options));
  await value(store.writer());
  await value(store.append(events));
  return store;
}

/** Makes the n-th record that is written from now on do something else first. */
function atRecord(nth: number, misbehave: (table: IDBObjectStore) => void, times = 1): void {
  const realAdd = fake.IDBObjectStore.prototype.add;
  let count = 0;
  vi.spyOn(fake.IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...record) {
    count += 1;
    if (count >= nth && count < nth + times) misbehave(this);
    return realAdd.apply(this, record);
  });
}

const throwing = (name: string) => () => {
  throw new DOMException('simulated', name);
};

const counted = (method: 'open') => vi.spyOn(fake.IDBFactory.prototype, method);

/** Lets transactions of so many records run to their end and break there, as a full disk does. */
function breakAtEnd(records: number, times: number): void {
  const realAdd = fake.IDBObjectStore.prototype.add;
  let count = 0;
  vi.spyOn(fake.IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...record) {
    const request = realAdd.apply(this, record);
    count += 1;
    if (count % records === 0 && count <= records * times) request.addEventListener('success', () => this.transaction.abort());
    return request;
  });
}

/** The connections in use, latest last. */
function watchedConnections(): readonly IDBDatabase[] {
  const connections: IDBDatabase[] = [];
  const realTransaction = fake.IDBDatabase.prototype.transaction;
  vi.spyOn(fake.IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...wanted) {
    connections.push(this);
    return realTransaction.apply(this, wanted);
  });
  return connections;
}

/** Waits of this length are over after so long; other waits never end. */
const shortened =
  (lengthMs: number, toMs: number): After =>
  (ms, then) => {
    if (ms === lengthMs) setTimeout(then, toMs);
    return () => {};
  };

/** Waits of this length are over before anything can answer. */
const overAtOnce =
  (lengthMs: number): After =>
  (ms, then) => {
    if (ms === lengthMs) queueMicrotask(then);
    return () => {};
  };

test('a phone that cannot keep the heads of sessions lists them all the same', async () => {
  const store = await storeWith(session);
  const realPut = fake.IDBObjectStore.prototype.put;
  vi.spyOn(fake.IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...record) {
    if (this.name === 'heads') throw new DOMException('simulated', 'QuotaExceededError');
    return realPut.apply(this, record);
  });
  expect((await value(store.sessionHeads())).heads.map(({ id, events }) => [id, events])).toEqual([['s', session.length]]);
});

describe('a full phone', () => {
  test('is told, and of that moment nothing is kept by halves', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: next.length }), async (nth) => {
        const store = await storeWith();
        atRecord(nth, throwing('QuotaExceededError'));
        expect(await kindOf(store.append(next))).toBe('quota');
        vi.restoreAllMocks();
        expect((await value(store.session('s'))).events).toEqual(before);
        await value(store.append(next));
        expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
      }),
      { seed: 20260302, numRuns: 10 },
    );
  });

  test('that fills up in the middle of a copy that is added keeps nothing of it', async () => {
    const copy = playedSession('copied', 1, 'other');
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: copy.length }), async (nth) => {
        const store = await storeWith();
        atRecord(nth, throwing('QuotaExceededError'));
        expect(await kindOf(store.merge(copy))).toBe('quota');
        vi.restoreAllMocks();
        expect((await value(store.all())).events).toEqual(before);
        expect(await value(store.merge(copy))).toEqual({ added: copy.length, known: 0 });
      }),
      { seed: 20260302, numRuns: 10 },
    );
  });

  test('that only says "aborted" is told as full, after one more try on a new connection', async () => {
    const store = await storeWith();
    const opens = counted('open');
    breakAtEnd(next.length, 2);
    expect(await kindOf(store.append(next))).toBe('quota');
    expect(opens).toHaveBeenCalledTimes(1);
    expect((await value(store.session('s'))).events).toEqual(before);
    await value(store.append(next));
    expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
  });

  test('that aborted by chance keeps the words at the second try', async () => {
    const store = await storeWith();
    breakAtEnd(next.length, 1);
    await value(store.append(next));
    expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
  });
});

describe('a connection that the phone cut in the background', () => {
  test.each(['UnknownError', 'InvalidStateError', 'TransactionInactiveError'])('is opened again: %s', async (name) => {
    const store = await storeWith();
    const opens = counted('open');
    atRecord(3, throwing(name));
    await value(store.append(next));
    expect(opens).toHaveBeenCalledTimes(1);
    expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
  });

  test('is told when it breaks again, and the store recovers by itself later', async () => {
    const store = await storeWith();
    atRecord(1, throwing('UnknownError'), 2);
    expect(await kindOf(store.append(next))).toBe('severed');
    expect((await value(store.session('s'))).events).toEqual(before);
    await value(store.append(next));
    expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
  });

  test('and closed without a word does not cost the next word', async () => {
    const connections = watchedConnections();
    const store = await storeWith();
    fake.forceCloseDatabase(connections.at(-1) as never);
    await value(store.append(next));
    expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
  });

  test('opens once more only, for all the words that were waiting', async () => {
    const store = await storeWith();
    const opens = counted('open');
    atRecord(1, throwing('UnknownError'));
    const results = await Promise.all(next.map((event) => kindOf(store.append([event]))));
    expect(results).toEqual(next.map(() => 'fine'));
    expect(opens).toHaveBeenCalledTimes(1);
  });
});

test('a word whose answer never came is not kept twice when it is sent again', async () => {
  const options = freshDatabase();
  const store = await storeWith(before, options);
  const hasty = await value(openEventStore({ ...options, after: overAtOnce(ANSWER_WITHIN_MS) }));
  expect(await kindOf(hasty.append(next))).toBe('severed');
  await vi.waitFor(async () => expect((await value(store.session('s'))).events).toHaveLength(before.length + next.length));
  await value(store.append(next));
  expect((await value(store.session('s'))).events).toEqual([...before, ...next]);
});

test('a review, a list and a word that find the connection cut at once open one new connection', async () => {
  const connections = watchedConnections();
  const store = await storeWith();
  const opens = counted('open');
  fake.forceCloseDatabase(connections.at(-1) as never);
  const kinds = await Promise.all([store.session('s'), store.sessionHeads(), store.append(next)].map(kindOf));
  expect(kinds).toEqual(['fine', 'fine', 'fine']);
  expect(opens).toHaveBeenCalledTimes(1);
});

describe('no storage at all', () => {
  test('in a private window that never answers', async () => {
    const indexedDB = { open: () => ({}) } as unknown as IDBFactory;
    const options = {
      ...freshDatabase(),
      from: { indexedDB, IDBKeyRange: fake.IDBKeyRange },
      after: shortened(OPEN_WITHIN_MS, 50),
    };
    expect(await openEventStore(options)).toMatchObject({ problem: { kind: 'unavailable', cause: 'no answer in 5000 ms' } });
  });

  test('where the browser forbids it', async () => {
    const indexedDB = { open: throwing('SecurityError') } as unknown as IDBFactory;
    const options = { ...freshDatabase(), from: { indexedDB, IDBKeyRange: fake.IDBKeyRange } };
    expect(await openEventStore(options)).toMatchObject({ problem: { kind: 'unavailable', cause: /SecurityError/ } });
  });

  test('where the browser has none', async () => {
    const from = { indexedDB: undefined as unknown as IDBFactory, IDBKeyRange: fake.IDBKeyRange };
    expect(await openEventStore({ ...freshDatabase(), from })).toMatchObject({ problem: { kind: 'unavailable' } });
  });
});

/** Opens the storage as another tab would, past the store. */
function anotherTab(options: ReturnType<typeof freshDatabase>, version: number): Promise<IDBDatabase> {
  const request = (options.from as { indexedDB: IDBFactory }).indexedDB.open(options.name, version);
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

describe('a record that went bad in storage', () => {
  test.each([['no number'], [Number.POSITIVE_INFINITY], [undefined], [5.5]])(
    'its number now %s: it is told, the rest is whole, writing goes on',
    async (seq) => {
      const options = freshDatabase();
      const store = await storeWith(session.slice(0, 5), options);
      const tab = await anotherTab(options, 10 * MIGRATIONS.length);
      const transaction = tab.transaction('events', 'readwrite');
      const bad = { ...session[4], seq };
      transaction.objectStore('events').put(bad);
      await new Promise((resolve) => {
        transaction.oncomplete = resolve;
      });
      expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: 6 });
      await value(store.append(session.slice(5, 9)));
      const { events, damaged } = await value(store.session('s'));
      expect(events).toEqual([...before, ...session.slice(5, 9)]);
      expect(damaged).toMatchObject([{ expected: 'a whole number of at least 1', record: bad }]);
    },
  );
});

describe('another tab', () => {
  test('of an older version that will not let go is told as blocking', async () => {
    const options = freshDatabase();
    await anotherTab(options, 1);
    expect(await openEventStore({ ...options, after: shortened(OPEN_WITHIN_MS, 50) })).toEqual({
      ok: false,
      problem: { kind: 'blocked' },
    });
  });

  test('of a newer version is let through at once; this one is told to reload', async () => {
    const options = freshDatabase();
    const store = await storeWith(before, options);
    const newer = await anotherTab(options, 10 * (MIGRATIONS.length + 1));
    newer.close();
    expect(await kindOf(store.append(next))).toBe('outdated');
    expect(await kindOf(openEventStore(options))).toBe('outdated');
  });

  test('that wrote first makes this one out of turn, and the turn can be asked anew', async () => {
    const options = freshDatabase();
    const store = await storeWith(before, options);
    const other = await value(openEventStore(options));
    await value(other.append(next));
    expect(await kindOf(store.append(session.slice(10, 12)))).toBe('out-of-turn');
    expect(await value(store.writer())).toEqual({ device: DEVICE, nextSeq: 10 });
  });

  test('that empties the storage does not take what is on the screen: the log in memory is merged back', async () => {
    const options = {
      ...freshDatabase(),
      newId: vi
        .fn(() => DEVICE)
        .mockReturnValueOnce(DEVICE)
        .mockReturnValue('dev-new'),
    };
    const evening = firstEvening();
    const store = await storeWith(evening, options);
    const emptied = (options.from as { indexedDB: IDBFactory }).indexedDB.deleteDatabase(options.name);
    await new Promise((resolve) => {
      emptied.onsuccess = resolve;
    });
    const further = {
      ...evening.at(-1),
      id: `${DEVICE}:${evening.length + 1}`,
      seq: evening.length + 1,
    } as StoredEvent;
    expect(await store.append([further])).toMatchObject({ problem: { kind: 'out-of-turn', device: '', nextSeq: 1 } });
    expect(await value(store.writer())).toEqual({ device: 'dev-new', nextSeq: 1 });
    expect(await value(store.merge(evening))).toEqual({ added: evening.length, known: 0 });
  });
});
