/** Carries out what an exchange asks: between the events on this device and one database on the handler's server. */
import type { StoredEvent } from '../core/event.ts';
import { libraryOf, mayCome, type SessionOfDog } from '../core/sync/belongs.ts';
import {
  type Answer,
  type Ask,
  answered,
  askOf,
  type Book,
  beginExchange,
  type Exchange,
  type Refused,
  type Unlike,
} from '../core/sync/exchange.ts';
import { isKnown, type Known } from '../core/sync/known.ts';
import type { Trouble } from '../core/sync/trouble.ts';
import type { Compared, EventStore } from './event-store.ts';
import { type Result, type StoreProblem, sayDamage } from './problem.ts';
import { checkEvent, shorten } from './record-check.ts';
import { firstDifference } from './same-content.ts';
import { type Lock, type Opened, openEvent, type RandomBytes, sealEvent } from './sync-cipher.ts';
import type { Answered, SyncDatabase } from './sync-server.ts';

export interface RunParts {
  readonly store: Pick<EventStore, 'library' | 'idsOf' | 'pick' | 'compare' | 'merge' | 'writer'>;
  readonly database: SyncDatabase;
  /** Names this device to this database; not the name under which it writes. */
  readonly as: string;
  /** Null: whichever dog the database holds. */
  readonly dogId: string | null;
  readonly lock: Lock;
  readonly sessionsOf: (dogId: string) => readonly SessionOfDog[];
  readonly randomBytes: RandomBytes;
  readonly chance: () => number;
  readonly keepBook: (book: Book, dogId: string | null) => Promise<Result<void>>;
  /** Comes back when it is time to ask again; false: it was called off. */
  readonly sleep: (ms: number, because: Trouble) => Promise<boolean>;
  /** Before each piece of work: comes back when nothing more important goes on; false: it was called off. */
  readonly mayGoOn: () => Promise<boolean>;
  /** Events of other devices are kept here from now on. */
  readonly onArrived: (events: readonly StoredEvent[]) => void;
  /** Events of this device came back that it has not written: another copy of it is at work, or it was put back. */
  readonly onOwnNumbersUsed: () => Promise<Result<unknown>>;
}

export interface Ran {
  readonly book: Book;
  /** Null: all is exchanged, or it was called off. */
  readonly trouble: Trouble | null;
  readonly calledOff: boolean;
  readonly dogId: string | null;
  readonly arrived: number;
  readonly sent: number;
}

interface Opening {
  readonly parts: Pick<RunParts, 'database' | 'lock' | 'dogId'>;
  opened: Opened | null;
}

interface Inside extends Opening {
  readonly parts: RunParts;
  arrived: number;
  sent: number;
}

export async function runExchange(book: Book, parts: RunParts): Promise<Ran> {
  const inside: Inside = { parts, opened: null, arrived: 0, sent: 0 };
  let exchange: Exchange = beginExchange(book);
  const ended = (trouble: Trouble | null, calledOff = false): Ran => {
    const dogId = inside.opened?.dogId ?? parts.dogId;
    return { book: exchange.book, trouble, calledOff, dogId, arrived: inside.arrived, sent: inside.sent };
  };
  for (;;) {
    const ask = askOf(exchange);
    if (ask.do === 'end') return ended(ask.trouble);
    const goesOn = ask.do === 'wait' ? await parts.sleep(ask.ms, ask.because) : await parts.mayGoOn();
    if (!goesOn) return ended(null, true);
    exchange = answered(exchange, await carryOut(inside, ask), parts.chance());
  }
}

async function carryOut(inside: Inside, ask: Exclude<Ask, { do: 'end' }>): Promise<Answer> {
  const { database, as, keepBook } = inside.parts;
  switch (ask.do) {
    case 'open':
      return open(inside);
    case 'found':
      return found(inside);
    case 'read-turn':
      return answer(await database.turn(as), (turn) => ({ to: 'read-turn', turn }));
    case 'list':
      return answer(await database.changes(ask.since, ask.limit), (listed) => ({ to: 'list', ...listed }));
    case 'fetch':
      return fetchThem(inside, ask.ids);
    case 'look-here': {
      const ids = await unsent(inside.parts, inside.opened?.dogId ?? '', ask.known);
      return ids.ok ? { to: 'look-here', ids: ids.value } : onDevice(ids.problem);
    }
    case 'push':
      return push(inside, ask.ids);
    case 'keep-book': {
      const kept = await keepBook(ask.book, inside.opened?.dogId ?? null);
      return kept.ok ? { to: 'keep-book' } : onDevice(kept.problem);
    }
    case 'write-turn':
      return answer(await database.writeTurn(as, ask.turn), () => ({ to: 'write-turn' }));
    case 'wait':
      return { to: 'wait' };
  }
}

function answer<T>(said: Answered<T>, as: (value: T) => Answer): Answer {
  return said.ok ? as(said.value) : inTrouble(said.trouble);
}

function inTrouble(trouble: Trouble): Answer {
  return { to: 'trouble', trouble };
}

function onDevice(problem: StoreProblem): Answer {
  return inTrouble({ kind: 'device', cause: problem.kind });
}

