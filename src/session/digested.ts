/** Holds the digests made in this visit, and forgets those that no longer fit: of sessions put right, and of sessions that are gone. */
import type { SessionDigest } from '../core/progress/digest.ts';
import type { HomeRooms } from './rooms.ts';

/** A digest and how many events it was made of; null: none could be made. */
interface Made {
  readonly events: number;
  readonly digest: SessionDigest | null;
}

export interface Digested {
  readonly made: Map<string, Made>;
  /** Put right in this visit: the list of sessions does not count that yet, so what is kept of them would look fresh. */
  readonly putRight: Set<string>;
  /** By session, of what the desk's kept digests were made; they are taken over by then. Null: not read since the sessions changed. */
  ofDesk: Promise<ReadonlyMap<string, string>> | null;
}

export function rememberDigests(use: HomeRooms['use']): Digested {
  const digested: Digested = { made: new Map(), putRight: new Set(), ofDesk: null };
  use.subscribe(({ reviewed, heads }, before) => {
    // Read anew while it is open: it was put right, and the list of sessions does not count that.
    if (reviewed && reviewed !== before.reviewed && reviewed.sessionId === before.reviewed?.sessionId) {
      digested.made.delete(reviewed.sessionId);
      digested.putRight.add(reviewed.sessionId);
    }
    if (heads === before.heads) return;
    forgetAllBut(digested, new Set(heads.map(({ id }) => id)));
    digested.ofDesk = null;
  });
  return digested;
}

function forgetAllBut({ made }: Digested, there: ReadonlySet<string>): void {
  for (const id of made.keys()) if (!there.has(id)) made.delete(id);
}
