/** Says in sentences what the charts of progress show; every share with its n. */

import { fixed, t } from '../../core/language.ts';
import type { DaysCount } from '../../core/progress/calendar.ts';
import { mondayOf, sayDay, sayDayShort } from '../../core/progress/day.ts';
import type { Cell, Column, Due, NextTry, Standing } from '../../core/progress/mastery.ts';
import { type Change, type Point, pooled, pooledRate, type SeriesTrend } from '../../core/progress/series.ts';
import type { HoldWeek } from '../../core/progress/weeks.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../../core/statistics/interval.ts';
import type { Rate } from '../../core/statistics/rate.ts';
import { wilson } from '../../core/statistics/share.ts';
import { sayHolds, sayLifts, sayPlaces, saySessions } from './counts.ts';

/** What began at a phase line: "Lie flat 4 s · garden". */
export function sayChanges(changes: readonly Change[]): string {
  return changes.map(sayChange).join(' · ');
}

function sayChange(change: Change): string {
  switch (change.kind) {
    case 'gap':
      return t('{n} days between', { n: change.days });
    case 'plan':
      return t('plan: {title}', { title: change.to });
    case 'step':
      return change.to;
    case 'rule':
      return t('rule: {rule}', { rule: change.to });
    case 'place':
      return placeName(change.to);
    case 'handler':
      return withPerson(change.to);
  }
}

export function placeName(place: string): string {
  return place === '' ? t('place not named') : place;
}

export function personName(handler: string): string {
  return handler === '' ? t('somebody') : handler;
}

function withPerson(handler: string): string {
  return handler === '' ? t('with somebody') : t('with {name}', { name: handler });
}

export function sayColumn({ place, handler }: Column): string {
  return `${placeName(place)}, ${personName(handler)}`;
}

const ofHundred = (share: number): number => Math.round(100 * share);

/** "between 60 and 98 of 100". */
export function sayRange({ lower, upper }: Interval): string {
  return t('between {lower} and {upper} of 100', { lower: ofHundred(lower), upper: ofHundred(upper) });
}

/** "9 of 10", and what it may be in the long run where there are enough. */
export function sayCounts({ kept, of }: { readonly kept: number; readonly of: number }): string {
  if (of === 0) return t('no trials');
  const counts = of === 1 ? t('{kept} of 1 trial kept', { kept }) : t('{kept} of {n} trials kept', { kept, n: of });
  if (of < FEWEST_FOR_INTERVAL) return counts;
  return t('{counts}, in the long run {range}', { counts, range: sayRange(wilson(kept, of)) });
}

export function findKept(points: readonly Point[], trend: SeriesTrend): string {
  if (points.length === 0) return t('No trials here yet.');
  const all = pooled(points);
  return `${saySessions(points.length)}: ${sayCounts(all)}. ${sayTrend(trend)}`;
}

function sayTrend(trend: SeriesTrend): string {
  if (trend.kind === 'too-few') return sayTooFew(trend);
  const { n, slopePer100, chance } = trend;
  if (chance > 0.05 || slopePer100 === 0) return t('No clear rise or fall over the latest {n} sessions.', { n });
  const steep = Math.abs(slopePer100);
  const size = steep < 1 ? t('less than 1') : t('about {n}', { n: Math.round(steep) });
  return slopePer100 > 0
    ? t('Over the latest {n} sessions it rises, by {size} of 100 a session.', { n, size })
    : t('Over the latest {n} sessions it falls, by {size} of 100 a session.', { n, size });
}

function sayTooFew({ need, n }: Extract<SeriesTrend, { kind: 'too-few' }>): string {
  return n === 1
    ? t('A trend is told from {need} sessions on that may be joined; since the latest change there is 1.', { need })
    : t('A trend is told from {need} sessions on that may be joined; since the latest change there are {n}.', { need, n });
}

export function sayPoint(point: Point): string {
  const { n, day, under } = point;
  const where = `${placeName(under.place)}, ${withPerson(under.handler)}`;
  const said = t('Session {n}, {day}, {where}. {counts}; mostly {step}.', {
    ...{ n, day: sayDay(day), where, counts: sayCounts(point), step: under.step },
  });
  const isBroken = point.changes.length > 0 && n > 1;
  return isBroken ? `${said} ${t('New here: {changes}.', { changes: sayChanges(point.changes) })}` : said;
}

export function sayWeek(week: Pick<HoldWeek, 'week'>): string {
  return t('week of {day}', { day: sayDayShort(mondayOf(week.week)) });
}

const seconds = (s: number): string => `${fixed(s, 1)} s`;

const secondsOrNot = (s: number | null): string => (s === null ? t('not reached') : seconds(s));

/** "3.4 s (2.9 s to not reached)". */
export function sayMedian({ median }: Pick<HoldWeek, 'median'>): string {
  const { medianS, lowerS, upperS } = median;
  if (medianS === null)
    return lowerS === null ? t('not reached') : t('not reached, at least {lower}', { lower: seconds(lowerS) });
  const range = { lower: secondsOrNot(lowerS), upper: secondsOrNot(upperS) };
  return t('{value} ({lower} to {upper})', { value: seconds(medianS), ...range });
}

