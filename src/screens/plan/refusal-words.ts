/** Words why an edit was not made, as one would say it to the person at the field. */
import { LONGEST_S, type PlanProblem, sayProblem } from '../../core/check-plan.ts';
import type { Refused } from '../../core/edit-plan.ts';
import { criterionS, indexOfStep, type Step } from '../../core/plan.ts';

export function sayRefusal({ edit, why }: Refused, steps: readonly Step[]): string {
  const title = 'stepId' in why ? (steps.find(({ id }) => id === why.stepId)?.title ?? 'This step') : '';
  switch (why.kind) {
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
      return sayProblems(why.problems, why.steps, 'stepId' in edit ? edit.stepId : edit.kind === 'insert' ? edit.step.id : null);
  }
}

/** The first thing wrong with the step that was changed, else with another. */
function sayProblems(problems: readonly PlanProblem[], steps: readonly Step[], changedId: string | null): string {
  const own = problems.find(({ path }) => path.startsWith(`steps[${indexOfStep(steps, changedId ?? '')}]`));
  const problem = own ?? problems[0];
  return problem ? sayAt(problem, steps, changedId) : '';
}

function sayAt(problem: PlanProblem, steps: readonly Step[], changedId: string | null): string {
  const [, at, field] = /^steps\[(\d+)\]\.(.+)$/.exec(problem.path) ?? [];
  const step = steps[Number(at)];
  if (problem.path === 'rule') return 'Kept and of are whole numbers; kept is at least 1 and not more than of.';
  if (!step) return problem.path === 'steps' ? `A ladder has ${problem.bound}.` : `${sayProblem(problem)}.`;
  switch (field) {
    case 'title':
      return 'A step needs a few words.';
    case 'halfway.title':
      return 'The half needs a few words.';
    case 'halfway.extent':
      return 'Say what the hand does in the half.';
    case 'halfway':
      return 'The half is the whole: make it less of the place, less pressure or less time.';
    case 'halfway.forS':
      return sayHalfSeconds(step.kind === 'handling' ? (step.halfway?.forS ?? Number.NaN) : Number.NaN, criterionS(step));
    case 'extent':
      return 'Say what the hand does.';
    case 'caution':
      return 'Near the face a step needs its caution, and it names the veterinarian.';
    case 'halfOf':
      return `${step.title} would not lie between its two neighbours any more.`;
    case 'holdForS':
    case 'forS':
      return saySeconds(step, steps, changedId, problem);
    default:
      return `${sayProblem({ ...problem, path: step.title })}.`;
  }
}

function sayHalfSeconds(halfS: number, wholeS: number): string {
  if (!Number.isFinite(halfS)) return 'Say how many seconds the half lasts; 0 is a touch and away.';
  return halfS < 0
    ? 'Seconds begin at 0, a touch and away.'
    : `The half lasts ${halfS} s: it cannot be longer than the whole, ${wholeS} s.`;
}

function saySeconds(step: Step, steps: readonly Step[], changedId: string | null, { bound }: PlanProblem): string {
  const seconds = criterionS(step);
  if (!Number.isFinite(seconds)) return 'Say how many seconds; 0 is paid at once.';
  if (seconds < 0) return 'Seconds begin at 0, paid at once.';
  if (seconds > LONGEST_S) return `${seconds} s is too long: ${LONGEST_S} s is the most.`;
  if (step.halfOf) return `${named(step)} is half a step and would have to lie ${bound} s.`;
  const below = steps[indexOfStep(steps, step.id) - 1];
  if (!below) return `${seconds} s would have to be ${bound}.`;
  return below.id === changedId
    ? `${criterionS(below)} s would be ${compared(below, step)} the step above, ${named(step)}.`
    : `${seconds} s would be ${compared(step, below)} the step below, ${named(below)}.`;
}

function compared(step: Step, other: Step): string {
  if (criterionS(step) === criterionS(other)) return 'as long as';
  return criterionS(step) > criterionS(other) ? 'more than' : 'less than';
}

/** With its seconds, unless it says them itself. */
function named(step: Step): string {
  const said = `${criterionS(step)} s`;
  return step.title.includes(said) ? step.title : `${step.title} (${said})`;
}
