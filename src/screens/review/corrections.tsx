/** Says what was put right, shows what was heard beside it, and takes a correction back or brings it again. */
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { sayTrials, tally } from '../../core/summary.ts';
import { sayBeside } from './beside-words.ts';
import type { Correcting } from './correct-rep.tsx';
import css from './review.module.css';
import { UndoRedo } from './undo-redo.tsx';

export interface CorrectionsProps {
  readonly correcting: Correcting;
  readonly original: SessionState;
  readonly asHeard: boolean;
  readonly onAsHeard: (asHeard: boolean) => void;
}

export function Corrections({ correcting, original, asHeard, onAsHeard }: CorrectionsProps) {
  const { session } = correcting;
  const { corrections, canRedo } = session;
  if (corrections === 0 && !canRedo) return null;
  return (
    <section className={css.corrections} aria-label={t('What was put right')}>
      <p role="status">
        {sayCount(corrections)} {t('As heard: {trials}', { trials: sayTrials(tally(original.reps)) })}
      </p>
      <Differences {...session} />
      <div className="row">
        <UndoRedo {...correcting} />
        <label className={css.switch}>
          <input type="checkbox" checked={asHeard} onChange={(event) => onAsHeard(event.target.checked)} />
          {t('Show it as it was heard')}
        </label>
      </div>
    </section>
  );
}

const sayCount = (n: number): string => (n === 1 ? t('1 correction.') : t('{n} corrections.', { n }));

/** Where the rule would have called something else. The reps after it were done as called: a record, not a reproach. */
function Differences({ calls }: Correcting['session']) {
  const differing = calls.flatMap((beside) => {
    const said = sayBeside(beside);
    return said ? [{ rep: beside.rep, ...said }] : [];
  });
  if (differing.length === 0) return null;
  return (
    <ul className={css.facts}>
      {differing.map(({ rep, called, wouldCall }) => (
        <li key={rep}>
          {t('After rep {rep} it called {called}; put right, it would have called {wouldCall}.', { rep, called, wouldCall })}
        </li>
      ))}
    </ul>
  );
}
