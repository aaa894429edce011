/** Draws days of practice and days of rest: a week a column, Monday on top. Practice is a filled square with its trials, rest a ring. */

import { useId } from 'react';
import { localeSpoken, t } from '../../core/language.ts';
import type { CalendarDay, CalendarWeek } from '../../core/progress/calendar.ts';
import { mondayOf, sayDay, sayDayShort } from '../../core/progress/day.ts';
import { saySessions, sayTrialCount } from './counts.ts';
import css from './ink.module.css';
import { Item, type Walk } from './walk.tsx';

const CELL_PX = 26;
const TOP_PX = 4;
export const CALENDAR_HEIGHT_PX = TOP_PX + 7 * CELL_PX + 26;

export function calendarWidthPx(weeks: readonly CalendarWeek[]): number {
  return weeks.length * CELL_PX + 30;
}

export function CalendarAxis() {
  return weekdays().map((name, nth) => (
    <text key={name} className={css.tick} x={52} y={TOP_PX + nth * CELL_PX + 18} textAnchor="end">
      {name}
    </text>
  ));
}

/** Monday first. */
function weekdays(): readonly string[] {
  const format = new Intl.DateTimeFormat(localeSpoken(), { weekday: 'short', timeZone: 'UTC' });
  // 5 January 1970 was a Monday.
  return Array.from({ length: 7 }, (_, nth) => format.format(Date.UTC(1970, 0, 5 + nth)));
}

interface CalendarPlotProps {
  readonly weeks: readonly CalendarWeek[];
  /** On paper hatched, because colour is none there. */
  readonly hatched?: boolean;
  readonly walk?: Walk | undefined;
}

export function CalendarPlot({ weeks, hatched = false, walk }: CalendarPlotProps) {
  // A name of its own: a pattern of a picture that is not shown fills nothing.
  const hatch = useId();
  return (
    <>
      {hatched ? (
        <defs>
          <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path className={css.hatch} d="M1,0V5" />
          </pattern>
        </defs>
      ) : null}
      {weeks.map(({ week, days }, column) => (
        <g key={week} transform={`translate(${column * CELL_PX + 4},${TOP_PX})`}>
          {days.map((day, row) => (
            <Item
              key={day.day}
              walk={walk}
              nth={7 * column + row}
              name={sayCalendarDay(day)}
              shape={<DayShape day={day} yPx={row * CELL_PX} hatch={hatched ? hatch : null} />}
              hit={{ x: 0, y: row * CELL_PX, width: CELL_PX, height: CELL_PX }}
            />
          ))}
          {column % 3 === 0 ? (
            <text className={css.tick} x={2} y={7 * CELL_PX + 18}>
              {sayDayShort(mondayOf(week))}
            </text>
          ) : null}
        </g>
      ))}
    </>
  );
}

function DayShape({ day, yPx, hatch }: { day: CalendarDay; yPx: number; hatch: string | null }) {
  const middle = CELL_PX / 2;
  if (day.isOutside) return <circle className={css.outside} cx={middle} cy={yPx + middle} r={1.5} />;
  if (day.sessions === 0) return <circle className={css.rest} cx={middle} cy={yPx + middle} r={4} />;
  const fill = hatch ? { className: css.practisedHatched, fill: `url(#${hatch})` } : { className: css.practised };
  return (
    <>
      <rect x={2} y={yPx + 2} width={CELL_PX - 4} height={CELL_PX - 4} rx={3} {...fill} />
      <text className={hatch ? css.numberHatched : css.number} x={middle} y={yPx + 18} textAnchor="middle">
        {day.trials}
      </text>
    </>
  );
}

export function sayCalendarDay({ day, sessions, trials, isOutside }: CalendarDay): string {
  if (isOutside) return t('{day}: before your first session, or still ahead.', { day: sayDay(day) });
  if (sessions === 0) return t('{day}: a rest day.', { day: sayDay(day) });
  return `${sayDay(day)}: ${saySessions(sessions)}, ${sayTrialCount(trials)}.`;
}
