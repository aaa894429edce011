/** Counts days and weeks as the handler's calendar has them, from the local date that a moment was written with. */
import type { IsoTime } from '../units.ts';

/** Days since Thursday 1 January 1970, by the local date; the offset is cut off, not applied. */
export type Day = number;
/** Weeks that begin on a Monday, counted from the one of 1 January 1970. */
export type Week = number;

const DAY_MS = 86_400_000;

export function dayOf(at: IsoTime): Day {
  return Math.floor(Date.parse(`${at.slice(0, 10)}T00:00:00Z`) / DAY_MS);
}

/** The first day of 1970 was a Thursday: three days into its week. */
export function weekOf(day: Day): Week {
  return Math.floor((day + 3) / 7);
}

export function mondayOf(week: Week): Day {
  return 7 * week - 3;
}

/** `2026-03-01`. */
export function isoDay(day: Day): string {
  return new Date(day * DAY_MS).toISOString().slice(0, 10);
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** "1 March". */
export function sayDay(day: Day): string {
  const date = new Date(day * DAY_MS);
  return `${date.getUTCDate()} ${MONTHS[date.getUTCMonth()]}`;
}

/** "1 Mar". */
export function sayDayShort(day: Day): string {
  const date = new Date(day * DAY_MS);
  return `${date.getUTCDate()} ${(MONTHS[date.getUTCMonth()] as string).slice(0, 3)}`;
}
