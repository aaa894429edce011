/** Puts a rep right: each word that was heard in it, a word that is missing, no trial for a reason, a note. */
import { type FormEvent, type ReactNode, useState } from 'react';
import { type CorrectedSession, type Hearing, hearingsAfter, hearingsIn } from '../../core/correct.ts';
import { type Correction, REP_WORDS, type RepWord } from '../../core/correction.ts';
import type { Rep } from '../../core/fold.ts';
import { sayMoment } from '../../core/summary.ts';
import css from './review.module.css';

export interface Correcting {
  readonly session: CorrectedSession;
  /** Null, or why it was not kept. */
  readonly onCorrect: (correction: Correction) => Promise<string | null>;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  /** Plays what was heard under this event, where its sound was kept. */
  readonly soundOf?: (eventId: string) => ReactNode;
}

/** What was heard after the last rep belongs to no rep: `rep` is null then. */
export function CorrectRep({ rep, correcting }: { rep: Rep | null; correcting: Correcting }) {
  const { session, onCorrect } = correcting;
  const [refused, setRefused] = useState<string | null>(null);
  const correct = (correction: Correction) => void onCorrect(correction).then(setRefused);
  const hearings = rep ? hearingsIn(session, rep.n) : hearingsAfter(session);
  return (
    <section className={css.correct} aria-label={rep ? `Put rep ${rep.n} right` : 'Put right what was heard after the last rep'}>
      {rep ? <h3>Was it heard right?</h3> : null}
      {hearings.length === 0 ? <p className="soft">Nothing was heard here.</p> : null}
      <ul className={css.hearings}>
        {hearings.map((hearing) => (
          <li key={hearing.id}>
            <HearingLine hearing={hearing} onCorrect={correct} sound={correcting.soundOf?.(hearing.id)} />
          </li>
        ))}
      </ul>
      <Missing rep={rep} onCorrect={correct} />
      {rep ? <NoTrial rep={rep} reason={session.voidReasons.get(rep.endedBy) ?? ''} onCorrect={correct} /> : null}
      {rep ? <Note key={rep.endedBy} of={rep.endedBy} text={session.notes.get(rep.endedBy) ?? ''} onCorrect={correct} /> : null}
      {refused ? <p role="alert">{refused}</p> : null}
    </section>
  );
}

type OnCorrect = (correction: Correction) => void;

/** The smallest step by which an onset is moved, s: what one hears in a recording. */
const NUDGE_S = 0.1;

function HearingLine({ hearing, onCorrect, sound }: { hearing: Hearing; onCorrect: OnCorrect; sound: ReactNode }) {
  const { id, is, was, startedAtS, judged } = hearing;
  const others = REP_WORDS.filter((word) => word !== is && word !== 'void');
  return (
    <details className={css.hearing}>
      <summary>
        <span className={css.when}>{sayTenths(startedAtS)}</span> <span>{sayHearing(hearing)}</span>
      </summary>
      <div className="row">
        {sound}
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
        {is === null ? null : (
          <button type="button" onClick={() => onCorrect({ do: 'relabel', of: id, as: null })}>
            {was === null ? 'Take it out' : 'Not a word'}
          </button>
        )}
      </div>
      <div className="row">
        <button type="button" onClick={() => onCorrect({ do: 'move', of: id, startedAtS: startedAtS - NUDGE_S })}>
          0.1 s earlier
        </button>
        <button type="button" onClick={() => onCorrect({ do: 'move', of: id, startedAtS: startedAtS + NUDGE_S })}>
          0.1 s later
        </button>
      </div>
    </details>
  );
}

/** "lifted (heard as mark, confidence 0.71)" */
function sayHearing({ was, is, confidence, by, judged, moved }: Hearing): string {
  const now = is ?? (was === 'unsure' && !judged ? 'unsure' : 'not a word');
  const sure = by === 'own-words' || by === 'platform' || by === 'recording' ? `, confidence ${confidence.toFixed(2)}` : '';
  const how =
    was === null
      ? 'put in'
      : was === now || (was === 'unsure' && now === 'unsure')
        ? `by ${EARS[by]}${sure}`
        : `heard as ${was}${sure}`;
  return `${now} (${how}${judged && was === is ? ', right' : ''}${moved ? ', moved' : ''})`;
}

const EARS: Readonly<Record<Hearing['by'], string>> = {
  'own-words': 'ear',
  platform: 'the browser’s ear',
  recording: 'a recording',
  key: 'key',
  button: 'button',
  review: 'review',
};

function Missing({ rep, onCorrect }: { rep: Rep | null; onCorrect: OnCorrect }) {
  const [word, setWord] = useState<RepWord>('mark');
  const usual = rep ? rep.endAtS : 0;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const startedAtS = Number(new FormData(event.currentTarget).get('at'));
    onCorrect({ do: 'insert', word, startedAtS });
  };
  return (
    <details className={css.hearing}>
      <summary>A word is missing</summary>
      <form className="row" onSubmit={submit} key={usual}>
        <label className="stack">
          Word
          <select value={word} onChange={(event) => setWord(event.target.value as RepWord)}>
            {REP_WORDS.map((each) => (
              <option key={each} value={each}>
                {each === 'void' ? 'not offered' : each}
              </option>
            ))}
          </select>
        </label>
        <label className="stack">
          Seconds into the session
          <input name="at" type="number" min="0" step="0.1" required defaultValue={usual.toFixed(1)} inputMode="decimal" />
        </label>
        <button type="submit">Put it in</button>
      </form>
    </details>
  );
}

function NoTrial({ rep, reason, onCorrect }: { rep: Rep; reason: string; onCorrect: OnCorrect }) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onCorrect({ do: 'void', of: rep.endedBy, reason: String(new FormData(event.currentTarget).get('reason')) });
  };
  if (reason) return <p>No trial: {reason}</p>;
  if (rep.outcome === 'void') return null;
  return (
    <details className={css.hearing}>
      <summary>It was no trial</summary>
      <form className="row" onSubmit={submit}>
        <label className="stack">
          Why
          <input name="reason" required maxLength={200} placeholder="a door bell, my slip" />
        </label>
        <button type="submit">Do not count it</button>
      </form>
    </details>
  );
}

export function Note({ of, text, onCorrect }: { of: string | null; text: string; onCorrect: OnCorrect }) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onCorrect({ do: 'note', of, text: String(new FormData(event.currentTarget).get('note')).trim() });
  };
  return (
    <form className="stack" onSubmit={submit} key={text}>
      <label className="stack">
        Note
        <textarea name="note" rows={2} maxLength={2000} defaultValue={text} />
      </label>
      <button type="submit">Keep the note</button>
    </form>
  );
}

/** A moment of the session in tenths: "1:05.2". */
function sayTenths(atS: number): string {
  const tenths = Math.floor(10 * Math.max(0, atS) + 1e-6);
  return `${sayMoment(tenths / 10)}.${tenths % 10}`;
}
