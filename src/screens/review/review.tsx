/** The review of one session: what happened, the picture, why the engine called, and where to start next time. */
import { useState } from 'react';
import type { SessionState } from '../../core/fold.ts';
import type { NextStart } from '../../core/next-start.ts';
import { callsInOrder, type PlacedCall, type Summary, summarize } from '../../core/summary.ts';
import { Key } from '../picture/key.tsx';
import { type Picked, Stairs } from '../picture/stairs.tsx';
import { StairsTable } from '../picture/table.tsx';
import { unbroken } from '../picture/unbroken.ts';
import { Calls } from './calls.tsx';
import { Cautions } from './cautions.tsx';
import { Detail } from './detail.tsx';
import { Empty } from './empty.tsx';
import { Next } from './next.tsx';
import css from './review.module.css';

export interface ReviewProps {
  readonly state: SessionState;
  readonly next: NextStart;
  /** The one primary action, *Practise again*. */
  readonly onPractise?: () => void;
  readonly onDone?: () => void;
}

export function Review({ state, next, onPractise, onDone }: ReviewProps) {
  const going = { next, ...(onPractise && { onPractise }), ...(onDone && { onDone }) };
  return (
    <article className={css.review}>
      <Head state={state} />
      {state.reps.length === 0 ? <Empty /> : <Session state={state} />}
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

function Session({ state }: { state: SessionState }) {
  const [picked, setPicked] = useState<Picked | null>(null);
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
        <Detail state={state} calls={calls} picked={picked} />
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
