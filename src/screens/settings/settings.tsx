/** Settings: cues, when to stop, keys and pedals. */
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { keysFor, USUAL_KEYS } from '../../core/key-bindings.ts';
import { LANGUAGES, type LanguageTag, type Message, t } from '../../core/language.ts';
import { nameOf } from '../../core/named.ts';
import { settingsOf } from '../../core/settings.ts';
import type { Word } from '../../core/word.ts';
import type { CueMode, SoundName } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { wordName } from '../parts/word-names.ts';
import { Backup } from './backup.tsx';
import { Erase } from './erase.tsx';
import { PlatformEar } from './platform-ear.tsx';
import { Privacy } from './privacy.tsx';
import css from './settings.module.css';
import { SyncDoor } from './sync-door.tsx';

export function SettingsScreen() {
  return (
    <div className="stack wide">
      <h1>{t('Settings')}</h1>
      <Language />
      <Cues />
      <Stop />
      <Who />
      <Keys />
      <PlatformEar />
      <Privacy />
      <Backup />
      <SyncDoor />
      <Erase />
    </div>
  );
}

function Language() {
  const chosen = useSettings().language ?? '';
  const { chooseLanguage } = useIntents();
  const choose = (tag: string) => void chooseLanguage(TAGS.find((offered) => offered === tag) ?? null);
  return (
    <label className={css.field}>
      {t('Language')}
      <select value={chosen} onChange={(event) => choose(event.target.value)}>
        <option value="">{t('as the browser wishes')}</option>
        {TAGS.map((tag) => (
          <option key={tag} value={tag} lang={tag}>
            {LANGUAGES[tag]}
          </option>
        ))}
      </select>
    </label>
  );
}

const TAGS = Object.keys(LANGUAGES) as LanguageTag[];

function useSettings() {
  return settingsOf(useApp((state) => state.library));
}

const MODES = [
  ['sound', 'Sound'],
  ['flash', 'A flash of the screen’s edge, no sound'],
  ['both', 'Both'],
] as const satisfies readonly (readonly [CueMode, Message])[];

const SOUNDS = [
  ['beat', 'a second'],
  ['enough', 'criterion reached'],
  ['raise', 'next step'],
  ['return', 'one step back'],
  ['split', 'half a step'],
  ['rest', 'rest#the sound'],
  ['unsure', 'say it again'],
  ['lost', 'cannot hear'],
] as const satisfies readonly (readonly [SoundName, Message])[];

function Cues() {
  const { mode, volume, speakCalls } = useSettings();
  const { saveSettings, hearSound } = useIntents();
  return (
    <section className="stack">
      <Link href="/sound" className="button">
        {t('Sound check')}
      </Link>
      <h2>{t('Beats and calls')}</h2>
      <fieldset className={css.choices}>
        <legend className="hidden-but-read">{t('How cues reach you')}</legend>
        {MODES.map(([value, name]) => (
          <label key={value} className={css.choice}>
            <input type="radio" name="mode" checked={mode === value} onChange={() => void saveSettings({ mode: value })} />
            {t(name)}
          </label>
        ))}
      </fieldset>
      <label className={css.field}>
        {t('Volume')}
        <input
          type="range"
          min="0"
          max="1"
          step="0.05"
          defaultValue={volume}
          onPointerUp={(event) => void saveSettings({ volume: event.currentTarget.valueAsNumber })}
          onKeyUp={(event) => void saveSettings({ volume: event.currentTarget.valueAsNumber })}
        />
      </label>
      <label className={css.choice}>
        <input
          type="checkbox"
          checked={speakCalls}
          onChange={(event) => void saveSettings({ speakCalls: event.target.checked })}
        />
        {t('Say the calls in words, with a voice of this device')}
      </label>
      <p className="soft">{t('Let your dog meet each sound first, paired with food.')}</p>
      <div className="row">
        {SOUNDS.map(([name, words]) => (
          <button type="button" key={name} onClick={() => void hearSound(name)}>
            {t(words)}
          </button>
        ))}
      </div>
    </section>
  );
}

