/** Hands a plan out as a file, with its dog: for another device, or for somebody who practises with the same dog. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import { useIntents } from '../app-context.tsx';
import { saveFile } from '../parts/save-file.ts';

export function PlanFile({ planId }: { planId: string }) {
  const { exportPlan, after } = useIntents();
  const [said, setSaid] = useState('');
  const save = async () => {
    const file = await exportPlan(planId);
    if (!file) return setSaid(t('It cannot be read right now. Nothing was deleted.'));
    const done = await saveFile({ name: file.name, content: file.text, type: 'application/json' }, after);
    setSaid(
      done === 'called-off'
        ? ''
        : t('{file} is handed out. Another device adds it in the settings, under Your data.', { file: file.name }),
    );
  };
  return (
    <div className="row">
      <button type="button" onClick={() => void save()}>
        {t('Save this plan as a file')}
      </button>
      <span role="status">{said}</span>
    </div>
  );
}
