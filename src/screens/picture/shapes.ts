/** Draws each outcome's shape as a path: the shape tells the outcome, so that colour only repeats it. */
import { line } from 'd3-shape';
import type { Bar, Flag, PhaseMark, Tread } from './layout.ts';

/** Thickness of a bar. A warm-up is half as thick: it lies there, but it does not count. */
const THICK_PX = { trial: 14, warmUp: 7 };
/** How far a lifted bar's end tips up, and over what length. */
const TIP_PX = { rise: 15, run: 14 };
/** The marker at the end of a kept bar stands above it. */
const MARKER_PX = { wide: 4, above: 7 };
/** Line of the outlined shapes. */
export const OUTLINE_PX = 2.5;
/** Surface of a tread: bars lie on the line, not in it. */
const SURFACE_PX = 1;
export const POLE_PX = 40;

type Point = readonly [xPx: number, yPx: number];

const tenth = (px: number): number => Math.round(10 * px) / 10;
const through = line<Point>()
  .x(([xPx]) => tenth(xPx))
  .y(([, yPx]) => tenth(yPx));

function closed(points: readonly Point[]): string {
  return `${through(points)}Z`;
}

export function thicknessPx({ isWarmUp }: Pick<Bar, 'isWarmUp'>): number {
  return isWarmUp ? THICK_PX.warmUp : THICK_PX.trial;
}

/** What is filled: kept lies flat, lifted tips up at its far end. Short and void are outlines. */
export function bodyPath(bar: Bar): string | null {
  if (bar.outcome === 'kept') return flat(bar);
  return bar.outcome === 'lifted' ? tipped(bar) : null;
}

function flat(bar: Bar): string {
  const { fromPx, lengthPx } = bar;
  const bottom = bar.yPx - SURFACE_PX;
  const top = bottom - thicknessPx(bar);
  return closed([
    [fromPx, bottom],
    [fromPx, top],
    [fromPx + lengthPx, top],
    [fromPx + lengthPx, bottom],
  ]);
}

/** A band of even thickness with a mitred bend. */
function tipped(bar: Bar): string {
  const half = thicknessPx(bar) / 2;
  const run = Math.min(TIP_PX.run, 0.6 * bar.lengthPx);
  const rise = bar.isWarmUp ? 0.7 * TIP_PX.rise : TIP_PX.rise;
  const middle = bar.yPx - SURFACE_PX - half;
  const [bendPx, endPx] = [bar.fromPx + bar.lengthPx - run, bar.fromPx + bar.lengthPx];
  const mitre = half * Math.tan(Math.atan2(rise, run) / 2);
  const slant = Math.hypot(run, rise);
  const [acrossX, acrossY] = [(half * rise) / slant, (half * run) / slant];
  return closed([
    [bar.fromPx, middle + half],
    [bar.fromPx, middle - half],
    [bendPx - mitre, middle - half],
    [endPx - acrossX, middle - rise - acrossY],
    [endPx + acrossX, middle - rise + acrossY],
    [bendPx + mitre, middle + half],
  ]);
}

/** What is drawn as a line: short is open at its end, void goes all round (and is dotted). */
export function outlinePath(bar: Bar): string | null {
  if (bar.outcome !== 'short' && bar.outcome !== 'void') return null;
  const inset = OUTLINE_PX / 2;
  const bottom = bar.yPx - SURFACE_PX - inset;
  const top = bar.yPx - SURFACE_PX - thicknessPx(bar) + inset;
  const [left, right] = [bar.fromPx + inset, bar.fromPx + bar.lengthPx - inset];
  const open: Point[] = [
    [right, top],
    [left, top],
    [left, bottom],
    [right, bottom],
  ];
  return bar.outcome === 'short' ? through(open) : closed(open);
}

/** The marker that caps a kept bar. */
export function markerPath(bar: Bar): string | null {
  if (bar.outcome !== 'kept') return null;
  const right = bar.fromPx + bar.lengthPx;
  const left = right - Math.min(MARKER_PX.wide, bar.lengthPx / 2);
  const bottom = bar.yPx - SURFACE_PX;
  const top = bottom - thicknessPx(bar) - MARKER_PX.above;
  return closed([
    [left, bottom],
    [left, top],
    [right, top],
    [right, bottom],
  ]);
}

/** A notch a second, on the flat part of a filled bar. */
export function notchPath(bar: Bar): string | null {
  const bend = bar.outcome === 'lifted' ? TIP_PX.run + 3 : MARKER_PX.wide + 2;
  const inside = bar.notchesPx.filter((px) => px < bar.lengthPx - bend);
  if (inside.length === 0 || bodyPath(bar) === null) return null;
  const thick = thicknessPx(bar);
  return inside.map((px) => `M${tenth(bar.fromPx + px)},${tenth(bar.yPx - SURFACE_PX - thick)}v${thick}`).join('');
}

/** The line of the stairs, broken where a mark is drawn instead. */
export function stairsPath(treads: readonly Tread[], marks: readonly PhaseMark[]): string {
  return treads.map((tread, at) => treadPath(tread, treads[at - 1], marks)).join('');
}

function treadPath(tread: Tread, before: Tread | undefined, marks: readonly PhaseMark[]): string {
  const start = before ? `V${tread.yPx}` : `M${tread.fromPx},${tread.yPx}`;
  const gaps = marks
    .filter(({ fromPx, toPx, yPx }) => yPx === tread.yPx && fromPx >= tread.fromPx && toPx <= tread.toPx)
    .map(({ fromPx, toPx }) => `H${fromPx}M${toPx},${tread.yPx}`);
  return `${start}${gaps.join('')}H${tread.toPx}`;
}

/** The stairs as a body, down to the floor. */
export function groundPath(treads: readonly Tread[], floorPx: number): string {
  const [first, last] = [treads[0], treads.at(-1)];
  if (!first || !last) return '';
  return `M${first.fromPx},${floorPx}${treads.map(({ yPx, toPx }) => `V${yPx}H${toPx}`).join('')}V${floorPx}Z`;
}

/** The cloth of a flag: pointed for a move, half of it for half a step, square to rest. */
export function clothPath({ call, xPx, yPx }: Flag): string {
  const [left, top] = [xPx + 1, yPx - POLE_PX];
  switch (call.kind) {
    case 'rest':
      return `M${left},${top}h14v12h-14Z`;
    case 'split':
      return `M${left},${top}l15,7h-15Z`;
    case 'stay':
    case 'remain':
      return `M${left},${top}h14l-5,6l5,6h-14Z`;
    case 'raise':
    case 'return':
    case 'begin':
      return `M${left},${top}l15,6.5l-15,6.5Z`;
  }
}
