/** Hands one session out: whole, as a file that another device can add, or its reps as a table for a spreadsheet. */
import { useState } from 'react';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { csvOf } from '../../core/progress/csv.ts';
import { useIntents } from '../app-context.tsx';
import { BYTE_ORDER_MARK, saveFile } from '../parts/save-file.ts';
import css from './review-list.module.css';
import { sessionSheet } from './session-sheet.ts';

export function SessionFile({ sessionId, state }: { sessionId: string; state: SessionState }) {
  const { exportSession, after } = useIntents();
  const [said, setSaid] = useState('');
  const saveWhole = async () => {
    const file = await exportSession(sessionId);
    if (!file) return setSaid(t('It cannot be read right now. Nothing was deleted.'));
    await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
    setSaid('');
  };
  const saveTable = () => {
    const { head, rows } = sessionSheet(state);
    const name = `stillbeat-reps-${state.startedAt.slice(0, 10)}.csv`;
    void saveFile({ name, content: BYTE_ORDER_MARK + csvOf(head, rows), type: 'text/csv' }, after);
  };
  return (
    <div className={`row ${css.second}`}>
      <button type="button" onClick={() => void saveWhole()}>
        {t('Save this session as a file')}
      </button>
      <button type="button" onClick={saveTable}>
        {t('Its reps as a table (CSV)')}
      </button>
      <span role="status">{said}</span>
    </div>
  );
}
