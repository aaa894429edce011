/** Draws two heaps of sessions step by step: A a filled dot, B an open diamond, each with its interval, and their difference under them. */
import { scaleLinear } from 'd3-scale';
import { t } from '../../core/language.ts';
import type { Counts, StepBeside } from '../../core/progress/compare.ts';
import { FEWEST_FOR_INTERVAL } from '../../core/statistics/interval.ts';
import { wilson } from '../../core/statistics/share.ts';
import progressCss from '../progress/ink.module.css';
import { Item, type Walk } from '../progress/walk.tsx';
import css from './beside-chart.module.css';
import { sayBeside } from './words.ts';

export const BESIDE_PX = { width: 280, title: 20, line: 24, gap: 12, foot: 26 } as const;
const ROW_PX = BESIDE_PX.title + 3 * BESIDE_PX.line + BESIDE_PX.gap;
/** No share lies at the very edge, or half of its dot would be cut off. */
const EDGE_PX = 8;

/** The table has the whole title. */
const LONGEST_TITLE = 36;

const share = scaleLinear([0, 1], [EDGE_PX, BESIDE_PX.width - EDGE_PX]);
const difference = scaleLinear([-1, 1], [EDGE_PX, BESIDE_PX.width - EDGE_PX]);
const tenth = (px: number): number => Math.round(10 * px) / 10;
const xOf = (value: number): number => tenth(share(value));
const dOf = (value: number): number => tenth(difference(value));

export const besideHeightPx = (rows: number): number => Math.max(1, rows) * ROW_PX + BESIDE_PX.foot;

const LINES = ['A', 'B', 'B − A'] as const;
const lineY = (row: number, line: number): number => row * ROW_PX + BESIDE_PX.title + line * BESIDE_PX.line + 12;

export function BesideAxis({ rows }: { rows: readonly StepBeside[] }) {
  return rows.flatMap(({ stepId }, row) =>
    LINES.map((name, line) => (
      <text key={`${stepId} ${name}`} className={progressCss.tick} x={52} y={lineY(row, line) + 5} textAnchor="end">
        {name}
      </text>
    )),
  );
}

export function BesidePlot({ rows, walk }: { rows: readonly StepBeside[]; walk?: Walk | undefined }) {
  return (
    <>
      {rows.map((row, nth) => (
        <Item
          key={row.stepId}
          {...{ walk, nth }}
          name={`${row.title}. ${sayBeside(row)}`}
          shape={<Row row={row} nth={nth} />}
          hit={{ x: 0, y: nth * ROW_PX, width: BESIDE_PX.width, height: ROW_PX - 6 }}
        />
      ))}
      <Foot yPx={rows.length * ROW_PX + 14} />
    </>
  );
}

function Row({ row: { title, first, second, difference: found }, nth }: { row: StepBeside; nth: number }) {
  const [a, b, d] = [0, 1, 2].map((line) => lineY(nth, line)) as [number, number, number];
  return (
    <>
      <text className={progressCss.label} x={0} y={nth * ROW_PX + 15}>
        {title.length > LONGEST_TITLE ? `${title.slice(0, LONGEST_TITLE - 1).trimEnd()}…` : title}
      </text>
      <path className={progressCss.guide} d={`M${xOf(0)},${a - 9}V${b + 9}M${xOf(1)},${a - 9}V${b + 9}`} />
      <Mark counts={first} yPx={a} isSecond={false} />
      <Mark counts={second} yPx={b} isSecond />
      <path className={css.none} d={`M${dOf(0)},${d - 11}V${d + 11}`} />
      {found ? (
        <>
          <path className={css.difference} d={`M${dOf(found.interval.lower)},${d}H${dOf(found.interval.upper)}`} />
          <path className={css.found} d={`M${dOf(found.difference)},${d - 7}V${d + 7}`} />
        </>
      ) : (
        <text className={progressCss.tick} x={dOf(0) + 8} y={d + 5}>
          {t('too few trials')}
        </text>
      )}
    </>
  );
}

function Mark({ counts: { kept, of }, yPx, isSecond }: { counts: Counts; yPx: number; isSecond: boolean }) {
  const x = xOf(kept / of);
  const interval = of < FEWEST_FOR_INTERVAL ? null : wilson(kept, of);
  return (
    <>
      {interval ? <path className={progressCss.whisker} d={`M${xOf(interval.lower)},${yPx}H${xOf(interval.upper)}`} /> : null}
      {isSecond ? (
        <path className={css.second} d={`M${x - 7},${yPx}L${x},${yPx - 7}L${x + 7},${yPx}L${x},${yPx + 7}Z`} />
      ) : (
        <circle className={progressCss.dot} cx={x} cy={yPx} r={5.5} />
      )}
    </>
  );
}

function Foot({ yPx }: { yPx: number }) {
  return (
    <>
      <text className={progressCss.tick} x={0} y={yPx}>
        {t('none kept, A more')}
      </text>
      <text className={progressCss.tick} x={BESIDE_PX.width} y={yPx} textAnchor="end">
        {t('all kept, B more')}
      </text>
    </>
  );
}
