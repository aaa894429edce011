/** Folds a session as it was put right in the review: the heard words corrected, the steps those that were really practised. */
import type { Call } from './call.ts';
import { NO_TRIALS, type Trials } from './chain/machine.ts';
import type { Correction, RepWord } from './correction.ts';
import { decide } from './criterion.ts';
import type { SessionEvent } from './event.ts';
import { append, type BadLog, fold, type SessionState } from './fold.ts';
import { callsInOrder, isOverruled } from './placed-calls.ts';
import { hearInRep, type Phase, WAITING } from './rep.ts';
import { sessionOrder, standingEvents, writtenInReview } from './standing.ts';
import type { Seconds } from './units.ts';
import type { EarName, Unsure, Word } from './word.ts';

type Corrected = SessionEvent & { readonly type: 'corrected' };
type WordHeard = SessionEvent & { readonly type: 'word-heard' };

/** One heard word, unsure stretch or inserted word, with what became of it. */
export interface Hearing {
  readonly id: string;
  /** What the ear made of it; null: it heard nothing. */
  readonly was: Word | 'unsure' | null;
  /** What it is now; null: no word. */
  readonly is: Word | null;
  readonly startedAtS: Seconds;
  readonly endedAtS: Seconds;
  /** As the ear was sure, 0 to 1; of an unsure stretch its nearest word's. */
  readonly confidence: number;
  /** The words that an unsure stretch was nearest to; of a heard word none. */
  readonly nearest: Unsure['nearest'];
  readonly by: EarName;
  /** The handler said that the ear was right, or what it really was. */
  readonly judged: boolean;
  readonly moved: boolean;
}

/** A rep's calls: those that the rule made, and those that it makes of the corrected words. */
export interface CallsBeside {
  /** 1 for the first rep. */
  readonly rep: number;
  /** By the rule, after this rep; the moves at the handler's own word are not among them. */
  readonly called: readonly Call[];
  readonly wouldCall: readonly Call[];
  /** Trials on the step of the rep, itself included, since the step was reached. */
  readonly trials: Trials;
}

export interface CorrectedSession {
  /** Its log holds the corrected words and no corrections: any reader of a session can read it. */
  readonly state: SessionState;
  /** In the order of their times. */
  readonly hearings: readonly Hearing[];
  /** One for each rep. */
  readonly calls: readonly CallsBeside[];
  /** By the event that ended the rep; the session's own under ''. */
  readonly notes: ReadonlyMap<string, string>;
  /** Why a rep was voided, by the event that ended it. */
  readonly voidReasons: ReadonlyMap<string, string>;
  readonly corrections: number;
  readonly canUndo: string | null;
  readonly canRedo: string | null;
  /** What these take back and bring again. */
  readonly undoes: Correction | null;
  readonly redoes: Correction | null;
}

export type CorrectionProblem = {
  readonly kind: 'unknown-word' | 'no-rep-ends-there' | 'time-outside-the-session';
  readonly got: string;
};

/** Reps end this long after the last thing that happened at the latest, s: a missed last word may be put in. */
const AFTER_END_S: Seconds = 60;

export function foldCorrected(
  written: readonly SessionEvent[],
): { readonly ok: true; readonly session: CorrectedSession } | { readonly ok: false; readonly problem: BadLog } {
  const log = sessionOrder(written);
  const standing = standingEvents(log);
  const corrections = standing.filter((event): event is Corrected => event.type === 'corrected');
  const corrected = correctedLog(standing, corrections, writtenInReview(log));
  const folded = fold(corrected);
  if (!folded.ok) return folded;
  const redone = redoable(log);
  return {
    ok: true,
    session: {
      state: folded.state,
      hearings: hearingsOf(standing, corrections),
      calls: callsBeside(corrected),
      ...textsOf(corrections),
      corrections: corrections.length,
      canUndo: corrections.at(-1)?.id ?? null,
      canRedo: redone?.id ?? null,
      undoes: corrections.at(-1)?.body ?? null,
      redoes: redone?.of ?? null,
    },
  };
}

