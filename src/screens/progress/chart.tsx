/** The frame of every chart: a sentence of finding, the picture, what was picked, the same as a table, and the three files. */
import { type ReactNode, type RefObject, useDeferredValue, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { t } from '../../core/language.ts';
import { MoreToTheSide, useSideways } from '../parts/sideways.tsx';
import css from './chart.module.css';
import { SaveChart } from './save-chart.tsx';
import { SheetTable } from './sheet-table.tsx';
import type { Sheet } from './sheets.ts';

/** The scale on the left, which stays while the plot is scrolled. */
const AXIS_PX = 60;

/** A plot for paper, and how wide it is. */
export interface Sheeted {
  readonly plot: ReactNode;
  readonly widthPx: number;
}

export interface ChartProps {
  readonly title: string;
  readonly finding: string;
  /** How it is read: what the shapes mean. */
  readonly reading: string;
  readonly axis: ReactNode;
  /** On the screen, where points can be picked. */
  readonly plot: ReactNode;
  readonly widthPx: number;
  /** What a plot wider than its box shows first; left out: the newest. */
  readonly from?: 'start' | 'newest';
  /** In a file: whole. */
  readonly paper: Sheeted;
  /** Printed: in rows like written music, because a page cannot be scrolled. Left out: as in a file. */
  readonly rows?: readonly Sheeted[];
  readonly heightPx: number;
  readonly told: ReactNode;
  readonly sheet: Sheet;
  readonly fileName: string;
  readonly children?: ReactNode;
}

export function Chart(props: ChartProps) {
  const { title, finding, reading, axis, plot, widthPx, heightPx, told, sheet, children } = props;
  const sideways = useSideways();
  useNewestInView(sideways.box, widthPx, props.from ?? 'newest');
  const { paper, wanted, drawn } = usePaper();
  return (
    <section className={css.chart} aria-label={title}>
      <h2>{title}</h2>
      <p>{finding}</p>
      {children}
      <div className={css.screen}>
        <svg className={css.axis} {...sizeOf(AXIS_PX, heightPx)} aria-hidden="true">
          {axis}
        </svg>
        <div className={`${css.scroll} ${sideways.fades}`} {...sideways.props}>
          {/* biome-ignore lint/a11y/useSemanticElements: a picture is no fieldset. */}
          <svg className={css.plot} role="group" aria-label={`${title}. ${finding}`} {...sizeOf(widthPx, heightPx)}>
            {plot}
          </svg>
        </div>
      </div>
      {sideways.isWide ? <MoreToTheSide /> : null}
      <PaperChart {...props} box={paper} wanted={wanted} />
      <p className="soft small">{reading}</p>
      <p className={css.told} aria-live="polite">
        {told}
      </p>
      <details className={css.table}>
        <summary className={css.summary}>{t('The same as a table, {rows}', { rows: sayRows(sheet.rows.length) })}</summary>
        <SheetTable sheet={sheet} caption={title} />
      </details>
      <SaveChart name={props.fileName} sheet={sheet} picture={drawn} />
    </section>
  );
}

const sayRows = (n: number): string => (n === 1 ? t('1 row') : t('{n} rows', { n }));

interface PaperProps extends ChartProps {
  readonly box: RefObject<SVGSVGElement | null>;
}

/** The drawing for a file: after the screen, or at once for whoever asks before that. */
function usePaper() {
  const paper = useRef<SVGSVGElement>(null);
  const [wanted, setWanted] = useState(false);
  const drawn = () => {
    if (!paper.current) flushSync(() => setWanted(true));
    return paper.current;
  };
  return { paper, wanted, drawn };
}

function PaperChart({ wanted, ...props }: PaperProps & { readonly wanted: boolean }) {
  const late = useDeferredValue<PaperProps | null>(props, null);
  const shown = late ?? (wanted ? props : null);
  return shown ? <Papers {...shown} /> : null;
}

function Papers({ axis, paper, rows = [paper], heightPx, box }: PaperProps) {
  return (
    <>
      <Whole box={box} className={css.file} {...{ axis, heightPx }} sheet={paper} />
      <div className={css.paper}>
        {rows.map((row, nth) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the page.
          <Whole key={nth} className={css.row} {...{ axis, heightPx }} sheet={row} />
        ))}
      </div>
    </>
  );
}

interface WholeProps {
  readonly box?: RefObject<SVGSVGElement | null>;
  readonly className: string | undefined;
  readonly axis: ReactNode;
  readonly sheet: Sheeted;
  readonly heightPx: number;
}

/** Axis and plot as one picture. */
export function Whole({ box, className, axis, sheet: { plot, widthPx }, heightPx }: WholeProps) {
  const width = AXIS_PX + widthPx;
  return (
    <svg ref={box} className={className} width={width} height={heightPx} viewBox={`0 0 ${width} ${heightPx}`} aria-hidden="true">
      {axis}
      <g transform={`translate(${AXIS_PX})`}>{plot}</g>
    </svg>
  );
}

/** In rem: the picture grows with the text. */
function sizeOf(widthPx: number, heightPx: number) {
  return { width: `${widthPx / 16}rem`, height: `${heightPx / 16}rem`, viewBox: `0 0 ${widthPx} ${heightPx}` };
}

/** Two slots, which every plot has after its last point. */
const EDGE_REM = 3;

/** The right end; but a scale with few sessions has empty room after them, and begins where they do. */
function newestIn(box: HTMLElement): number {
  const last = [...box.querySelectorAll('[data-item]')].at(-1);
  const spareX = box.scrollWidth - box.clientWidth;
  if (!last) return spareX;
  const lastX = box.scrollLeft + last.getBoundingClientRect().right - box.getBoundingClientRect().left;
  const edgeX = EDGE_REM * Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  return Math.min(spareX, lastX + edgeX - box.clientWidth);
}

function useNewestInView(box: RefObject<HTMLElement | null>, widthPx: number, from: 'start' | 'newest'): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a wider picture has something newer to show.
  useLayoutEffect(() => {
    if (box.current && from === 'newest') box.current.scrollLeft = newestIn(box.current);
  }, [widthPx, from]);
}
