/** What is kept of what was said, and the button that deletes it. */
import { useEffect, useState } from 'react';
import { t } from '../../core/language.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';
import css from './settings.module.css';

export function Privacy() {
  const keepSounds = useApp((state) => settingsOf(state.library).keepSounds ?? false);
  const { saveSettings, countSounds, forgetSounds } = useIntents();
  const [kept, setKept] = useState<number | null>(null);
  useEffect(() => {
    void countSounds().then(setKept);
  }, [countSounds]);
  const forget = async () => {
    await forgetSounds();
    setKept(await countSounds());
  };
  return (
    <section className="stack">
      <h2>{t('Privacy')}</h2>
      <p className="soft">
        {t(
          'Of every heard word the ear keeps numbers for a month, so that a correction can teach it. They are no sound, and nobody can play them.',
        )}
      </p>
      <label className={css.choice}>
        <input
          type="checkbox"
          checked={keepSounds}
          onChange={(event) => void saveSettings({ keepSounds: event.target.checked })}
        />
        {t('Keep the sound of words too: 1.5 s each, on this device, for 30 days. You can play them in the review.')}
      </label>
      {kept === null || (kept === 0 && !keepSounds) ? null : (
        <div className="row">
          <button type="button" disabled={kept === 0} onClick={() => void forget()}>
            {t('Delete the kept sounds')}
          </button>
          <span role="status">{kept === 1 ? t('1 sound is kept.') : t('{n} sounds are kept.', { n: kept })}</span>
        </div>
      )}
      <p>
        {/* Beside the app: where it is installed there is no way back from a bare text. */}
        <a href="./licences.txt" target="_blank" rel="noreferrer">
          {t('What others made that this app is built on, and their terms')}
        </a>
      </p>
    </section>
  );
}
