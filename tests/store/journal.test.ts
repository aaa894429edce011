/** The journal: all comes back when the first place was damaged or deleted, and nothing that was deleted on purpose does. */
import * as fake from 'fake-indexeddb';
import { expect, test } from 'vitest';
import { type EventStore, openEventStore } from '../../src/store/event-store.ts';
import { type Doubled, recover, withJournal, withoutErasing } from '../../src/store/journal.ts';
import { DEVICE, firstEvening, freshDatabase, never, playedSession, value } from './event-samples.ts';

function disk() {
  const from = { indexedDB: new fake.IDBFactory(), IDBKeyRange: fake.IDBKeyRange };
  const open = (name: string) => openEventStore({ name, after: never, from, newId: () => DEVICE });
  const both = async (): Promise<{ store: Doubled; main: EventStore; journal: EventStore }> => {
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

test('the first place is deleted in the evening: next time all is there again, the taught words and a copy that was added too', async () => {
  const { both, remove } = disk();
  const { store } = await both();
  await value(store.writer());
  await value(store.append(evening));
  const copy = playedSession('of another phone', 1, 'other');
  await value(store.merge(copy));
  await settled();
  const before = await value(store.all());
  store.close();
  await remove('main');
  const again = await both();
  expect(await recover(again.main, again.journal)).toBe(evening.length + copy.length);
  expect(await value(again.store.all())).toEqual(before);
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
  const answer = { ok: false, problem: { kind: 'quota', cause: 'full' } } as const;
  const broken = async () => answer;
  const store = withJournal(main, { merge: broken, erase: broken, compare: broken, count: broken, close: () => {} });
  await value(store.writer());
  await value(store.append(evening));
  expect((await value(main.all())).events).toHaveLength(evening.length);
  expect(await recover(main, { all: broken, count: broken })).toBe(0);
});

test('the first place is deleted while a session runs: what is said after it and what was there before are one log next time', async () => {
  const { both, remove } = disk();
  const { store, main } = await both();
  await value(store.writer());
  await value(store.append(evening.slice(0, -3)));
  await settled();
  await remove('main');
  // As the writer does it: the numbers no longer go on, and a union keeps both.
  expect((await store.append(evening.slice(-3))).ok).toBe(false);
  await value(store.merge(evening.slice(-3)));
  expect((await value(main.all())).events).toHaveLength(3);
  await settled();
  store.close();
  const again = await both();
  expect(await recover(again.main, again.journal)).toBe(evening.length - 3);
  expect((await value(again.main.session('evening'))).events).toEqual(evening.filter(({ session }) => session === 'evening'));
});

test('what was kept before there was a journal is noted in it once, and not again', async () => {
  const { both } = disk();
  const { store, main, journal } = await both();
  await value(main.writer());
  await value(main.append(evening));
  expect(await store.catchUp()).toBe(evening.length);
  expect((await value(journal.all())).events).toEqual((await value(main.all())).events);
  expect(await store.catchUp()).toBe(0);
  expect(await recover(main, journal)).toBe(0);
});

test('a copy that was refused by a full device does not come back by itself', async () => {
  const { both } = disk();
  const { main, journal } = await both();
  const full = { ...main, merge: async () => ({ ok: false, problem: { kind: 'quota', cause: 'full' } }) as const };
  expect((await withJournal(full, journal).merge(evening)).ok).toBe(false);
  await settled();
  expect(await value(journal.count())).toBe(0);
});

test('a start with two alike places reads neither of them', async () => {
  const { both } = disk();
  const { store, main, journal } = await both();
  await value(store.writer());
  await value(store.append(evening));
  await settled();
  const all = () => Promise.reject(new Error('it was read'));
  expect(await recover({ ...main }, { ...journal, all })).toBe(0);
  expect(await withJournal({ ...main, all }, journal).catchUp()).toBe(0);
});

test('what is deleted while the journal catches up stays deleted', async () => {
  const { both } = disk();
  const { store, main, journal } = await both();
  await value(main.writer());
  await value(main.append(evening));
  const caughtUp = store.catchUp();
  await value(store.erase(({ session }) => session === 'evening'));
  await caughtUp;
  await settled();
  expect(await recover(main, journal)).toBe(0);
  expect((await value(journal.all())).events.filter(({ session }) => session === 'evening')).toEqual([]);
});

test('what cannot be deleted from the journal is not called deleted: it would come back', async () => {
  const main = await value(openEventStore(freshDatabase()));
  const broken = async () => ({ ok: false, problem: { kind: 'severed', cause: 'gone' } }) as const;
  await value(main.writer());
  await value(main.append(evening));
  for (const store of [
    withJournal(main, { merge: broken, erase: broken, compare: broken, count: broken, close: () => {} }),
    withoutErasing(main, 'the journal did not open'),
  ]) {
    expect((await store.erase(() => true)).ok).toBe(false);
    expect((await value(main.all())).events).toHaveLength(evening.length);
  }
});
