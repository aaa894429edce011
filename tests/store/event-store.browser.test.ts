/** The same promises in a real browser, on its own IndexedDB and its own locks. */
import { afterEach, expect, test, vi } from 'vitest';
import type { After } from '../../src/store/database.ts';
import { type EventStore, openEventStore } from '../../src/store/event-store.ts';
import { claimWriter } from '../../src/store/one-writer.ts';
import { persistence, roomLeft } from '../../src/store/persist.ts';
import { DEVICE, firstEvening, kindOf, value } from './event-samples.ts';
import { promisesOf } from './store-contract.ts';

const after: After = (ms, then) => {
  const timer = setTimeout(then, ms);
  return () => clearTimeout(timer);
};

const names: string[] = [];
const stores: EventStore[] = [];

async function open(name: string): Promise<EventStore> {
  const store = await value(openEventStore({ name, after, newId: () => DEVICE }));
  stores.push(store);
  return store;
}

function freshName(): string {
  const name = `test-${crypto.randomUUID()}`;
  names.push(name);
  return name;
}

function remove(name: string): Promise<unknown> {
  const request = indexedDB.deleteDatabase(name);
  return new Promise((resolve, reject) => {
    request.onsuccess = resolve;
    request.onerror = () => reject(request.error);
  });
}

afterEach(async () => {
  for (const store of stores.splice(0)) store.close();
  await Promise.all(names.splice(0).map(remove));
});

promisesOf('in a real browser', () => open(freshName()), 8);

test('a second connection reads what the first one wrote, sounds included', async () => {
  const name = freshName();
  const first = await open(name);
  await value(first.writer());
  for (const event of firstEvening()) await value(first.append([event]));
  const second = await open(name);
  expect(await value(second.all())).toEqual(await value(first.all()));
  expect((await value(second.library())).events[2]?.body).toMatchObject({ samples: Int16Array.of(0, 1, -1, 32767, -32768) });
});

test('of two tabs that write at the same moment one is told, and nothing is lost or doubled', async () => {
  const name = freshName();
  const [first, second] = [await open(name), await open(name)];
  await value(first.writer());
  const [one, ...rest] = firstEvening();
  if (!one) throw new Error('an empty evening');
  const other = { ...one, body: { ...one.body, notes: 'from the other tab' } } as typeof one;
  const kinds = await Promise.all([kindOf(first.append([one])), kindOf(second.append([other]))]);
  expect(kinds.toSorted()).toEqual(['conflict', 'fine']);
  await value(second.append(rest));
  expect((await value(first.all())).events).toHaveLength(1 + rest.length);
});

test('storage emptied under the app is told at the next word, and the log in memory can be merged back', async () => {
  const name = freshName();
  const store = await open(name);
  await value(store.writer());
  const evening = firstEvening();
  await value(store.append(evening.slice(0, 20)));
  await remove(name);
  expect(await kindOf(store.append(evening.slice(20)))).toBe('out-of-turn');
  expect(await value(store.merge(evening))).toEqual({ added: evening.length, known: 0 });
});

test('one tab writes; the next is told, and may when the first is gone', async () => {
  const name = `lock-${crypto.randomUUID()}`;
  let leave = () => {};
  const until = new Promise<void>((resolve) => {
    leave = resolve;
  });
  const lost = vi.fn();
  expect(await claimWriter(name, lost, { until })).toBe('writer');
  expect(await claimWriter(name, lost)).toBe('another-tab');
  leave();
  await vi.waitFor(async () => expect(await claimWriter(name, lost)).toBe('writer'));
  expect(lost).not.toHaveBeenCalled();
  expect(await claimWriter(name, () => {}, { takeOver: true })).toBe('writer');
  await vi.waitFor(() => expect(lost).toHaveBeenCalledOnce());
});

test('the browser tells how much room there is and whether it may clear it', async () => {
  expect(await roomLeft()).toMatchObject({ quotaBytes: expect.any(Number) });
  expect(['kept', 'may-be-cleared']).toContain(await persistence());
});
