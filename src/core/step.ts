/** The core's one entrance: what was heard goes in, what to keep and what to do comes out. No clock, no chance. */
import type { Call } from './call.ts';
import { decide, declined, overrule } from './criterion.ts';
import {
  type Draft,
  type EarState,
  type PauseReason,
  type SessionEvent,
  type SessionStart,
  type Stamp,
  stampEvent,
} from './event.ts';
import { isHeardInExam } from './exam/heard.ts';
import { append, askedS, fold, type SessionState } from './fold.ts';
import type { Question } from './rep.ts';
import { undoneIds } from './standing.ts';
import type { Seconds } from './units.ts';
import type { Heard, Unsure } from './word.ts';

export type Input =
  | { readonly kind: 'heard'; readonly heard: Heard }
  | { readonly kind: 'unsure'; readonly unsure: Unsure }
  | { readonly kind: 'ear'; readonly atS: Seconds; readonly ear: string; readonly state: EarState }
  | { readonly kind: 'pause'; readonly atS: Seconds; readonly why: PauseReason }
  | { readonly kind: 'resume'; readonly atS: Seconds }
  | { readonly kind: 'end'; readonly atS: Seconds; readonly why: 'handler' | 'abandoned' };

/** What the shell carries out. `keep` comes first and is written before anything is shown. */
export type Effect =
  | { readonly do: 'keep'; readonly event: SessionEvent }
  | { readonly do: 'startBeats'; readonly sinceS: Seconds; readonly criterionS: Seconds }
  | { readonly do: 'stopBeats'; readonly atS: Seconds }
  | { readonly do: 'call'; readonly call: Call }
  | { readonly do: 'ask'; readonly question: Question }
  | { readonly do: 'sayUnsure'; readonly unsure: Unsure };

export interface Stepped {
  readonly state: SessionState;
  readonly effects: readonly Effect[];
  /** The stamp for the next event of this device. */
  readonly stamp: Stamp;
}

/** Opens a session. */
export function start(body: SessionStart, stamp: Stamp): Stepped {
  const { event, next } = stampEvent({ type: 'session-started', body } as const, stamp);
  const folded = fold([event]);
  if (!folded.ok) throw new Error(`step: a fresh session did not fold (${folded.problem.kind})`);
  return { state: folded.state, effects: [{ do: 'keep', event }], stamp: next };
}

/** What one input does to a session. */
export function step(state: SessionState, input: Input, stamp: Stamp): Stepped {
  const drafts = draftsFor(state, input);
  const kept = drafts.reduce(keep, { state, effects: [], stamp });
  const effects = [...kept.effects, ...sounds(state, kept.state, input)];
  return { ...kept, effects: effects.toSorted((a, b) => ORDER[a.do] - ORDER[b.do]) };
}

/** Written first; the old hold falls silent before a call, and a call is asked for before the next hold begins. */
const ORDER: Readonly<Record<Effect['do'], number>> = { keep: 0, stopBeats: 1, call: 2, ask: 3, sayUnsure: 3, startBeats: 4 };

function keep({ state, effects, stamp }: Stepped, draft: Draft<SessionEvent>): Stepped {
  const { event, next } = stampEvent(draft, stamp);
  const kept: Stepped = {
    state: append(state, event as SessionEvent),
    effects: [...effects, { do: 'keep', event: event as SessionEvent }],
    stamp: next,
  };
  return callsAfter(state, kept).reduce((so, call) => keepCall(so, call, event.id), kept);
}

function keepCall({ state, effects, stamp }: Stepped, call: Call, because: string): Stepped {
  const { event, next } = stampEvent({ type: 'called', body: { ...call, because } } as const, stamp);
  return {
    state: append(state, event),
    effects: [...effects, { do: 'keep', event }, ...(isSilent(state, call) ? [] : [{ do: 'call', call } as const])],
    stamp: next,
  };
}

/** The end of the warm-up, and in an examination even the handler's own way through its list. */
function isSilent({ start }: SessionState, call: Call): boolean {
  return call.kind === 'begin' || start.kind === 'exam';
}

/** The engine speaks when a word of the handler has just ended a rep, or asked for another step. */
function callsAfter(before: SessionState, { state, effects }: Stepped): readonly Call[] {
  const latest = effects.at(-1);
  if (latest?.do !== 'keep' || latest.event.type !== 'word-heard') return [];
  const { word } = latest.event.body;
  if (word === 'easier' || word === 'harder' || word === 'stay') return overruled(state, word);
  const rep = state.reps[before.reps.length];
  return rep && state.start.kind !== 'exam' ? decide(before.standing, rep, rep.endAtS - state.pausedS, state.start.limits) : [];
}

function overruled({ phase, standing, openMove }: SessionState, word: 'easier' | 'harder' | 'stay'): readonly Call[] {
  if (phase.phase !== 'waiting') return [];
  const call = word === 'stay' ? openMove && declined(openMove) : overrule(standing, word);
  return call ? [call] : [];
}

