/** Decides where the next session starts, and what of this one it carries on. */
import { NO_TRIALS, type Trials } from './chain/machine.ts';
import { type Standing, TODAY, WARM_UPS } from './criterion.ts';
import { indexOfStep, type Step } from './plan.ts';

/** What a session takes over from the one before on the same plan. */
export interface Carried {
  readonly trials: Trials;
  readonly returns: Standing['returns'];
  readonly passed: readonly string[];
  readonly alarms: Standing['alarms'];
}

export const NOTHING_CARRIED: Carried = { trials: NO_TRIALS, returns: {}, passed: [], alarms: {} };

export type StartReason =
  | { readonly kind: 'first-session' }
  | { readonly kind: 'step-reached' }
  | { readonly kind: 'ended-on-a-lift' }
  | { readonly kind: 'gap'; readonly days: number };

export interface NextStart {
  readonly steps: readonly Step[];
  readonly startStepId: string;
  readonly carried: Carried;
  readonly why: StartReason;
}

/** A gap up to this long carries trials over and keeps the step, days (common practice, no source). */
export const CARRY_DAYS = 7;
/** A longer gap starts two steps lower, days (common practice, no source). */
export const LONG_GAP_DAYS = 21;

/** The start of a plan that was never practised. Throws on an empty ladder: a plan is checked before it is kept. */
export function firstStart(steps: readonly Step[]): NextStart {
  const first = steps[0];
  if (!first) throw new Error('next start: the plan has no steps');
  return { steps, startStepId: first.id, carried: NOTHING_CARRIED, why: { kind: 'first-session' } };
}

/** Where to begin after a session that stood at `standing` and ended `daysSince` days ago; a doubt goes to the easier side. */
export function nextStart(standing: Standing, endedOnLift: boolean, daysSince: number): NextStart {
  const reachedId = standing.warmUp && standing.warmUp.lifts < WARM_UPS ? standing.warmUp.toStepId : standing.stepId;
  const why = startReason(endedOnLift, daysSince);
  const reached = indexOfStep(standing.steps, reachedId);
  const start = standing.steps[Math.max(0, reached - stepsLower(why, daysSince))] as Step;
  const sameStep = start.id === reachedId && daysSince <= CARRY_DAYS;
  const { returns, passed, alarms, steps } = standing;
  return {
    steps,
    startStepId: start.id,
    why,
    carried: { trials: sameStep ? standing.trials : NO_TRIALS, returns, passed, alarms },
  };
}

function startReason(endedOnLift: boolean, daysSince: number): StartReason {
  if (daysSince > CARRY_DAYS) return { kind: 'gap', days: Math.floor(daysSince) };
  return { kind: endedOnLift ? 'ended-on-a-lift' : 'step-reached' };
}

function stepsLower(why: StartReason, daysSince: number): number {
  if (why.kind === 'gap') return daysSince > LONG_GAP_DAYS ? 2 : 1;
  return why.kind === 'ended-on-a-lift' ? 1 : 0;
}

/** The standing at the first rep: one step lower for two uncounted reps, unless there is nothing lower. */
export function standAt(start: { steps: readonly Step[]; startStepId: string; carried: Carried }): Standing {
  const { steps, startStepId, carried } = start;
  const below = steps[indexOfStep(steps, startStepId) - 1];
  const warmUp = below ? { left: WARM_UPS, lifts: 0, toStepId: startStepId } : null;
  return { steps, stepId: below?.id ?? startStepId, warmUp, today: TODAY, ...carried };
}