function Stop() {
  const { limits } = useSettings();
  const { saveSettings } = useIntents();
  const number = (name: 'reps' | 'minutes', title: string, most: number) => (
    <label className={css.field}>
      {title}
      <input
        type="number"
        inputMode="numeric"
        min="1"
        max={most}
        defaultValue={limits[name]}
        onBlur={(event) => {
          const value = event.currentTarget.valueAsNumber;
          if (Number.isInteger(value) && value >= 1 && value <= most) void saveSettings({ limits: { ...limits, [name]: value } });
          else event.currentTarget.value = String(limits[name]);
        }}
      />
    </label>
  );
  return (
    <section className="stack">
      <h2>{t('Stop while ahead')}</h2>
      {number('reps', t('Rest after so many reps (1 to 100)'), 100)}
      {number('minutes', t('Rest after so many minutes (1 to 60)'), 60)}
      <label className={css.field}>
        {t('Treats at hand (empty: not counted)')}
        <input
          type="number"
          inputMode="numeric"
          min="1"
          max="200"
          defaultValue={limits.treats ?? ''}
          onBlur={(event) => {
            const value = event.currentTarget.valueAsNumber;
            void saveSettings({
              limits: { ...limits, treats: Number.isInteger(value) && value >= 1 && value <= 200 ? value : null },
            });
          }}
        />
      </label>
      <p className="soft">
        {t(
          'A dog may have limits of its own, for a day and for a session: of all of them the least wins. The dog’s screen tells which.',
        )}
      </p>
    </section>
  );
}

function Who() {
  const library = useApp((state) => state.library);
  const { handler, place } = settingsOf(library);
  return (
    <section className="stack">
      <h2>{t('Who and where')}</h2>
      <p>
        {t('The next session: {handler}, {place}.', {
          handler: nameOf(library.handlers, handler),
          place: nameOf(library.places, place),
        })}
      </p>
      <Link href="/dogs" className="button">
        {t('Dogs, handlers, places')}
      </Link>
    </section>
  );
}

const BINDABLE = [
  ['hold', 'hold: the dog has settled'],
  ['mark', 'mark: paid'],
  ['lifted', 'lifted: the head came up'],
  ['void', 'not a trial, or not offered'],
  ['undo', 'undo the last word'],
  ['pause', 'pause#the word'],
  ['resume', 'go on'],
  ['finish', 'finish#the word'],
  ['easier', 'easier step'],
  ['harder', 'harder step'],
  ['stay', 'stay: the call is not followed'],
] as const satisfies readonly (readonly [Word, Message])[];

function Keys() {
  const { keys } = useSettings();
  const { saveSettings } = useIntents();
  const without = BINDABLE.filter(([word]) => keysFor(keys, word).length === 0).map(([word]) => word);
  return (
    <section className="stack">
      <h2>{t('Keys, pedals and remotes')}</h2>
      <p className="soft">
        {t(
          'They are keyboards to the phone. Tap the box beside a word, then press what you want to use for it; a word has two at most.',
        )}
      </p>
      {without.length > 0 ? (
        <p role="status">
          {t('Without a key now: {words}. A key means one word only.', { words: without.map(wordName).join(', ') })}{' '}
          <button type="button" className="plain" onClick={() => void saveSettings({ keys: USUAL_KEYS })}>
            {t('The usual keys again')}
          </button>
        </p>
      ) : null}
      <ul className={css.keys}>
        {BINDABLE.map(([word, title]) => (
          <KeyLine key={word} word={word} title={t(title)} />
        ))}
      </ul>
    </section>
  );
}

function KeyLine({ word, title }: { word: Word; title: string }) {
  const { keys } = useSettings();
  const { bindNextKey } = useIntents();
  const [waiting, setWaiting] = useState(false);
  useEffect(() => (waiting ? bindNextKey(word, () => setWaiting(false)) : undefined), [waiting, word, bindNextKey]);
  return (
    <li className={css.key}>
      <span>{title}</span>
      <button type="button" aria-label={t('{word}: press to choose a key', { word: title })} onClick={() => setWaiting(true)}>
        {waiting ? t('Press it now…') : sayKeys(keysFor(keys, word))}
      </button>
    </li>
  );
}

function sayKeys(keys: readonly string[]): string {
  return keys.length === 0 ? t('none#no key') : keys.map((key) => (key.length === 1 ? key.toUpperCase() : key)).join(', ');
}
