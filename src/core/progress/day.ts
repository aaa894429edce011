/** Counts days and weeks as the handler's calendar has them, from the local date that a moment was written with. */
import { languageSpoken, localeSpoken } from '../language.ts';
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

/** "1 March". */
export function sayDay(day: Day): string {
  return formatOf('long').format(day * DAY_MS);
}

/** "1 Mar". */
export function sayDayShort(day: Day): string {
  // Every English month is cut to three letters; Intl would say "Sept" among them.
  if (languageSpoken() === 'en') return sayDay(day).replace(/(\p{L}{3})\p{L}+/u, '$1');
  return formatOf('short').format(day * DAY_MS);
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Made once: a calendar says hundreds of days. */
function formatOf(month: 'long' | 'short'): Intl.DateTimeFormat {
  const locale = localeSpoken();
  const key = `${locale} ${month}`;
  const known = formats.get(key) ?? new Intl.DateTimeFormat(locale, { day: 'numeric', month, timeZone: 'UTC' });
  formats.set(key, known);
  return known;
}
