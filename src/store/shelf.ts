/** What a place that keeps events must offer. `database.ts` and `memory-store.ts` are such places; `event-store.ts` works on any. */
import type { StoredEvent } from '../core/event.ts';
import type { Result } from './problem.ts';

/** The rows, within one transaction. What is read is unchecked: other versions and other tabs wrote it. */
export interface Rows {
  device(): Promise<string | undefined>;
  setDevice(device: string): Promise<unknown>;
  /** The highest number of this device; 0 when it has written nothing. */
  lastSeq(device: string): Promise<number>;
  /** In the order of `ids`; undefined for an unknown one. */
  get(ids: readonly string[]): Promise<readonly unknown[]>;
  ofSession(session: string): Promise<readonly unknown[]>;
  idsOfSession(session: string): Promise<readonly string[]>;
  ofTypes(types: readonly string[]): Promise<readonly unknown[]>;
  notOfTypes(types: readonly string[]): Promise<readonly unknown[]>;
  everything(): Promise<readonly unknown[]>;
  add(events: readonly StoredEvent[]): Promise<unknown>;
}

export interface Shelf {
  read<T>(look: (rows: Rows) => Promise<T>): Promise<Result<T>>;
  /** All or nothing. Answers once the rows are safe, not when they were handed over. */
  write<T>(work: (rows: Rows) => Promise<Result<T>>): Promise<Result<T>>;
  close(): void;
}
