/** Measures how fast this dog climbs its ladders: whole steps first reached, a session and a week, with the interval. */
import type { Plan } from '../plan.ts';
import { indexOfStep } from '../plan.ts';
import type { Day } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { groupBy } from '../progress/group.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../statistics/interval.ts';
import { garwood } from '../statistics/rate.ts';

/** What was longer ago is no pace of today, weeks (common practice, no source). */
export const PACE_WEEKS = 12;

export type Pace =
  | { readonly kind: 'too-few'; readonly sessions: number; readonly need: number }
  | {
      readonly kind: 'known';
      /** Whole steps first reached in these sessions; half steps and the first step of a ladder are not counted. */
      readonly steps: number;
      readonly sessions: number;
      /** From the first of them to today, a week at least. */
      readonly weeks: number;
      readonly sessionsAWeek: number;
      readonly stepsAWeek: number;
      /** 95 %, exact for steps that come independently at a steady pace (Garwood 1936). */
      readonly interval: Interval;
    };

/** @param digests of this dog's practice, in any order. */
export function paceOf(digests: readonly SessionDigest[], plans: readonly Plan[], today: Day): Pace {
  const since = today - 7 * PACE_WEEKS;
  const lately = digests.filter(({ day }) => day > since && day <= today);
  if (lately.length < FEWEST_FOR_INTERVAL) return { kind: 'too-few', sessions: lately.length, need: FEWEST_FOR_INTERVAL };
  const steps = reachedIn(digests, plans, since);
  const weeks = Math.max(1, (today - Math.min(...lately.map(({ day }) => day)) + 1) / 7);
  const { lower, upper } = garwood(steps);
  return {
    ...{ kind: 'known', steps, sessions: lately.length, weeks },
    ...{ sessionsAWeek: lately.length / weeks, stepsAWeek: steps / weeks },
    interval: { lower: lower / weeks, upper: upper / weeks },
  };
}

/** Whole steps that were tried for the first time after that day, above all that was tried before on the same ladder. */
function reachedIn(digests: readonly SessionDigest[], plans: readonly Plan[], since: Day): number {
  const byPlan = groupBy(
    digests.toSorted((a, b) => a.atMs - b.atMs || (a.id < b.id ? -1 : 1)),
    ({ planId }) => planId,
  );
  return plans.reduce((sum, plan) => sum + reachedOn(plan, byPlan.get(plan.id) ?? [], since), 0);
}

function reachedOn({ steps }: Plan, sessions: readonly SessionDigest[], since: Day): number {
  let [highest, reached] = [-1, 0];
  for (const { day, steps: tried } of sessions) {
    const whole = tried.filter(hasTrial).flatMap(({ stepId }) => wholeIndex(steps, stepId));
    for (const index of [...new Set(whole)].toSorted((a, b) => a - b)) {
      if (index > highest && highest >= 0 && day > since) reached += 1;
      highest = Math.max(highest, index);
    }
  }
  return reached;
}

const hasTrial = ({ kept, lifted }: { readonly kept: number; readonly lifted: number }): boolean => kept + lifted > 0;

function wholeIndex(steps: Plan['steps'], stepId: string): readonly number[] {
  const index = indexOfStep(steps, stepId);
  return index < 0 || steps[index]?.halfOf ? [] : [index];
}

/** Whole steps from the highest that was tried (none: from below the first) up to this one; 0: it was tried, or something above it. */
export function stepsUpTo({ id, steps }: Plan, stepId: string, digests: readonly SessionDigest[]): number {
  const tried = digests
    .filter(({ planId }) => planId === id)
    .flatMap((digest) => digest.steps.filter(hasTrial).map((step) => indexOfStep(steps, step.stepId)));
  const highest = Math.max(-1, ...tried);
  return steps.slice(highest + 1, indexOfStep(steps, stepId) + 1).filter(({ halfOf }) => !halfOf).length;
}
