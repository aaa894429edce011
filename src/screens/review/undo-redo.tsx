/** Takes the latest correction back, or brings it again. */
import type { Correcting } from './correct-rep.tsx';

export function UndoRedo({ session: { canUndo, canRedo }, onUndo, onRedo }: Omit<Correcting, 'onCorrect'>) {
  return (
    <>
      <button type="button" disabled={!canUndo} onClick={onUndo}>
        Undo
      </button>
      <button type="button" disabled={!canRedo} onClick={onRedo}>
        Redo
      </button>
    </>
  );
}
