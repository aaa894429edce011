/** The one picture, bars on stairs: whole and walkable in the review, the last few bars in practice, a thumbnail in a list. */
import { type KeyboardEvent, type ReactNode, type RefObject, useLayoutEffect, useState } from 'react';
import type { Rep } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import type { PlacedCall } from '../../core/placed-calls.ts';
import type { Step } from '../../core/plan.ts';
import { callWords } from '../../core/sentences.ts';
import { sayPicture, sayRep } from '../../core/summary.ts';
import { MoreToTheSide, useSideways } from '../parts/sideways.tsx';
import { Drawing, Guides, inOrder, Names, type Wraps, withRing } from './ink.tsx';
import { type Bar, FLAG_PX, type Flag, type StairsInput, type StairsLayout } from './layout.ts';
import { Paper } from './paper.tsx';
import { POLE_PX } from './shapes.ts';
import css from './stairs.module.css';
import { layoutFull, layoutSmall, SMALL_PX } from './variants.ts';

/** A rep or a flag. */
export type Picked =
  | { readonly kind: 'rep'; readonly n: number }
  | { readonly kind: 'call'; readonly afterRep: number; readonly index: number };

export interface StairsProps {
  readonly reps: readonly Rep[];
  /** The ladder with its half steps, as in `standing.steps`. */
  readonly steps: readonly Step[];
  /** Every call with its place (`callsInOrder`); left out: the calls that the reps carry. */
  readonly calls?: readonly PlacedCall[];
  readonly variant?: 'full' | 'strip' | 'thumbnail';
  readonly selected?: Picked | null;
  /** Reps that were put right afterwards: a ring under the bar. */
  readonly putRight?: ReadonlySet<number>;
  /** What a picture wider than its box shows first (full picture only); left out: the newest. */
  readonly from?: 'start' | 'newest';
  /** Makes reps and flags buttons (full picture only). */
  readonly onPick?: (picked: Picked) => void;
}

export function Stairs(props: StairsProps) {
  const { variant = 'full' } = props;
  return variant === 'full' ? <FullStairs {...props} /> : <SmallStairs {...props} variant={variant} />;
}

function inputOf({ reps, steps, calls }: StairsProps): StairsInput {
  return { reps, steps, ...(calls && { calls }) };
}

function SmallStairs(props: StairsProps & { variant: 'strip' | 'thumbnail' }) {
  const { variant, reps } = props;
  const layout = layoutSmall(inputOf(props), variant);
  const { widthPx } = SMALL_PX[variant];
  return (
    <svg
      className={css[variant]}
      role="img"
      aria-label={sayPicture(reps)}
      viewBox={`0 0 ${widthPx} ${layout.heightPx}`}
      preserveAspectRatio="xMinYMax meet"
    >
      <Drawing layout={layout} />
    </svg>
  );
}

function FullStairs(props: StairsProps) {
  const layout = layoutFull(inputOf(props));
  const sideways = useSideways();
  useNewestInView(sideways.box, layout.widthPx, props.from ?? 'newest');
  return (
    <div className={css.picture}>
      <div className={css.screen}>
        <Behind layout={layout} />
        <div className={`${css.scroll} ${sideways.fades}`} {...sideways.props}>
          {props.onPick ? <Walkable {...props} layout={layout} onPick={props.onPick} /> : <Still {...props} layout={layout} />}
        </div>
        <svg className={css.names} {...sizeOf({ ...layout, widthPx: WIDER_THAN_ANY_BOX_PX })} aria-hidden="true">
          <Names levels={layout.levels} />
        </svg>
      </div>
      {sideways.isWide ? <MoreToTheSide /> : null}
      <Paper layout={layoutFull(inputOf(props), Number.POSITIVE_INFINITY)} putRight={props.putRight} />
    </div>
  );
}

/** The lines of the steps stay where they are while the bars are scrolled. */
function Behind({ layout }: { layout: StairsLayout }) {
  return (
    <svg className={css.behind} {...sizeOf({ ...layout, widthPx: WIDER_THAN_ANY_BOX_PX })} aria-hidden="true">
      <Guides levels={layout.levels} widthPx={WIDER_THAN_ANY_BOX_PX} />
    </svg>
  );
}

/** What stays in place while bars are scrolled is drawn this wide and cut off by the box. */
const WIDER_THAN_ANY_BOX_PX = 2400;

function useNewestInView(box: RefObject<HTMLElement | null>, widthPx: number, from: 'start' | 'newest'): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: a wider picture has something newer to show.
  useLayoutEffect(() => {
    if (box.current && from === 'newest') box.current.scrollLeft = box.current.scrollWidth;
  }, [widthPx, from]);
}

