/** The browser's own recogniser as an ear: off until the handler has read in one sentence what it may do. */
import { type FormEvent, useState } from 'react';
import { t } from '../../core/language.ts';
import { takesOf } from '../../core/library.ts';
import { settingsOf } from '../../core/settings.ts';
import { SPOKEN_WORDS } from '../../core/word.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { wordName } from '../parts/word-names.ts';
import css from './settings.module.css';

export function PlatformEar() {
  const library = useApp((state) => state.library);
  const settings = settingsOf(library);
  const { saveSettings, checkSayings, language } = useIntents();
  const platform = settings.platformEar ?? { on: false, mayLeave: false, language, sayings: {} };
  const live = useApp((state) => state.live !== null && state.live.phase.phase !== 'ended');
  const save = (change: Partial<typeof platform>) => void saveSettings({ platformEar: { ...platform, ...change } });
  // Switched on it listens for something at once: what was typed before, or what the taught words are called.
  const switchOn = (on: boolean) =>
    save({ on, sayings: hasWords(platform.sayings) ? platform.sayings : taughtSayings(settings.handler) });
  const taughtSayings = (handler: string) => {
    const taught = takesOf(library, handler);
    return checkSayings(Object.fromEntries(SPOKEN_WORDS.map((word) => [word, taught.get(word)?.[0]?.said ?? '']))).sayings;
  };
  return (
    <section className="stack">
      <h2>{t('Another ear: the browser’s own recogniser')}</h2>
      <p className="soft">
        {t(
          'For words that need no teaching. It is coarser than your taught words: it hears later and tells no exact moment, so seconds held are less exact. Only one of the two listens.',
        )}
      </p>
      <label className={css.choice}>
        <input type="checkbox" checked={platform.on} disabled={live} onChange={(event) => switchOn(event.target.checked)} />
        {t('Listen with the browser’s recogniser instead of my taught words')}
      </label>
      {platform.on ? (
        <>
          <label className={css.choice}>
            <input type="checkbox" checked={platform.mayLeave} onChange={(event) => save({ mayLeave: event.target.checked })} />
            {t('Sound may leave this device: this browser’s recogniser may send what the microphone hears to its maker')}
          </label>
          <p className="soft">
            {t('Without that, it is asked to work on the device, where the browser can; it may fetch its language for that.')}
          </p>
          {hasWords(platform.sayings) ? null : <p role="status">{t('Type what you say for each word: it knows none yet.')}</p>}
          <Sayings language={platform.language} kept={platform.sayings} onSave={save} />
        </>
      ) : null}
    </section>
  );
}

function hasWords(sayings: Readonly<Record<string, readonly string[]>>): boolean {
  return Object.values(sayings).some((said) => said.length > 0);
}

interface SayingsProps {
  readonly language: string;
  readonly kept: Readonly<Record<string, readonly string[]>>;
  readonly onSave: (change: { language: string; sayings: Readonly<Record<string, readonly string[]>> }) => void;
}

/** What is said for each word; filled from what was taught, where something was. */
function Sayings({ language, kept, onSave }: SayingsProps) {
  const library = useApp((state) => state.library);
  const { checkSayings } = useIntents();
  const [problem, setProblem] = useState('');
  const taught = takesOf(library, settingsOf(library).handler);
  const save = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const typed = Object.fromEntries(SPOKEN_WORDS.map((word) => [word, String(form.get(word) ?? '')]));
    const { sayings, problems } = checkSayings(typed);
    setProblem(
      problems
        .map(({ said, word, other }) =>
          t('“{said}” ({word}) would be taken for {other}.', { said, word: wordName(word), other: wordName(other) }),
        )
        .join(' '),
    );
    if (problems.length === 0) onSave({ language: String(form.get('language') ?? '').trim() || language, sayings });
  };
  return (
    <form className="stack" onSubmit={save}>
      {SPOKEN_WORDS.map((word) => (
        <label key={word} className={css.field}>
          {t('What you say for {word} (several: with commas)', { word: wordName(word) })}
          <input name={word} maxLength={120} defaultValue={kept[word]?.join(', ') ?? taught.get(word)?.[0]?.said ?? ''} />
        </label>
      ))}
      <label className={css.field}>
        {t('Language, as in en-GB')}
        <input name="language" maxLength={20} defaultValue={language} />
      </label>
      <button type="submit">{t('Keep these')}</button>
      {problem ? (
        <p role="alert">
          {problem} {t('Choose other words; nothing was changed.')}
        </p>
      ) : null}
    </form>
  );
}
