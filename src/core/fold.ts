/** Folds the events of one session into what it looks like now; live screen, review, exports and tests all read this fold. */
import type { Call } from './call.ts';
import {
  applyCall,
  countRep,
  isTrial,
  type OpenMove,
  openMoveAfter,
  putsIn,
  remain,
  type Standing,
  stepOf,
} from './criterion.ts';
import type { EarState, SessionEvent, SessionStart } from './event.ts';
import { standAt } from './next-start.ts';
import { criterionS, type Step } from './plan.ts';
import { breakOff, type EndedRep, hearInRep, type Phase, type Question, WAITING } from './rep.ts';
import { standingEvents } from './standing.ts';
import type { Seconds } from './units.ts';
import type { Heard, Unsure } from './word.ts';

/** A rep with its place in the session. */
export interface Rep extends EndedRep {
  /** 1 for the first. */
  readonly n: number;
  readonly step: Step;
  readonly isWarmUp: boolean;
  /** The event that ended it. */
  readonly endedBy: string;
  readonly calls: readonly Call[];
}

/** What happened to a session: enough for any screen. Times are seconds on the session clock. */
export interface SessionState {
  /** Every event, undone ones too, in the order written. */
  readonly log: readonly SessionEvent[];
  readonly start: SessionStart;
  readonly startedAt: string;
  readonly phase: Phase;
  readonly reps: readonly Rep[];
  readonly standing: Standing;
  /** What *stay* would decline: the engine's latest move, until a trial has followed it. */
  readonly openMove: OpenMove | null;
  readonly question: Question | null;
  readonly lastHeard: Heard | null;
  readonly lastUnsure: Unsure | null;
  readonly ear: EarState;
  /** The latest moment that any event names, s. */
  readonly latestS: Seconds;
  /** Time spent paused so far, s. */
  readonly pausedS: Seconds;
}

/** A log that no session can be made of. The caller shows it; nothing is dropped. */
export interface BadLog {
  readonly kind: 'empty' | 'no-start' | 'two-starts' | 'unknown-step' | 'doubled-step';
  readonly at: string;
}

/** The whole session from its log. */
export function fold(log: readonly SessionEvent[]): { ok: true; state: SessionState } | { ok: false; problem: BadLog } {
  const [first, ...rest] = log;
  if (!first) return { ok: false, problem: { kind: 'empty', at: '' } };
  if (first.type !== 'session-started') return { ok: false, problem: { kind: 'no-start', at: first.id } };
  const second = rest.find((event) => event.type === 'session-started');
  if (second) return { ok: false, problem: { kind: 'two-starts', at: second.id } };
  const standing = standingEvents(rest);
  const problem = strayStep(first, standing);
  if (problem) return { ok: false, problem };
  const state = standing.reduce(reduce, begin(first));
  return { ok: true, state: { ...state, log } };
}

/** A step that is named while its ladder does not have it, or has it twice: an import may hold one, a session of ours cannot. */
function strayStep(start: SessionEvent & { type: 'session-started' }, standing: readonly SessionEvent[]): BadLog | null {
  const { steps, startStepId } = start.body;
  const known = new Set(steps.map(({ id }) => id));
  if (known.size < steps.length) return { kind: 'doubled-step', at: start.id };
  if (!known.has(startStepId)) return { kind: 'unknown-step', at: start.id };
  let latestHalf: string | null = null;
  for (const event of standing) {
    if (event.type !== 'called') continue;
    const { kind } = event.body;
    const half = putsIn(event.body);
    const problem = strayInCall(event.body, known);
    if (problem) return { kind: problem, at: event.id };
    if (half) known.add(half.id);
    // A declined move takes its half step out again.
    if (kind === 'remain' && latestHalf) known.delete(latestHalf);
    if (kind !== 'rest') latestHalf = half?.id ?? null;
  }
  return null;
}

function strayInCall({ fromStepId, toStepId, inserted }: Call, known: ReadonlySet<string>): BadLog['kind'] | null {
  if (inserted && known.has(inserted.id)) return 'doubled-step';
  const { belowId, aboveId } = inserted?.halfOf ?? { belowId: fromStepId, aboveId: fromStepId };
  const to = toStepId === inserted?.id ? fromStepId : toStepId;
  return [fromStepId, to, belowId, aboveId].every((id) => known.has(id)) ? null : 'unknown-step';
}

