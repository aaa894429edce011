/** A second place for the events of the last half day: those that the first one has lost are brought back. */
import type { StoredEvent } from '../core/event.ts';
import type { EventStore } from './event-store.ts';

/** Longer than the longest session with its review, ms. */
const KEPT_FOR_MS = 12 * 3_600_000;

/**
 * The store, with every write noted in the journal as well. Only the store's answer counts: a journal that cannot note costs nothing.
 * What is deleted for good must go from both, and is deleted from neither when the journal cannot.
 */
export function withJournal(store: EventStore, journal: Pick<EventStore, 'merge' | 'erase' | 'close'>): EventStore {
  let isCleared = false;
  const note = (events: readonly StoredEvent[]) => {
    void journal.merge(events);
    const latest = events.at(-1);
    if (isCleared || !latest) return;
    // Once a visit is enough: a visit is a few sessions.
    isCleared = true;
    const oldestMs = Date.parse(latest.at) - KEPT_FOR_MS;
    void journal.erase(({ at }) => Date.parse(at) < oldestMs);
  };
  return {
    ...store,
    append: (events) => {
      note(events);
      return store.append(events);
    },
    erase: async (matches) => {
      const gone = await journal.erase(matches);
      return gone.ok ? store.erase(matches) : gone;
    },
    close: () => {
      store.close();
      journal.close();
    },
  };
}

/** For a visit in which the journal could not be opened: it may still hold what would be deleted. */
export function withoutErasing(store: EventStore, cause: string): EventStore {
  return { ...store, erase: async () => ({ ok: false, problem: { kind: 'unavailable', cause } }) };
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
