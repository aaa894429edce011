/** Says what stands on the card, every count with its n, its days and its places. */
import type { Card, ExamHeld } from '../../core/card/card.ts';
import type { AreaCount } from '../../core/card/count-areas.ts';
import type { Evidence } from '../../core/card/evidence.ts';
import { areaName } from '../../core/ladders.ts';
import { localeSpoken, t } from '../../core/language.ts';
import type { BodyArea } from '../../core/plan.ts';
import { type Day, sayDay } from '../../core/progress/day.ts';

/** More places than this are told by their number. */
const MOST_PLACES = 3;

export function sayArea(area: BodyArea): string {
  return area === 'position' ? t('Holding still') : areaName(area);
}

/** "kitchen and car". */
export function listed(names: readonly string[]): string {
  return new Intl.ListFormat(localeSpoken(), { type: 'conjunction' }).format(names);
}

/** "12 November 2026": a card lies about for years. */
export function sayDate(day: Day): string {
  const style = { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' } as const;
  return new Intl.DateTimeFormat(localeSpoken(), style).format(day * 86_400_000);
}

/** The day, with its year where it is not this one. */
function sayLast(day: Day, today: Day): string {
  const yearOf = (one: Day) => new Date(one * 86_400_000).getUTCFullYear();
  return yearOf(day) === yearOf(today) ? sayDay(day) : sayDate(day);
}

/** "9 of 10 on 3 days, last 12 November". */
export function sayCounts({ kept, of, days, lastDay }: Evidence, today: Day): string {
  const last = sayLast(lastDay, today);
  return days === 1
    ? t('{kept} of {of} on 1 day, {last}', { kept, of, last })
    : t('{kept} of {of} on {days} days, last {last}', { kept, of, days, last });
}

/** "well: kitchen and car; not yet: park". */
export function sayPlaces({ keptIn, triedIn }: Evidence): string {
  const well = keptIn.length > 0 ? t('well: {places}', { places: shortList(keptIn) }) : '';
  const notYet = triedIn.length > 0 ? t('not yet: {places}', { places: shortList(triedIn) }) : '';
  return [well, notYet].filter(Boolean).join('; ');
}

function shortList(places: readonly string[]): string {
  const named = places.map((place) => (place === '' ? t('a place without a name') : place));
  if (named.length <= MOST_PLACES) return listed(named);
  const first = named.slice(0, MOST_PLACES - 1);
  return listed([...first, t('{n} other places', { n: named.length - first.length })]);
}

/** "Ears 8, Paws 7". */
export function sayAreas(counts: readonly AreaCount[]): string {
  return counts.map(({ area, n }) => `${sayArea(area)} ${n}`).join(', ');
}

export const sum = (counts: readonly AreaCount[]): number => counts.reduce((all, { n }) => all + n, 0);

export function sayPractised({ practised, today }: Card): string {
  if (!practised) return t('Nothing was practised with this app yet.');
  const { sessions, firstDay, lastDay } = practised;
  if (sessions === 1) return t('1 session, {day}.', { day: sayLast(lastDay, today) });
  return t('{n} sessions, {from} to {to}.', { n: sessions, from: sayLast(firstDay, today), to: sayLast(lastDay, today) });
}

/** "Examination of 12 November: 3 of 4 done. Head up at: look into the ear." */
export function sayExam({ day, done, lifted, of }: ExamHeld, today: Day): string {
  const when = sayLast(day, today);
  const all = of === null ? done.length + lifted.length : Math.max(of, done.length + lifted.length);
  const told = t('Examination of {day}: {n} of {of} done.', { day: when, n: done.length, of: all });
  return lifted.length === 0 ? told : `${told} ${t('Head up at: {what}.', { what: listed(lifted.slice(0, 3)) })}`;
}
