/** What the screens are told of sync. */
import type { Refused, Unlike } from '../core/sync/exchange.ts';
import type { Trouble } from '../core/sync/trouble.ts';
import type { IsoTime } from '../core/units.ts';

export interface SyncShown {
  readonly path: string;
  readonly user: string;
  /** Password and passphrases stay on this device; otherwise they are asked for in each visit. */
  readonly keeps: boolean;
  /** Whether the password is known in this visit. */
  readonly hasPassword: boolean;
  readonly isBusy: boolean;
  readonly dogs: readonly DogShown[];
}

/** One database. */
export interface DogShown {
  readonly database: string;
  /** Null: nothing came from it yet. */
  readonly dogId: string | null;
  readonly hasPassphrase: boolean;
  /** When all was exchanged last. */
  readonly lastAt: IsoTime | null;
  /** Events that are here and not there. Null: not counted yet. */
  readonly waiting: number | null;
  readonly trouble: Trouble | null;
  readonly conflicts: readonly Unlike[];
  readonly refused: readonly Refused[];
}
