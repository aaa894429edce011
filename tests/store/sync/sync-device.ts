/** A device for the tests of sync: a store in memory with invented sessions of Pixel, and its way to a server. */
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { type Draft, type LibraryEvent, type StoredEvent, stampEvent } from '../../../src/core/event.ts';
import { type Book, NEW_BOOK } from '../../../src/core/sync/exchange.ts';
import type { EventStore } from '../../../src/store/event-store.ts';
import { createMemoryStore } from '../../../src/store/memory-store.ts';
import { createLock, passphraseKey, type RandomBytes } from '../../../src/store/sync-cipher.ts';
import { type Ran, type RunParts, runExchange } from '../../../src/store/sync-run.ts';
import { reachServer } from '../../../src/store/sync-server.ts';
import { never, playedSession, value } from '../event-samples.ts';

export const randomBytes: RandomBytes = (count) => crypto.getRandomValues(new Uint8Array(count));
/** Enough to be the same work, few enough for a test; the app itself refuses fewer than 600,000. */
export const TEST_ROUNDS = 1_000;

export interface SyncDevice {
  readonly store: EventStore;
  book(): Book;
  ids(): Promise<readonly string[]>;
  /** How often it had to wait. */
  waits(): number;
  sync(how: Reach): Promise<Ran>;
}

export interface Reach {
  readonly url: string;
  readonly database?: string;
  readonly user?: string;
  readonly password?: string;
  readonly passphrase?: string;
  readonly dogId?: string | null;
  readonly chance?: () => number;
  readonly more?: Partial<RunParts>;
  readonly fetch?: (url: string, init: RequestInit) => Promise<Response>;
}

/** A dog, a plan and so many events of sessions. */
export function inventedEvents(device: string, count: number): readonly StoredEvent[] {
  const drafts: Draft<LibraryEvent>[] = [
    { type: 'dog-saved', body: DEMO_DOG },
    { type: 'plan-saved', body: DEMO_PLAN },
    { type: 'handler-saved', body: { id: 'demo handler', name: 'Noor', archived: false } },
  ];
  const events: StoredEvent[] = drafts.map((draft, nth) => {
    const stamp = { device, seq: nth + 1, session: null, at: '2026-03-02T17:59:00.000+01:00', monoMs: 0 };
    return stampEvent(draft, stamp).event;
  });
  for (let n = 1; events.length < count; n++) events.push(...playedSession(`${device}-${n}`, events.length + 1, device));
  return events.slice(0, count);
}

export async function syncDevice(name: string, events: readonly StoredEvent[] = []): Promise<SyncDevice> {
  const store = createMemoryStore({ newId: () => name, records: events });
  await store.writer();
  let book = NEW_BOOK;
  let waits = 0;
  return {
    store,
    book: () => book,
    ids: async () => (await value(store.all())).events.map(({ id }) => id).toSorted(),
    waits: () => waits,
    sync: async ({
      url,
      database = 'pixel',
      user = 'anna',
      password = 'pa',
      passphrase = 'sprats',
      dogId = DEMO_DOG.id,
      ...rest
    }) => {
      const { heads } = await value(store.sessionHeads());
      const { chance = () => 0.5, more = {}, fetch = globalThis.fetch } = rest;
      const ran = await runExchange(book, {
        ...{ store, as: `as ${name}`, dogId, randomBytes, chance },
        database: reachServer({ fetch, after: never, address: `${url}/`, user, password }).database(database),
        lock: createLock(await passphraseKey(passphrase), randomBytes, TEST_ROUNDS),
        onArrived: () => {},
        sessionsOf: (dog) =>
          heads.filter(({ started }) => started.body.dogId === dog).map(({ id, started: { body } }) => ({ ...body, id })),
        keepBook: async (next) => {
          book = next;
          return { ok: true, value: undefined };
        },
        sleep: async () => {
          waits += 1;
          return true;
        },
        mayGoOn: async () => true,
        onOwnNumbersUsed: () => store.rename(`${name} again`),
        ...more,
      });
      book = ran.book;
      return ran;
    },
  };
}
