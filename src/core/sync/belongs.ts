/** Says which events belong to one dog, and so into its database. What belongs to no dog stays on its device. */
import type { LibraryEvent, StoredEvent } from '../event.ts';

/** A session of the dog, with whom and where it names. */
export interface SessionOfDog {
  readonly id: string;
  readonly handler: string;
  readonly place: string;
}

/** Of what outlives sessions: the dog, its plans, observations of its sessions, and the names that they use. */
export function libraryOf(
  dogId: string,
  events: readonly LibraryEvent[],
  sessions: readonly SessionOfDog[],
): readonly LibraryEvent[] {
  const ids = new Set(sessions.map(({ id }) => id));
  const handlers = new Set(sessions.map(({ handler }) => handler));
  const places = new Set(sessions.map(({ place }) => place));
  const isOfDog = (event: LibraryEvent): boolean => {
    switch (event.type) {
      case 'dog-saved':
        return event.body.id === dogId;
      case 'plan-saved':
        return event.body.dogId === dogId;
      case 'observation-saved':
        return ids.has(event.body.sessionId);
      case 'handler-saved':
        return handlers.has(event.body.id);
      case 'place-saved':
        return places.has(event.body.id);
      // Sounds, and what was learnt of them, never leave the device; settings are a device's own.
      case 'sound-taught':
      case 'take-learned':
      case 'sound-removed':
      case 'settings-saved':
        return false;
    }
  };
  return events.filter(isOfDog);
}

/** Whether a database may bring this event: whoever may write into one dog's has no say about other dogs, settings or the ear. */
export function mayCome(event: StoredEvent, dogId: string): boolean {
  switch (event.type) {
    case 'dog-saved':
      return event.body.id === dogId;
    case 'plan-saved':
    case 'session-started':
      return event.body.dogId === dogId;
    case 'sound-taught':
    case 'take-learned':
    case 'sound-removed':
    case 'settings-saved':
      return false;
    default:
      return true;
  }
}
