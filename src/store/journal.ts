/** A second place for the events of the last hours: what a damaged or deleted first one has lost of them is brought back. */
import type { StoredEvent } from '../core/event.ts';
import type { EventStore } from './event-store.ts';

/** Longer than the longest session with its review, ms. */
const KEPT_FOR_MS = 12 * 3_600_000;
/** Old events are cleared after so many writes: often enough to stay small. */
const CLEARED_EVERY = 100;

/** The store, with every write noted in the journal as well. Only the store's answer counts: a journal that fails costs nothing. */
export function withJournal(store: EventStore, journal: Pick<EventStore, 'merge' | 'erase' | 'close'>): EventStore {
  let writes = 0;
  const note = (events: readonly StoredEvent[]) => {
    void journal.merge(events);
    writes++;
    const latest = events.at(-1);
    if (latest && writes % CLEARED_EVERY === 0)
      void journal.erase(({ at }) => Date.parse(at) < Date.parse(latest.at) - KEPT_FOR_MS);
  };
  return {
    ...store,
    append: (events) => {
      note(events);
      return store.append(events);
    },
    // What is deleted for good must not come back from here.
    erase: async (matches) => {
      await journal.erase(matches);
      return store.erase(matches);
    },
    close: () => {
      store.close();
      journal.close();
    },
  };
}

/** Brings back what only the journal has. Returns how many events that were; 0 also when it cannot be read. */
export async function recover(store: Pick<EventStore, 'compare' | 'merge'>, journal: Pick<EventStore, 'all'>): Promise<number> {
  const noted = await journal.all();
  if (!noted.ok || noted.value.events.length === 0) return 0;
  const compared = await store.compare(noted.value.events);
  if (!compared.ok || compared.value.fresh.length === 0) return 0;
  const merged = await store.merge(compared.value.fresh);
  return merged.ok ? merged.value.added : 0;
}
