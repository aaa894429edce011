/**
 * Keeps dogs in step with the handler's own server, when that is switched on: after changes, every few minutes, and when asked.
 * Never while a session is practised: it waits until the session is over.
 */
import { isSessionEvent, type LibraryEvent, type StoredEvent } from '../core/event.ts';
import type { Book } from '../core/sync/exchange.ts';
import type { Trouble } from '../core/sync/trouble.ts';
import type { Milliseconds } from '../core/units.ts';
import { success } from '../store/problem.ts';
import { createLock, type Lock, passphraseKey } from '../store/sync-cipher.ts';
import { openOnce, type Ran, type RunParts, runExchange, unsent } from '../store/sync-run.ts';
import { isDatabaseName, reachServer, type SyncServer } from '../store/sync-server.ts';
import { showHeads } from './heads.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';
import { type DogNotes, fromKept, newDog, type SyncNotes, toKeep } from './sync-notes.ts';
import type { DogShown } from './sync-shown.ts';
import { isoWithOffset } from './wall-clock.ts';

/** How often it is looked whether something is to be exchanged. */
const LOOK_MS: Milliseconds = 10_000;
/** What others did is looked for so often. Common practice, no source. */
const EVERY_MS: Milliseconds = 300_000;
/** A shorter passphrase could be guessed by whoever has the server. */
export const PASSPHRASE_LEAST = 12;

export type SyncRefusal = Trouble | { readonly kind: 'foreign' | 'bad-name' | 'short' | 'known' | 'session' };

export interface SignIn {
  readonly path: string;
  readonly user: string;
  readonly password: string;
  readonly keeps: boolean;
}

export interface NewDog {
  readonly database: string;
  /** Null: a dog of another device. */
  readonly dogId: string | null;
  readonly passphrase: string;
}

/** What may be asked of sync. Each answers null, or what stood in the way; nothing is changed then. */
export interface Syncing {
  signIn(wish: SignIn): Promise<SyncRefusal | null>;
  addDog(wish: NewDog): Promise<SyncRefusal | null>;
  /** For a dog whose passphrase was not kept. */
  unlock(database: string, passphrase: string): Promise<SyncRefusal | null>;
  /** The dog stays here and there; they are not kept in step any more. */
  removeDog(database: string): Promise<void>;
  syncNow(): Promise<void>;
  /** Counts what waits to be sent. */
  count(): Promise<void>;
  /** Forgets server, passwords, passphrases and all that was noted. */
  stop(): Promise<void>;
  /** Twenty letters and digits by chance, 100 bits. */
  newPassphrase(): string;
}

interface Inside {
  readonly rooms: Rooms;
  notes: SyncNotes | null;
  /** By database; what was found out in this visit. */
  readonly found: Map<string, { trouble: Trouble | null; waiting: number | null; lock: Lock | null }>;
  /** The round under way. */
  running: Promise<void> | null;
  /** Something was written here since the last round. */
  isChanged: boolean;
  lastRoundMs: Milliseconds;
  /** Ends the wait of the round under way; false calls the round off. */
  wake: ((goesOn: boolean) => void) | null;
  /** Counts up when the round under way is to be called off. */
  era: number;
}

export async function openSyncing(rooms: Rooms): Promise<Syncing> {
  const kept = await rooms.store.syncNotes();
  const inside: Inside = {
    ...{ rooms, notes: kept.ok ? fromKept(kept.value) : null, found: new Map() },
    ...{ running: null, isChanged: true, lastRoundMs: Number.NEGATIVE_INFINITY, wake: null, era: 0 },
  };
  show(inside);
  await forgetGone(inside);
  rooms.use.subscribe((now, before) => {
    if (now.library !== before.library || now.heads !== before.heads) inside.isChanged = true;
    if (now.library !== before.library) void forgetGone(inside);
  });
  rooms.parts.timers.every(LOOK_MS, () => void look(inside));
  void look(inside);
  return {
    signIn: (wish) => signIn(inside, wish),
    addDog: (wish) => addDog(inside, wish),
    unlock: (database, passphrase) => unlock(inside, database, passphrase),
    removeDog: (database) => removeDog(inside, database),
    syncNow: async () => {
      inside.wake?.(true);
      await round(inside);
    },
    count: () => count(inside),
    stop: () => stop(inside),
    newPassphrase: () => newPassphrase(rooms),
  };
}

async function look(inside: Inside): Promise<void> {
  const { rooms, isChanged, lastRoundMs } = inside;
  if (isChanged || rooms.parts.wall.monoMs() - lastRoundMs >= EVERY_MS) await round(inside);
}

/** Every dog once. One that is under way already is waited for. */
async function round(inside: Inside): Promise<void> {
  if (!inside.notes?.password || isLive(inside.rooms.use.getState().live)) return;
  inside.running ??= everyDog(inside).finally(() => {
    inside.running = null;
    inside.lastRoundMs = inside.rooms.parts.wall.monoMs();
    show(inside);
  });
  show(inside);
  await inside.running;
}

