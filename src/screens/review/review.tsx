/** The review of one session: what happened, the picture, why the engine called, and where to start next time. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { hearingsAfter } from '../../core/correct.ts';
import type { SessionState } from '../../core/fold.ts';
import type { NextStart } from '../../core/next-start.ts';
import { callsInOrder, type PlacedCall, type Summary, summarize } from '../../core/summary.ts';
import { Key } from '../picture/key.tsx';
import { type Picked, Stairs } from '../picture/stairs.tsx';
import { StairsTable } from '../picture/table.tsx';
import { unbroken } from '../picture/unbroken.ts';
import { Calls } from './calls.tsx';
import { Cautions } from './cautions.tsx';
import { type Correcting, CorrectRep, Note } from './correct-rep.tsx';
import { Corrections } from './corrections.tsx';
import { Detail } from './detail.tsx';
import { Empty } from './empty.tsx';
import { Next } from './next.tsx';
import css from './review.module.css';

export interface ReviewProps {
  readonly state: SessionState;
  readonly next: NextStart;
  /** Without it the session can only be read. */
  readonly correcting?: Correcting & { readonly original: SessionState };
  /** What the corrections teach the ear. */
  readonly learned?: ReactNode;
  /** The one primary action, *Practise again*. */
  readonly onPractise?: () => void;
  readonly onDone?: () => void;
}

export function Review({ state, next, correcting, learned, onPractise, onDone }: ReviewProps) {
  const [asHeard, setAsHeard] = useState(false);
  const shown = asHeard && correcting ? correcting.original : state;
  const going = { next, ...(onPractise && { onPractise }), ...(onDone && { onDone }) };
  return (
    <article className={css.review}>
      <Head state={state} />
      {correcting ? <Corrections {...{ correcting, original: correcting.original, asHeard, onAsHeard: setAsHeard }} /> : null}
      {learned}
      {shown.reps.length === 0 ? <Empty /> : <Session state={shown} correcting={asHeard ? undefined : correcting} />}
      {correcting ? <SessionNote correcting={correcting} /> : null}
      <Next {...going} />
    </article>
  );
}

function Head({ state: { start, startedAt } }: { state: SessionState }) {
  return (
    <header className={css.head}>
      <h1>
        {start.dogName}: {start.planTitle}
      </h1>
      <p className="soft small">
        <time dateTime={startedAt}>{sayDate(startedAt)}</time>
        {start.place ? `, ${start.place}` : ''}
      </p>
    </header>
  );
}

function SessionNote({ correcting: { session, onCorrect } }: { correcting: Correcting }) {
  return (
    <section className={css.grounds} aria-label="A note on this session">
      <Note of={null} text={session.notes.get('') ?? ''} onCorrect={(correction) => void onCorrect(correction)} />
    </section>
  );
}

function Session({ state, correcting }: { state: SessionState; correcting?: Correcting | undefined }) {
  const [picked, setPicked] = useState<Picked | null>(null);
  const detail = useRef<HTMLDivElement>(null);
  // On a phone what was picked is told below the picture, out of sight.
  useEffect(() => {
    if (picked) detail.current?.scrollIntoView?.({ block: 'nearest' });
  }, [picked]);
  const calls = callsInOrder(state);
  const summary = summarize(state);
  const pickedRep = picked?.kind === 'rep' ? picked.n : (picked?.afterRep ?? null);
  return (
    <>
      <Finding summary={summary} />
      <Cautions calls={calls} />
      <section className={css.picture} aria-label="The session as bars on stairs">
        <Stairs reps={state.reps} steps={state.standing.steps} calls={calls} selected={picked} onPick={setPicked} />
        <Key />
        <div ref={detail} className={css.chosen}>
          <Detail state={state} calls={calls} picked={picked} beside={correcting?.session.calls} />
          {correcting && picked?.kind === 'rep' ? (
            <CorrectRep rep={state.reps[picked.n - 1] ?? null} correcting={correcting} />
          ) : null}
        </div>
        {correcting && hearingsAfter(correcting.session).length > 0 ? (
          <details className={css.hearing}>
            <summary>Heard after the last rep</summary>
            <CorrectRep rep={null} correcting={correcting} />
          </details>
        ) : null}
      </section>
      <div className={css.columns}>
        <div className={css.words}>
          <Calls calls={calls} steps={state.standing.steps} />
          <Grounds summary={summary} />
        </div>
        <Table state={state} calls={calls} pickedRep={pickedRep} />
      </div>
    </>
  );
}

function Finding({ summary: { finding, gist } }: { summary: Summary }) {
  return (
    <section className={css.finding} aria-label="What happened">
      <p className={css.first}>{finding}</p>
      <p>{unbroken(gist.join(' '))}</p>
    </section>
  );
}

function Grounds({ summary: { grounds } }: { summary: Summary }) {
  return (
    <section className={css.grounds}>
      <h2>What it rests on</h2>
      <ul className={css.facts}>
        {grounds.map((sentence) => (
          <li key={sentence}>{unbroken(sentence)}</li>
        ))}
      </ul>
    </section>
  );
}

interface TableProps {
  readonly state: SessionState;
  readonly calls: readonly PlacedCall[];
  readonly pickedRep: number | null;
}

/** Folded on a phone, open where there is room and on paper (CSS). */
function Table({ state: { reps }, calls, pickedRep }: TableProps) {
  const title = `The same as a table, ${reps.length === 1 ? '1 rep' : `${reps.length} reps`}`;
  return (
    <div>
      <h2 className={css.heading}>{title}</h2>
      <details className={css.table}>
        <summary className={css.summary}>{title}</summary>
        <StairsTable reps={reps} calls={calls} selectedRep={pickedRep} />
      </details>
    </div>
  );
}

const DATE = new Intl.DateTimeFormat('en-GB', {
  ...{ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', hour: '2-digit', minute: '2-digit' },
  timeZone: 'UTC',
});

/** The wall clock where the session was held, wherever it is read: the offset is cut off, not applied. */
function sayDate(iso: string): string {
  return DATE.format(new Date(`${iso.slice(0, 19)}Z`));
}
