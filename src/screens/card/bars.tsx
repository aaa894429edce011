/** Trials as bars: as much of it lies flat as was kept, and the rest tips up. The shapes of the one picture, hatched on paper. */
import type { Evidence } from '../../core/card/evidence.ts';
import { BarShape, type Ink } from '../picture/ink.tsx';
import type { Bar } from '../picture/layout.ts';
import css from './card.module.css';

/** Of all trials together, px. */
const WIDE_PX = 84;
/** So that one lift in thirty is still seen to tip up. */
const LEAST_PX = 12;
const GAP_PX = 5;

export function TrialBars({ evidence }: { evidence: Pick<Evidence, 'kept' | 'of'> }) {
  const bars = barsOf(evidence);
  return (['colour', 'hatch'] as const).map((ink: Ink) => (
    <svg key={ink} className={css[ink]} viewBox={`0 0 ${WIDE_PX + GAP_PX + 6} 40`} aria-hidden="true">
      <path className={css.tread} d={`M0,37H${WIDE_PX + GAP_PX + 6}`} />
      {bars.map((bar) => (
        <BarShape key={bar.outcome} bar={bar} ink={ink} />
      ))}
    </svg>
  ));
}

function barsOf({ kept, of }: Pick<Evidence, 'kept' | 'of'>): readonly Bar[] {
  const lifted = of - kept;
  const share = of === 0 ? 0 : kept / of;
  const least = (n: number) => (n > 0 ? LEAST_PX : 0);
  const keptPx = Math.min(WIDE_PX - least(lifted), Math.max(least(kept), Math.round(WIDE_PX * share)));
  const common = { n: 0, yPx: 37, notchesPx: [], isWarmUp: false };
  const flat: Bar = { ...common, fromPx: 1, lengthPx: keptPx, outcome: 'kept' };
  const tipped: Bar = { ...common, fromPx: kept > 0 ? keptPx + GAP_PX + 1 : 1, lengthPx: WIDE_PX - keptPx, outcome: 'lifted' };
  return [...(kept > 0 ? [flat] : []), ...(lifted > 0 ? [tipped] : [])];
}

/** A solid bar is kept for good, an outline not yet, a dot never tried: as in the grid of places. */
export function StandingShape({ kind }: { kind: 'kept' | 'not-yet' | 'never' }) {
  return (
    <svg className={css.standing} viewBox="0 0 32 16" aria-hidden="true">
      {kind === 'never' ? (
        <circle className={css.solid} cx={16} cy={8} r={2.5} />
      ) : (
        <rect className={kind === 'kept' ? css.solid : css.outline} x={3} y={3} width={26} height={10} />
      )}
    </svg>
  );
}
