/** Asks for a copy when the last one lacks several sessions, or is weeks old. Never in practice, and once a visit when put off. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import { useIntents } from '../app-context.tsx';
import { sayCopy } from '../parts/copy-words.ts';
import { saveCopy } from '../parts/save-copy.ts';
import { useStorage } from '../parts/use-storage.ts';

/** For this visit. */
let putOff = false;

export function CopyNudge() {
  const intents = useIntents();
  const status = useStorage();
  const [, setPutOff] = useState(putOff);
  const [said, setSaid] = useState('');
  const save = async () => {
    const { kind } = await saveCopy(intents);
    setSaid(kind === 'handed-out' ? t('The copy is handed out. Keep it where this device is not.') : '');
  };
  if (said) return <p role="status">{said}</p>;
  if (putOff || !status?.copy.isDue) return null;
  const later = () => {
    putOff = true;
    setPutOff(true);
  };
  return (
    <section className="stack" aria-labelledby="copy-nudge">
      <h2 id="copy-nudge">{t('Save a copy of your sessions')}</h2>
      <p>{sayCopy(status.copy)}</p>
      <div className="row">
        <button type="button" onClick={() => void save()}>
          {t('Save a copy')}
        </button>
        <button type="button" onClick={later}>
          {t('Later')}
        </button>
      </div>
    </section>
  );
}
