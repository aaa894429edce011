/** The sessions that the picture and the review are tested on: the invented dog, typed, through the real engine. */
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { feed, LONG, open, type Played, say, sessionStart, type } from '../../../demo/typed-session.ts';
import type { SessionState } from '../../../src/core/fold.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import { callsInOrder } from '../../../src/core/placed-calls.ts';
import type { StairsInput } from '../../../src/screens/picture/layout.ts';

export function beginAt(stepId: string): Played {
  return open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: stepId }, LONG));
}

export function inputOf(state: SessionState): StairsInput {
  return { reps: state.reps, steps: state.standing.steps, calls: callsInOrder(state) };
}

export const nothing = (): SessionState => beginAt('hold-2').state;

export const oneRep = (): SessionState => type(beginAt('hold-0'), 'k').state;

/** Two warm-ups, a raise, a half step with a short and two void reps, the way up again, a return, a rest, a step at the handler's word. */
export function wholeSession(): SessionState {
  const played = type(beginAt('hold-3'), 'kk kksvkkk kll nk');
  const rested = type({ ...played, atS: played.atS + 90 }, 'kkkk kll kk e k');
  return say(rested, 'finish', rested.atS + 2).state;
}

export function fiveHundredReps(): SessionState {
  return type(beginAt('hold-1'), 'kkkkkklkksvkkkkkllnk'.repeat(25)).state;
}

/** A word that was nearly heard, and twelve seconds without an ear. */
export function hardOfHearing(): SessionState {
  const begun = feed(type(beginAt('hold-3'), 'kk k'), { kind: 'ear', atS: 20, ear: 'own-words', state: 'restarting' });
  const heard = feed({ ...begun, atS: 32 }, { kind: 'ear', atS: 32, ear: 'own-words', state: 'listening' });
  const nearest = [{ word: 'mark', confidence: 0.48 }];
  const unsure = { startedAtS: 33, endedAtS: 33.4, decidedAtS: 33.7, nearest, by: 'own-words' } as const;
  return type({ ...feed(heard, { kind: 'unsure', unsure }), atS: 34 }, 'k').state;
}

/** Lifts gather at the paws until the engine asks whether they are sore. */
export const soreAtThePaws = (): SessionState => type(beginAt('paw-rest'), 'kk lll ll ll').state;