function draftsFor(state: SessionState, input: Input): readonly Draft<SessionEvent>[] {
  if (state.phase.phase === 'ended' && input.kind !== 'heard') return [];
  switch (input.kind) {
    case 'heard':
      return draftsForWord(state, input.heard);
    case 'unsure':
      return state.phase.phase === 'paused' ? [] : [{ type: 'word-unsure', body: input.unsure }];
    case 'ear':
      return [{ type: 'ear-changed', body: { atS: input.atS, ear: input.ear, state: input.state } }];
    case 'pause':
      return state.phase.phase === 'paused' ? [] : [{ type: 'paused', body: { atS: input.atS, why: input.why } }];
    case 'resume':
      return state.phase.phase === 'paused' ? [{ type: 'resumed', body: { atS: input.atS } }] : [];
    case 'end':
      return [{ type: 'session-ended', body: { atS: input.atS, why: input.why } }];
  }
}

function draftsForWord(state: SessionState, heard: Heard): readonly Draft<SessionEvent>[] {
  const { phase } = state.phase;
  if (isHeardAlready(state, heard)) return [];
  if (state.start.kind === 'exam' && !isHeardInExam(heard)) return [];
  // A pause is for talking: of all that an ear makes out in it, only the way out counts. A hand means what it does.
  if (phase === 'paused' && heard.word !== 'resume' && !isByHand(heard)) return [];
  if (phase === 'ended') return heard.word === 'undo' ? draftsForUndo(state) : [];
  switch (heard.word) {
    case 'undo':
      return draftsForUndo(state);
    case 'pause':
      return phase === 'paused' ? [] : [{ type: 'paused', body: { atS: heard.startedAtS, why: 'handler' } }];
    case 'resume':
      return phase === 'paused' ? [{ type: 'resumed', body: { atS: heard.startedAtS } }] : [];
    case 'finish':
      return [{ type: 'session-ended', body: { atS: heard.startedAtS, why: 'handler' } }];
    default:
      // A pause is for talking: nothing said in it can become a rep.
      return phase === 'paused' ? [] : [{ type: 'word-heard', body: heard }];
  }
}

/** Two reports of one word by ear, closer than this by their onsets, are one word, s: nobody says it twice so fast. */
const SAME_WORD_S: Seconds = 0.3;
/** The same of two ears, where one is the browser's recogniser, which hears late and tells no moment, s. One ear tells its own words apart. */
const SAME_WORD_LATE_S: Seconds = 1.5;

const isByHand = ({ by }: Heard): boolean => by === 'button' || by === 'key';

/** A word that two ears heard, or one ear twice, is one event. */
function isHeardAlready({ lastHeard }: SessionState, heard: Heard): boolean {
  // A hand may press twice as fast as that, and means it.
  if (!lastHeard || lastHeard.word !== heard.word || (isByHand(lastHeard) && isByHand(heard))) return false;
  const isLate = heard.by !== lastHeard.by && (heard.by === 'platform' || lastHeard.by === 'platform');
  return Math.abs(heard.startedAtS - lastHeard.startedAtS) < (isLate ? SAME_WORD_LATE_S : SAME_WORD_S);
}

/** Takes back the latest thing the handler did that still stands; again takes back the one before. */
function draftsForUndo(state: SessionState): readonly Draft<SessionEvent>[] {
  const undone = undoneIds(state.log);
  const standing = state.log.filter(({ id }) => !undone.has(id));
  const last = standing.findLast((event) => canUndo(state, event) || brokeOffAHold(state, event));
  return last && canUndo(state, last) ? [{ type: 'undone', body: { of: last.id } }] : [];
}

/** A pause can be taken back while it lasts: afterwards its minutes would be found inside a hold. */
function canUndo({ phase }: SessionState, event: SessionEvent): boolean {
  if (event.type === 'word-heard' || event.type === 'session-ended') return true;
  if (event.type !== 'paused' || event.body.why !== 'handler') return false;
  return phase.phase === 'paused' && phase.sinceS === event.body.atS;
}

/** Undo stops here: what a pause broke off stays void, and what came before it is long done. */
function brokeOffAHold({ reps }: SessionState, { id, type }: SessionEvent): boolean {
  return type === 'paused' && reps.some(({ endedBy }) => endedBy === id);
}

function sounds(before: SessionState, after: SessionState, input: Input): readonly Effect[] {
  const effects: Effect[] = [];
  const wasHolding = before.phase.phase === 'holding' ? before.phase : null;
  const isHolding = after.phase.phase === 'holding' ? after.phase : null;
  const changed = wasHolding?.sinceS !== isHolding?.sinceS;
  if (wasHolding && changed) effects.push({ do: 'stopBeats', atS: after.latestS });
  if (isHolding && changed) effects.push({ do: 'startBeats', sinceS: isHolding.sinceS, criterionS: askedS(after) });
  if (after.question && after.question !== before.question) effects.push({ do: 'ask', question: after.question });
  if (input.kind === 'unsure' && after.lastUnsure === input.unsure) effects.push({ do: 'sayUnsure', unsure: input.unsure });
  return effects;
}
