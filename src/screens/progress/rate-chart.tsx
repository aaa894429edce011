/**
 * Draws how many reps a minute were kept and lifted on a multiply scale: equal steps up are equal factors, there is no zero.
 * (Standard celeration, R: dots are correct, crosses errors.) What did not happen lies under the scale, on a line of its own.
 */
import { scaleLog } from 'd3-scale';
import { fixed, t, written } from '../../core/language.ts';
import type { Point } from '../../core/progress/series.ts';
import css from './ink.module.css';
import { Dates, PhaseLines } from './phase-lines.tsx';
import { joined, LABEL_ROW_PX, LABEL_ROWS, layoutSlots, type Medium } from './slots.ts';
import { Item, type Walk } from './walk.tsx';
import { sayPoint } from './words.ts';

const TOP_PX = LABEL_ROWS * LABEL_ROW_PX + 10;
const PLOT_PX = 170;
const NEVER_PX = 22;
const FOOT_PX = 26;
export const RATE_HEIGHT_PX = TOP_PX + PLOT_PX + NEVER_PX + FOOT_PX;
const NEVER_Y_PX = TOP_PX + PLOT_PX + NEVER_PX;

const STOPS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

export type Timed = Point & { readonly perMinute: NonNullable<Point['perMinute']> };

export function isTimed(point: Point): point is Timed {
  return point.perMinute !== null;
}

interface Scale {
  readonly stops: readonly number[];
  readonly yOf: (perMinute: number) => number;
}

/** From the stop below the smallest rate that is none to the one above the largest. */
export function rateScale(points: readonly Point[]): Scale {
  const rates = points
    .flatMap(({ perMinute }) => (perMinute ? [perMinute.kept, perMinute.lifted] : []))
    .filter((rate) => rate > 0);
  const low = STOPS.findLast((stop) => stop <= Math.min(...rates, 1)) ?? 0.01;
  const high = STOPS.find((stop) => stop >= Math.max(...rates, 2)) ?? 100;
  const scale = scaleLog([low, high], [TOP_PX + PLOT_PX, TOP_PX]);
  const yOf = (rate: number) => (rate > 0 ? Math.round(10 * scale(Math.max(low, Math.min(high, rate)))) / 10 : NEVER_Y_PX);
  return { stops: STOPS.filter((stop) => stop >= low && stop <= high), yOf };
}

export function RateAxis({ points }: { points: readonly Point[] }) {
  const { stops, yOf } = rateScale(points);
  return (
    <>
      {stops.map((stop) => (
        <text key={stop} className={css.tick} x={52} y={yOf(stop) + 5} textAnchor="end">
          {written(stop)}
        </text>
      ))}
      <text className={css.tick} x={52} y={NEVER_Y_PX + 5} textAnchor="end">
        {t('none')}
      </text>
    </>
  );
}

interface RatePlotProps {
  readonly points: readonly Point[];
  /** The scale is that of all these: rows of one picture share it. */
  readonly scaledTo?: readonly Point[];
  readonly medium: Medium;
  readonly walk?: Walk | undefined;
}

export function RatePlot({ points, scaledTo = points, medium, walk }: RatePlotProps) {
  const slots = layoutSlots(points, medium);
  const { stops, yOf } = rateScale(scaledTo);
  const rates = (of: 'kept' | 'lifted') => joined(points, slots, (point) => yOf(point.perMinute?.[of] ?? 0));
  return (
    <>
      {[...stops.map(yOf), NEVER_Y_PX].map((yPx) => (
        <path key={yPx} className={css.guide} d={`M0,${yPx}H${slots.widthPx}`} />
      ))}
      <PhaseLines lines={slots.lines} topPx={TOP_PX - 4} bottomPx={NEVER_Y_PX} />
      <Dates dates={slots.dates} yPx={RATE_HEIGHT_PX - 4} />
      <path className={css.joined} d={rates('kept')} />
      <path className={css.liftedJoined} d={rates('lifted')} />
      {points.map((point, nth) => {
        const xPx = slots.xPx[nth] as number;
        const hit = { x: xPx - 12, y: TOP_PX - 4, width: 24, height: NEVER_Y_PX - TOP_PX + 12 };
        return <Item key={point.id} {...{ walk, nth, hit }} name={sayRates(point)} shape={<Marks {...{ point, xPx, yOf }} />} />;
      })}
    </>
  );
}

function Marks({ point: { perMinute }, xPx, yOf }: { point: Point; xPx: number; yOf: Scale['yOf'] }) {
  if (!perMinute) return null;
  const [kept, lifted] = [yOf(perMinute.kept), yOf(perMinute.lifted)];
  return (
    <>
      <path className={css.cross} d={`M${xPx - 4},${lifted - 4}l8,8m0,-8l-8,8`} />
      <circle className={css.dot} cx={xPx} cy={kept} r={4.5} />
    </>
  );
}

export function sayRates(point: Point): string {
  const { perMinute } = point;
  if (!perMinute) return sayPoint(point);
  const [kept, lifted] = [fixed(perMinute.kept, 1), fixed(perMinute.lifted, 1)];
  return `${sayPoint(point)} ${t('{kept} kept and {lifted} lifted a minute.', { kept, lifted })}`;
}
