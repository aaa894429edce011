/** What a place that keeps events must offer. `database.ts` and `memory-store.ts` are such places; `event-store.ts` works on any. */
import type { StoredEvent } from '../core/event.ts';
import type { Result } from './problem.ts';

/** Who writes here. */
export interface Device {
  readonly name: string;
  /** Numbers up to here were used once, though their events may be deleted since. */
  readonly usedUpTo: number;
}

/** The rows, within one transaction. What is read is unchecked: other versions and other tabs wrote it. */
export interface Rows {
  device(): Promise<Device | undefined>;
  setDevice(device: Device): Promise<unknown>;
  /** The highest number of this device among what is kept; 0 when there is nothing. */
  lastSeq(device: string): Promise<number>;
  /** In the order of `ids`; undefined for an unknown one. */
  get(ids: readonly string[]): Promise<readonly unknown[]>;
  ofSession(session: string): Promise<readonly unknown[]>;
  idsOfSession(session: string): Promise<readonly string[]>;
  ofTypes(types: readonly string[]): Promise<readonly unknown[]>;
  notOfTypes(types: readonly string[]): Promise<readonly unknown[]>;
  everything(): Promise<readonly unknown[]>;
  add(events: readonly StoredEvent[]): Promise<unknown>;
  remove(ids: readonly string[]): Promise<unknown>;
}

export interface Shelf {
  read<T>(look: (rows: Rows) => Promise<T>): Promise<Result<T>>;
  /** All or nothing. Answers once the rows are safe, not when they were handed over. */
  write<T>(work: (rows: Rows) => Promise<Result<T>>): Promise<Result<T>>;
  close(): void;
}
