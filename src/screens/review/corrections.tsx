/** Says what was put right, shows what was heard beside it, and takes a correction back or brings it again. */
import type { SessionState } from '../../core/fold.ts';
import { CALL_WORDS } from '../../core/sentences.ts';
import { sayTrials, tally } from '../../core/summary.ts';
import type { Correcting } from './correct-rep.tsx';
import css from './review.module.css';

export interface CorrectionsProps {
  readonly correcting: Correcting;
  readonly original: SessionState;
  readonly asHeard: boolean;
  readonly onAsHeard: (asHeard: boolean) => void;
}

export function Corrections({ correcting, original, asHeard, onAsHeard }: CorrectionsProps) {
  const { session, onUndo, onRedo } = correcting;
  const { corrections, canUndo, canRedo } = session;
  if (corrections === 0 && !canRedo) return null;
  return (
    <section className={css.corrections} aria-label="What was put right">
      <p role="status">
        {corrections === 1 ? '1 correction.' : `${corrections} corrections.`} As heard: {sayTrials(tally(original.reps))}
      </p>
      <Differences {...session} />
      <div className="row">
        <button type="button" disabled={!canUndo} onClick={onUndo}>
          Undo
        </button>
        <button type="button" disabled={!canRedo} onClick={onRedo}>
          Redo
        </button>
        <label className="row">
          <input type="checkbox" checked={asHeard} onChange={(event) => onAsHeard(event.target.checked)} />
          Show it as it was heard
        </label>
      </div>
    </section>
  );
}

/** Where the rule would have called something else. The reps after it were done as called: a record, not a reproach. */
function Differences({ calls }: Correcting['session']) {
  const named = (made: (typeof calls)[number]['called']) =>
    made.length === 0 ? 'nothing' : made.map(({ kind }) => CALL_WORDS[kind]).join(', ');
  const differing = calls.filter(({ called, wouldCall }) => named(called) !== named(wouldCall));
  if (differing.length === 0) return null;
  return (
    <ul className={css.facts}>
      {differing.map(({ rep, called, wouldCall }) => (
        <li key={rep}>
          After rep {rep} it called {named(called)}; put right, it would have called {named(wouldCall)}.
        </li>
      ))}
    </ul>
  );
}
