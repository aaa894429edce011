/** Notes words by key or button while the recording plays, and lists what was noted. */
import { type RefObject, useEffect } from 'react';
import type { RepWord } from '../../core/correction.ts';
import { keysFor } from '../../core/key-bindings.ts';
import { type Message, t } from '../../core/language.ts';
import { isRepWord, type Observed } from '../../core/observe/observation.ts';
import { settingsOf } from '../../core/settings.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { wordName } from '../parts/word-names.ts';
import css from './observe.module.css';
import { sayPlace } from './say.ts';

const BUTTONS = [
  ['hold', 'Hold'],
  ['mark', 'Mark'],
  ['lifted', 'Lifted'],
  ['void', 'No trial'],
] as const satisfies readonly (readonly [RepWord, Message])[];

interface PadProps {
  readonly video: RefObject<HTMLVideoElement | null>;
  readonly onWord: (word: Observed) => void;
  readonly onTakeBack: () => void;
}

export function Pad({ video, onWord, onTakeBack }: PadProps) {
  const { watchKeys } = useIntents();
  const { keys } = settingsOf(useApp((state) => state.library));
  useEffect(() => {
    // A key is told a moment after it was pressed, and the film ran on meanwhile.
    const note = (word: RepWord, agoS: number) => {
      const film = video.current;
      if (film) onWord({ word, atS: Math.max(0, film.currentTime - (film.paused ? 0 : agoS * film.playbackRate)) });
    };
    return watchKeys((word, agoS) => {
      if (word === 'undo') onTakeBack();
      else if (isRepWord(word)) note(word, agoS);
    });
  }, [video, onWord, onTakeBack, watchKeys]);
  return (
    <fieldset className={css.pad}>
      <legend className="hidden-but-read">{t('Note a word at this moment')}</legend>
      {BUTTONS.map(([word, title]) => (
        <button key={word} type="button" onClick={() => onWord({ word, atS: video.current?.currentTime ?? 0 })}>
          <span>{t(title)}</span>
          <span className="small soft">{keysFor(keys, word).join(', ').toUpperCase()}</span>
        </button>
      ))}
    </fieldset>
  );
}

const sayWordAt = ({ word, atS }: Observed): string => t('{word} at {place}', { word: wordName(word), place: sayPlace(atS) });

interface NotedProps {
  readonly words: readonly Observed[];
  readonly latest: Observed | null;
  readonly onStrike: (word: Observed) => void;
  readonly onTakeBack: () => void;
  readonly onJump: ((atS: number) => void) | null;
}

export function Noted({ words, latest, onStrike, onTakeBack, onJump }: NotedProps) {
  return (
    <>
      <div className="row">
        <p role="status">
          {words.length === 0 ? t('Nothing noted yet.') : t('{n} noted', { n: words.length })}
          {latest ? t('; the latest: {word}', { word: sayWordAt(latest) }) : ''}
        </p>
        {latest ? (
          <button type="button" onClick={onTakeBack}>
            {t('Undo')}
          </button>
        ) : null}
      </div>
      {words.length === 0 ? null : (
        <details className={css.details}>
          <summary>{t('All that is noted, {n}', { n: words.length })}</summary>
          <ol className={css.moments}>
            {words.map(({ word, atS }, nth) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two equal words at one moment are told apart by nothing else
              <li key={`${atS} ${word} ${nth}`}>
                <span>
                  <span className={css.time}>{sayPlace(atS)}</span> {wordName(word)}
                </span>
                <span className="row">
                  {onJump ? (
                    <button type="button" aria-label={t('Go to {place}', { place: sayPlace(atS) })} onClick={() => onJump(atS)}>
                      {t('Go there')}
                    </button>
                  ) : null}
                  <button
                    type="button"
                    aria-label={t('Strike out {word}', { word: sayWordAt({ word, atS }) })}
                    onClick={() => onStrike(words[nth] as Observed)}
                  >
                    {t('Strike out')}
                  </button>
                </span>
              </li>
            ))}
          </ol>
        </details>
      )}
    </>
  );
}
