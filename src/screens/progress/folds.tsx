/** Folds the chosen sessions into everything the screen shows. One reading of each array; charts and tables share it. */
import { type ReactNode, useMemo } from 'react';
import { t } from '../../core/language.ts';
import { calendarOf } from '../../core/progress/calendar.ts';
import { ANY, type Choice, choose } from '../../core/progress/choice.ts';
import type { Day } from '../../core/progress/day.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';
import { dueOf, gridOf, nextToTry } from '../../core/progress/mastery.ts';
import { seriesOf } from '../../core/progress/series.ts';
import { holdWeeks } from '../../core/progress/weeks.ts';
import { unbroken } from '../picture/unbroken.ts';
import { CalendarChart, HoldChart, KeptChart, RateChart } from './charts.tsx';
import { PlacesAndPeople } from './grid.tsx';
import css from './progress.module.css';
import { sayDue, sayHow, sayNext } from './words.ts';

/** More curves than that cross each other beyond telling. */
const WEEKS_OF_HOLDS = 4;
const WEEKS_OF_DAYS = 10;

export interface FoldsProps {
  /** Of one dog. */
  readonly digests: readonly SessionDigest[];
  readonly choice: Choice;
  /** Of the chosen plan; empty when none is, or it is no more. */
  readonly ladder: readonly { readonly id: string; readonly title: string }[];
  readonly today: Day;
  readonly dogName: string;
  /** The one next thing is followed by what can be done about it. */
  readonly children?: ReactNode;
}

export function foldAll({ digests, choice, ladder, today }: Omit<FoldsProps, 'children' | 'dogName'>) {
  const chosen = choose(digests, choice);
  const ofPlan = choice.planId === null ? null : choose(digests, { ...ANY, planId: choice.planId });
  const grid = ofPlan && gridOf(ofPlan, ladder);
  return {
    points: seriesOf(chosen),
    weeks: holdWeeks(chosen, WEEKS_OF_HOLDS),
    calendar: calendarOf(digests, today, WEEKS_OF_DAYS),
    grid,
    due: grid ? dueOf(grid, today) : [],
    next: grid && nextToTry(grid, today),
  };
}

export function Folds({ children, dogName, ...asked }: FoldsProps) {
  const { digests, choice, ladder, today } = asked;
  const { points, weeks, calendar, grid, due, next } = useMemo(
    () => foldAll({ digests, choice, ladder, today }),
    [digests, choice, ladder, today],
  );
  const name = fileNameOf(dogName);
  return (
    <>
      {next ? (
        <section className={css.next} aria-label={t('The next best thing')}>
          <p className={css.first}>{unbroken(sayNext(next))}</p>
          {sayHow(next) ? <p>{sayHow(next)}</p> : null}
          {due.length > 0 ? (
            <>
              <h2>{t('Due for a check')}</h2>
              <ul>
                {due.map((one) => (
                  <li key={one.stepId}>{sayDue(one)}</li>
                ))}
              </ul>
            </>
          ) : null}
          {children}
        </section>
      ) : (
        children
      )}
      <KeptChart points={points} name={name} />
      <HoldChart weeks={weeks} name={name} />
      <RateChart points={points} name={name} />
      {grid ? (
        <PlacesAndPeople grid={grid} name={`${name}-places`} />
      ) : (
        <p>{t('Choose one plan to see its places and people.')}</p>
      )}
      <CalendarChart weeks={calendar} name={name} />
    </>
  );
}

/** What any system takes as the name of a file. */
function fileNameOf(dogName: string): string {
  return (
    dogName
      .normalize('NFC')
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-+|-+$/g, '') || t('dog#in the name of a file')
  );
}