export function findHolds(weeks: readonly HoldWeek[]): string {
  const latest = weeks.at(-1);
  if (!latest) return t('No week here has five holds yet.');
  const { holds, lifts, median } = latest;
  const half =
    median.medianS === null
      ? t('More than half of the holds would outlast what you asked for, so half is not reached')
      : t('Half of the holds would last longer than {s}', { s: seconds(median.medianS) });
  return t('In the {week}: {half} ({holds}, {lifts}).', {
    ...{ week: sayWeek(latest), half, holds: sayHolds(holds), lifts: sayLifts(lifts) },
  });
}

export function findRate(points: readonly Point[]): string {
  const rate = pooledRate(points);
  if (!rate) return t('No time was counted here yet.');
  return t('{kept} kept a minute, {lifted} lifted, over {sessions}.', {
    ...{ kept: sayRate(rate.kept), lifted: sayRate(rate.lifted), sessions: saySessions(points.length) },
  });
}

function sayRate({ perMinute, interval }: Rate): string {
  const range = { lower: fixed(interval.lower, 1), upper: fixed(interval.upper, 1) };
  return t('{value} ({lower} to {upper})', { value: fixed(perMinute, 1), ...range });
}

export function findDays(counted: DaysCount): string {
  const { days, practised, mostRunning } = counted;
  if (days === 0) return t('No session yet.');
  if (practised === 0)
    return days === 1 ? t('No practice in the latest 1 day.') : t('No practice in the latest {n} days.', { n: days });
  if (days === 1) return t('The first day of practice.');
  const running =
    mostRunning > 1
      ? t('At most {n} days of practice ran without rest.', { n: mostRunning })
      : t('No two days of practice ran on.');
  return `${sayDays(counted)} ${running}`;
}

function sayDays({ days, practised, rest }: DaysCount): string {
  const said = {
    practised: practised === 1 ? t('1 day of practice') : t('{n} days of practice', { n: practised }),
    rested: rest === 1 ? t('1 rest day') : t('{n} rest days', { n: rest }),
  };
  return t('{practised} and {rested} in the latest {n} days.', { ...said, n: days });
}

/** The next best thing, and how to go about it. */
export function sayNext(next: NextTry): string {
  switch (next.kind) {
    case 'begin':
      return t('Practise a first session.');
    case 'check':
      return t('Check “{title}”: it was kept for good, and not practised for {n} days.', { title: next.title, n: next.days });
    case 'try-here':
      return sayTryHere(next);
    case 'another-place':
      return t('“{title}” is good in one place, {place}. Try it once in another.', {
        ...{ title: next.title, place: placeName(next.knownPlace) },
      });
    case 'go-on':
      return next.isPractised
        ? t('“{title}” is the hardest practised step that is not kept for good yet.', { title: next.title })
        : t('Next on the ladder, not practised yet: “{title}”.', { title: next.title });
    case 'too-big':
      return sayTooBig(next);
    case 'all-kept':
      return t('Every step is kept for good. Check each now and then.');
  }
}

function sayTooBig({ title, at, latest, better }: Extract<NextTry, { kind: 'too-big' }>): string {
  const lifted = latest.of - latest.kept;
  const said = { title, place: placeName(at.place), lifted, of: latest.of };
  return better
    ? t('“{title}” lifted {lifted} of {of} times in one place, {place}. Practise it in another, where it is good: {better}.', {
        ...{ ...said, better: placeName(better.place) },
      })
    : t(
        '“{title}” lifted {lifted} of {of} times in one place, {place}, and nothing easier is on the ladder. Put a step under it.',
        said,
      );
}

function sayTryHere({ title, isNew, at }: Extract<NextTry, { kind: 'try-here' }>): string {
  const place = placeName(at.place);
  if (isNew === 'place')
    return t('Try “{title}” in a new place: {place}, {with}.', { title, place, with: withPerson(at.handler) });
  return at.handler === ''
    ? t('Let somebody try “{title}”: {place}.', { title, place })
    : t('Let {name} try “{title}”: {place}.', { name: at.handler, title, place });
}

/** What makes it likely to work; null where there is nothing to add. */
export function sayHow(next: NextTry): string | null {
  switch (next.kind) {
    case 'try-here':
      return t('It was never tried there. Begin a step or two lower: in a new place an old step is new again.');
    case 'too-big':
      return t(
        'Half of it, or a quieter place, is where the dog can win. Does a dog that knew it lift now? Ask your veterinarian: it may hurt.',
      );
    case 'another-place':
      return t('Choose the other place before you practise, so that it is counted there.');
    case 'check':
      return t('A few reps are enough. If the head lifts, practise it again for a while.');
    default:
      return null;
  }
}

export function sayStanding(standing: Standing): string {
  switch (standing.kind) {
    case 'never':
      return t('not tried');
    case 'on-the-way':
      if (standing.running === 0) return t('on the way');
      return t('{n} of 3 sessions at 9 in 10, {places}', {
        ...{ n: Math.min(standing.running, 3), places: sayPlaces(standing.places) },
      });
    case 'kept-for-good':
      return t('kept for good since {day}', { day: sayDayShort(standing.since) });
  }
}

export function sayCell(cell: Cell): string {
  if (cell.kind === 'never') return t('never tried');
  return t('{kept} of {of}', { kept: cell.kept, of: cell.of });
}

export function sayDue({ title, days, lastDay }: Due): string {
  return t('{title}: last practised {day}, {n} days ago', { title, day: sayDay(lastDay), n: days });
}