/** What was heard from the end of the rep before to the end of this one. */
export function hearingsIn({ hearings, state }: CorrectedSession, n: number): readonly Hearing[] {
  const fromS = state.reps[n - 2]?.endAtS ?? Number.NEGATIVE_INFINITY;
  const toS = state.reps[n - 1]?.endAtS ?? Number.NEGATIVE_INFINITY;
  return hearings.filter(({ startedAtS }) => startedAtS > fromS && startedAtS <= toS);
}

/** Is the word another one, or elsewhere, than the ear had it? */
export function isChanged({ was, is, moved }: Hearing): boolean {
  return (moved && is !== null) || is !== (was === 'unsure' ? null : was);
}

/** The reps, by their number, that are not as the ear had them. */
export function changedReps(session: CorrectedSession): ReadonlySet<number> {
  const changed = session.state.reps.filter(
    ({ n, endedBy }) => session.voidReasons.has(endedBy) || hearingsIn(session, n).some(isChanged),
  );
  return new Set(changed.map(({ n }) => n));
}

/** What belongs to no rep: heard after the last one. */
export function hearingsAfter({ hearings, state }: CorrectedSession): readonly Hearing[] {
  const fromS = state.reps.at(-1)?.endAtS ?? Number.NEGATIVE_INFINITY;
  return hearings.filter(({ startedAtS }) => startedAtS > fromS);
}

/** Null when it can be kept; else why not, with the value. */
export function checkCorrection(log: readonly SessionEvent[], correction: Correction): CorrectionProblem | null {
  const folded = foldCorrected(log);
  if (!folded.ok) return { kind: 'unknown-word', got: folded.problem.kind };
  const { hearings, state } = folded.session;
  if ('startedAtS' in correction) {
    const { startedAtS } = correction;
    if (!(startedAtS >= 0 && startedAtS <= state.latestS + AFTER_END_S))
      return { kind: 'time-outside-the-session', got: String(startedAtS) };
  }
  if (correction.do === 'insert' || (correction.do === 'note' && correction.of === null)) return null;
  const of = correction.of ?? '';
  if (correction.do === 'void' || correction.do === 'note')
    return state.reps.some(({ endedBy }) => endedBy === of) ? null : { kind: 'no-rep-ends-there', got: of };
  return hearings.some(({ id }) => id === of) ? null : { kind: 'unknown-word', got: of };
}

/** The log as it would have been: each event where it was written, what was moved or put in where its time belongs. */
function correctedLog(
  standing: readonly SessionEvent[],
  corrections: readonly Corrected[],
  ofReview: ReadonlySet<string>,
): readonly SessionEvent[] {
  const original = standing.filter(({ id }) => !ofReview.has(id));
  const base = [...original, ...corrections.flatMap(insertedWord)];
  const late: WordHeard[] = [];
  const inPlace = base.flatMap((event): readonly SessionEvent[] => {
    const own = corrections.filter(({ body }) => 'of' in body && body.of === event.id).map(({ body }) => body);
    const word = relabelled(event, own);
    if (word === null) return [];
    const movedToS = own.findLast((body) => body.do === 'move')?.startedAtS;
    const isInserted = event.type === 'word-heard' && event.body.by === 'review';
    if (word.type !== 'word-heard' || (movedToS === undefined && !isInserted)) return [word];
    late.push(movedToS === undefined ? word : movedTo(word, movedToS));
    return [];
  });
  const times = timesOf(original);
  const byTime = late.toSorted((a, b) => a.body.startedAtS - b.body.startedAtS);
  return betweenReps(byTime.reduce<readonly SessionEvent[]>((log, word) => insertByTime(log, word, times), inPlace));
}

/**
 * A call moves the dog between reps, never during one: where a corrected hold spans a call, the call takes effect after it.
 * So a rep stays on the step on which its hold began.
 */
function betweenReps(log: readonly SessionEvent[]): readonly SessionEvent[] {
  const ordered: SessionEvent[] = [];
  let spanned: SessionEvent[] = [];
  let phase: Phase = WAITING;
  for (const event of log) {
    if (event.type === 'called' && phase.phase === 'holding') {
      spanned.push(event);
      continue;
    }
    const next = phaseAfter(phase, event);
    const isNewHold = event.type === 'word-heard' && event.body.word === 'hold' && next.phase === 'holding';
    ordered.push(...(isNewHold ? [...spanned, event] : [event]));
    if (!isNewHold && next.phase !== 'holding') ordered.push(...spanned);
    if (isNewHold || next.phase !== 'holding') spanned = [];
    phase = next;
  }
  return [...ordered, ...spanned];
}

