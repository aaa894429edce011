/** The review of one session: what happened, the picture, why the engine called, and where to start next time. */
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { changedReps, hearingsAfter } from '../../core/correct.ts';
import type { Correction } from '../../core/correction.ts';
import type { Rep, SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import type { NextStart } from '../../core/next-start.ts';
import { callsInOrder, type PlacedCall } from '../../core/placed-calls.ts';
import { type Summary, summarize } from '../../core/summary.ts';
import type { Seconds } from '../../core/units.ts';
import { AfterExam } from '../exam/after.tsx';
import { Wide } from '../parts/sideways.tsx';
import { sayWhenInFull } from '../parts/when.ts';
import { Key } from '../picture/key.tsx';
import { Stairs } from '../picture/stairs.tsx';
import { StairsTable } from '../picture/table.tsx';
import { unbroken } from '../picture/unbroken.ts';
import { Calls } from './calls.tsx';
import { Cautions } from './cautions.tsx';
import { type Correcting, CorrectRep, Note } from './correct-rep.tsx';
import { Corrections } from './corrections.tsx';
import { Detail, type DetailProps } from './detail.tsx';
import { Empty } from './empty.tsx';
import { Next } from './next.tsx';
import { Notes } from './notes.tsx';
import css from './review.module.css';
import { UnsureStretches } from './unsure.tsx';
import { usePicked } from './use-picked.ts';

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
  /** Of a session on homework that was not sent back yet. */
  readonly onSend?: () => void;
}

export function Review({ state, next, correcting, learned, onPractise, onDone, onSend }: ReviewProps) {
  const [asHeard, setAsHeard] = useState(false);
  const shown = asHeard && correcting ? correcting.original : state;
  const after = (
    <>
      {correcting ? <Corrections {...{ correcting, original: correcting.original, asHeard, onAsHeard: setAsHeard }} /> : null}
      {learned}
    </>
  );
  const going = { next, ...(onPractise && { onPractise }), ...(onDone && { onDone }), ...(onSend && { onSend }) };
  return (
    <article className={css.review}>
      <Head state={state} />
      {shown.reps.length === 0 ? (
        <Repless correcting={asHeard ? undefined : correcting} after={after} />
      ) : (
        <Session state={shown} after={after} {...(correcting && !asHeard && { correcting })} />
      )}
      {correcting ? <SessionNote correcting={correcting} /> : null}
      {state.start.kind === 'exam' ? (
        <AfterExam state={shown} {...(onDone && { onDone })} />
      ) : (
        <Next {...going} mayHurt={asksForVeterinarian(shown)} />
      )}
    </article>
  );
}

/** Words that make no rep can be put right, too. */
function Repless({ correcting, after }: { correcting: Correcting | undefined; after: ReactNode }) {
  const isHeard = correcting && correcting.session.hearings.length > 0;
  return (
    <>
      <Empty />
      {isHeard ? <CorrectRep rep={null} correcting={correcting} /> : null}
      {after}
    </>
  );
}

/** Where one arrives: the page has its name, and a screen reader begins there. */
function Head({ state: { start, startedAt } }: { state: SessionState }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const title = `${start.dogName}: ${start.planTitle}`;
  useEffect(() => {
    const before = document.title;
    document.title = `${title} · ${before}`;
    heading.current?.focus({ preventScroll: true });
    return () => {
      document.title = before;
    };
  }, [title]);
  return (
    <header className={css.head}>
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      <p className="soft small">
        <time dateTime={startedAt}>{sayWhenInFull(startedAt)}</time>
        {start.place ? `, ${start.place}` : ''}
      </p>
    </header>
  );
}

function asksForVeterinarian(state: SessionState): boolean {
  const reasons = callsInOrder(state).flatMap(({ call }) => call.reasons);
  return reasons.some((reason) => reason.kind === 'area-alarm' && reason.level === 'veterinarian');
}

function SessionNote({ correcting: { session, onCorrect } }: { correcting: Correcting }) {
  const [refused, setRefused] = useState<string | null>(null);
  const text = session.notes.get('') ?? '';
  const correct = (correction: Correction) => void onCorrect(correction).then(setRefused);
  return (
    <>
      <Note of={null} label={t('A note on this session')} text={text} onCorrect={correct} />
      {refused ? <p role="alert">{refused}</p> : null}
    </>
  );
}

interface SessionProps {
  readonly state: SessionState;
  readonly correcting?: ReviewProps['correcting'];
  /** What was put right and learnt, told after the picture: nothing above it moves when something is put right. */
  readonly after: ReactNode;
}

