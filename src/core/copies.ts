/** Tells how old the last copy of everything is, how many sessions it lacks, and when it is time for another. */
import type { SessionEvent } from './event.ts';
import type { Copy } from './library.ts';
import { dayOf } from './progress/day.ts';
import type { IsoTime } from './units.ts';

/** So many sessions without a copy, or so many days with one session at least, and a copy is asked for. Our own numbers, no source. */
export const COPY_AFTER = { sessions: 5, days: 14 } as const;

export interface CopyAge {
  /** Of the last copy; null: none was ever handed out on this device. */
  readonly daysAgo: number | null;
  /** Begun on this device since, and so on this device alone. */
  readonly sessionsSince: number;
  readonly isDue: boolean;
}

type Started = Pick<SessionEvent, 'device' | 'seq' | 'at'>;

/**
 * By the numbers of the events, not by the clock, which may have been set. What came from elsewhere is elsewhere too and does not count.
 * @param device this one
 */
export function ageOfCopy(copies: ReadonlyMap<string, Copy>, started: readonly Started[], device: string, now: IsoTime): CopyAge {
  const last = copies.get(device);
  const since = started.filter((session) => session.device === device && session.seq > (last?.seq ?? 0));
  const oldest = since.map(({ at }) => dayOf(at)).reduce((least, day) => Math.min(least, day), dayOf(now));
  const waitedDays = dayOf(now) - (last ? dayOf(last.at) : oldest);
  return {
    daysAgo: last ? Math.max(0, waitedDays) : null,
    sessionsSince: since.length,
    isDue: since.length >= COPY_AFTER.sessions || (since.length > 0 && waitedDays >= COPY_AFTER.days),
  };
}