function phaseAfter(phase: Phase, event: SessionEvent): Phase {
  switch (event.type) {
    case 'word-heard':
      return hearInRep(phase, event.body, 0).phase;
    case 'paused':
      return phase.phase === 'ended' ? phase : { phase: 'paused', sinceS: event.body.atS };
    case 'resumed':
      return phase.phase === 'paused' ? WAITING : phase;
    case 'session-ended':
      return { phase: 'ended' };
    default:
      return phase;
  }
}

/** The words that the handler put in afterwards. */
function insertedWord(event: Corrected): readonly WordHeard[] {
  const { body } = event;
  if (body.do !== 'insert') return [];
  const { word, startedAtS } = body;
  const heard = { word, startedAtS, endedAtS: startedAtS, decidedAtS: startedAtS, confidence: 1, by: 'review' } as const;
  return [{ ...event, type: 'word-heard', body: heard }];
}

/** Null: it is no word, and drops out. */
function relabelled(event: SessionEvent, own: readonly Correction[]): SessionEvent | null {
  if (event.type !== 'word-heard' && event.type !== 'word-unsure') return event;
  const label = own.findLast((body) => body.do === 'relabel')?.as;
  if (label === null) return null;
  if (event.type === 'word-unsure') return label === undefined ? event : voidedBy(own, asWord(event, label));
  return voidedBy(own, label === undefined ? event : { ...event, body: { ...event.body, word: label } });
}

/** No trial is a rep, not a word: it stays so whatever its last word is called, and goes with that word. */
function voidedBy(own: readonly Correction[], event: WordHeard): WordHeard {
  return own.some((body) => body.do === 'void') ? { ...event, body: { ...event.body, voids: true } } : event;
}

function asWord(event: SessionEvent & { type: 'word-unsure' }, word: RepWord): WordHeard {
  const { startedAtS, endedAtS, decidedAtS, by } = event.body;
  return { ...event, type: 'word-heard', body: { word, startedAtS, endedAtS, decidedAtS, confidence: 1, by } };
}

function movedTo(event: WordHeard, startedAtS: Seconds): WordHeard {
  const byS = startedAtS - event.body.startedAtS;
  const { endedAtS, decidedAtS } = event.body;
  return { ...event, body: { ...event.body, startedAtS, endedAtS: endedAtS + byS, decidedAtS: decidedAtS + byS } };
}

/** Null: it tells no moment. */
function timeOf(event: SessionEvent): Seconds | null {
  switch (event.type) {
    case 'word-heard':
    case 'word-unsure':
      return event.body.startedAtS;
    case 'paused':
    case 'resumed':
    case 'session-ended':
    case 'ear-changed':
      return event.body.atS;
    default:
      return null;
  }
}

/** By event, its moment in the session; what has none of its own (a call, an undo) happened with the event before it. */
function timesOf(log: readonly SessionEvent[]): ReadonlyMap<string, Seconds> {
  const times = new Map<string, Seconds>();
  let latestS: Seconds = 0;
  for (const event of log) {
    latestS = timeOf(event) ?? latestS;
    times.set(event.id, latestS);
  }
  return times;
}

function insertByTime(
  log: readonly SessionEvent[],
  event: WordHeard,
  times: ReadonlyMap<string, Seconds>,
): readonly SessionEvent[] {
  const whenS = (other: SessionEvent) => (other.type === 'word-heard' ? other.body.startedAtS : (times.get(other.id) ?? 0));
  let at = Math.max(1, log.findLastIndex((other) => whenS(other) <= event.body.startedAtS) + 1);
  // A word comes before the calls that answered it; an end is an end, and a word that came later is put before it.
  for (let last = log[at - 1]; last?.type === 'called' && last.body.because === event.id; last = log[at - 1]) at--;
  if (log[at - 1]?.type === 'session-ended') at--;
  // Written in the review, days later maybe; it was said in the session.
  const said = event.body.by === 'review' ? { ...event, at: log[at - 1]?.at ?? event.at } : event;
  return log.toSpliced(at, 0, said);
}

