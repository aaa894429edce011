/** Draws how long heads stay down, week by week: a step down at each lift, a tick at each mark, where the looking ended. */
import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import { t } from '../../core/language.ts';
import { mondayOf, sayDayShort } from '../../core/progress/day.ts';
import type { HoldWeek } from '../../core/progress/weeks.ts';
import { survivalAt } from '../../core/statistics/hold-time.ts';
import { capital } from '../../core/summary.ts';
import { sayHolds, sayLifts, saySessions } from './counts.ts';
import css from './ink.module.css';
import type { Medium } from './slots.ts';
import { Item, type Walk } from './walk.tsx';
import { sayMedian, sayWeek } from './words.ts';

/** On the screen it fits a phone whole: a curve that begins out of sight tells nothing. */
const PLOT_PX: Readonly<Record<Medium, number>> = { screen: 192, paper: 420 };
/** Room on the right for the names of the weeks. */
const NAME_PX = 106;
const HOLD_PX = { top: 12, height: 210, foot: 30 } as const;

export function holdWidthPx(medium: Medium): number {
  return PLOT_PX[medium] + NAME_PX;
}

export const HOLD_HEIGHT_PX = HOLD_PX.top + HOLD_PX.height + HOLD_PX.foot;

const y = scaleLinear([0, 1], [HOLD_PX.top + HOLD_PX.height, HOLD_PX.top]);
const tenth = (px: number): number => Math.round(10 * px) / 10;
const yOf = (share: number): number => tenth(y(share));

const SHARES = [
  [0, 'none'],
  [0.5, 'half'],
  [1, 'all'],
] as const;

/** Oldest first: the latest is a solid line, those before are dashed, the older the looser. */
const DASHES = ['1 5', '3 4', '8 4'];

interface HoldPlotProps {
  readonly weeks: readonly HoldWeek[];
  readonly medium: Medium;
  readonly walk?: Walk | undefined;
}

export function HoldAxis() {
  return SHARES.map(([share, text]) => (
    <text key={text} className={css.tick} x={52} y={yOf(share) + 5} textAnchor="end">
      {t(text)}
    </text>
  ));
}

export function HoldPlot({ weeks, medium, walk }: HoldPlotProps) {
  const plotPx = PLOT_PX[medium];
  const longestS = Math.max(1, ...weeks.map(({ curve }) => curve.longestS ?? 0));
  const x = scaleLinear([0, longestS], [0, plotPx]).nice(5);
  const xOf = (s: number) => tenth(x(s));
  const names = namesOf(weeks);
  return (
    <>
      {SHARES.map(([share, text]) => (
        <path key={text} className={css.guide} d={`M0,${yOf(share)}H${plotPx}`} />
      ))}
      {x.ticks(plotPx / 80).map((s) => (
        <text key={s} className={css.tick} x={xOf(s)} y={HOLD_HEIGHT_PX - 8} textAnchor={s === 0 ? 'start' : 'middle'}>
          {t('{n} s', { n: s })}
        </text>
      ))}
      {weeks.map((week, nth) => (
        <Item
          key={week.week}
          {...{ walk, nth }}
          name={sayHoldWeek(week)}
          shape={
            <Curve {...{ week, xOf, plotPx }} dash={DASHES[nth + DASHES.length + 1 - weeks.length]} nameY={names[nth] ?? 0} />
          }
          hit={{ x: plotPx + 2, y: (names[nth] ?? 0) - 17, width: NAME_PX - 2, height: 24 }}
        />
      ))}
    </>
  );
}

interface CurveProps {
  readonly week: HoldWeek;
  readonly xOf: (s: number) => number;
  readonly plotPx: number;
  readonly dash: string | undefined;
  readonly nameY: number;
}

/** @param dash none: the latest. */
function Curve({ week, xOf, plotPx, dash, nameY }: CurveProps) {
  const { curve, markedS } = week;
  const corners = [
    { atS: 0, survival: 1 },
    ...curve.drops,
    { atS: curve.longestS ?? 0, survival: curve.drops.at(-1)?.survival ?? 1 },
  ];
  const draw = line<{ atS: number; survival: number }>(
    ({ atS }) => xOf(atS),
    ({ survival }) => yOf(survival),
  ).curve(curveStepAfter);
  const endPx = xOf(curve.longestS ?? 0);
  const lastY = yOf(corners.at(-1)?.survival ?? 1);
  const ticks = [...new Set(markedS.map((s) => `M${xOf(s)},${yOf(survivalAt(curve, s) ?? 0) - 4}v8`))].join('');
  return (
    <>
      <path className={css.censored} d={ticks} />
      <path className={dash ? css.curve : css.latest} strokeDasharray={dash} d={draw(corners) ?? ''} />
      <path className={css.guide} d={`M${endPx + 3},${lastY}L${plotPx + 2},${nameY - 5}`} />
      <text className={css.label} x={plotPx + 5} y={nameY}>
        {t('week of {day}#in a chart, short', { day: sayDayShort(mondayOf(week.week)) })}
      </text>
    </>
  );
}

/** Names stand where their curves end, pushed apart so that none lies on another. [week] */
function namesOf(weeks: readonly HoldWeek[]): readonly number[] {
  const wanted = weeks.map(({ curve }, nth) => ({ nth, y: yOf(curve.drops.at(-1)?.survival ?? 1) + 5 }));
  const placed: number[] = [];
  let freeFrom = HOLD_PX.top + 4;
  for (const { nth, y: wantedY } of wanted.toSorted((a, b) => a.y - b.y || b.nth - a.nth)) {
    placed[nth] = Math.max(wantedY, freeFrom);
    freeFrom = placed[nth] + 25;
  }
  const over = Math.max(0, freeFrom - 25 - (HOLD_PX.top + HOLD_PX.height));
  return placed.map((px) => px - over);
}

export function sayHoldWeek(week: HoldWeek): string {
  return t('{week}: {holds} in {sessions}, {lifts}. Median {median}.', {
    ...{ week: capital(sayWeek(week)), holds: sayHolds(week.holds), sessions: saySessions(week.sessions) },
    ...{ lifts: sayLifts(week.lifts), median: sayMedian(week) },
  });
}
