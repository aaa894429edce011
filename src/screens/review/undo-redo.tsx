/** Takes the latest correction back, or brings it again. */
import { t } from '../../core/language.ts';
import type { Correcting } from './correct-rep.tsx';

export function UndoRedo({ session: { canUndo, canRedo }, onUndo, onRedo }: Omit<Correcting, 'onCorrect'>) {
  return (
    <>
      <button type="button" disabled={!canUndo} onClick={onUndo}>
        {t('Undo')}
      </button>
      <button type="button" disabled={!canRedo} onClick={onRedo}>
        {t('Redo')}
      </button>
    </>
  );
}
