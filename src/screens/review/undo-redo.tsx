/** Takes the latest correction back, or brings it again; each button names it. */
import { t } from '../../core/language.ts';
import type { Correcting } from './correct-rep.tsx';
import { sayCorrection } from './correction-words.ts';

export function UndoRedo({ session, onUndo, onRedo }: Omit<Correcting, 'onCorrect'>) {
  const { undoes, redoes } = session;
  return (
    <>
      <button type="button" disabled={!undoes} onClick={onUndo}>
        {undoes ? t('Undo: {what}', { what: sayCorrection(undoes, session) }) : t('Undo')}
      </button>
      <button type="button" disabled={!redoes} onClick={onRedo}>
        {redoes ? t('Redo: {what}', { what: sayCorrection(redoes, session) }) : t('Redo')}
      </button>
    </>
  );
}
