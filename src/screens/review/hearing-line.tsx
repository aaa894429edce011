/** One thing that was heard: what it is, whether that is right, what it was instead, and when it began. */
import type { FormEvent, ReactNode } from 'react';
import { type Hearing, isChanged } from '../../core/correct.ts';
import { type Correction, REP_WORDS } from '../../core/correction.ts';
import { sayMoment } from '../../core/summary.ts';
import type { Seconds } from '../../core/units.ts';
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
          Right
        </button>
      ) : null}
      {others.map((word) => (
        <button type="button" key={word} onClick={() => onCorrect({ do: 'relabel', of: id, as: word })}>
          It was {word}
        </button>
      ))}
      {is !== null || isUnanswered ? (
        <button type="button" onClick={() => onCorrect({ do: 'relabel', of: id, as: null })}>
          {was === null ? 'Take it out' : 'Not a word'}
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
          0.1 s earlier
        </button>
        <button type="button" onClick={() => moveTo(startedAtS + NUDGE_S)}>
          0.1 s later
        </button>
      </div>
      <form className={css.moment} onSubmit={submit} noValidate>
        <label>
          It began, in seconds of the session
          <input name="at" type="number" min="0" step="0.1" defaultValue={startedAtS.toFixed(1)} inputMode="decimal" />
        </label>
        <button type="submit">Move it</button>
      </form>
    </>
  );
}

/** "lifted (heard as mark, confidence 0.71)" */
function sayHearing(hearing: Hearing): string {
  const { was, is, judged, moved } = hearing;
  const isUnanswered = was === 'unsure' && !judged;
  const now = is ?? (isUnanswered ? 'unsure' : 'not a word');
  const how =
    was === null ? 'put in' : was === now ? `by ${EARS[hearing.by]}${saySure(hearing)}` : `heard as ${was}${saySure(hearing)}`;
  return `${now} (${how}${judged && was === is ? ', right' : ''}${moved ? ', moved' : ''})`;
}

/** Of a key or a button nobody is unsure. */
function saySure({ by, was, confidence, nearest }: Hearing): string {
  if (was === 'unsure') {
    const words = nearest.map((near) => `${near.word} ${near.confidence.toFixed(2)}`).join(' or ');
    return words && `: ${words}`;
  }
  return BY_EAR.includes(by) ? `, confidence ${confidence.toFixed(2)}` : '';
}

const BY_EAR: readonly Hearing['by'][] = ['own-words', 'platform', 'recording'];

const EARS: Readonly<Record<Hearing['by'], string>> = {
  'own-words': 'ear',
  platform: 'the browser’s ear',
  recording: 'a recording',
  key: 'key',
  button: 'button',
  review: 'review',
};

/** A moment of the session in tenths: "1:05.2". */
function sayTenths(atS: number): string {
  const tenths = Math.floor(10 * Math.max(0, atS) + 1e-6);
  return `${sayMoment(tenths / 10)}.${tenths % 10}`;
}
