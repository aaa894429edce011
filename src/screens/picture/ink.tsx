/** Inks a layout: the SVG of stairs, bars and flags, in colour for the screen and hatched for paper. Decides nothing. */
import { Fragment, type ReactNode } from 'react';
import css from './ink.module.css';
import type { Bar, Flag, Level, StairsLayout } from './layout.ts';
import {
  bodyPath,
  clothPath,
  groundPath,
  markerPath,
  notchPath,
  OUTLINE_PX,
  outlinePath,
  POLE_PX,
  stairsPath,
} from './shapes.ts';

/** `hatch`: patterns instead of colours, for print. */
export type Ink = 'colour' | 'hatch';

/** Wraps what can be picked; the plain picture wraps nothing. */
export interface Wraps {
  readonly bar?: (bar: Bar, shape: ReactNode) => ReactNode;
  readonly flag?: (flag: Flag, shape: ReactNode) => ReactNode;
}

const asIs = (_: unknown, shape: ReactNode): ReactNode => shape;

/** Everything but the names of the steps. */
export function Drawing({ layout, ink = 'colour', wraps = {} }: { layout: StairsLayout; ink?: Ink; wraps?: Wraps }) {
  const { treads, bars, flags, marks, heightPx } = layout;
  const { bar: wrapBar = asIs, flag: wrapFlag = asIs } = wraps;
  return (
    <>
      {ink === 'hatch' ? <Hatching /> : <path className={css.ground} d={groundPath(treads, heightPx)} />}
      <path className={css.stairs} d={stairsPath(treads, marks)} />
      {marks.map(({ kind, fromPx, toPx, yPx }) => (
        <path key={`${kind}-${fromPx}`} className={css[kind]} d={`M${fromPx},${yPx}H${toPx}`} />
      ))}
      {inOrder(bars, flags).map((item) => (
        <Fragment key={'n' in item ? item.n : `${item.afterRep}-${item.index}`}>
          {'n' in item ? wrapBar(item, <BarShape bar={item} ink={ink} />) : wrapFlag(item, <FlagShape flag={item} />)}
        </Fragment>
      ))}
    </>
  );
}

/** Bars and flags as time brought them: the order in which they are read and walked. */
export function inOrder(bars: readonly Bar[], flags: readonly Flag[]): readonly (Bar | Flag)[] {
  const xOf = (item: Bar | Flag) => ('n' in item ? item.fromPx : item.xPx);
  return [...bars, ...flags].sort((a, b) => xOf(a) - xOf(b));
}

export function BarShape({ bar, ink }: { bar: Bar; ink: Ink }) {
  const [body, outline, marker, notch] = [bodyPath(bar), outlinePath(bar), markerPath(bar), notchPath(bar)];
  const className = ink === 'hatch' ? css[`${bar.outcome}Hatched`] : css[bar.outcome];
  const fill = ink === 'hatch' && body ? { fill: `url(#hatch-${bar.outcome})` } : {};
  return (
    <>
      {body ? <path className={className} d={body} {...fill} /> : null}
      {outline ? <path className={className} d={outline} strokeWidth={OUTLINE_PX} /> : null}
      {notch && ink === 'colour' ? <path className={css.notch} d={notch} /> : null}
      {marker ? <path className={css.marker} d={marker} /> : null}
    </>
  );
}

export function FlagShape({ flag }: { flag: Flag }) {
  return (
    <>
      <path className={css.pole} d={`M${flag.xPx},${flag.yPx}v${-POLE_PX - 1}`} />
      <path className={flag.isCalledOut ? css.cloth : css.plainCloth} d={clothPath(flag)} />
    </>
  );
}

/** The ring lies under the tread, where no outcome is drawn. */
export function withRing(bar: Bar, shape: ReactNode): ReactNode {
  return (
    <>
      {shape}
      <PutRightDot x={bar.fromPx + 8} y={bar.yPx + 8} />
    </>
  );
}

/** A rep that is not as the ear had it. */
export function PutRightDot({ x, y }: { x: number; y: number }) {
  return <circle className={css.dot} cx={x} cy={y} r={3.5} />;
}

/** A hairline along each step. */
export function Guides({ levels, widthPx }: { levels: readonly Level[]; widthPx: number }) {
  return <path className={css.guide} d={levels.map(({ yPx }) => `M0,${yPx}H${widthPx}`).join('')} />;
}

/** The name of each step, under its line, where no bar lies. */
export function Names({ levels }: { levels: readonly Level[] }) {
  return levels
    .filter(({ isNamed }) => isNamed)
    .map(({ step, yPx }) => (
      <text key={step.id} className={css.name} x={8} y={yPx + 17}>
        {step.title}
      </text>
    ));
}

/** Kept leans one way, lifted the other. The same in every picture of a page, so one name is enough. */
export function Hatching() {
  return (
    <defs>
      <pattern id="hatch-kept" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className={css.hatch} d="M1,0V4" strokeWidth="2.2" />
      </pattern>
      <pattern id="hatch-lifted" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path className={css.hatch} d="M1,0V5" strokeWidth="0.9" />
      </pattern>
    </defs>
  );
}
