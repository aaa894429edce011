/** The thin line at the bottom: kept of the last ten, treats left, minutes. */
import { useCallback } from 'react';
import type { SessionState } from '../../core/fold.ts';
import type { Seconds } from '../../core/units.ts';
import css from './tally.module.css';
import { useClock } from './use-clock.ts';

export function Tally({ live }: { live: SessionState }) {
  const { trials, today } = live.standing;
  const { limits } = live.start;
  const { pausedS } = live;
  const stillAtS = stoodStillAtS(live);
  const minutes = useClock(
    useCallback((nowS) => Math.floor(Math.max(0, (stillAtS ?? nowS) - pausedS) / 60), [stillAtS, pausedS]),
  );
  const last = trials.last;
  return (
    <footer className={css.tally}>
      <span>
        {last.length === 0 ? 'no trials on this step yet' : `${last.filter(Boolean).length} of ${last.length} kept on this step`}
      </span>
      <span>
        {today.reps} of {limits.reps} reps
      </span>
      {limits.treats === null ? null : <span>{sayTreats(Math.max(0, limits.treats - today.treats))}</span>}
      <span>
        {minutes} of {limits.minutes} min
      </span>
    </footer>
  );
}

/** Since when the minutes stand: a pause is not practice, nor is what comes after the end. Null: they run. */
function stoodStillAtS({ phase, latestS }: SessionState): Seconds | null {
  if (phase.phase === 'paused') return phase.sinceS;
  return phase.phase === 'ended' ? latestS : null;
}

function sayTreats(left: number): string {
  return left === 1 ? '1 treat left' : `${left} treats left`;
}
