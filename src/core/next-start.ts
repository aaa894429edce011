/** Decides where the next session starts, and what of this one it carries on. */
import { NO_TRIALS, type Trials } from './chain/machine.ts';
import { checkPlan } from './check-plan.ts';
import { type Standing, TODAY, WARM_UPS } from './criterion.ts';
import { criterionS, indexOfStep, insertBefore, type Plan, type Step } from './plan.ts';
import { ruleOf, type StoredRule, sameRule } from './rule.ts';

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
  /** The same, with no step to go back to. */
  | { readonly kind: 'ended-on-a-lift-at-the-easiest' }
  | { readonly kind: 'gap'; readonly days: number };

export interface NextStart {
  readonly steps: readonly Step[];
  readonly startStepId: string;
  readonly carried: Carried;
  /** Trials on that step since it was reached, whichever rule judges from now on: what is known of the dog there. */
  readonly known: { readonly kept: number; readonly of: number };
  readonly why: StartReason;
}

/** A gap up to this long carries trials over and keeps the step, days (common practice, no source). */
export const CARRY_DAYS = 7;
/** A longer gap starts two steps lower, days (common practice, no source). */
export const LONG_GAP_DAYS = 21;

const NOTHING_KNOWN: NextStart['known'] = { kept: 0, of: 0 };

/** The start of a plan that was never practised. Throws on an empty ladder: a plan is checked before it is kept. */
export function firstStart(steps: readonly Step[]): NextStart {
  const first = steps[0];
  if (!first) throw new Error('next start: the plan has no steps');
  return { steps, startStepId: first.id, carried: NOTHING_CARRIED, known: NOTHING_KNOWN, why: { kind: 'first-session' } };
}

/**
 * Where to begin after a session that stood at `standing` and ended `daysSince` days ago; a doubt goes to the easier side.
 * @param plan the plan as it stands now, which may have been edited since: it wins over the ladder of the session. Save what
 * the session split with `planAfter` first. Left out: the ladder and the rule of the session go on.
 */
export function nextStart(standing: Standing, endedOnLift: boolean, daysSince: number, plan: NextPlan = standing): NextStart {
  const reachedId = standing.warmUp && standing.warmUp.lifts < WARM_UPS ? standing.warmUp.toStepId : standing.stepId;
  const { steps } = plan;
  const reached = indexOfStep(steps, nearestEasier(standing.steps, reachedId, steps));
  const why = startReason(endedOnLift, daysSince, reached);
  const start = steps[Math.max(0, reached - stepsLower(why, daysSince))];
  if (!start) throw new Error('next start: the plan has no steps');
  const isSame = start.id === reachedId && daysSince <= CARRY_DAYS && asksTheSame(standing, start);
  const goesOn = isSame && sameRule(standing.rule, ruleOf(plan.rule));
  const { kept, count } = standing.trials;
  const { returns, passed, alarms } = standing;
  return {
    steps,
    startStepId: start.id,
    why,
    carried: { trials: goesOn ? standing.trials : NO_TRIALS, returns, passed, alarms },
    known: isSame ? { kept, of: count } : NOTHING_KNOWN,
  };
}

/** What of a plan matters for the next start. */
type NextPlan = Pick<Plan, 'steps'> & { readonly rule?: StoredRule };

/** The step reached, or when it was taken out of the plan the nearest easier one that is left; none left: the first. */
function nearestEasier(old: readonly Step[], reachedId: string, steps: readonly Step[]): string {
  const easier = old.slice(0, indexOfStep(old, reachedId) + 1).toReversed();
  return easier.find(({ id }) => indexOfStep(steps, id) >= 0)?.id ?? steps[0]?.id ?? '';
}

/** Trials tell of a step only while it asks for the same seconds; they go on only while the same rule judges them. */
function asksTheSame(standing: Standing, start: Step): boolean {
  const was = standing.steps[indexOfStep(standing.steps, start.id)];
  return was !== undefined && criterionS(was) === criterionS(start);
}

/** The plan with the half steps that a session put in, marked as such: save it after the session, so that they stay. */
export function planAfter(plan: Plan, { steps }: Pick<Standing, 'steps'>): Plan {
  return steps.toReversed().reduce(keepSplit, plan);
}

/** Puts a half step back before the step that it leads to (a half of a half comes after it: hence from the top), unless the plan has it or has lost one of its neighbours. */
function keepSplit(kept: Plan, step: Step): Plan {
  const { halfOf } = step;
  const lost = !halfOf || indexOfStep(kept.steps, step.id) >= 0 || indexOfStep(kept.steps, halfOf.belowId) < 0;
  if (lost || indexOfStep(kept.steps, halfOf.aboveId) < 0) return kept;
  const split = { ...kept, steps: insertBefore(kept.steps, halfOf.aboveId, step) };
  // The plan may have been edited meanwhile, so that the half is no half any more: then the plan wins.
  return checkPlan(split).length > checkPlan(kept).length ? kept : split;
}

function startReason(endedOnLift: boolean, daysSince: number, reached: number): StartReason {
  if (daysSince > CARRY_DAYS) return { kind: 'gap', days: Math.floor(daysSince) };
  if (!endedOnLift) return { kind: 'step-reached' };
  return { kind: reached > 0 ? 'ended-on-a-lift' : 'ended-on-a-lift-at-the-easiest' };
}

function stepsLower(why: StartReason, daysSince: number): number {
  if (why.kind === 'gap') return daysSince > LONG_GAP_DAYS ? 2 : 1;
  return why.kind === 'ended-on-a-lift' ? 1 : 0;
}

/** The standing at the first rep: one step lower for two uncounted reps, unless there is nothing lower. */
export function standAt(start: { steps: readonly Step[]; startStepId: string; carried: Carried; rule?: StoredRule }): Standing {
  const { steps, startStepId, carried } = start;
  const below = steps[indexOfStep(steps, startStepId) - 1];
  const warmUp = below ? { left: WARM_UPS, lifts: 0, toStepId: startStepId } : null;
  return { steps, rule: ruleOf(start.rule), stepId: below?.id ?? startStepId, warmUp, today: TODAY, ...carried };
}
