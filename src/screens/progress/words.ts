/** Says in sentences what the charts of progress show; every share with its n. */

import type { DaysCount } from '../../core/progress/calendar.ts';
import { mondayOf, sayDay, sayDayShort } from '../../core/progress/day.ts';
import type { Cell, Column, Due, NextTry, Standing } from '../../core/progress/mastery.ts';
import { type Change, type Point, pooled, pooledRate, type SeriesTrend } from '../../core/progress/series.ts';
import type { HoldWeek } from '../../core/progress/weeks.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../../core/statistics/interval.ts';
import type { Rate } from '../../core/statistics/rate.ts';
import { wilson } from '../../core/statistics/share.ts';

export function count(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/** What began at a phase line: "Lie flat 4 s · garden". */
export function sayChanges(changes: readonly Change[]): string {
  return changes.map(sayChange).join(' · ');
}

function sayChange(change: Change): string {
  switch (change.kind) {
    case 'gap':
      return `${change.days} days between`;
    case 'plan':
      return `plan: ${change.to}`;
    case 'step':
      return change.to;
    case 'rule':
      return `rule: ${change.to}`;
    case 'place':
      return placeName(change.to);
    case 'handler':
      return `with ${personName(change.to)}`;
  }
}

export function placeName(place: string): string {
  return place === '' ? 'place not named' : place;
}

export function personName(handler: string): string {
  return handler === '' ? 'somebody' : handler;
}

export function sayColumn({ place, handler }: Column): string {
  return `${placeName(place)}, ${personName(handler)}`;
}

const ofHundred = (share: number): number => Math.round(100 * share);

/** "between 60 and 98 of 100". */
export function sayRange({ lower, upper }: Interval): string {
  return `between ${ofHundred(lower)} and ${ofHundred(upper)} of 100`;
}

/** "9 of 10", and what it may be in the long run where there are enough. */
export function sayCounts({ kept, of }: { readonly kept: number; readonly of: number }): string {
  if (of === 0) return 'no trials';
  const counts = `${kept} of ${count(of, 'trial')} kept`;
  return of < FEWEST_FOR_INTERVAL ? counts : `${counts}, in the long run ${sayRange(wilson(kept, of))}`;
}

export function findKept(points: readonly Point[], trend: SeriesTrend): string {
  if (points.length === 0) return 'No trials here yet.';
  const all = pooled(points);
  return `${count(points.length, 'session')}: ${sayCounts(all)}. ${sayTrend(trend)}`;
}

function sayTrend(trend: SeriesTrend): string {
  if (trend.kind === 'too-few')
    return `A trend is told from ${trend.need} sessions on that may be joined; since the latest change there ${trend.n === 1 ? 'is 1' : `are ${trend.n}`}.`;
  const { n, slopePer100, chance } = trend;
  if (chance > 0.05 || slopePer100 === 0) return `No clear rise or fall over the latest ${n} sessions.`;
  const size = Math.abs(slopePer100) < 1 ? 'less than 1' : `about ${Math.round(Math.abs(slopePer100))}`;
  return `Over the latest ${n} sessions it ${slopePer100 > 0 ? 'rises' : 'falls'}, by ${size} of 100 a session.`;
}

export function sayPoint(point: Point): string {
  const { n, day, under } = point;
  const where = [placeName(under.place), `with ${personName(under.handler)}`].join(', ');
  const broken = point.changes.length > 0 && n > 1 ? ` New here: ${sayChanges(point.changes)}.` : '';
  return `Session ${n}, ${sayDay(day)}, ${where}. ${sayCounts(point)}; mostly ${under.step}.${broken}`;
}

export function sayWeek(week: Pick<HoldWeek, 'week'>): string {
  return `week of ${sayDayShort(mondayOf(week.week))}`;
}

const seconds = (s: number): string => `${s.toFixed(1)} s`;

/** "3.4 s (2.9 s to not reached)". */
export function sayMedian({ median }: Pick<HoldWeek, 'median'>): string {
  const { medianS, lowerS, upperS } = median;
  if (medianS === null) return lowerS === null ? 'not reached' : `not reached, at least ${seconds(lowerS)}`;
  return `${seconds(medianS)} (${lowerS === null ? 'not reached' : seconds(lowerS)} to ${upperS === null ? 'not reached' : seconds(upperS)})`;
}

export function findHolds(weeks: readonly HoldWeek[]): string {
  const latest = weeks.at(-1);
  if (!latest) return 'No week here has five holds yet.';
  const { holds, lifts, median } = latest;
  const half =
    median.medianS === null
      ? 'More than half of the holds would outlast what you asked for, so half is not reached'
      : `Half of the holds would last longer than ${seconds(median.medianS)}`;
  return `In the ${sayWeek(latest)}: ${half} (${count(holds, 'hold')}, ${count(lifts, 'lift')}).`;
}

export function findRate(points: readonly Point[]): string {
  const rate = pooledRate(points);
  if (!rate) return 'No time was counted here yet.';
  return `${sayRate(rate.kept)} kept a minute, ${sayRate(rate.lifted)} lifted, over ${count(points.length, 'session')}.`;
}

function sayRate({ perMinute, interval }: Rate): string {
  return `${perMinute.toFixed(1)} (${interval.lower.toFixed(1)} to ${interval.upper.toFixed(1)})`;
}

export function findDays({ days, practised, rest, mostRunning }: DaysCount): string {
  if (days === 0) return 'No session yet.';
  if (practised === 0) return `No practice in the latest ${count(days, 'day')}.`;
  const running =
    mostRunning > 1 ? ` At most ${mostRunning} days of practice ran without rest.` : ' No two days of practice ran on.';
  return `${count(practised, 'day')} of practice and ${count(rest, 'rest day')} in the latest ${count(days, 'day')}.${running}`;
}

/** The next best thing, and how to go about it. */
export function sayNext(next: NextTry): string {
  switch (next.kind) {
    case 'begin':
      return 'Practise a first session.';
    case 'check':
      return `Check “${next.title}”: it was kept for good, and not practised for ${next.days} days.`;
    case 'try-here':
      return next.isNew === 'place'
        ? `Try “${next.title}” in a new place: ${placeName(next.at.place)}, with ${personName(next.at.handler)}.`
        : `Let ${personName(next.at.handler)} try “${next.title}”: ${placeName(next.at.place)}.`;
    case 'another-place':
      return `“${next.title}” is good in one place, ${placeName(next.knownPlace)}. Try it once in another.`;
    case 'go-on':
      return `“${next.title}” is the first step that is not kept for good yet.`;
    case 'all-kept':
      return 'Every step is kept for good. Check each now and then.';
  }
}

/** What makes it likely to work; null where there is nothing to add. */
export function sayHow(next: NextTry): string | null {
  switch (next.kind) {
    case 'try-here':
      return 'It was never tried there. Begin a step or two lower: in a new place an old step is new again.';
    case 'another-place':
      return 'Choose the other place before you practise, so that it is counted there.';
    case 'check':
      return 'A few reps are enough. If the head lifts, practise it again for a while.';
    default:
      return null;
  }
}

export function sayStanding(standing: Standing): string {
  switch (standing.kind) {
    case 'never':
      return 'not tried';
    case 'on-the-way':
      if (standing.running === 0) return 'on the way';
      return `${Math.min(standing.running, 3)} of 3 sessions at 9 in 10, ${count(standing.places, 'place')}`;
    case 'kept-for-good':
      return `kept for good since ${sayDayShort(standing.since)}`;
  }
}

export function sayCell(cell: Cell): string {
  if (cell.kind === 'never') return 'never tried';
  return `${cell.kept} of ${cell.of}`;
}

export function sayDue({ title, days, lastDay }: Due): string {
  return `${title}: last practised ${sayDay(lastDay)}, ${days} days ago`;
}
