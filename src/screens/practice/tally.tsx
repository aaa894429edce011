/** The thin line at the bottom: kept of the last ten, treats left, minutes. */
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import type { Seconds } from '../../core/units.ts';
import css from './tally.module.css';
import { useWhole } from './use-clock.ts';

export function Tally({ live }: { live: SessionState }) {
  const { trials, today } = live.standing;
  const { limits } = live.start;
  const { pausedS } = live;
  const stillAtS = stoodStillAtS(live);
  const running = useWhole(stillAtS === null ? pausedS : null, 60);
  const minutes = running ?? Math.floor(Math.max(0, (stillAtS ?? 0) - pausedS) / 60);
  const last = trials.last;
  return (
    <footer className={css.tally}>
      <span>
        {last.length === 0
          ? t('no trials on this step yet')
          : t('{kept} of {of} kept on this step', { kept: last.filter(Boolean).length, of: last.length })}
      </span>
      <span>{t('{n} of {of} reps', { n: today.reps, of: limits.reps })}</span>
      {limits.treats === null ? null : <span>{sayTreats(Math.max(0, limits.treats - today.treats))}</span>}
      <span>{t('{n} of {of} min', { n: minutes, of: limits.minutes })}</span>
    </footer>
  );
}

/** Since when the minutes stand: a pause is not practice, nor is what comes after the end. Null: they run. */
function stoodStillAtS({ phase, latestS }: SessionState): Seconds | null {
  if (phase.phase === 'paused') return phase.sinceS;
  return phase.phase === 'ended' ? latestS : null;
}

function sayTreats(left: number): string {
  return left === 1 ? t('1 treat left') : t('{n} treats left', { n: left });
}
