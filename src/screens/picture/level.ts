/** Tells how high each step stands: a whole stair per step of the plan, half a stair for a half step. */
import { indexOfStep, type Step } from '../../core/plan.ts';

/** Height in stairs, 0 for the easiest step. A half step lies in the middle of its two neighbours. */
export function levelOf(steps: readonly Step[], step: Step): number {
  const { halfOf } = step;
  if (halfOf) return (levelOfId(steps, halfOf.belowId) + levelOfId(steps, halfOf.aboveId)) / 2;
  const at = indexOfStep(steps, step.id);
  if (at < 0) throw new Error(`picture: step ${step.id} is not on the ladder`);
  return steps.slice(0, at).filter((below) => !below.halfOf).length;
}

function levelOfId(steps: readonly Step[], id: string): number {
  const step = steps[indexOfStep(steps, id)];
  if (!step) throw new Error(`picture: step ${id} is not on the ladder`);
  return levelOf(steps, step);
}