async function everyDog(inside: Inside): Promise<void> {
  inside.isChanged = false;
  const { era } = inside;
  for (const { database } of inside.notes?.dogs ?? []) {
    const dog = inside.notes?.dogs.find((each) => each.database === database);
    if (dog?.passphrase && inside.era === era) await exchange(inside, dog);
  }
}

async function exchange(inside: Inside, dog: DogNotes): Promise<void> {
  const server = serverOf(inside);
  const lock = lockOf(inside, dog);
  if (!server || !lock) return;
  const ran = await runExchange(dog.book, runParts(inside, dog, server, lock));
  if (ran.calledOff) return;
  note(inside, dog.database, { trouble: ran.trouble, ...(ran.trouble === null && { waiting: 0 }) });
  await keepDog(inside, dog.database, done(inside, ran));
}

/** What an exchange leaves in the notes. */
function done({ rooms }: Inside, { book, dogId, trouble }: Ran): Partial<DogNotes> {
  return { book, dogId, ...(trouble === null && { lastAt: isoWithOffset(rooms.parts.wall.now()) }) };
}

function runParts(inside: Inside, dog: DogNotes, server: SyncServer, lock: Lock): RunParts {
  const { rooms, era } = inside;
  const { store, writer, parts } = rooms;
  return {
    ...{ store, lock, as: dog.as, dogId: dog.dogId, database: server.database(dog.database) },
    ...{ randomBytes: parts.web.randomBytes, chance: parts.web.chance },
    sessionsOf: (dogId) => sessionsOf(rooms, dogId),
    keepBook: (book, dogId) => keepDog(inside, dog.database, { book, dogId }),
    sleep: (ms, because) => {
      note(inside, dog.database, { trouble: because });
      return sleep(inside, ms);
    },
    mayGoOn: async () => {
      await untilNotLive(rooms);
      return inside.era === era;
    },
    onArrived: (events) => void arrived(rooms, events),
    onOwnNumbersUsed: () => writer.rename(),
  };
}

function sessionsOf({ use }: Rooms, dogId: string) {
  return use
    .getState()
    .heads.flatMap(({ id, started: { body } }) =>
      body.dogId === dogId ? [{ id, handler: body.handler, place: body.place }] : [],
    );
}

function sleep(inside: Inside, ms: Milliseconds): Promise<boolean> {
  return new Promise((over) => {
    const end = (goesOn: boolean) => {
      callOff();
      inside.wake = null;
      over(goesOn);
    };
    const callOff = inside.rooms.parts.timers.after(ms, () => end(true));
    inside.wake = end;
  });
}

function untilNotLive({ use }: Rooms): Promise<void> {
  if (!isLive(use.getState().live)) return Promise.resolve();
  return new Promise((over) => {
    const forget = use.subscribe(({ live }) => {
      if (isLive(live)) return;
      forget();
      over();
    });
  });
}

async function arrived(rooms: Rooms, events: readonly StoredEvent[]): Promise<void> {
  const library = events.filter((event): event is LibraryEvent => !isSessionEvent(event));
  if (library.length > 0) rooms.keeper.adopt(library);
  if (library.length < events.length) await showHeads(rooms);
}

async function signIn(inside: Inside, { path, user, password, keeps }: SignIn): Promise<SyncRefusal | null> {
  const server = reach(inside, path, user.trim(), password);
  if (!server) return { kind: 'foreign' };
  const who = await server.whoAmI();
  if (!who.ok) return who.trouble;
  const dogs = inside.notes?.dogs ?? [];
  callOffRound(inside);
  await keepNotes(inside, { version: 1, path: path.trim(), user: user.trim(), password, keeps, dogs });
  void look(inside);
  return null;
}

async function addDog(inside: Inside, { database, dogId, passphrase }: NewDog): Promise<SyncRefusal | null> {
  const name = database.trim();
  const server = serverOf(inside);
  if (!inside.notes || !server) return { kind: 'sign-in' };
  if (isLive(inside.rooms.use.getState().live)) return { kind: 'session' };
  if (!isDatabaseName(name)) return { kind: 'bad-name' };
  if (inside.notes.dogs.some((dog) => dog.database === name || (dogId !== null && dog.dogId === dogId))) return { kind: 'known' };
  if (passphrase.length < PASSPHRASE_LEAST) return { kind: 'short' };
  const base = await passphraseKey(passphrase);
  const dog = newDog(name, inside.rooms.parts.wall.newId(), dogId, base);
  const lock = createLock(base, inside.rooms.parts.web.randomBytes);
  const opened = await openOnce({ database: server.database(name), lock, dogId });
  if (!opened.ok) return opened.trouble;
  if (inside.notes.dogs.some((each) => each.dogId === opened.value)) return { kind: 'known' };
  note(inside, name, { lock });
  await keepNotes(inside, { ...inside.notes, dogs: [...inside.notes.dogs, { ...dog, dogId: opened.value }] });
  // What is in it comes and goes by itself from here on, as long as it takes.
  void round(inside);
  return null;
}

