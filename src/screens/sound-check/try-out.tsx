/** Try the ear: say anything, see what it takes for a word. */
import { t } from '../../core/language.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { wordName } from '../parts/word-names.ts';
import { EarMark } from '../practice/ear.tsx';
import { sayEar } from '../practice/ear-words.ts';
import css from './sound-check.module.css';

export function TryOut() {
  const taught = useApp((state) => state.taught?.enrolled.ok ?? false);
  const ear = useApp((state) => state.ear);
  const tried = useApp((state) => state.tried);
  const catching = useApp((state) => state.teaching.kind === 'catching');
  const settings = settingsOf(useApp((state) => state.library));
  const { tryOut, closeEar, saveSettings } = useIntents();
  const open = ear.state !== 'off' && !catching;
  const saying = sayEar(ear, true);
  return (
    <section className="stack">
      <h2>{t('3 · Try it')}</h2>
      <p>{t('Say your words, and say anything else. What it takes for a word shows here.')}</p>
      <div className="row">
        <button type="button" disabled={!taught || catching} onClick={() => (open ? closeEar() : void tryOut())}>
          {open ? t('Stop listening') : t('Listen')}
        </button>
        {open ? (
          <>
            <EarMark shape={saying.shape} />
            <span>{saying.short}</span>
          </>
        ) : null}
      </div>
      <label className={css.echo}>
        <input
          type="checkbox"
          checked={settings.echoCancellation ?? true}
          onChange={(event) => void saveSettings({ echoCancellation: event.target.checked })}
        />
        {t('Cancel the app’s own sounds (switch it off with headphones, or if words come out cut; then listen again)')}
      </label>
      {open ? (
        <ol className={css.tried} aria-live="polite">
          {tried.map(({ word, sure, n }) => (
            <li key={n}>{sure ? wordName(word) : t('unsure: {word}?', { word: wordName(word) })}</li>
          ))}
        </ol>
      ) : null}
    </section>
  );
}