function hearingsOf(standing: readonly SessionEvent[], corrections: readonly Corrected[]): readonly Hearing[] {
  const heard = [...standing, ...corrections.flatMap(insertedWord)].flatMap((event): readonly Hearing[] => {
    if (event.type !== 'word-heard' && event.type !== 'word-unsure') return [];
    const own = corrections.filter(({ body }) => 'of' in body && body.of === event.id).map(({ body }) => body);
    const label = own.findLast((body) => body.do === 'relabel');
    const movedToS = own.findLast((body) => body.do === 'move')?.startedAtS;
    const was = event.type === 'word-unsure' ? 'unsure' : event.body.by === 'review' ? null : event.body.word;
    const heardAs = event.type === 'word-heard' ? event.body.word : null;
    const shiftS = movedToS === undefined ? 0 : movedToS - event.body.startedAtS;
    return [
      {
        ...{ id: event.id, was, is: label === undefined ? heardAs : label.as, by: event.body.by },
        startedAtS: movedToS ?? event.body.startedAtS,
        endedAtS: event.body.endedAtS + shiftS,
        confidence: event.type === 'word-heard' ? event.body.confidence : (event.body.nearest[0]?.confidence ?? 0),
        nearest: event.type === 'word-unsure' ? event.body.nearest : [],
        judged: own.some((body) => body.do === 'confirm' || body.do === 'relabel'),
        moved: movedToS !== undefined,
      },
    ];
  });
  return heard.toSorted((a, b) => a.startedAtS - b.startedAtS);
}

/** The rule is asked after every rep of the corrected session, on the step that was practised. */
function callsBeside(log: readonly SessionEvent[]): readonly CallsBeside[] {
  const [first, ...rest] = log;
  const begun = first && fold([first]);
  if (!begun?.ok) return [];
  const asked: Pick<CallsBeside, 'wouldCall' | 'trials'>[] = [];
  const state = rest.reduce((before, event) => {
    const after = append(before, event);
    const rep = after.reps[before.reps.length];
    if (!rep) return after;
    const isSaid = event.type === 'word-heard' && after.start.kind !== 'exam';
    const wouldCall = isSaid ? decide(before.standing, rep, rep.endAtS - after.pausedS, before.start.limits) : [];
    asked.push({ wouldCall, trials: after.standing.trials });
    return after;
  }, begun.state);
  const placed = callsInOrder(state).filter(({ call }) => !isOverruled(call));
  const calledAfter = (n: number) => placed.filter(({ afterRep }) => afterRep === n).map(({ call }) => call);
  return state.reps.map(({ n }, i) => ({
    ...{ rep: n, called: calledAfter(n) },
    ...(asked[i] ?? { wouldCall: [], trials: NO_TRIALS }),
  }));
}

function textsOf(corrections: readonly Corrected[]): Pick<CorrectedSession, 'notes' | 'voidReasons'> {
  const notes = new Map<string, string>();
  const voidReasons = new Map<string, string>();
  for (const { body } of corrections) {
    if (body.do === 'void') voidReasons.set(body.of, body.reason);
    if (body.do !== 'note') continue;
    if (body.text === '') notes.delete(body.of ?? '');
    else notes.set(body.of ?? '', body.text);
  }
  return { notes, voidReasons };
}

/** The undo to take back: the latest one of a correction that stands, unless something was corrected after it. */
function redoable(log: readonly SessionEvent[]): { readonly id: string; readonly of: Correction } | null {
  const made = new Map(log.flatMap((event) => (event.type === 'corrected' ? [[event.id, event.body]] : [])));
  const undone = standingEvents(log).filter((event) => event.type === 'undone');
  const last = undone.findLast((event) => made.has(event.body.of));
  const of = last && made.get(last.body.of);
  if (!last || !of) return null;
  const isCorrectedSince = log.slice(log.indexOf(last)).some(({ type }) => type === 'corrected');
  return isCorrectedSince ? null : { id: last.id, of };
}
