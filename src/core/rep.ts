/** The rep machine: from the words, in the order of their onsets, to reps. Knows nothing of plans, calls or time's passing. */
import type { Seconds } from './units.ts';
import type { Heard } from './word.ts';

/** Marked at or after the criterion · head left before the marker · marked before the criterion on purpose · not a trial. */
export type Outcome = 'kept' | 'lifted' | 'short' | 'void';

/** Why a rep is no trial. */
export type VoidReason = 'not-offered' | 'handler-says' | 'paused' | 'finished';

export type Phase =
  | { readonly phase: 'waiting' }
  | { readonly phase: 'holding'; readonly sinceS: Seconds; readonly restarts: number }
  | { readonly phase: 'paused'; readonly sinceS: Seconds }
  | { readonly phase: 'ended' };

/** A rep as the words tell it; the step and the calls are added by the fold. */
export interface EndedRep {
  /** Onset of the hold word, s; for a rep that was never offered: when that was said. */
  readonly holdAtS: Seconds;
  /** Onset of the word that ended it, s. */
  readonly endAtS: Seconds;
  readonly heldForS: Seconds;
  readonly outcome: Outcome;
  readonly voidReason: VoidReason | null;
  /** How often *hold* was said again before the end. */
  readonly restarts: number;
}

/** Something heard that cannot be right as it stands. It is shown, never turned into a rep. */
export interface Question {
  readonly kind: 'mark-without-hold' | 'not-during-a-hold';
  readonly atS: Seconds;
}

export interface RepStep {
  readonly phase: Phase;
  readonly rep: EndedRep | null;
  readonly question: Question | null;
}

/** A marker that falls this much short of the criterion still counts, s (floor of what was heard; common practice, no source). */
export const TOLERANCE_S: Seconds = 0.25;

export const WAITING: Phase = { phase: 'waiting' };

const unchanged = (phase: Phase): RepStep => ({ phase, rep: null, question: null });

/** What one word does. `criterionS` is the criterion of the step at hand, s. */
export function hearInRep(phase: Phase, heard: Heard, criterionS: Seconds): RepStep {
  if (phase.phase === 'ended' || phase.phase === 'paused') return unchanged(phase);
  return phase.phase === 'holding' ? hearInHold(phase, heard, criterionS) : hearWaiting(phase, heard);
}

function hearWaiting(phase: Phase & { phase: 'waiting' }, heard: Heard): RepStep {
  switch (heard.word) {
    case 'hold':
      return unchanged({ phase: 'holding', sinceS: heard.startedAtS, restarts: 0 });
    case 'mark':
      // A marker nobody earned would teach the engine something that did not happen: ask instead.
      return { phase, rep: null, question: { kind: 'mark-without-hold', atS: heard.startedAtS } };
    case 'void':
      return { phase: WAITING, rep: neverOffered(heard.startedAtS), question: null };
    default:
      // A lift after the marker changes nothing: the marker ended the behaviour that it paid.
      return unchanged(phase);
  }
}

function hearInHold(phase: Phase & { phase: 'holding' }, heard: Heard, criterionS: Seconds): RepStep {
  switch (heard.word) {
    case 'hold':
      return unchanged({ phase: 'holding', sinceS: heard.startedAtS, restarts: phase.restarts + 1 });
    case 'mark':
    case 'lifted':
      if (heard.voids) return ended(phase, heard.startedAtS, 'void', 'handler-says');
      return ended(phase, heard.startedAtS, outcomeOf(heard.word, heard.startedAtS - phase.sinceS, criterionS), null);
    case 'void':
      return ended(phase, heard.startedAtS, 'void', 'handler-says');
    case 'easier':
    case 'harder':
    case 'stay':
      // The criterion never moves under a dog that is holding.
      return { phase, rep: null, question: { kind: 'not-during-a-hold', atS: heard.startedAtS } };
    default:
      return unchanged(phase);
  }
}

/** A hold that is broken off by a pause or by the end of the session says nothing of the dog. */
export function breakOff(phase: Phase, atS: Seconds, why: VoidReason): EndedRep | null {
  return phase.phase === 'holding' ? ended(phase, Math.max(atS, phase.sinceS), 'void', why).rep : null;
}

function outcomeOf(word: 'mark' | 'lifted', heldForS: Seconds, criterionS: Seconds): Outcome {
  if (word === 'lifted') return 'lifted';
  return heldLongEnough(heldForS, criterionS) ? 'kept' : 'short';
}

function heldLongEnough(heldForS: Seconds, criterionS: Seconds): boolean {
  // In whole milliseconds: 0.75 s short of a second must not depend on how a float rounds.
  return Math.round(1000 * heldForS) >= Math.round(1000 * (criterionS - TOLERANCE_S));
}

function ended(phase: Phase & { phase: 'holding' }, endAtS: Seconds, outcome: Outcome, voidReason: VoidReason | null): RepStep {
  const heldForS = Math.max(0, endAtS - phase.sinceS);
  const rep = { holdAtS: phase.sinceS, endAtS, heldForS, outcome, voidReason, restarts: phase.restarts };
  return { phase: WAITING, rep, question: null };
}

function neverOffered(atS: Seconds): EndedRep {
  return { holdAtS: atS, endAtS: atS, heldForS: 0, outcome: 'void', voidReason: 'not-offered', restarts: 0 };
}
