/** Writes events in their order and numbers them. What could not be written is kept, shown, and tried again with the next. */
import type { StoredEvent } from '../core/event.ts';
import type { EventStore } from '../store/event-store.ts';
import type { StoreProblem } from '../store/problem.ts';

export interface Writer {
  /** Device and number for the next event. */
  next(): { device: string; seq: number };
  /** Writes; when that fails the events wait in memory and the problem is told. Never throws. */
  write(events: readonly StoredEvent[]): Promise<void>;
  /** Tries again what waits; true when nothing waits any more. */
  tryAgain(): Promise<boolean>;
  /** From now on this device writes under another name; what waits keeps the old one. */
  rename(): Promise<Awaited<ReturnType<EventStore['rename']>>>;
  /** Events that are not on the device yet. */
  waiting(): readonly StoredEvent[];
}

/** @param newId names a device for this visit, when the store cannot say which one it is. */
export async function createWriter(
  store: Pick<EventStore, 'writer' | 'append' | 'merge' | 'rename'>,
  newId: () => string,
  onProblem: (problem: StoreProblem | null) => void,
): Promise<Writer> {
  const turn = await store.writer();
  if (!turn.ok) onProblem(turn.problem);
  let { device, nextSeq: seq } = turn.ok ? turn.value : { device: newId(), nextSeq: 1 };
  let waiting: readonly StoredEvent[] = [];
  let last: Promise<boolean> = Promise.resolve(true);
  const attempt = async () => {
    if (waiting.length === 0) return true;
    const trying = waiting;
    const appended = await store.append(trying);
    // Numbers that another tab used meanwhile are no reason to lose a rep: a union keeps both.
    const written = !appended.ok && appended.problem.kind === 'out-of-turn' ? await store.merge(trying) : appended;
    if (written.ok) waiting = waiting.slice(trying.length);
    onProblem(written.ok ? null : written.problem);
    return waiting.length === 0;
  };
  // One append at a time: two under way would both carry what waits.
  const tryAgain = () => {
    last = last.then(attempt);
    return last;
  };
  return {
    next: () => ({ device, seq }),
    write: async (events) => {
      waiting = [...waiting, ...events];
      seq += events.length;
      await tryAgain();
    },
    tryAgain,
    rename: async () => {
      await tryAgain();
      const renamed = await store.rename(newId());
      if (renamed.ok) ({ device, nextSeq: seq } = renamed.value);
      return renamed;
    },
    waiting: () => waiting,
  };
}
