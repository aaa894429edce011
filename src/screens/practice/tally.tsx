/** The thin line at the bottom: kept of the last ten, treats left, minutes. */
import { useCallback } from 'react';
import type { SessionState } from '../../core/fold.ts';
import css from './tally.module.css';
import { useClock } from './use-clock.ts';

export function Tally({ live }: { live: SessionState }) {
  const { trials, today } = live.standing;
  const { limits } = live.start;
  const pausedS = live.pausedS;
  const minutes = useClock(useCallback((nowS) => Math.floor(Math.max(0, nowS - pausedS) / 60), [pausedS]));
  const last = trials.last;
  return (
    <footer className={css.tally}>
      <span>
        {last.length === 0 ? 'no trials on this step yet' : `${last.filter(Boolean).length} of ${last.length} kept on this step`}
      </span>
      <span>
        {today.reps} of {limits.reps} reps
      </span>
      {limits.treats === null ? null : <span>{Math.max(0, limits.treats - today.treats)} treats left</span>}
      <span>
        {minutes} of {limits.minutes} min
      </span>
    </footer>
  );
}
