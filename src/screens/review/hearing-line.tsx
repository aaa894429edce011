/** One thing that was heard: what it is, whether that is right, what it was instead, and when it began. */
import type { FormEvent, ReactNode } from 'react';
import { type Hearing, isChanged } from '../../core/correct.ts';
import { type Correction, REP_WORDS } from '../../core/correction.ts';
import { fixed, type Message, t } from '../../core/language.ts';
import { sayMoment } from '../../core/summary.ts';
import type { Seconds } from '../../core/units.ts';
import { sayNearest, wordName } from '../parts/word-names.ts';
import css from './review.module.css';
import { secondsIn } from './seconds-in.ts';

/** The smallest step by which an onset is moved, s: what one hears in a recording. */
const NUDGE_S: Seconds = 0.1;

export interface HearingLineProps {
  readonly hearing: Hearing;
  readonly onCorrect: (correction: Correction) => void;
  readonly sound: ReactNode;
}

export function HearingLine({ hearing, onCorrect, sound }: HearingLineProps) {
  const { is, startedAtS } = hearing;
  return (
    <details className={css.hearing} data-changed={isChanged(hearing) || undefined}>
      <summary>
        <span className={css.when}>{sayTenths(startedAtS)}</span> <span>{sayHearing(hearing)}</span>
      </summary>
      <div className={css.answers}>
        <div className="row">
          {sound}
          <Answers hearing={hearing} onCorrect={onCorrect} />
        </div>
        {is === null ? null : <Onset key={startedAtS} hearing={hearing} onCorrect={onCorrect} />}
      </div>
    </details>
  );
}

function Answers({ hearing: { id, is, was, judged }, onCorrect }: Omit<HearingLineProps, 'sound'>) {
  const others = REP_WORDS.filter((word) => word !== is && word !== 'void');
  const isUnanswered = is === null && !judged;
  return (
    <>
      {is !== null && was !== null && !judged ? (
        <button type="button" onClick={() => onCorrect({ do: 'confirm', of: id })}>
          {t('Right#the ear was')}
        </button>
      ) : null}
      {others.map((word) => (
        <button type="button" key={word} onClick={() => onCorrect({ do: 'relabel', of: id, as: word })}>
          {t('It was {word}', { word: wordName(word) })}
        </button>
      ))}
      {is !== null || isUnanswered ? (
        <button type="button" onClick={() => onCorrect({ do: 'relabel', of: id, as: null })}>
          {was === null ? t('Take it out') : t('Not a word')}
        </button>
      ) : null}
    </>
  );
}

function Onset({ hearing: { id, startedAtS }, onCorrect }: Omit<HearingLineProps, 'sound'>) {
  const moveTo = (toS: Seconds) => onCorrect({ do: 'move', of: id, startedAtS: Math.round(1000 * toS) / 1000 });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    moveTo(secondsIn(event.currentTarget));
  };
  return (
    <>
      <div className="row">
        <button type="button" onClick={() => moveTo(startedAtS - NUDGE_S)}>
          {t('{s} s earlier', { s: NUDGE_S })}
        </button>
        <button type="button" onClick={() => moveTo(startedAtS + NUDGE_S)}>
          {t('{s} s later', { s: NUDGE_S })}
        </button>
      </div>
      <form className={css.moment} onSubmit={submit} noValidate>
        <label>
          {t('It began, in seconds of the session')}
          <input name="at" type="number" min="0" step="0.1" defaultValue={startedAtS.toFixed(1)} inputMode="decimal" />
        </label>
        <button type="submit">{t('Move it')}</button>
      </form>
    </>
  );
}

/** "lifted (heard as mark, confidence 0.71)" */
function sayHearing(hearing: Hearing): string {
  const { was, is, judged, moved } = hearing;
  const isUnanswered = was === 'unsure' && !judged;
  const now = is ?? (isUnanswered ? 'unsure' : null);
  const how = [
    sayHow(hearing, was === now),
    judged && was === is ? t('right#the ear was') : '',
    moved ? t('moved#a word, in time') : '',
  ];
  return `${now === null ? t('not a word') : wordName(now)} (${how.filter(Boolean).join(', ')})`;
}

function sayHow(hearing: Hearing, isSame: boolean): string {
  const { was, by } = hearing;
  if (was === null) return t('put in#a word, by hand');
  return `${isSame ? t(EARS[by]) : t('heard as {word}', { word: wordName(was) })}${saySure(hearing)}`;
}

/** Of a key or a button nobody is unsure. */
function saySure({ by, was, confidence, nearest }: Hearing): string {
  if (was === 'unsure') {
    const words = sayNearest(nearest);
    return words && `: ${words}`;
  }
  return BY_EAR.includes(by) ? `, ${t('confidence {sure}', { sure: fixed(confidence, 2) })}` : '';
}

const BY_EAR: readonly Hearing['by'][] = ['own-words', 'platform', 'recording'];

const EARS = {
  'own-words': 'by ear',
  platform: 'by the browser’s ear',
  recording: 'by a recording',
  key: 'by key',
  button: 'by button',
  review: 'by review',
} as const satisfies Readonly<Record<Hearing['by'], Message>>;

/** A moment of the session in tenths: "1:05.2". */
function sayTenths(atS: number): string {
  // As the field below it rounds.
  const tenths = Math.round(10 * Number(Math.max(0, atS).toFixed(1)));
  return `${sayMoment(tenths / 10)}.${tenths % 10}`;
}
