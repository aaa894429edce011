/** What a place that keeps events must offer. `database.ts` and `memory-store.ts` are such places; `event-store.ts` works on any. */
import type { StoredEvent } from '../core/event.ts';
import type { SessionDigest } from '../core/progress/digest.ts';
import type { Stretch } from '../core/stretch.ts';
import type { Milliseconds } from '../core/units.ts';
import type { Result } from './problem.ts';
import type { SessionHead } from './session-heads.ts';

/** Who writes here. */
export interface Device {
  readonly name: string;
  /** Numbers up to here were used once, though their events may be deleted since. */
  readonly usedUpTo: number;
}

/** What was kept of a heard word or an unsure stretch beside its event: never exported, and only for a month. */
export interface KeptHeard {
  /** The event's. */
  readonly id: string;
  /** When it was heard, by the wall clock. */
  readonly atMs: Milliseconds;
  readonly stretch: Stretch;
  /** 16 kHz mono; null: the handler did not wish it, or it was deleted. */
  readonly sound: Int16Array | null;
}

/** The digest of a session, for the next visit. It holds nothing that the events do not, so it may be thrown away. */
export interface KeptDigest {
  /** The session's. */
  readonly id: string;
  /** What it was made of, and by which version: another stamp, another digest. */
  readonly stamp: string;
  /** null: no session could be made of its events. */
  readonly digest: SessionDigest | null;
}

/** Digests that are asked for together, in one row: thousands of rows take as many questions to the browser. */
export interface KeptTogether {
  /** Who asks: no session is called so. */
  readonly id: string;
  readonly together: readonly KeptDigest[];
}

/** The head of a session, for the next visit: it saves reading every session to list them. Made of the events alone. */
export interface KeptHead {
  /** The session's. */
  readonly id: string;
  /** The event it begins with. */
  readonly startId: string;
  /** How it was made: of another version, it is made anew. */
  readonly version: number;
  readonly head: SessionHead;
}

/** The rows, within one transaction. What is read is unchecked: other versions and other tabs wrote it. */
export interface Rows {
  device(): Promise<Device | undefined>;
  setDevice(device: Device): Promise<unknown>;
  /** What sync remembers on this device; undefined: nothing. */
  syncNotes(): Promise<unknown>;
  /** Undefined: forgets them. */
  setSyncNotes(notes: unknown): Promise<unknown>;
  /** The highest number of this device among what is kept; 0 when there is nothing. */
  lastSeq(device: string): Promise<number>;
  /** In the order of `ids`; undefined for an unknown one. */
  get(ids: readonly string[]): Promise<readonly unknown[]>;
  ofSession(session: string): Promise<readonly unknown[]>;
  idsOfSession(session: string): Promise<readonly string[]>;
  idsOfType(type: string): Promise<readonly string[]>;
  ofTypes(types: readonly string[]): Promise<readonly unknown[]>;
  notOfTypes(types: readonly string[]): Promise<readonly unknown[]>;
  everything(): Promise<readonly unknown[]>;
  /** How many events there are. */
  count(): Promise<number>;
  add(events: readonly StoredEvent[]): Promise<unknown>;
  remove(ids: readonly string[]): Promise<unknown>;
  keepHeard(heard: KeptHeard): Promise<unknown>;
  /** Those that are still kept, in any order. */
  heardOf(ids: readonly string[]): Promise<readonly unknown[]>;
  removeHeard(ids: readonly string[]): Promise<unknown>;
  /** Features and sounds of words heard before that moment. */
  removeHeardBefore(atMs: Milliseconds): Promise<unknown>;
  removeSounds(): Promise<unknown>;
  countSounds(): Promise<number>;
  /** Those that are kept, in any order. */
  digestsOf(sessions: readonly string[]): Promise<readonly unknown[]>;
  keepDigests(digests: readonly KeptDigest[]): Promise<unknown>;
  digestsTogether(id: string): Promise<unknown>;
  keepDigestsTogether(digests: KeptTogether): Promise<unknown>;
  /** Those kept together, too. */
  removeDigests(): Promise<unknown>;
  heads(): Promise<readonly unknown[]>;
  keepHeads(heads: readonly KeptHead[]): Promise<unknown>;
  removeHeads(sessions: readonly string[]): Promise<unknown>;
  removeAllHeads(): Promise<unknown>;
}

export interface Shelf {
  /** `withinMs`: for work on everything, which takes longer than one reply of the database. */
  read<T>(look: (rows: Rows) => Promise<T>, withinMs?: Milliseconds): Promise<Result<T>>;
  /** All or nothing. Answers once the rows are safe, not when they were handed over. */
  write<T>(work: (rows: Rows) => Promise<Result<T>>, withinMs?: Milliseconds): Promise<Result<T>>;
  close(): void;
}
