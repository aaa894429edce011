/** Gives every session its place along: one slot each, a wider one where nothing is joined, and room for the names of what changed. */
import { line } from 'd3-shape';
import { sayDayShort } from '../../core/progress/day.ts';
import { type Change, type Point, stretchesOf } from '../../core/progress/series.ts';
import { sayChanges } from './words.ts';

export interface PhaseLine {
  readonly xPx: number;
  readonly label: string;
  /** The line of words it is written in, 0 the highest; null: no room, the table says it. */
  readonly row: number | null;
  /** On which side of the line the words stand. */
  readonly side: 'after' | 'before';
  /** Many days lie between, whatever else changed. */
  readonly isGap: boolean;
}

export interface Slots {
  /** [point]: middle of its slot. */
  readonly xPx: readonly number[];
  readonly lines: readonly PhaseLine[];
  readonly dates: readonly { readonly xPx: number; readonly text: string }[];
  readonly widthPx: number;
}

/** On the screen a slot is a target of 24 px (WCAG 2.2, 2.5.8); on paper nobody taps. */
export const SLOT_PX = { screen: 24, paper: 15 } as const;
export type Medium = keyof typeof SLOT_PX;

/** Rows of words above the plot. */
export const LABEL_ROWS = 3;
export const LABEL_ROW_PX = 18;
/** A letter at 14 px, on the wide side. */
const LETTER_PX = 7.6;
const LONGEST_LABEL = 26;
const DATE_PX = 58;
/** A scale without a session is still a scale. */
const NARROWEST_PX = 240;

export function layoutSlots(points: readonly Point[], medium: Medium): Slots {
  const slotPx = SLOT_PX[medium];
  const xPx: number[] = [];
  const marked: { xPx: number; changes: readonly Change[] }[] = [];
  let atPx = slotPx;
  points.forEach((point, nth) => {
    if (nth > 0 && point.changes.length > 0) {
      atPx += slotPx;
      marked.push({ xPx: atPx - slotPx, changes: point.changes });
    }
    xPx.push(atPx);
    atPx += slotPx;
  });
  const widthPx = Math.max(NARROWEST_PX, atPx);
  return { xPx, lines: placeLabels(labelled(points, marked), widthPx), dates: datesOf(points, xPx), widthPx };
}

/** The first phase has a name too. */
function labelled(points: readonly Point[], marked: readonly { xPx: number; changes: readonly Change[] }[]): PhaseLine[] {
  const [first] = points;
  if (!first) return [];
  const begin: Change[] = [{ kind: 'step', to: first.under.step }];
  if (first.under.place) begin.push({ kind: 'place', to: first.under.place });
  return [{ xPx: 0, changes: begin }, ...marked].map(({ xPx, changes }) => ({
    ...{ xPx, row: null, side: 'after' as const, label: sayChanges(changes) },
    isGap: changes.some(({ kind }) => kind === 'gap'),
  }));
}

function shorten(label: string): string {
  return label.length <= LONGEST_LABEL ? label : `${label.slice(0, LONGEST_LABEL - 1).trimEnd()}…`;
}

const lengthPx = (label: string): number => 5 + LETTER_PX * label.length;

/**
 * The newest first, each into the highest row that is free there: what stands now matters most. A long name is cut only where it
 * would not fit whole, and then the table and the session itself say it.
 */
function placeLabels(lines: readonly PhaseLine[], widthPx: number): readonly PhaseLine[] {
  const freeToPx = Array.from({ length: LABEL_ROWS }, () => widthPx);
  const placed = lines.toReversed().map((line): PhaseLine => {
    const place = placeFor(line, line.label, freeToPx, widthPx) ?? placeFor(line, shorten(line.label), freeToPx, widthPx);
    if (!place) return line;
    freeToPx[place.row] = place.fromPx - 4;
    return { ...line, label: place.label, row: place.row, side: place.side };
  });
  return placed.reverse();
}

/** One that would reach beyond the picture stands before its line instead: room for it would push sessions out of sight. */
function placeFor({ xPx }: PhaseLine, label: string, freeToPx: readonly number[], widthPx: number) {
  const longPx = lengthPx(label);
  const side = xPx + longPx > widthPx ? ('before' as const) : ('after' as const);
  const fromPx = side === 'after' ? xPx : xPx - longPx;
  const row = freeToPx.findIndex((px) => fromPx >= 0 && fromPx + longPx <= px);
  return row < 0 ? null : { label, side, fromPx, row };
}

function datesOf(points: readonly Point[], xPx: readonly number[]): Slots['dates'] {
  const dates: { xPx: number; text: string }[] = [];
  points.forEach(({ day }, nth) => {
    const x = xPx[nth] as number;
    const before = dates.at(-1);
    if (!before || x - before.xPx >= DATE_PX) dates.push({ xPx: x, text: sayDayShort(day) });
  });
  return dates;
}

/** Lines within stretches: across a change or a gap nothing is joined, and a point that stands alone needs no line. */
export function joined(points: readonly Point[], { xPx }: Slots, yOf: (point: Point) => number): string {
  const xOf = new Map(points.map((point, nth) => [point, xPx[nth] as number]));
  const draw = line<Point>((point) => xOf.get(point) as number, yOf);
  const stretches = stretchesOf(points).filter((stretch) => stretch.length > 1);
  return stretches.map((stretch) => draw(stretch)).join('');
}

/** A page without its margins and the scale on the left. */
const ROW_PX = 600;

/** As many sessions a row as a page is wide. */
export function cutRows(points: readonly Point[]): readonly (readonly Point[])[] {
  const rows: Point[][] = [[]];
  let usedPx = 0;
  points.forEach((point) => {
    const neededPx = SLOT_PX.paper * (point.changes.length > 0 ? 2 : 1);
    if (usedPx + neededPx > ROW_PX) {
      rows.push([]);
      usedPx = 0;
    }
    rows.at(-1)?.push(point);
    usedPx += neededPx;
  });
  return rows;
}
