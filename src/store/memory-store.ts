/** The event store "for this visit only": a private window, a browser without storage, a test. Gone with the page. */
import type { StoredEvent } from '../core/event.ts';
import { createEventStore, type EventStore } from './event-store.ts';
import { failure, success } from './problem.ts';
import type { Device, KeptDigest, KeptHead, KeptHeard, KeptTogether, Rows, Shelf } from './shelf.ts';

export function createMemoryStore(options: { newId: () => string; records?: readonly unknown[] }): EventStore {
  return createEventStore(memoryShelf(options.records ?? []), options.newId);
}

interface Kept {
  readonly device: Device | undefined;
  readonly byId: ReadonlyMap<string, StoredEvent>;
  readonly heard: ReadonlyMap<string, KeptHeard>;
  readonly digests: ReadonlyMap<string, KeptDigest>;
  readonly together: ReadonlyMap<string, KeptTogether>;
  readonly heads: ReadonlyMap<string, KeptHead>;
  readonly syncNotes: unknown;
}

const EMPTY: Kept = {
  device: undefined,
  byId: new Map(),
  heard: new Map(),
  digests: new Map(),
  together: new Map(),
  heads: new Map(),
  syncNotes: undefined,
};

function memoryShelf(records: readonly unknown[]): Shelf {
  let kept: Kept = { ...EMPTY, byId: byId(records as readonly StoredEvent[]) };
  let closed = false;
  const gone = failure({ kind: 'severed', cause: 'the store was closed' });
  return {
    read: async (look) => (closed ? gone : success(await look(rowsOf({ ...kept })))),
    write: async (work) => {
      if (closed) return gone;
      // The draft takes the place of what is kept only when all went well.
      const draft = { ...kept };
      const result = await work(rowsOf(draft));
      if (result.ok) kept = draft;
      return result;
    },
    close: () => {
      closed = true;
    },
  };
}

function byId(events: readonly StoredEvent[]): ReadonlyMap<string, StoredEvent> {
  return new Map(events.map((event) => [event.id, event]));
}

function rowsOf(draft: { -readonly [Field in keyof Kept]: Kept[Field] }): Rows {
  const where = async (holds: (event: StoredEvent) => boolean) => [...draft.byId.values()].filter(holds);
  return {
    device: async () => draft.device,
    setDevice: async (device) => {
      draft.device = device;
    },
    syncNotes: async () => draft.syncNotes,
    setSyncNotes: async (notes) => {
      draft.syncNotes = notes;
    },
    lastSeq: async (device) =>
      (await where(({ device: by, seq }) => by === device && Number.isSafeInteger(seq))).reduce(
        (last, { seq }) => Math.max(last, seq),
        0,
      ),
    get: async (ids) => ids.map((id) => draft.byId.get(id)),
    ofSession: (session) => where((event) => event.session === session),
    idsOfSession: async (session) => (await where((event) => event.session === session)).map(({ id }) => id),
    idsOfType: async (type) => (await where((event) => event.type === type)).map(({ id }) => id),
    ofTypes: (types) => where(({ type }) => types.includes(type)),
    notOfTypes: (types) => where(({ type }) => !types.includes(type)),
    everything: () => where(() => true),
    count: async () => draft.byId.size,
    add: async (events) => {
      draft.byId = new Map([...draft.byId, ...byId(events)]);
    },
    remove: async (ids) => {
      draft.byId = new Map([...draft.byId].filter(([id]) => !ids.includes(id)));
    },
    keepHeard: async (kept) => {
      draft.heard = new Map([...draft.heard, [kept.id, kept]]);
    },
    heardOf: async (ids) => ids.flatMap((id) => draft.heard.get(id) ?? []),
    removeHeard: async (ids) => {
      draft.heard = new Map([...draft.heard].filter(([id]) => !ids.includes(id)));
    },
    removeHeardBefore: async (atMs) => {
      draft.heard = new Map([...draft.heard].filter(([, kept]) => kept.atMs >= atMs));
    },
    removeSounds: async () => {
      draft.heard = new Map([...draft.heard].map(([id, kept]) => [id, { ...kept, sound: null }]));
    },
    countSounds: async () => [...draft.heard.values()].filter(({ sound }) => sound).length,
    digestsOf: async (sessions) => sessions.flatMap((id) => draft.digests.get(id) ?? []),
    keepDigests: async (digests) => {
      draft.digests = new Map([...draft.digests, ...digests.map((each) => [each.id, each] as const)]);
    },
    digestsTogether: async (id) => draft.together.get(id),
    keepDigestsTogether: async (row) => {
      draft.together = new Map([...draft.together, [row.id, row]]);
    },
    removeDigests: async () => {
      draft.digests = new Map();
      draft.together = new Map();
    },
    heads: async () => [...draft.heads.values()],
    keepHeads: async (heads) => {
      draft.heads = new Map([...draft.heads, ...heads.map((each) => [each.id, each] as const)]);
    },
    removeHeads: async (sessions) => {
      draft.heads = new Map([...draft.heads].filter(([id]) => !sessions.includes(id)));
    },
    removeAllHeads: async () => {
      draft.heads = new Map();
    },
  };
}
