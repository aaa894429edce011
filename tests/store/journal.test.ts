/** The journal: the last hours come back when the first place was damaged or deleted, and nothing that was deleted on purpose does. */
import * as fake from 'fake-indexeddb';
import { expect, test } from 'vitest';
import { type EventStore, openEventStore } from '../../src/store/event-store.ts';
import { recover, withJournal } from '../../src/store/journal.ts';
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
  expect(await recover(again.main, again.journal)).toBe(evening.length);
  expect((await value(again.store.all())).events).toHaveLength(evening.length);
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

test('the journal stays small: what is older than half a day goes', async () => {
  const { both } = disk();
  const { store, journal } = await both();
  await value(store.writer());
  await value(store.append(evening));
  const late = playedSession('late', evening.length + 1).map((event) => ({ ...event, at: '2027-01-01T10:00:00.000Z' }));
  // One by one: it is cleared at every hundredth write.
  for (const event of late) await value(store.append([event]));
  for (let seq = 0; seq < 100; seq++) await value(store.append(late.slice(-1)));
  await settled();
  expect((await value(journal.all())).events.every(({ at }) => at.startsWith('2027'))).toBe(true);
});
