/** Lays the picture on paper: hatched, and in rows like written music, because a page cannot be scrolled. */
import { Drawing, Guides, Names, type Wraps, withRing } from './ink.tsx';
import type { StairsLayout } from './layout.ts';
import css from './paper.module.css';

/** An A4 page without its margins. */
const PAGE_PX = 680;
/** Around the treads of a row: flags above, a name below. */
const ABOVE_PX = 50;
const BELOW_PX = 28;

interface Row {
  readonly fromPx: number;
  readonly toPx: number;
}

export interface PaperProps {
  readonly layout: StairsLayout;
  readonly putRight?: ReadonlySet<number> | undefined;
}

export function Paper({ layout, putRight }: PaperProps) {
  const rows = cutRows(layout, PAGE_PX);
  return (
    <div className={css.paper}>
      {rows.map((row) => (
        <PaperRow key={row.fromPx} layout={layout} row={row} putRight={putRight} />
      ))}
    </div>
  );
}

function PaperRow({ layout, row, putRight }: PaperProps & { row: Row }) {
  const wraps: Wraps = { bar: (bar, shape) => (putRight?.has(bar.n) ? withRing(bar, shape) : shape) };
  const shown = within(layout, row);
  const heights = shown.treads.map(({ yPx }) => yPx);
  const topPx = Math.min(...heights) - ABOVE_PX;
  const heightPx = Math.max(...heights) + BELOW_PX - topPx;
  const levels = layout.levels.filter(({ yPx }) => yPx > topPx && yPx < topPx + heightPx);
  return (
    <svg className={css.row} width={PAGE_PX} height={heightPx} viewBox={`0 ${topPx} ${PAGE_PX} ${heightPx}`} aria-hidden="true">
      <Guides levels={levels} widthPx={PAGE_PX} />
      <g transform={`translate(${-row.fromPx})`}>
        <Drawing layout={shown} ink="hatch" wraps={wraps} />
      </g>
      <Names levels={levels} />
    </svg>
  );
}

/** Rows that end before a bar: calls stay with the rep that caused them. */
export function cutRows({ bars, widthPx }: StairsLayout, pagePx: number): readonly Row[] {
  const rows: Row[] = [];
  let fromPx = 0;
  bars.forEach((bar, at) => {
    const next = bars[at + 1];
    const endPx = next ? next.fromPx - 4 : widthPx;
    const startPx = bar.fromPx - 4;
    if (endPx - fromPx <= pagePx || startPx <= fromPx) return;
    rows.push({ fromPx, toPx: startPx });
    fromPx = startPx;
  });
  return [...rows, { fromPx, toPx: widthPx }];
}

/** What lies in a row; a tread that runs on is cut at its ends. */
function within(layout: StairsLayout, { fromPx, toPx }: Row): StairsLayout {
  const cut = <T extends Row>(spans: readonly T[]): T[] =>
    spans
      .filter((span) => span.toPx > fromPx && span.fromPx < toPx)
      .map((span) => ({ ...span, fromPx: Math.max(fromPx, span.fromPx), toPx: Math.min(toPx, span.toPx) }));
  return {
    ...layout,
    treads: cut(layout.treads),
    marks: cut(layout.marks),
    bars: layout.bars.filter((bar) => bar.fromPx >= fromPx && bar.fromPx < toPx),
    flags: layout.flags.filter(({ xPx }) => xPx >= fromPx && xPx < toPx),
  };
}