async function unlock(inside: Inside, database: string, passphrase: string): Promise<SyncRefusal | null> {
  const server = serverOf(inside);
  if (!server) return { kind: 'sign-in' };
  const base = await passphraseKey(passphrase);
  const head = await server.database(database).head();
  if (!head.ok) return head.trouble;
  const lock = createLock(base, inside.rooms.parts.web.randomBytes);
  const opened = await lock.open(head.value);
  if (opened.kind !== 'fits') return { kind: opened.kind };
  note(inside, database, { lock, trouble: null });
  await keepDog(inside, database, { passphrase: base });
  inside.isChanged = true;
  void look(inside);
  return null;
}

async function removeDog(inside: Inside, database: string): Promise<void> {
  if (!inside.notes) return;
  callOffRound(inside);
  inside.found.delete(database);
  await keepNotes(inside, { ...inside.notes, dogs: inside.notes.dogs.filter((dog) => dog.database !== database) });
}

/** A dog that was deleted here is not brought back. */
async function forgetGone(inside: Inside): Promise<void> {
  const here = new Set(inside.rooms.use.getState().library.dogs.map(({ id }) => id));
  for (const { database, dogId, lastAt } of inside.notes?.dogs ?? [])
    if (dogId !== null && lastAt !== null && !here.has(dogId)) await removeDog(inside, database);
}

async function stop(inside: Inside): Promise<void> {
  callOffRound(inside);
  inside.notes = null;
  inside.found.clear();
  await inside.rooms.store.keepSyncNotes(undefined);
  show(inside);
}

function callOffRound(inside: Inside): void {
  inside.era += 1;
  inside.wake?.(false);
  inside.isChanged = true;
}

async function count(inside: Inside): Promise<void> {
  const { rooms } = inside;
  for (const { database, dogId, book } of inside.notes?.dogs ?? []) {
    if (dogId === null) continue;
    const ids = await unsent({ store: rooms.store, sessionsOf: (id) => sessionsOf(rooms, id) }, dogId, book.known);
    if (ids.ok) note(inside, database, { waiting: ids.value.length });
  }
}

function serverOf(inside: Inside): SyncServer | null {
  const { notes } = inside;
  return notes?.password ? reach(inside, notes.path, notes.user, notes.password) : null;
}

function reach({ rooms: { parts } }: Inside, path: string, user: string, password: string): SyncServer | null {
  const address = parts.web.addressOf(path);
  return address === null ? null : reachServer({ fetch: parts.web.fetch, after: parts.timers.after, address, user, password });
}

function lockOf(inside: Inside, { database, passphrase }: DogNotes): Lock | null {
  const known = inside.found.get(database)?.lock;
  if (known || !passphrase) return known ?? null;
  const lock = createLock(passphrase, inside.rooms.parts.web.randomBytes);
  note(inside, database, { lock });
  return lock;
}

function note(inside: Inside, database: string, what: { trouble?: Trouble | null; waiting?: number | null; lock?: Lock }): void {
  const before = inside.found.get(database) ?? { trouble: null, waiting: null, lock: null };
  inside.found.set(database, { ...before, ...what });
  show(inside);
}

async function keepDog(inside: Inside, database: string, change: Partial<DogNotes>) {
  if (!inside.notes?.dogs.some((dog) => dog.database === database)) return success(undefined);
  const dogs = inside.notes.dogs.map((dog) => (dog.database === database ? { ...dog, ...change } : dog));
  return keepNotes(inside, { ...inside.notes, dogs });
}

async function keepNotes(inside: Inside, notes: SyncNotes) {
  inside.notes = notes;
  const kept = await inside.rooms.store.keepSyncNotes(toKeep(notes));
  show(inside);
  return kept;
}

function show({ rooms, notes, found, running }: Inside): void {
  if (!notes) return rooms.use.setState({ sync: null });
  const { path, user, keeps, password } = notes;
  const dogs = notes.dogs.map((dog): DogShown => {
    const { trouble = null, waiting = null } = found.get(dog.database) ?? {};
    const { conflicts, refused }: Book = dog.book;
    const { database, dogId, lastAt } = dog;
    return { database, dogId, lastAt, trouble, waiting, conflicts, refused, hasPassphrase: dog.passphrase !== null };
  });
  rooms.use.setState({ sync: { path, user, keeps, hasPassword: password !== null, isBusy: running !== null, dogs } });
}

/** Without letters that are taken for digits. */
const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

function newPassphrase({ parts }: Rooms): string {
  const letters = Array.from(parts.web.randomBytes(20), (byte) => LETTERS[byte % LETTERS.length]).join('');
  return letters.replace(/(.{4})(?=.)/g, '$1-');
}
