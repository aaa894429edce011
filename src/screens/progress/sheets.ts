/** Lays what a chart draws out as rows: the table under it and its CSV are these. */
import { t } from '../../core/language.ts';
import type { CalendarWeek } from '../../core/progress/calendar.ts';
import { isoDay, mondayOf } from '../../core/progress/day.ts';
import type { Grid } from '../../core/progress/mastery.ts';
import type { Point } from '../../core/progress/series.ts';
import type { HoldWeek } from '../../core/progress/weeks.ts';
import { sayCell, sayChanges, sayColumn, sayMedian, sayStanding } from './words.ts';

export type SheetCell = string | number | null;

export interface Sheet {
  readonly head: readonly string[];
  readonly rows: readonly (readonly SheetCell[])[];
}

const rounded = (x: number): number => Math.round(100 * x) / 100;

export function keptSheet(points: readonly Point[]): Sheet {
  const head = [
    ...[t('session'), t('day'), t('kept'), t('trials'), t('from'), t('to')],
    ...[t('step'), t('place'), t('with'), t('rule'), t('plan'), t('new here')],
  ];
  const rows = points.map(({ n, day, kept, of, interval, under, changes }) => [
    ...[n, isoDay(day), kept, of, interval && rounded(interval.lower), interval && rounded(interval.upper)],
    ...[under.step, under.place, under.handler, under.rule, under.plan, sayChanges(changes)],
  ]);
  return { head, rows };
}

export function rateSheet(points: readonly Point[]): Sheet {
  const head = [
    ...[t('session'), t('day'), t('kept'), t('lifted'), t('minutes')],
    ...[t('kept a minute'), t('lifted a minute'), t('new here')],
  ];
  const rows = points.map(({ n, day, kept, of, spanS, perMinute, changes }) => [
    ...[n, isoDay(day), kept, of - kept, rounded(spanS / 60)],
    ...[perMinute && rounded(perMinute.kept), perMinute && rounded(perMinute.lifted), sayChanges(changes)],
  ]);
  return { head, rows };
}

/** One row for each fall of each curve; a week without a lift is one row. */
export function holdSheet(weeks: readonly HoldWeek[]): Sheet {
  const head = [
    ...[t('week of'), t('sessions'), t('holds'), t('lifts'), t('median')],
    ...[t('after, s'), t('still down, share'), t('holds watched')],
  ];
  const rows = weeks.flatMap((week) => {
    const common = [isoDay(mondayOf(week.week)), week.sessions, week.holds, week.lifts, sayMedian(week)];
    const { drops, longestS } = week.curve;
    if (drops.length === 0) return [[...common, longestS, 1, week.holds]];
    return drops.map(({ atS, survival, atRisk }) => [...common, atS, rounded(survival), atRisk]);
  });
  return { head, rows };
}

export function calendarSheet(weeks: readonly CalendarWeek[]): Sheet {
  const rows = weeks.flatMap(({ days }) =>
    days
      .filter(({ isOutside }) => !isOutside)
      .map(({ day, sessions, trials }) => [isoDay(day), sessions === 0 ? t('rest') : t('practice'), sessions, trials]),
  );
  return { head: [t('day'), t('what'), t('sessions'), t('trials')], rows };
}

export function gridSheet({ columns, rows }: Grid): Sheet {
  const head = [t('step'), t('over all'), ...columns.map(sayColumn)];
  return { head, rows: rows.map(({ title, standing, cells }) => [title, sayStanding(standing), ...cells.map(sayCell)]) };
}
