/** Lays days of practice and days of rest out as a calendar. */
import { trialsOf } from './choice.ts';
import { type Day, mondayOf, type Week, weekOf } from './day.ts';
import type { SessionDigest } from './digest.ts';
import { groupBy } from './group.ts';

export interface CalendarDay {
  readonly day: Day;
  readonly sessions: number;
  readonly trials: number;
  /** Before the first session ever, or later than today: neither practice nor rest. */
  readonly isOutside: boolean;
}

export interface CalendarWeek {
  readonly week: Week;
  /** Monday first. */
  readonly days: readonly CalendarDay[];
}

/** The latest weeks up to today's, oldest first. */
export function calendarOf(chosen: readonly SessionDigest[], today: Day, weeks: number): readonly CalendarWeek[] {
  const byDay = groupBy(chosen, ({ day }) => day);
  const last = weekOf(today);
  const first = chosen.reduce((least, { day }) => Math.min(least, day), Number.POSITIVE_INFINITY);
  return Array.from({ length: weeks }, (_, nth) => last - weeks + 1 + nth).map((week) => ({
    week,
    days: Array.from({ length: 7 }, (_, nth) => dayFrom(byDay, mondayOf(week) + nth, first, today)),
  }));
}

function dayFrom(byDay: ReadonlyMap<Day, readonly SessionDigest[]>, day: Day, first: Day, today: Day): CalendarDay {
  const digests = byDay.get(day) ?? [];
  const trials = digests.reduce((sum, digest) => sum + trialsOf(digest).of, 0);
  return { day, sessions: digests.length, trials, isOutside: day < first || day > today };
}

export interface DaysCount {
  readonly days: number;
  readonly practised: number;
  readonly rest: number;
  readonly sessions: number;
  /** Most days of practice in a row. */
  readonly mostRunning: number;
}

export function countDays(weeks: readonly CalendarWeek[]): DaysCount {
  const days = weeks.flatMap((week) => week.days).filter(({ isOutside }) => !isOutside);
  let [running, mostRunning] = [0, 0];
  for (const { sessions } of days) {
    running = sessions > 0 ? running + 1 : 0;
    mostRunning = Math.max(mostRunning, running);
  }
  const practised = days.filter(({ sessions }) => sessions > 0).length;
  const sessions = days.reduce((sum, day) => sum + day.sessions, 0);
  return { days: days.length, practised, rest: days.length - practised, sessions, mostRunning };
}