/** In rem: the picture grows with the text. 16 px is what a rem is before anybody changes it. */
function sizeOf({ widthPx, heightPx }: Pick<StairsLayout, 'widthPx' | 'heightPx'>) {
  return { width: `${widthPx / 16}rem`, height: `${heightPx / 16}rem`, viewBox: `0 0 ${widthPx} ${heightPx}` };
}

function Still({ reps, layout }: StairsProps & { layout: StairsLayout }) {
  return (
    <svg className={css.ink} role="img" aria-label={sayPicture(reps)} {...sizeOf(layout)}>
      <Drawing layout={layout} />
    </svg>
  );
}

type WalkableProps = StairsProps & { layout: StairsLayout; onPick: (picked: Picked) => void };

/** One stop of the tab key; arrows walk from rep to flag to rep, Home and End to either end. */
function Walkable({ reps, layout, selected = null, putRight, from, onPick }: WalkableProps) {
  const items = inOrder(layout.bars, layout.flags).map(pickedOf);
  const [visited, setVisited] = useState<Picked | null>(null);
  const at = indexOfPicked(items, visited ?? selected, from);
  const wrap = (picked: Picked, name: string, shape: ReactNode, hit: ReactNode) => (
    // biome-ignore lint/a11y/useSemanticElements: SVG holds no button element.
    <g
      className={css.item}
      role="button"
      tabIndex={keyOf(picked) === keyOf(items[at]) ? 0 : -1}
      aria-label={name}
      aria-pressed={keyOf(picked) === keyOf(selected)}
      data-item={keyOf(picked)}
      onClick={() => onPick(picked)}
      onFocus={() => setVisited(picked)}
      onKeyDown={(event) => walkBy(event, items, picked, onPick)}
    >
      {hit}
      {shape}
    </g>
  );
  const wraps: Wraps = {
    bar: (bar, shape) => {
      const isPutRight = putRight?.has(bar.n) ?? false;
      const name = isPutRight ? `${sayBar(reps, bar)} ${t('Put right.')}` : sayBar(reps, bar);
      return wrap(pickedOf(bar), name, isPutRight ? withRing(bar, shape) : shape, <BarHit bar={bar} />);
    },
    flag: (flag, shape) => wrap(pickedOf(flag), sayFlag(flag), shape, <FlagHit flag={flag} />),
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a picture is no fieldset.
    <svg className={css.ink} role="group" aria-label={sayPicture(reps)} {...sizeOf(layout)}>
      <Drawing layout={layout} wraps={wraps} />
    </svg>
  );
}

function BarHit({ bar }: { bar: Bar }) {
  return <rect className={css.hit} x={bar.fromPx - 4} y={bar.yPx - 32} width={bar.lengthPx + 8} height={36} rx={4} />;
}

function FlagHit({ flag }: { flag: Flag }) {
  return <rect className={css.hit} x={flag.xPx - 5} y={flag.yPx - POLE_PX - 5} width={FLAG_PX} height={POLE_PX + 4} rx={4} />;
}

const keyOf = (picked: Picked | null | undefined): string =>
  !picked ? '' : picked.kind === 'rep' ? `rep-${picked.n}` : `call-${picked.afterRep}-${picked.index}`;

function pickedOf(item: Bar | Flag): Picked {
  return 'n' in item ? { kind: 'rep', n: item.n } : { kind: 'call', afterRep: item.afterRep, index: item.index };
}

/** Where the tab key lands: on what was visited last, else where the picture begins. */
function indexOfPicked(items: readonly Picked[], picked: Picked | null, from: StairsProps['from'] = 'newest'): number {
  const at = items.findIndex((item) => keyOf(item) === keyOf(picked));
  return at >= 0 ? at : from === 'start' ? 0 : items.length - 1;
}

function sayBar(reps: readonly Rep[], bar: Bar): string {
  const rep = reps.find(({ n }) => n === bar.n);
  return rep ? sayRep(rep) : t('Rep {n}', { n: bar.n });
}

export function sayFlag({ afterRep, call }: Pick<Flag, 'afterRep' | 'call'>): string {
  return afterRep === 0
    ? t('Before rep 1: {call}', { call: callWords(call.kind) })
    : t('After rep {n}: {call}', { n: afterRep, call: callWords(call.kind) });
}

const STEPS_OF: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowRight: (at, last) => Math.min(at + 1, last),
  ArrowLeft: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

function walkBy(event: KeyboardEvent<SVGGElement>, items: readonly Picked[], here: Picked, onPick: (to: Picked) => void): void {
  const to = STEPS_OF[event.key]?.(indexOfPicked(items, here), items.length - 1);
  if (to === undefined && event.key !== 'Enter' && event.key !== ' ') return;
  event.preventDefault();
  if (to === undefined) return onPick(here);
  const svg = event.currentTarget.ownerSVGElement;
  svg?.querySelector<SVGGElement>(`[data-item="${keyOf(items[to])}"]`)?.focus();
}
