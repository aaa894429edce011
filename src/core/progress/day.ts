/** Counts days on the calendar of the place where a session was held; knows nothing of today. */
import type { IsoTime } from '../units.ts';

/** Whole days since 1 January 1970 on the local calendar. */
export type Day = number;

const DAY_MS = 86_400_000;

/** The offset is cut off, not applied: ten in the evening is that evening, wherever it is read. */
export function dayOf(at: IsoTime): Day {
  return Math.floor(Date.parse(`${at.slice(0, 10)}T00:00:00Z`) / DAY_MS);
}

/** "2026-03-02". */
export function isoDay(day: Day): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

/** 0 is Monday. 1 January 1970 was a Thursday. */
export function weekdayOf(day: Day): number {
  return (((day + 3) % 7) + 7) % 7;
}

/** The Monday of the week that the day lies in (ISO 8601). */
export function mondayOf(day: Day): Day {
  return day - weekdayOf(day);
}

const SHORT = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });

/** "2 Mar". */
export function sayDay(day: Day): string {
  return SHORT.format(new Date(day * DAY_MS));
}
