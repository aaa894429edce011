/** The journal: the last hours come back when the first place was damaged or deleted, and nothing that was deleted on purpose does. */
import * as fake from 'fake-indexeddb';
import { expect, test } from 'vitest';
import { type EventStore, openEventStore } from '../../src/store/event-store.ts';
import { recover, withJournal, withoutErasing } from '../../src/store/journal.ts';
import { DEVICE, firstEvening, freshDatabase, never, playedSession, value } from './event-samples.ts';

function disk() {
  const from = { indexedDB: new fake.IDBFactory(), IDBKeyRange: fake.IDBKeyRange };
  const open = (name: string) => openEventStore({ name, after: never, from, newId: () => DEVICE });
  const both = async (): Promise<{ store: EventStore; main: EventStore; journal: EventStore }> => {
    const main = await value(open('main'));
    const journal = await value(open('journal'));
    return { store: withJournal(main, journal), main, journal };
  };
  const remove = (name: string) =>
    new Promise<void>((resolve, reject) => {
      const removing = from.indexedDB.deleteDatabase(name);
      removing.onsuccess = () => resolve();
      removing.onerror = () => reject(removing.error);
    });
  return { both, remove };
}

const settled = () => new Promise((ready) => setTimeout(ready, 50));
const evening = firstEvening();

test('the first place is deleted in the evening: next time everything said that evening is there again', async () => {
  const { both, remove } = disk();
  const { store } = await both();
  await value(store.writer());
  await value(store.append(evening));
  await settled();
  store.close();
  await remove('main');
  const again = await both();
  const session = evening.filter((event) => event.session === 'evening');
  // What was saved days before is for the copies.
  expect(await recover(again.main, again.journal)).toBe(session.length);
  expect((await value(again.store.session('evening'))).events).toEqual(session);
  expect(await recover(again.main, again.journal)).toBe(0);
});

test('a whole first place is left as it is', async () => {
  const { both } = disk();
  const { store, main, journal } = await both();
  await value(store.writer());
  await value(store.append(evening));
  await settled();
  expect(await recover(main, journal)).toBe(0);
  expect((await value(store.all())).events).toHaveLength(evening.length);
});

test('what was deleted on purpose does not come back', async () => {
  const { both } = disk();
  const { store, main, journal } = await both();
  await value(store.writer());
  await value(store.append(evening));
  await value(store.erase(({ session }) => session === 'evening'));
  await settled();
  expect(await recover(main, journal)).toBe(0);
  expect((await value(store.sessionHeads())).heads).toEqual([]);
});

test('a journal that cannot be written costs no rep', async () => {
  const main = await value(openEventStore(freshDatabase()));
  const broken = { ok: false, problem: { kind: 'quota', cause: 'full' } } as const;
  const store = withJournal(main, { merge: async () => broken, erase: async () => broken, close: () => {} });
  await value(store.writer());
  await value(store.append(evening));
  expect((await value(main.all())).events).toHaveLength(evening.length);
  expect(await recover(main, { all: async () => broken })).toBe(0);
});

test('what cannot be deleted from the journal is not called deleted: it would come back', async () => {
  const main = await value(openEventStore(freshDatabase()));
  const broken = { ok: false, problem: { kind: 'severed', cause: 'gone' } } as const;
  await value(main.writer());
  await value(main.append(evening));
  for (const store of [
    withJournal(main, { merge: async () => broken, erase: async () => broken, close: () => {} }),
    withoutErasing(main, 'the journal did not open'),
  ]) {
    expect((await store.erase(() => true)).ok).toBe(false);
    expect((await value(main.all())).events).toHaveLength(evening.length);
  }
});

test('the journal stays small: visit after visit, only the last half day is in it', async () => {
  const { both } = disk();
  let seq = 1;
  for (let day = 0; day < 30; day++) {
    const { store, journal } = await both();
    await value(store.writer());
    const at = new Date(Date.UTC(2027, 0, 1 + day, 18)).toISOString();
    const session = playedSession(`day ${day}`, seq).map((event) => ({ ...event, at }));
    seq += session.length;
    for (const event of session) await value(store.append([event]));
    await settled();
    const kept = (await value(journal.all())).events;
    expect(new Set(kept.map((event) => event.session))).toEqual(new Set([`day ${day}`]));
    store.close();
  }
});
