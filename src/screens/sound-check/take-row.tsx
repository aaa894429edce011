/** One word to teach: how many takes there are, record more, add from files, forget one. */
import { type ChangeEvent, useState } from 'react';
import type { Take } from '../../core/library.ts';
import { useApp, useIntents } from '../app-context.tsx';
import { Level } from '../parts/level.tsx';
import { LiveTrouble } from './live-trouble.tsx';
import css from './sound-check.module.css';
import { sayReport } from './take-words.ts';

export interface TakeRowProps {
  readonly word: string;
  readonly title: string;
  readonly meaning: string;
  /** null: what is said is the title itself. */
  readonly example: string | null;
  readonly takes: readonly Take[];
  readonly wanted: number;
  /** The one thing to do next on this screen. */
  readonly isNext: boolean;
}

export function TakeRow({ word, title, meaning, example, takes, wanted, isNext }: TakeRowProps) {
  const kept = takes[0]?.said ?? '';
  const [typed, setTyped] = useState(kept);
  const said = example === null ? title : typed.trim().normalize('NFC') || title;
  const catching = useApp(({ teaching }) => teaching.kind === 'catching' && teaching.word === word && teaching.said === said);
  return (
    <li className={css.row}>
      <div className={css.what}>
        <strong>{title}</strong>
        {meaning ? <p className="soft small">{meaning}</p> : null}
        {example === null ? null : (
          <label className={css.said}>
            <span className="small soft">what you say</span>
            <input value={typed} placeholder={example} maxLength={40} onChange={(event) => setTyped(event.target.value)} />
          </label>
        )}
        <Takes {...{ title, takes, wanted }} />
      </div>
      <div className={css.actions}>
        {catching ? (
          <Catching said={said} done={takes.length >= wanted} />
        ) : (
          <Start word={word} said={said} any={takes.length > 0} isNext={isNext} />
        )}
      </div>
    </li>
  );
}

/** A ring each for the takes still wanted; keys only. */
const MISSING = ['first', 'second', 'third', 'fourth', 'fifth'];

/** A dot a take: filled when kept, a ring for each that is still wanted. A tap forgets one, and can be taken back. */
function Takes({ title, takes, wanted }: { title: string; takes: readonly Take[]; wanted: number }) {
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
          aria-label={`Forget take ${i + 1} of “${title}”`}
          title={`Forget take ${i + 1}`}
          onClick={() => {
            setForgotten({ take, n: i + 1 });
            void forget(take.id);
          }}
        />
      ))}
      {MISSING.slice(0, missing).map((key) => (
        <span key={key} className={css.missing} />
      ))}
      <span className="small soft">
        {takes.length} of {Math.max(wanted, takes.length)} takes
      </span>
      <span role="status" className={css.forgotten}>
        {forgotten ? (
          <>
            Take {forgotten.n} is forgotten.{' '}
            <button type="button" className="plain" onClick={() => bringBack(forgotten.take)}>
              Bring it back
            </button>
          </>
        ) : null}
      </span>
    </div>
  );
}

function Start({ word, said, any, isNext }: { word: string; said: string; any: boolean; isNext: boolean }) {
  const { teach, addRecordings } = useIntents();
  const busy = useApp(({ teaching }) => teaching.kind !== 'idle');
  const [refused, setRefused] = useState<readonly string[]>([]);
  const add = async (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])];
    const read = await Promise.all(files.map(async (file) => ({ name: file.name, bytes: await file.arrayBuffer() })));
    setRefused(await addRecordings(word, said, read));
  };
  return (
    <>
      <button type="button" className={isNext ? 'primary' : undefined} disabled={busy} onClick={() => void teach(word, said)}>
        {any ? 'Record more' : 'Record'}
      </button>
      <label className={css.file}>
        from files
        <input
          type="file"
          accept="audio/*"
          multiple
          aria-label={`Recordings of “${said}” from files`}
          disabled={busy}
          onChange={(event) => void add(event)}
        />
      </label>
      {refused.length > 0 ? <p role="alert">No sound in {refused.join(', ')}: use WAV, MP3 or M4A.</p> : null}
    </>
  );
}

function Catching({ said, done }: { said: string; done: boolean }) {
  const { stopTeaching } = useIntents();
  const last = useApp(({ teaching }) => (teaching.kind === 'catching' ? teaching.last : null));
  return (
    <>
      <p role="status">{last ? sayReport(last) : `Say “${said}” now, then a short pause, then again.`}</p>
      <Level />
      <LiveTrouble />
      <button type="button" className={done ? 'primary' : undefined} onClick={() => void stopTeaching()}>
        Done
      </button>
    </>
  );
}
