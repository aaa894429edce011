/** Words why an edit was not made, as one would say it to the person at the field. */
import { type PlanProblem, sayProblem } from '../../core/check-plan.ts';
import type { Refused } from '../../core/edit-plan.ts';
import { t } from '../../core/language.ts';
import { criterionS, indexOfStep, LONGEST_S, type Step, titleSaysSeconds } from '../../core/plan.ts';

export function sayRefusal({ edit, why }: Refused, steps: readonly Step[]): string {
  const title = 'stepId' in why ? (steps.find(({ id }) => id === why.stepId)?.title ?? t('This step')) : '';
  switch (why.kind) {
    case 'no-such-step':
      return t('That step is not on the ladder any more.');
    case 'lowest-step':
      return t('{title} is the lowest step: there is nothing below to halve the rise from.', { title });
    case 'no-half':
      return t(
        '{title} cannot be halved: holds lie less than a second apart, or nobody has written the half of this handling yet.',
        { title },
      );
    case 'split-already':
      return t('There is half a step before {title} already.', { title });
    case 'not-a-half':
      return t('{title} is a whole step.', { title });
    case 'bad-plan':
      return sayProblems(why.problems, why.steps, 'stepId' in edit ? edit.stepId : edit.kind === 'insert' ? edit.step.id : null);
  }
}

/** Where on the editor of a step an edit was refused. */
export type Place = 'words' | 'handling' | 'half' | 'buttons';

/** Null: it was asked for on another step. */
export function placeOf({ edit, why }: Refused, stepId: string): Place | null {
  if (edit.kind === 'insert') return 'buttons';
  if (!('stepId' in edit) || edit.stepId !== stepId) return null;
  if (edit.kind !== 'together') return 'buttons';
  const problem = why.kind === 'bad-plan' ? problemSaid(why.problems, why.steps, stepId) : undefined;
  const field = problem ? placeIn(problem.path).field : undefined;
  if (field?.startsWith('halfway')) return 'half';
  return field === 'extent' || field === 'caution' || field === 'area' ? 'handling' : 'words';
}

/** The first thing wrong with the step that was changed, else with another. */
function problemSaid(
  problems: readonly PlanProblem[],
  steps: readonly Step[],
  changedId: string | null,
): PlanProblem | undefined {
  const own = problems.find(({ path }) => path.startsWith(`steps[${indexOfStep(steps, changedId ?? '')}]`));
  return own ?? problems[0];
}

function sayProblems(problems: readonly PlanProblem[], steps: readonly Step[], changedId: string | null): string {
  const problem = problemSaid(problems, steps, changedId);
  return problem ? sayAt(problem, steps, changedId) : '';
}

/** "steps[3].title" in its parts; of the plan itself: neither. */
function placeIn(path: string): { readonly at?: number; readonly field?: string } {
  const [, at, field] = /^steps\[(\d+)\]\.(.+)$/.exec(path) ?? [];
  return field === undefined ? {} : { at: Number(at), field };
}

function sayAt(problem: PlanProblem, steps: readonly Step[], changedId: string | null): string {
  const { at, field } = placeIn(problem.path);
  const step = at === undefined ? undefined : steps[at];
  if (problem.path === 'rule') return t('Kept and of are whole numbers; kept is at least 1 and not more than of.');
  if (!step) return problem.path === 'steps' ? t('A ladder has {bound}.', { bound: problem.bound }) : `${sayProblem(problem)}.`;
  switch (field) {
    case 'title':
      return t('A step needs a few words.');
    case 'halfway.title':
      return t('The half needs a few words.');
    case 'halfway.extent':
      return t('Say what the hand does in the half.');
    case 'halfway':
      return t('The half is the whole: make it less of the place, less pressure or less time.');
    case 'halfway.forS':
      return sayHalfSeconds(step.kind === 'handling' ? (step.halfway?.forS ?? Number.NaN) : Number.NaN, criterionS(step));
    case 'extent':
      return t('Say what the hand does.');
    case 'caution':
      return t('Near the face a step needs its caution, and it names the veterinarian.');
    case 'halfOf':
      return t('{title} would not lie between its two neighbours any more.', { title: step.title });
    case 'holdForS':
    case 'forS':
      return saySeconds(step, steps, changedId, problem);
    default:
      return `${sayProblem({ ...problem, path: step.title })}.`;
  }
}

function sayHalfSeconds(halfS: number, wholeS: number): string {
  if (!Number.isFinite(halfS)) return t('Say how many seconds the half lasts; 0 is a touch and away.');
  return halfS < 0
    ? t('Seconds begin at 0, a touch and away.')
    : t('The half lasts {half} s: it cannot be longer than the whole, {whole} s.', { half: halfS, whole: wholeS });
}

function saySeconds(step: Step, steps: readonly Step[], changedId: string | null, { bound }: PlanProblem): string {
  const seconds = criterionS(step);
  if (!Number.isFinite(seconds)) return t('Say how many seconds; 0 is paid at once.');
  if (seconds < 0) return t('Seconds begin at 0, paid at once.');
  if (seconds > LONGEST_S) return t('{n} s is too long: {most} s is the most.', { n: seconds, most: LONGEST_S });
  if (step.halfOf) return t('{step} is half a step and would have to lie {bound} s.', { step: named(step), bound });
  const below = steps[indexOfStep(steps, step.id) - 1];
  if (!below) return t('{n} s would have to be {bound}.', { n: seconds, bound });
  return below.id === changedId
    ? t(ABOVE[compared(below, step)], { n: criterionS(below), step: named(step) })
    : t(BELOW[compared(step, below)], { n: seconds, step: named(below) });
}

const ABOVE = {
  same: '{n} s would be as long as the step above, {step}.',
  more: '{n} s would be more than the step above, {step}.',
  less: '{n} s would be less than the step above, {step}.',
} as const;

const BELOW = {
  same: '{n} s would be as long as the step below, {step}.',
  more: '{n} s would be more than the step below, {step}.',
  less: '{n} s would be less than the step below, {step}.',
} as const;

function compared(step: Step, other: Step): 'same' | 'more' | 'less' {
  if (criterionS(step) === criterionS(other)) return 'same';
  return criterionS(step) > criterionS(other) ? 'more' : 'less';
}

/** With its seconds, unless it says them itself. */
function named(step: Step): string {
  if (titleSaysSeconds(step)) return step.title;
  return t('{title} ({n} s)', { title: step.title, n: criterionS(step) });
}
