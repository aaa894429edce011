/** One word to teach: how many takes there are, record more, add from files, forget one. */
import { useState } from 'react';
import { t } from '../../core/language.ts';
import type { Take } from '../../core/library.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Level } from '../parts/level.tsx';
import { FromFiles } from './from-files.tsx';
import { LiveTrouble } from './live-trouble.tsx';
import css from './sound-check.module.css';
import { sayReport, sayUnlike, unlikeTakes } from './take-words.ts';

export interface TakeRowProps {
  readonly word: string;
  readonly title: string;
  readonly meaning: string;
  /** null: what is said is the title itself. */
  readonly example: string | null;
  /** What the takes are kept under, where the handler does not type it. */
  readonly saidAs?: string;
  readonly takes: readonly Take[];
  readonly wanted: number;
  /** The one thing to do next on this screen. */
  readonly isNext: boolean;
}

export function TakeRow({ word, title, meaning, example, saidAs, takes, wanted, isNext }: TakeRowProps) {
  const kept = takes[0]?.said ?? '';
  const [typed, setTyped] = useState(kept);
  const names = saidAs ? title : typed.trim().normalize('NFC') || title;
  const said = saidAs ?? names;
  const catching = useApp(({ teaching }) => teaching.kind === 'catching' && teaching.word === word && teaching.said === said);
  const unlike = useUnlike(word);
  return (
    <li className={css.row}>
      <div className={css.what}>
        <strong>{title}</strong>
        {meaning ? <p className="soft small">{meaning}</p> : null}
        {example === null ? null : (
          <label className={css.said}>
            <span className="small soft">{t('what you say')}</span>
            <input value={typed} placeholder={example} maxLength={40} onChange={(event) => setTyped(event.target.value)} />
          </label>
        )}
        <Takes {...{ title, takes, wanted, unlike }} />
        {unlike.length > 0 ? <p>{sayUnlike(unlike)}</p> : null}
      </div>
      <div className={css.actions}>
        {catching ? (
          <Catching names={names} done={takes.length >= wanted} />
        ) : (
          <Start {...{ word, said, names, isNext }} any={takes.length > 0} />
        )}
      </div>
    </li>
  );
}

const NONE: readonly number[] = [];

/** Takes of a word that would not be heard by the others, from 0; none while that is worked out anew. Of talk nothing is told. */
function useUnlike(word: string): readonly number[] {
  const taught = useApp((state) => state.taught);
  const settled = useApp(({ teaching, isWorkingOut }) => !isWorkingOut && teaching.kind === 'idle');
  const enrolled = settled ? taught?.enrolled : undefined;
  const forecast = enrolled?.ok ? enrolled.forecast.find((each) => each.word === word) : undefined;
  return forecast ? unlikeTakes(forecast.advice) : NONE;
}

/** A ring each for the takes still wanted; keys only. */
const MISSING = ['first', 'second', 'third', 'fourth', 'fifth'];

interface TakesProps extends Pick<TakeRowProps, 'title' | 'takes' | 'wanted'> {
  readonly unlike?: readonly number[];
}

/** A dot a take, with its number: filled when kept, dashed when it is unlike the others, a ring for each that is still wanted. A tap forgets one, and can be taken back. */
export function Takes({ title, takes, wanted, unlike = NONE }: TakesProps) {
  const { forget, teachAgain } = useIntents();
  const [forgotten, setForgotten] = useState<{ readonly take: Take; readonly n: number } | null>(null);
  const missing = Math.max(0, wanted - takes.length);
  const bringBack = (take: Take) => {
    setForgotten(null);
    void teachAgain(take);
  };
  return (
    <div className={css.takes}>
      {takes.map((take, i) => (
        <button
          key={take.id}
          type="button"
          className={css.take}
          aria-label={
            unlike.includes(i)
              ? t('Forget take {n} of “{word}”, which is unlike the others', { n: i + 1, word: title })
              : t('Forget take {n} of “{word}”', { n: i + 1, word: title })
          }
          title={t('Forget take {n}', { n: i + 1 })}
          onClick={() => {
            setForgotten({ take, n: i + 1 });
            void forget(take.id);
          }}
        >
          <span className={unlike.includes(i) ? css.odd : css.dot}>{i + 1}</span>
        </button>
      ))}
      {MISSING.slice(0, missing).map((key) => (
        <span key={key} className={css.missing} />
      ))}
      <span className="small soft">{t('{n} of {of} takes', { n: takes.length, of: Math.max(wanted, takes.length) })}</span>
      <span role="status" className={css.forgotten}>
        {forgotten ? (
          <>
            {t('Take {n} is forgotten.', { n: forgotten.n })}{' '}
            <button type="button" className="plain" onClick={() => bringBack(forgotten.take)}>
              {t('Bring it back')}
            </button>
          </>
        ) : null}
      </span>
    </div>
  );
}

interface StartProps extends Pick<TakeRowProps, 'word' | 'isNext'> {
  readonly said: string;
  readonly names: string;
  readonly any: boolean;
}

function Start({ word, said, names, any, isNext }: StartProps) {
  const { teach } = useIntents();
  const doing = useApp(({ teaching }) => teaching.kind);
  const busy = doing !== 'idle';
  return (
    <>
      {isNext && doing === 'working' ? <p className="soft small">{t('In a moment: it works out what it was taught.')}</p> : null}
      <button type="button" className={isNext ? 'primary' : undefined} disabled={busy} onClick={() => void teach(word, said)}>
        {any ? t('Record more') : t('Record')}
      </button>
      <FromFiles {...{ word, said, names }} />
    </>
  );
}

function Catching({ names, done }: { names: string; done: boolean }) {
  const { stopTeaching } = useIntents();
  const last = useApp(({ teaching }) => (teaching.kind === 'catching' ? teaching.last : null));
  const unlike = useApp(({ teaching }) => (teaching.kind === 'catching' ? teaching.unlike : null));
  return (
    <>
      <p role="status">
        {last ? sayReport(last, done, unlike) : t('Say “{what}” now, then a short pause, then again.', { what: names })}
      </p>
      <Level />
      <LiveTrouble />
      <button type="button" className={done ? 'primary' : undefined} onClick={() => void stopTeaching()}>
        {t('Done')}
      </button>
    </>
  );
}
