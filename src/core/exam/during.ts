/** Reads an examination as it stands from its session: each item with its holds, which one is at hand, and what is left. */
import type { SessionState } from '../fold.ts';
import { indexOfStep, type Step } from '../plan.ts';
import type { Seconds } from '../units.ts';

/** `done`: a hold ended well. `lifted`: every hold ended with the head up. `open`: no hold yet. */
export type ItemState = 'done' | 'lifted' | 'open';

export interface ItemSeen {
  readonly step: Step;
  readonly state: ItemState;
  readonly lifts: number;
  /** The longest hold that ended well, s. */
  readonly heldForS: Seconds | null;
}

export interface ExamSeen {
  readonly items: readonly ItemSeen[];
  /** The place of the item at hand. */
  readonly at: number;
  readonly done: number;
  /** So many heads up at the item at hand that another hold asks too much. */
  readonly isEnough: boolean;
}

/** Two lifts on one thing are an answer (as two running are in practice: CRITERION.md). */
const ENOUGH_LIFTS = 2;

export function seenIn({ standing, reps }: Pick<SessionState, 'standing' | 'reps'>): ExamSeen {
  const items = standing.steps.map((step): ItemSeen => {
    const own = reps.filter((rep) => rep.step.id === step.id);
    const kept = own.filter(({ outcome }) => outcome === 'kept').map(({ heldForS }) => heldForS);
    const lifts = own.filter(({ outcome }) => outcome === 'lifted').length;
    const state = kept.length > 0 ? 'done' : lifts > 0 ? 'lifted' : 'open';
    return { step, state, lifts, heldForS: kept.length > 0 ? Math.max(...kept) : null };
  });
  const at = indexOfStep(standing.steps, standing.stepId);
  const here = items[at];
  const isEnough = here !== undefined && here.state !== 'done' && here.lifts >= ENOUGH_LIFTS;
  return { items, at, done: items.filter(({ state }) => state === 'done').length, isEnough };
}