function Session({ state, correcting, after }: SessionProps) {
  const { picked, pick, follow } = usePicked(state.reps);
  const calls = callsInOrder(state);
  const summary = summarize(state);
  const pickedRep = picked?.kind === 'rep' ? picked.n : (picked?.afterRep ?? null);
  const putRight = correcting ? changedReps(correcting.session) : NONE;
  return (
    <>
      <Finding summary={summary} />
      <Cautions calls={calls} />
      <section className={css.picture} aria-label={t('The session as bars on stairs')}>
        <Stairs
          {...{ reps: state.reps, steps: state.standing.steps, calls, putRight }}
          {...{ from: 'start', selected: picked, onPick: pick }}
        />
        <Key calls={calls} hasPutRight={putRight.size > 0} />
        <Opened {...{ state, calls, picked, correcting, putRight, follow }} />
      </section>
      {after}
      <div className={css.columns}>
        <div className={css.words}>
          <Calls calls={calls} steps={state.standing.steps} />
          {correcting ? <Notes session={correcting.session} /> : null}
          {correcting ? <UnsureStretches correcting={correcting} /> : null}
          <Grounds summary={summary} />
        </div>
        <Table {...{ state, calls, pickedRep, putRight }} />
      </div>
    </>
  );
}

const NONE: ReadonlySet<number> = new Set();

interface OpenedProps extends Pick<DetailProps, 'state' | 'calls' | 'picked'> {
  readonly correcting: ReviewProps['correcting'];
  readonly putRight: ReadonlySet<number>;
  /** The end of the picked rep was moved there. */
  readonly follow: (endAtS: Seconds) => void;
}

/** What was picked, and how to put it right. */
function Opened({ state, calls, picked, correcting, putRight, follow }: OpenedProps) {
  const told = useRef<HTMLDivElement>(null);
  const key = picked && (picked.kind === 'rep' ? `rep ${picked.n}` : `call ${picked.afterRep} ${picked.index}`);
  // On a phone it is told below the picture, out of sight.
  useEffect(() => {
    if (key) told.current?.scrollIntoView?.({ block: 'nearest' });
  }, [key]);
  const rep = picked?.kind === 'rep' ? state.reps[picked.n - 1] : undefined;
  const heard = correcting && { original: correcting.original, putRight };
  return (
    <div className={css.opened}>
      <div ref={told} className={css.told}>
        <Detail state={state} calls={calls} picked={picked} beside={correcting?.session.calls} heard={heard} />
      </div>
      {correcting && rep ? <CorrectRep rep={rep} correcting={following(correcting, rep, follow)} /> : null}
      {correcting && hearingsAfter(correcting.session).length > 0 ? (
        <details className={css.hearing}>
          <summary>{t('Heard after the last rep')}</summary>
          <CorrectRep rep={null} correcting={correcting} />
        </details>
      ) : null}
    </div>
  );
}

/** The rep stays open when the word that ends it is moved. */
function following(correcting: Correcting, rep: Rep, follow: OpenedProps['follow']): Correcting {
  const onCorrect = async (correction: Correction) => {
    const refused = await correcting.onCorrect(correction);
    if (refused === null && correction.do === 'move' && correction.of === rep.endedBy) follow(correction.startedAtS);
    return refused;
  };
  return { ...correcting, onCorrect };
}

function Finding({ summary: { finding, gist } }: { summary: Summary }) {
  return (
    <section className={css.finding} aria-label={t('What happened')}>
      <p className={css.first}>{finding}</p>
      <p>{unbroken(gist.join(' '))}</p>
    </section>
  );
}

function Grounds({ summary: { grounds } }: { summary: Summary }) {
  return (
    <section className={css.grounds}>
      <h2>{t('What it rests on')}</h2>
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
  readonly putRight: ReadonlySet<number>;
}

/** Folded on a phone, open where there is room and on paper (CSS). */
function Table({ state: { reps }, calls, pickedRep, putRight }: TableProps) {
  const n = reps.length;
  const title = t('The same as a table, {rows}', { rows: n === 1 ? t('1 rep') : t('{n} reps', { n }) });
  return (
    <div>
      <h2 className={css.heading}>{title}</h2>
      <details className={css.table}>
        <summary className={css.summary}>{title}</summary>
        <Wide label={t('The session, as a table')}>
          <StairsTable reps={reps} calls={calls} selectedRep={pickedRep} putRight={putRight} />
        </Wide>
      </details>
    </div>
  );
}
