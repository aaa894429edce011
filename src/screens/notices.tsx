/** What must be said on every screen: not kept, not written, an unfinished session. */
import { t } from '../core/language.ts';
import type { StoreProblem } from '../session/app-state.ts';
import { useApp, useIntents } from './app-context.tsx';
import css from './notices.module.css';

export function Notices() {
  const opening = useApp((state) => state.opening);
  const problem = useApp((state) => state.writeProblem);
  const { tryWritingAgain } = useIntents();
  const update = useApp((state) => (state.live && state.live.phase.phase !== 'ended' ? null : state.update));
  const visitOnly = opening.kind === 'ready' && opening.kept === 'visit-only';
  const refusal = useApp((state) => state.refusal);
  if (!visitOnly && !problem && !update && !refusal) return null;
  return (
    <div className={css.notices} role="status">
      {visitOnly ? (
        <p>{t('This browser keeps nothing (a private window?). What you do here is lost when you close it.')}</p>
      ) : null}
      {refusal ? <p>{refusal}</p> : null}
      {update ? (
        <div className="row">
          <p>{t('A newer Stillbeat is ready.')}</p>
          <button type="button" onClick={update}>
            {t('Load it now')}
          </button>
        </div>
      ) : null}
      {problem ? (
        <div className="row">
          <p>{sayProblem(problem)}</p>
          <button type="button" onClick={() => void tryWritingAgain()}>
            {t('Try again')}
          </button>
        </div>
      ) : null}
    </div>
  );
}

function sayProblem(problem: StoreProblem): string {
  switch (problem.kind) {
    case 'quota':
      return t(
        'This device is full: the last reps are not saved yet. They are kept here while the page stays open. Free some space, then try again.',
      );
    case 'out-of-turn':
      return t('Another tab wrote in between: the last reps are not saved yet. Close the other tab, then try again.');
    case 'conflict':
      return t('Two tabs wrote at once: the last reps are not saved yet. Save a copy in the settings, then load the page again.');
    case 'damaged':
      return t('Something saved here cannot be read. Nothing was deleted; the rest is shown.');
    default:
      return t('Saving does not work right now. The last reps are kept here while the page stays open.');
  }
}
