/** Sets the charts of progress up: each from one array, for the screen, for paper and for its table. */
import { type ReactNode, useState } from 'react';
import { t } from '../../core/language.ts';
import { type CalendarWeek, countDays } from '../../core/progress/calendar.ts';
import { type Point, trendOf } from '../../core/progress/series.ts';
import type { HoldWeek } from '../../core/progress/weeks.ts';
import { CALENDAR_HEIGHT_PX, CalendarAxis, CalendarPlot, calendarWidthPx, sayCalendarDay } from './calendar-chart.tsx';
import { Chart, type ChartProps } from './chart.tsx';
import { HOLD_HEIGHT_PX, HoldAxis, HoldPlot, holdWidthPx, sayHoldWeek } from './hold-chart.tsx';
import { KEPT_HEIGHT_PX, KeptAxis, KeptPlot } from './kept-chart.tsx';
import { Pages, usePages } from './pages.tsx';
import { isTimed, RATE_HEIGHT_PX, RateAxis, RatePlot, sayRates } from './rate-chart.tsx';
import { calendarSheet, holdSheet, keptSheet, rateSheet } from './sheets.ts';
import { cutRows, layoutSlots } from './slots.ts';
import { useWalk } from './walk.tsx';
import { findDays, findHolds, findKept, findRate, sayPoint } from './words.ts';

export function KeptChart({ points, name }: { points: readonly Point[]; name: string }) {
  const pages = usePages(points);
  const [picked, setPicked] = useState<string | null>(null);
  const { shown } = pages;
  const walk = useWalk(shown.length, indexOf(shown, picked), (nth) => setPicked(shown[nth]?.id ?? null));
  const point = shown.find(({ id }) => id === picked);
  return (
    <Chart
      title={t('Kept, session by session')}
      finding={findKept(points, trendOf(points))}
      reading={t(
        'A dot is a session, its line the range that such counts fit (95 %). An open dot has fewer than 5 trials. Lines never cross a change or 14 days without practice.',
      )}
      axis={<KeptAxis />}
      plot={<KeptPlot points={shown} medium="screen" walk={walk} />}
      widthPx={layoutSlots(shown, 'screen').widthPx}
      {...onPaper(shown, (points) => <KeptPlot points={points} medium="paper" />)}
      heightPx={KEPT_HEIGHT_PX}
      told={point ? <ToldSession point={point} words={sayPoint(point)} /> : t('Pick a session to read it.')}
      sheet={keptSheet(shown)}
      fileName={`${name}-kept`}
    >
      <Pages pages={pages} />
    </Chart>
  );
}

export function RateChart({ points, name }: { points: readonly Point[]; name: string }) {
  const timed = points.filter(isTimed);
  const pages = usePages(timed);
  const [picked, setPicked] = useState<string | null>(null);
  const { shown } = pages;
  const walk = useWalk(shown.length, indexOf(shown, picked), (nth) => setPicked(shown[nth]?.id ?? null));
  const point = shown.find(({ id }) => id === picked);
  return (
    <Chart
      title={t('Reps a minute')}
      finding={findRate(timed)}
      reading={t(
        'Equal steps up are equal factors: from 1 to 2 is as far as from 5 to 10. Dots are kept, crosses lifted. In brackets: the range that such counts fit (95 %).',
      )}
      axis={<RateAxis points={shown} />}
      plot={<RatePlot points={shown} medium="screen" walk={walk} />}
      widthPx={layoutSlots(shown, 'screen').widthPx}
      {...onPaper(shown, (points) => <RatePlot points={points} scaledTo={shown} medium="paper" />)}
      heightPx={RATE_HEIGHT_PX}
      told={point ? <ToldSession point={point} words={sayRates(point)} /> : t('Pick a session to read it.')}
      sheet={rateSheet(shown)}
      fileName={`${name}-rate`}
    >
      <Pages pages={pages} />
    </Chart>
  );
}

/** Whole for a file, in rows for a page. */
function onPaper(points: readonly Point[], draw: (points: readonly Point[]) => ReactNode): Pick<ChartProps, 'paper' | 'rows'> {
  const sheeted = (some: readonly Point[]) => ({ plot: draw(some), widthPx: layoutSlots(some, 'paper').widthPx });
  return { paper: sheeted(points), rows: cutRows(points).map(sheeted) };
}

function indexOf(points: readonly Point[], id: string | null): number | null {
  const at = points.findIndex((point) => point.id === id);
  return at < 0 ? null : at;
}

function ToldSession({ point, words }: { point: Point; words: string }) {
  // Invented sessions have no review.
  if (point.id.startsWith('invented-')) return words;
  return (
    <>
      {words} <a href={`#/review/${encodeURIComponent(point.id)}`}>{t('Its review')}</a>
    </>
  );
}

export function HoldChart({ weeks, name }: { weeks: readonly HoldWeek[]; name: string }) {
  const [picked, setPicked] = useState<number | null>(null);
  const walk = useWalk(
    weeks.length,
    weeks.findIndex(({ week }) => week === picked),
    (nth) => setPicked(weeks[nth]?.week ?? null),
  );
  const week = weeks.find((one) => one.week === picked);
  return (
    <Chart
      title={t('How long the head stays down')}
      finding={findHolds(weeks)}
      reading={t(
        'Up: the share of holds that last longer. A marker ends the looking, not the hold (small ticks), so the curve falls at lifts only. The latest week is the solid line.',
      )}
      axis={<HoldAxis />}
      plot={<HoldPlot weeks={weeks} medium="screen" walk={walk} />}
      widthPx={holdWidthPx('screen')}
      from="start"
      paper={{ plot: <HoldPlot weeks={weeks} medium="paper" />, widthPx: holdWidthPx('paper') }}
      heightPx={HOLD_HEIGHT_PX}
      told={week ? sayHoldWeek(week) : t('Pick a week to read it.')}
      sheet={holdSheet(weeks)}
      fileName={`${name}-holds`}
    />
  );
}

export function CalendarChart({ weeks, name }: { weeks: readonly CalendarWeek[]; name: string }) {
  const [picked, setPicked] = useState<number | null>(null);
  const days = weeks.flatMap((week) => week.days);
  const walk = useWalk(
    days.length,
    days.findIndex(({ day }) => day === picked),
    (nth) => setPicked(days[nth]?.day ?? null),
  );
  const day = days.find((one) => one.day === picked);
  return (
    <Chart
      title={t('Practice and rest')}
      finding={findDays(countDays(weeks))}
      reading={t(
        'A filled square is a day of practice with its trials, a ring a rest day. Dogs learn well with rest between: one or two sessions a week beat daily ones (44 Beagles; Meyer & Ladewig 2008, Demant et al. 2011).',
      )}
      axis={<CalendarAxis />}
      plot={<CalendarPlot weeks={weeks} walk={walk} />}
      widthPx={calendarWidthPx(weeks)}
      paper={{ plot: <CalendarPlot weeks={weeks} hatched />, widthPx: calendarWidthPx(weeks) }}
      heightPx={CALENDAR_HEIGHT_PX}
      told={day ? sayCalendarDay(day) : t('Pick a day to read it.')}
      sheet={calendarSheet(weeks)}
      fileName={`${name}-days`}
    />
  );
}
