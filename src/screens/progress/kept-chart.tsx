/** Draws kept of trials, session by session: dots with their intervals, joined only where nothing changed. */
import { scaleLinear } from 'd3-scale';
import { t } from '../../core/language.ts';
import type { Point } from '../../core/progress/series.ts';
import css from './ink.module.css';
import { Dates, PhaseLines } from './phase-lines.tsx';
import { joined, LABEL_ROW_PX, LABEL_ROWS, layoutSlots, type Medium } from './slots.ts';
import { Item, type Walk } from './walk.tsx';
import { sayPoint } from './words.ts';

const TOP_PX = LABEL_ROWS * LABEL_ROW_PX + 10;
const PLOT_PX = 190;
const FOOT_PX = 26;
export const KEPT_HEIGHT_PX = TOP_PX + PLOT_PX + FOOT_PX;

const y = scaleLinear([0, 1], [TOP_PX + PLOT_PX, TOP_PX]);
const tenth = (px: number): number => Math.round(10 * px) / 10;
const yOf = (share: number): number => tenth(y(share));

const TICKS = [
  [0, 'none'],
  [0.5, 'half'],
  [0.9, '9 in 10'],
  [1, 'all'],
] as const;

export function KeptAxis() {
  return TICKS.map(([share, text]) => (
    <text key={text} className={css.tick} x={52} y={yOf(share) + (share === 1 ? 1 : 6)} textAnchor="end">
      {t(text)}
    </text>
  ));
}

export function KeptPlot({ points, medium, walk }: { points: readonly Point[]; medium: Medium; walk?: Walk | undefined }) {
  const slots = layoutSlots(points, medium);
  return (
    <>
      {TICKS.map(([share, text]) => (
        <path key={text} className={share === 0.9 ? css.goal : css.guide} d={`M0,${yOf(share)}H${slots.widthPx}`} />
      ))}
      <PhaseLines lines={slots.lines} topPx={TOP_PX - 4} bottomPx={TOP_PX + PLOT_PX} />
      <Dates dates={slots.dates} yPx={KEPT_HEIGHT_PX - 6} />
      <path className={css.joined} d={joined(points, slots, ({ kept, of }) => yOf(kept / of))} />
      {points.map((point, nth) => {
        const xPx = slots.xPx[nth] as number;
        const hit = { x: xPx - 12, y: TOP_PX - 4, width: 24, height: PLOT_PX + 8 };
        return <Item key={point.id} {...{ walk, nth, hit }} name={sayPoint(point)} shape={<Dot point={point} xPx={xPx} />} />;
      })}
    </>
  );
}

/** Filled: enough trials for an interval. Open: only counts. */
function Dot({ point: { kept, of, interval }, xPx }: { point: Point; xPx: number }) {
  const yPx = yOf(kept / of);
  if (!interval) return <circle className={css.few} cx={xPx} cy={yPx} r={4.5} />;
  return (
    <>
      <path className={css.whisker} d={`M${xPx},${yOf(interval.lower)}V${yOf(interval.upper)}`} />
      <circle className={css.dot} cx={xPx} cy={yPx} r={5} />
    </>
  );
}
