/** Decides where half a step is put in: at the first return from a step; by a rule that halves ahead at every return, and before need. */
import type { Standing } from './criterion.ts';
import { halfStep, indexOfStep, type Step } from './plan.ts';
import { halvesAhead } from './rule.ts';

/** So many of the last whole steps are looked at (chosen by simulation, tests/bench/criterion.md). */
export const AHEAD_OF = 3;
/** When so many of them were returned from, the next new step is met through its half at once. */
export const AHEAD_NEEDED = 2;

/**
 * Half a step in front of this one, or null: nothing below it, none prepared, less than a second apart,
 * or a handling that has its half already, for it has one half-way and no quarters.
 */
export function freshHalf(steps: readonly Step[], step: Step): Step | null {
  const below = steps[indexOfStep(steps, step.id) - 1];
  if (!below || (step.kind === 'handling' && steps.some(({ halfOf }) => halfOf?.aboveId === step.id))) return null;
  const id = `${below.id}~${step.id}`;
  // A plan may have kept that very half and moved it: one step cannot stand in two places.
  return indexOfStep(steps, id) < 0 ? halfStep(below, step, id) : null;
}

/** The half that a return from this step puts in before it, or null. */
export function halfOnReturn({ rule, steps, returns }: Standing, failed: Step): Step | null {
  return halvesAhead(rule) || !returns[failed.id] ? freshHalf(steps, failed) : null;
}

/** How many of the last whole steps, this one included, were ever returned from. */
export function returnedLately({ steps, stepId, returns }: Standing): number {
  const whole = steps.slice(0, indexOfStep(steps, stepId) + 1).filter(({ halfOf }) => !halfOf);
  return whole.slice(-AHEAD_OF).filter(({ id }) => returns[id]).length;
}

/** The half through which a raise should go, or null: the rule waits for need, the step above is half itself or was met before, or nothing speaks for it. */
export function halfAhead(standing: Standing, above: Step): Step | null {
  const { rule, steps, stepId, passed, returns } = standing;
  if (!halvesAhead(rule)) return null;
  const fromHalf = steps[indexOfStep(steps, stepId)]?.halfOf !== undefined;
  if (fromHalf || above.halfOf || passed.includes(above.id) || returns[above.id]) return null;
  return returnedLately(standing) >= AHEAD_NEEDED ? freshHalf(steps, above) : null;
}