function begin(event: SessionEvent & { type: 'session-started' }): SessionState {
  return {
    log: [event],
    start: event.body,
    startedAt: event.at,
    phase: WAITING,
    reps: [],
    standing: standAt(event.body),
    openMove: null,
    question: null,
    lastHeard: null,
    lastUnsure: null,
    ear: 'off',
    latestS: 0,
    pausedS: 0,
  };
}

/** One more event. Undoing looks back over the whole log, so it folds anew. */
export function append(state: SessionState, event: SessionEvent): SessionState {
  const log = [...state.log, event];
  if (event.type !== 'undone') return { ...reduce(state, event), log };
  const again = fold(log);
  if (!again.ok) throw new Error(`fold: a log that began well cannot go bad (${again.problem.kind})`);
  return again.state;
}

function reduce(state: SessionState, event: SessionEvent): SessionState {
  switch (event.type) {
    case 'word-heard':
      return hear(state, event.body, event.id);
    case 'called':
      return call(state, event.body);
    case 'word-unsure':
      return { ...state, lastUnsure: event.body, latestS: Math.max(state.latestS, event.body.endedAtS) };
    case 'paused':
      return pause(state, event.body.atS, event.id);
    case 'resumed':
      return resume(state, event.body.atS);
    case 'ear-changed':
      return { ...state, ear: event.body.state, latestS: Math.max(state.latestS, event.body.atS) };
    case 'session-ended':
      return end(state, event.body.atS, event.id);
    case 'session-started':
    case 'undone':
    // What was heard stays as it was; `correct.ts` folds it anew.
    case 'corrected':
      return state;
  }
}

function hear(state: SessionState, heard: Heard, id: string): SessionState {
  const { phase, rep, question } = hearInRep(state.phase, heard, askedS(state));
  const next = {
    ...state,
    phase,
    question,
    lastHeard: heard,
    lastUnsure: null,
    latestS: Math.max(state.latestS, heard.endedAtS),
  };
  return rep ? withRep(next, rep, id) : next;
}

/** The seconds that a marker must wait for now. In an examination nothing is asked of the dog: whatever it gives is kept. */
export function askedS({ start, standing }: SessionState): Seconds {
  return start.kind === 'exam' ? 0 : criterionS(stepOf(standing));
}

function withRep(state: SessionState, rep: EndedRep, endedBy: string): SessionState {
  const { standing, reps } = state;
  const full: Rep = {
    ...rep,
    n: reps.length + 1,
    step: stepOf(standing),
    isWarmUp: standing.warmUp !== null,
    endedBy,
    calls: [],
  };
  const openMove = isTrial(rep) ? null : state.openMove;
  return { ...state, standing: countRep(standing, rep), openMove, reps: [...reps, full] };
}

function call(state: SessionState, body: Call & { because: string }): SessionState {
  const { because, ...made } = body;
  const reps = state.reps.map((rep) => (rep.endedBy === because ? { ...rep, calls: [...rep.calls, made] } : rep));
  const { standing, openMove } = state;
  const isDeclined = made.kind === 'remain' && openMove !== null;
  return {
    ...{ ...state, reps, openMove: openMoveAfter(openMove, standing, made) },
    standing: isDeclined ? remain(standing, openMove) : applyCall(standing, made),
  };
}

function pause(state: SessionState, atS: Seconds, id: string): SessionState {
  if (state.phase.phase === 'paused' || state.phase.phase === 'ended') return state;
  const rep = breakOff(state.phase, atS, 'paused');
  const paused = {
    ...state,
    phase: { phase: 'paused', sinceS: atS } as const,
    question: null,
    latestS: Math.max(state.latestS, atS),
  };
  return rep ? withRep(paused, rep, id) : paused;
}

function resume(state: SessionState, atS: Seconds): SessionState {
  if (state.phase.phase !== 'paused') return state;
  const pausedS = state.pausedS + Math.max(0, atS - state.phase.sinceS);
  return { ...state, phase: WAITING, pausedS, latestS: Math.max(state.latestS, atS) };
}

function end(state: SessionState, atS: Seconds, id: string): SessionState {
  const whole = state.phase.phase === 'paused' ? resume(state, atS) : state;
  const rep = breakOff(whole.phase, atS, 'finished');
  const ended = { ...whole, phase: { phase: 'ended' } as const, question: null, latestS: Math.max(whole.latestS, atS) };
  return rep ? withRep(ended, rep, id) : ended;
}

/** Did the head lift in the latest rep that was offered? A short rep was paid: it is no trial, and no lift either. */
export function endedOnLift(state: SessionState): boolean {
  return state.reps.findLast((rep) => rep.outcome !== 'void')?.outcome === 'lifted';
}
