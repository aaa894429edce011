/** What sync remembers on this device, and in which form it is kept. */
import type { Book } from '../core/sync/exchange.ts';
import { NEW_BOOK } from '../core/sync/exchange.ts';
import type { IsoTime } from '../core/units.ts';

export interface SyncNotes {
  readonly version: 1;
  readonly path: string;
  readonly user: string;
  readonly keeps: boolean;
  /** Null: not kept, and not yet asked for in this visit. */
  readonly password: string | null;
  readonly dogs: readonly DogNotes[];
}

export interface DogNotes {
  readonly database: string;
  /** Names this device to the server in this database; drawn when the dog is added. */
  readonly as: string;
  readonly dogId: string | null;
  /** From which nobody reads the passphrase itself. Null: as with the password. */
  readonly passphrase: CryptoKey | null;
  readonly lastAt: IsoTime | null;
  readonly book: Book;
}

/** The form for the device: without what the handler does not wish to be kept. */
export function toKeep(notes: SyncNotes): SyncNotes {
  if (notes.keeps) return notes;
  return { ...notes, password: null, dogs: notes.dogs.map((dog) => ({ ...dog, passphrase: null })) };
}

/** Null: there is nothing, or another version wrote it. */
export function fromKept(kept: unknown): SyncNotes | null {
  const notes = kept as Partial<SyncNotes> | null | undefined;
  return notes?.version === 1 && Array.isArray(notes.dogs) ? (notes as SyncNotes) : null;
}

export function newDog(database: string, as: string, dogId: string | null, passphrase: CryptoKey): DogNotes {
  return { database, as, dogId, passphrase, lastAt: null, book: NEW_BOOK };
}
