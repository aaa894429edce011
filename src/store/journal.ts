/** A second place for every event, in a database of its own: what the first one has lost is brought back from it. */
import type { EventStore } from './event-store.ts';

export interface Doubled extends EventStore {
  /** Notes in the journal what only the store has: it was kept before there was a journal, or while that was full. How many that were. */
  catchUp(): Promise<number>;
}

/**
 * The store, with every write noted in the journal as well. Only the store's answer counts: a journal that cannot note costs nothing.
 * What is deleted for good must go from both, and is deleted from neither when the journal cannot.
 */
export function withJournal(store: EventStore, journal: Target & Pick<EventStore, 'erase' | 'close'>): Doubled {
  let catching: Promise<unknown> = Promise.resolve();
  return {
    ...store,
    catchUp: () => {
      const caughtUp = fill(journal, store);
      catching = caughtUp;
      return caughtUp;
    },
    append: (events) => {
      // At the same time: a rep that one of the two has is not lost.
      void journal.merge(events);
      return store.append(events);
    },
    merge: async (events) => {
      const merged = await store.merge(events);
      // After it: what was refused must not come back by itself.
      if (merged.ok) void journal.merge(events);
      return merged;
    },
    erase: async (matches) => {
      // What is noted meanwhile would come back.
      await catching;
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

type Source = Pick<EventStore, 'all' | 'count'>;
type Target = Pick<EventStore, 'compare' | 'merge' | 'count'>;

/** Brings back what only the journal has. Returns how many events that were; 0 also when it cannot be read. */
export const recover = (store: Target, journal: Source): Promise<number> => fill(store, journal);

/** Their numbers are compared first: at nearly every start the two are alike, and nothing is read. */
async function fill(target: Target, source: Source): Promise<number> {
  const [there, here] = await Promise.all([source.count(), target.count()]);
  if (!there.ok || !here.ok || there.value <= here.value) return 0;
  const all = await source.all();
  if (!all.ok) return 0;
  const compared = await target.compare(all.value.events);
  if (!compared.ok || compared.value.fresh.length === 0) return 0;
  const merged = await target.merge(compared.value.fresh);
  return merged.ok ? merged.value.added : 0;
}
