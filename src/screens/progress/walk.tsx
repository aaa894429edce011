/** Makes the points of a chart a walk: one stop of the tab key, arrows from point to point, and what is picked is told. */
import { type KeyboardEvent, type ReactNode, type SVGProps, useState } from 'react';
import css from './ink.module.css';

/** Where the walk stands, and what its points do. */
export interface Walk {
  readonly n: number;
  readonly here: number;
  readonly picked: number | null;
  onPick(nth: number): void;
  onVisit(nth: number): void;
}

const STEPS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowRight: (at, last) => Math.min(at + 1, last),
  ArrowLeft: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

/** Starts on the newest. */
export function useWalk(n: number, picked: number | null, onPick: (nth: number) => void): Walk {
  const [visited, onVisit] = useState<number | null>(null);
  return { n, here: Math.min(visited ?? picked ?? n - 1, n - 1), picked, onPick, onVisit };
}

export interface ItemProps {
  /** Left out: nothing can be picked, as on paper. */
  readonly walk?: Walk | undefined;
  readonly nth: number;
  readonly name: string;
  readonly shape: ReactNode;
  readonly hit: SVGProps<SVGRectElement>;
}

export function Item({ walk, nth, name, shape, hit }: ItemProps) {
  if (!walk) return shape;
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG holds no button element.
    <g
      className={css.item}
      role="button"
      tabIndex={nth === walk.here ? 0 : -1}
      aria-label={name}
      aria-pressed={nth === walk.picked}
      data-item={nth}
      onClick={() => walk.onPick(nth)}
      onFocus={() => walk.onVisit(nth)}
      onKeyDown={(event) => walkBy(event, nth, walk)}
    >
      <rect className={css.hit} rx={4} {...hit} />
      {shape}
    </g>
  );
}

function walkBy(event: KeyboardEvent<SVGGElement>, nth: number, { n, onPick }: Walk): void {
  const to = STEPS[event.key]?.(nth, n - 1);
  if (to === undefined && event.key !== 'Enter' && event.key !== ' ') return;
  event.preventDefault();
  if (to === undefined) return onPick(nth);
  event.currentTarget.ownerSVGElement?.querySelector<SVGGElement>(`[data-item="${to}"]`)?.focus();
}
