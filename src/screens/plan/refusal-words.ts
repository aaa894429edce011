/** Words why an edit was not made. */
import { type PlanProblem, sayProblem } from '../../core/check-plan.ts';
import type { Refusal } from '../../core/edit-plan.ts';
import type { Step } from '../../core/plan.ts';

export function sayRefusal(refusal: Refusal, steps: readonly Step[]): string {
  const title = 'stepId' in refusal ? (steps.find(({ id }) => id === refusal.stepId)?.title ?? 'This step') : '';
  switch (refusal.kind) {
    case 'no-such-step':
      return 'That step is not on the ladder any more.';
    case 'lowest-step':
      return `${title} is the lowest step: there is nothing below to halve the rise from.`;
    case 'no-half':
      return `${title} cannot be halved: holds lie less than a second apart, or nobody has written the half of this handling yet.`;
    case 'split-already':
      return `There is half a step before ${title} already.`;
    case 'not-a-half':
      return `${title} is a whole step.`;
    case 'bad-plan':
      return refusal.problems.map(sayAt).join(' ');
  }
}

/** "Left as it was. Seconds: expected more than 4, the step below; got 3." */
function sayAt(problem: PlanProblem): string {
  const field = problem.path.split('.').at(-1) ?? problem.path;
  return `Left as it was. ${sayProblem({ ...problem, path: FIELDS[field] ?? field })}.`;
}

const FIELDS: Readonly<Record<string, string>> = {
  holdForS: 'Seconds',
  forS: 'Seconds',
  title: 'Words',
  caution: 'Caution',
  steps: 'Ladder',
};
