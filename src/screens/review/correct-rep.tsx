/** Puts a rep right: each word that was heard in it, a word that is missing, no trial for a reason, a note. */
import { type FormEvent, type ReactNode, useState } from 'react';
import { type CorrectedSession, hearingsAfter, hearingsIn } from '../../core/correct.ts';
import { type Correction, REP_WORDS, type RepWord } from '../../core/correction.ts';
import type { Rep } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { wordName } from '../parts/word-names.ts';
import { HearingLine } from './hearing-line.tsx';
import css from './review.module.css';
import { secondsIn } from './seconds-in.ts';
import { UndoRedo } from './undo-redo.tsx';

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
    <section
      className={css.correct}
      aria-label={rep ? t('Put rep {n} right', { n: rep.n }) : t('Put right what was heard after the last rep')}
    >
      {rep ? <h3>{t('Was it heard right?')}</h3> : null}
      {hearings.length === 0 ? <p className="soft">{t('Nothing was heard here.')}</p> : null}
      <ul className={css.hearings}>
        {hearings.map((hearing) => (
          <li key={hearing.id}>
            <HearingLine hearing={hearing} onCorrect={correct} sound={correcting.soundOf?.(hearing.id)} />
          </li>
        ))}
      </ul>
      <Missing rep={rep} session={session} onCorrect={correct} />
      {rep ? <NoTrial rep={rep} reason={session.voidReasons.get(rep.endedBy) ?? ''} onCorrect={correct} /> : null}
      {rep ? <RepNote key={rep.endedBy} rep={rep} text={session.notes.get(rep.endedBy) ?? ''} onCorrect={correct} /> : null}
      {refused ? <p role="alert">{refused}</p> : null}
      <div className="row">
        <UndoRedo {...correcting} />
      </div>
    </section>
  );
}

type OnCorrect = (correction: Correction) => void;

function Missing({ rep, session, onCorrect }: { rep: Rep | null; session: CorrectedSession; onCorrect: OnCorrect }) {
  const [word, setWord] = useState<RepWord>('mark');
  const usual = rep ? (rep.holdAtS + rep.endAtS) / 2 : session.state.latestS;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const startedAtS = secondsIn(event.currentTarget);
    onCorrect({ do: 'insert', word, startedAtS });
  };
  return (
    <details className={css.hearing}>
      <summary>{t('A word is missing')}</summary>
      <form className={css.moment} onSubmit={submit} key={usual} noValidate>
        <label>
          {t('Word')}
          <select value={word} onChange={(event) => setWord(event.target.value as RepWord)}>
            {REP_WORDS.map((each) => (
              <option key={each} value={each}>
                {each === 'void' ? t('not offered') : wordName(each)}
              </option>
            ))}
          </select>
        </label>
        <label>
          {t('It began, in seconds of the session')}
          <input name="at" type="number" min="0" step="0.1" required defaultValue={usual.toFixed(1)} inputMode="decimal" />
        </label>
        <button type="submit">{t('Put it in')}</button>
      </form>
    </details>
  );
}

function NoTrial({ rep, reason, onCorrect }: { rep: Rep; reason: string; onCorrect: OnCorrect }) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onCorrect({ do: 'void', of: rep.endedBy, reason: String(new FormData(event.currentTarget).get('reason')) });
  };
  if (reason) return <p>{t('No trial: {reason}', { reason })}</p>;
  if (rep.outcome === 'void') return null;
  return (
    <details className={css.hearing}>
      <summary>{t('It was no trial')}</summary>
      <form className={css.moment} onSubmit={submit}>
        <label>
          {t('Why')}
          <input name="reason" required maxLength={200} placeholder={t('a door bell, my slip')} />
        </label>
        <button type="submit">{t('Do not count it')}</button>
      </form>
    </details>
  );
}

function RepNote({ rep, text, onCorrect }: { rep: Rep; text: string; onCorrect: OnCorrect }) {
  return (
    <details className={css.hearing} open={text !== ''}>
      <summary>{t('A note')}</summary>
      <Note of={rep.endedBy} label={t('A note on rep {n}', { n: rep.n })} text={text} onCorrect={onCorrect} />
    </details>
  );
}

export interface NoteProps {
  /** The event that ended the rep; null: the session. */
  readonly of: string | null;
  readonly label: string;
  readonly text: string;
  readonly onCorrect: OnCorrect;
}

export function Note({ of, label, text, onCorrect }: NoteProps) {
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    onCorrect({ do: 'note', of, text: String(new FormData(event.currentTarget).get('note')).trim() });
  };
  return (
    <form className={css.note} onSubmit={submit} key={text}>
      <label>
        {label}
        <textarea name="note" rows={2} maxLength={2000} defaultValue={text} />
      </label>
      <button type="submit">{t('Keep the note')}</button>
    </form>
  );
}
