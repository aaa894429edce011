/** Says which events belong to one dog, and so into its database. What belongs to no dog stays on its device. */
import type { LibraryEvent, StoredEvent } from '../event.ts';

/** A session of the dog, with whom and where it names. */
export interface SessionOfDog {
  readonly id: string;
  readonly handler: string;
  readonly place: string;
}

/** Exhaustive: whoever adds a kind of event says here whether it may leave the device. */
const MAY_LEAVE: Readonly<Record<LibraryEvent['type'], boolean>> = {
  ...{ 'dog-saved': true, 'plan-saved': true, 'observation-saved': true, 'handler-saved': true, 'place-saved': true },
  'exam-planned': true,
  // Sounds, and what was learnt of them, never leave the device.
  ...{ 'sound-taught': false, 'take-learned': false, 'sound-removed': false },
  // A device's own: also whose part in a handover it plays, or an owner's phone would take itself for the trainer's.
  ...{ 'settings-saved': false, 'copy-saved': false },
  ...{ 'homework-given': false, 'homework-received': false, 'homework-returned': false },
};

function mayLeave({ type }: StoredEvent): boolean {
  return !Object.hasOwn(MAY_LEAVE, type) || MAY_LEAVE[type as LibraryEvent['type']];
}

/** Of what outlives sessions: the dog, its plans and examinations, observations of its sessions, and the names that they use. */
export function libraryOf(
  dogId: string,
  events: readonly LibraryEvent[],
  sessions: readonly SessionOfDog[],
): readonly LibraryEvent[] {
  const ids = new Set(sessions.map(({ id }) => id));
  const handlers = new Set(sessions.map(({ handler }) => handler));
  const exams = events.flatMap(({ type, body }) => (type === 'exam-planned' && body.dogId === dogId ? [body.place] : []));
  const places = new Set([...sessions.map(({ place }) => place), ...exams]);
  const isOfDog = (event: LibraryEvent): boolean => {
    switch (event.type) {
      case 'observation-saved':
        return ids.has(event.body.sessionId);
      case 'handler-saved':
        return handlers.has(event.body.id);
      case 'place-saved':
        return places.has(event.body.id);
      default:
        return namesDog(event, dogId);
    }
  };
  return events.filter((event) => mayLeave(event) && isOfDog(event));
}

/** Whether a database may bring this event: whoever may write into one dog's has no say about other dogs, settings or the ear. */
export function mayCome(event: StoredEvent, dogId: string): boolean {
  return mayLeave(event) && namesDog(event, dogId);
}

/** True also for what names no dog at all. */
function namesDog(event: StoredEvent, dogId: string): boolean {
  switch (event.type) {
    case 'dog-saved':
      return event.body.id === dogId;
    case 'plan-saved':
    case 'exam-planned':
    case 'session-started':
      return event.body.dogId === dogId;
    default:
      return true;
  }
}
