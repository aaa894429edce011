/** Lays the trainer's desk from what is kept, and takes in what owners send back. */
import { type DeskRow, deskOf, latestSessions } from '../core/desk/desk.ts';
import { type DeskDog, deskDogs, dogsThatCameBack } from '../core/desk/dogs.ts';
import { isSessionEvent, type StoredEvent } from '../core/event.ts';
import type { Library } from '../core/library.ts';
import { handlersIn, placesIn } from '../core/named.ts';
import { type Day, dayOf } from '../core/progress/day.ts';
import { settingsOf } from '../core/settings.ts';
import type { SessionHead } from '../store/session-heads.ts';
import { type ImportOffer, lookAtImport } from './backup.ts';
import { digestsOfDesk, takeKeptOfDesk } from './digests.ts';
import type { Rooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

export interface Desk {
  /** Who needs help first. */
  readonly rows: readonly DeskRow[];
  readonly today: Day;
  /** Sessions of which nothing can be told; they are said, not hidden. */
  readonly unread: number;
}

/** Reads ahead what is kept for the desk, and makes nothing: a tap on it then waits for no storage. */
export async function readDeskAhead(rooms: Rooms): Promise<void> {
  await takeKeptOfDesk(rooms, headsOf(rooms, deskDogs(rooms.keeper.library())));
}

/** Of the sessions the desk tells of. */
function headsOf({ use }: Rooms, dogs: readonly DeskDog[]): readonly SessionHead[] {
  const practised = use.getState().heads.filter(({ started }) => started.body.kind !== 'exam');
  const asked = practised.map((head) => ({ id: head.id, dogId: head.started.body.dogId, head }));
  return latestSessions(dogs, asked).map(({ head }) => head);
}

/** Null when the store cannot be read (the problem is shown). */
export async function readDesk(rooms: Rooms): Promise<Desk | null> {
  const library = rooms.keeper.library();
  const dogs = deskDogs(library);
  const made = await digestsOfDesk(rooms, headsOf(rooms, dogs));
  if (!made) return null;
  const today = dayOf(isoWithOffset(rooms.parts.wall.now()));
  const digests = [...made.values()].flatMap((digest) => digest ?? []);
  const ladders = new Map(library.plans.map(({ id, steps }) => [id, steps.map((step) => step.id)]));
  return { rows: deskOf(dogs, digests, ladders, today), today, unread: made.size - digests.length };
}

export type LookedAtReturn =
  | { readonly ok: true; readonly offer: ImportOffer; readonly dogs: readonly string[] }
  | { readonly ok: false; readonly why: string };

/** What an owner sent: their sessions, and what is needed to read them. Their settings, their taught words and their own desk stay out. */
export async function lookAtReturn(rooms: Rooms, text: string): Promise<LookedAtReturn> {
  const dogs = new Set<string>();
  const looked = await lookAtImport(rooms, text, (event) => {
    const wanted = isFromOwner(rooms, event);
    if (wanted && event.type === 'session-started') dogs.add(event.body.dogName);
    return wanted;
  });
  return looked.ok ? { ...looked, dogs: [...dogs] } : looked;
}

function isFromOwner({ keeper, use }: Rooms, event: StoredEvent): boolean {
  if (isSessionEvent(event)) return true;
  const library = keeper.library();
  const { handler, place } = settingsOf(library);
  switch (event.type) {
    case 'observation-saved':
    case 'homework-received':
      return true;
    // What is known here under this id and never came back with homework is the trainer's own: it stays as it is.
    case 'dog-saved':
      return dogsThatCameBack(library).has(event.body.id) || !library.dogs.some(({ id }) => id === event.body.id);
    case 'plan-saved':
      return plansThatCameBack(library).has(event.body.id) || !library.plans.some(({ id }) => id === event.body.id);
    // "me" is somebody else there: their name must not become the trainer's.
    case 'handler-saved':
      return !handlersIn(library, handler, practisedAs(use, 'handler')).some(({ id }) => id === event.body.id);
    case 'place-saved':
      return !placesIn(library, place, practisedAs(use, 'place')).some(({ id }) => id === event.body.id);
    default:
      return false;
  }
}

function plansThatCameBack({ homework: { given, received } }: Library): ReadonlySet<string> {
  const ids = new Set(given.map(({ homework }) => homework.id));
  return new Set(received.flatMap(({ homework, planId }) => (ids.has(homework.id) ? [planId] : [])));
}

function practisedAs(use: Rooms['use'], what: 'handler' | 'place'): readonly string[] {
  return use.getState().heads.map(({ started }) => started.body[what]);
}