/** Nothing is asked of a server, and nothing written to it, before the passphrase is known to be right. */
async function open(inside: Opening): Promise<Answer> {
  const { database, lock, dogId } = inside.parts;
  const head = await database.head();
  if (!head.ok) return inTrouble(head.trouble);
  if (head.value === null) return { to: 'open', found: 'empty' };
  const opened = await lock.open(head.value);
  if (opened.kind !== 'fits') return inTrouble({ kind: opened.kind });
  if (dogId !== null && dogId !== opened.dogId) return inTrouble({ kind: 'another-dog' });
  inside.opened = opened;
  return { to: 'open', found: 'fits' };
}

async function found(inside: Opening): Promise<Answer> {
  const { database, lock, dogId } = inside.parts;
  // Nobody has put a dog there yet, and this device has none to put there.
  if (dogId === null) return inTrouble({ kind: 'empty' });
  const { head, key } = await lock.make(dogId);
  const written = await database.writeHead(head);
  if (!written.ok) return inTrouble(written.trouble);
  if (written.value === 'founded') inside.opened = { key, dogId };
  return { to: 'found', done: written.value };
}

/** Tries the passphrase, or begins the database with it: as an exchange does first, and nothing more. Tells the dog. */
export async function openOnce(parts: Pick<RunParts, 'database' | 'lock' | 'dogId'>): Promise<Answered<string>> {
  const inside: Opening = { parts, opened: null };
  let answer = await open(inside);
  if (answer.to === 'open' && answer.found === 'empty') answer = await found(inside);
  // Another device was first.
  if (answer.to === 'found' && answer.done === 'taken') answer = await open(inside);
  if (answer.to === 'trouble') return { ok: false, trouble: answer.trouble };
  return { ok: true, value: inside.opened?.dogId ?? '' };
}

/** Ids of this dog's events that the server is not known to have: the library first, so that a late joiner knows the dog. */
export async function unsent(
  { store, sessionsOf }: Pick<RunParts, 'store' | 'sessionsOf'>,
  dogId: string,
  known: Known,
): Promise<Result<readonly string[]>> {
  const library = await store.library();
  if (!library.ok) return library;
  const sessions = sessionsOf(dogId);
  const own = libraryOf(dogId, library.value.events, sessions).map(({ id }) => id);
  const played = await store.idsOf(sessions.map(({ id }) => id));
  if (!played.ok) return played;
  return { ok: true, value: [...own, ...played.value].filter((id) => !isKnown(known, id)) };
}

async function push(inside: Inside, ids: readonly string[]): Promise<Answer> {
  const { parts, opened } = inside;
  if (!opened) return inTrouble({ kind: 'wrong-passphrase' });
  const picked = await parts.store.pick(ids);
  if (!picked.ok) return onDevice(picked.problem);
  const { events } = picked.value;
  // Gone since they were counted, or damaged: the damage is told where it is read.
  if (events.length === 0) return { to: 'push', ok: [], taken: [] };
  const sealed = await Promise.all(events.map((event) => sealEvent(opened.key, event, parts.randomBytes)));
  const added = await parts.database.add(sealed);
  if (added.ok) inside.sent += added.value.ok.length;
  return answer(added, (value) => ({ to: 'push', ...value }));
}

async function fetchThem(inside: Inside, ids: readonly string[]): Promise<Answer> {
  const { parts, opened } = inside;
  if (!opened) return inTrouble({ kind: 'wrong-passphrase' });
  const documents = await parts.database.documents(ids);
  if (!documents.ok) return inTrouble(documents.trouble);
  const sorted = await Promise.all(documents.value.map((document) => sortOut(opened, document)));
  const refused = sorted.flatMap((one) => ('why' in one ? [one] : []));
  const events = sorted.flatMap((one) => ('event' in one ? [one.event] : []));
  const compared = await parts.store.compare(events);
  if (!compared.ok) return onDevice(compared.problem);
  const kept = await keep(inside, compared.value.fresh);
  if (!kept.ok) return onDevice(kept.problem);
  return { to: 'fetch', conflicts: compared.value.conflicts.map(unlike), refused };
}

async function sortOut({ key, dogId }: Opened, document: { readonly _id: string }): Promise<{ event: StoredEvent } | Refused> {
  const record = await openEvent(key, document);
  if (record === undefined) return { id: document._id, why: 'sealed-otherwise' };
  const checked = checkEvent(record);
  if (!checked.ok) return { id: document._id, why: 'damaged', what: sayDamage(checked.damage) };
  return mayCome(checked.event, dogId) ? { event: checked.event } : { id: document._id, why: 'other-dog' };
}

function unlike({ id, kept, offered }: Compared['conflicts'][number]): Unlike {
  const { path, a, b } = firstDifference(kept, offered) ?? { path: [], a: kept, b: offered };
  return { id, path: path.join(' › '), here: shorten(a), there: shorten(b) };
}

async function keep(inside: Inside, fresh: readonly StoredEvent[]): Promise<Result<unknown>> {
  if (fresh.length === 0) return { ok: true, value: undefined };
  const { store, onOwnNumbersUsed, onArrived } = inside.parts;
  const turn = await store.writer();
  if (!turn.ok) return turn;
  const { device, nextSeq } = turn.value;
  if (fresh.some((event) => event.device === device && event.seq >= nextSeq)) {
    const renamed = await onOwnNumbersUsed();
    if (!renamed.ok) return renamed;
  }
  const merged = await store.merge(fresh);
  if (!merged.ok) return merged;
  inside.arrived += merged.value.added;
  onArrived(fresh);
  return merged;
}
