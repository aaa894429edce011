/** Changes a plan one edit at a time. Pure: an edit gives a new plan, or says why not; every edit can be undone. */
import { checkPlan, type PlanProblem } from './check-plan.ts';
import { cautionFor } from './ladders.ts';
import {
  criterionS,
  FACE,
  type Handling,
  type HandlingStep,
  halfStep,
  indexOfStep,
  insertBefore,
  type Plan,
  type Step,
  titleWith,
} from './plan.ts';
import type { SessionRule } from './rule.ts';
import type { Seconds } from './units.ts';

/** What the handler writes of a step. */
export type StepChange =
  /** Words and seconds together, so that neither is lost; a title left as it was follows the seconds that it names. */
  | { readonly kind: 'reword'; readonly stepId: string; readonly title: string; readonly seconds: Seconds }
  /** Where and how far the hand goes, and the caution; '' is none. Half steps of it that lie on the ladder go to the same place. */
  | {
      readonly kind: 'rehandle';
      readonly stepId: string;
      readonly area: HandlingStep['area'];
      readonly extent: string;
      readonly caution: string;
    }
  /** The half-way of a handling step, in the handler's words: halves of handling are never invented. null: none any more. */
  | { readonly kind: 'prepare-half'; readonly stepId: string; readonly halfway: (Handling & { readonly title: string }) | null };

export type PlanEdit =
  | StepChange
  /** Kept as one or refused as one: a half may be as long as its whole becomes. */
  | { readonly kind: 'together'; readonly stepId: string; readonly changes: readonly StepChange[] }
  /** `at`: 0 puts it below all others. */
  | { readonly kind: 'insert'; readonly step: Step; readonly at: number }
  | { readonly kind: 'remove'; readonly stepId: string }
  /** `by`: +1 is one harder, -1 one easier. */
  | { readonly kind: 'move'; readonly stepId: string; readonly by: number }
  /** Puts the half step in front of this one. */
  | { readonly kind: 'split'; readonly stepId: string }
  /** Takes a half step out again. */
  | { readonly kind: 'unsplit'; readonly stepId: string }
  | { readonly kind: 'choose-rule'; readonly rule: SessionRule }
  | { readonly kind: 'name-plan'; readonly title: string; readonly position: string };

export type Refusal =
  | { readonly kind: 'no-such-step'; readonly stepId: string }
  | { readonly kind: 'lowest-step'; readonly stepId: string }
  /** Less than a second apart, or a handling whose half-way nobody wrote. */
  | { readonly kind: 'no-half'; readonly stepId: string }
  | { readonly kind: 'split-already'; readonly stepId: string }
  | { readonly kind: 'not-a-half'; readonly stepId: string }
  /** `steps`: the ladder as it would have become, which the problems speak of. */
  | { readonly kind: 'bad-plan'; readonly problems: readonly PlanProblem[]; readonly steps: readonly Step[] };

export type Edited = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly refusal: Refusal };

const refuse = (refusal: Refusal): Edited => ({ ok: false, refusal });

/** The plan after one edit. A plan that was sound stays sound, or the edit is refused. */
export function editPlan(plan: Plan, edit: PlanEdit): Edited {
  const steps = 'stepId' in edit ? plan.steps : [];
  if ('stepId' in edit && indexOfStep(steps, edit.stepId) < 0) return refuse({ kind: 'no-such-step', stepId: edit.stepId });
  const edited = apply(plan, edit);
  if (!edited.ok) return edited;
  const whole = { ...edited.plan, steps: withoutLooseHalves(edited.plan.steps) };
  const problems = checkPlan(whole);
  return problems.length > 0 ? refuse({ kind: 'bad-plan', problems, steps: whole.steps }) : { ok: true, plan: whole };
}

function apply(plan: Plan, edit: PlanEdit): Edited {
  const withSteps = (steps: readonly Step[]): Edited => ({ ok: true, plan: { ...plan, steps } });
  const { steps } = plan;
  switch (edit.kind) {
    case 'insert':
      return withSteps([...steps.slice(0, edit.at), withCaution(edit.step), ...steps.slice(edit.at)]);
    case 'remove':
      return withSteps(steps.filter(({ id }) => id !== edit.stepId));
    case 'move':
      return withSteps(movedBy(steps, edit.stepId, edit.by));
    case 'split':
      return split(plan, edit.stepId);
    case 'unsplit':
      return unsplit(plan, edit.stepId);
    case 'reword':
    case 'prepare-half':
    case 'rehandle':
      return withSteps(changed(steps, edit));
    case 'together':
      return withSteps(edit.changes.reduce(changed, steps));
    case 'choose-rule':
      return { ok: true, plan: { ...plan, rule: edit.rule } };
    case 'name-plan':
      return { ok: true, plan: { ...plan, title: edit.title, position: edit.position } };
  }
}

function changed(steps: readonly Step[], change: StepChange): readonly Step[] {
  switch (change.kind) {
    case 'reword':
      return steps.map((step) => (step.id === change.stepId ? reworded(step, change.title, change.seconds) : step));
    case 'prepare-half':
      return steps.map((step) => (step.id === change.stepId ? withHalfway(step, change.halfway) : step));
    case 'rehandle':
      return steps.map((step) => rehandled(step, change));
  }
}

function movedBy(steps: readonly Step[], stepId: string, by: number): readonly Step[] {
  const from = indexOfStep(steps, stepId);
  const to = Math.min(steps.length - 1, Math.max(0, from + by));
  const others = steps.filter(({ id }) => id !== stepId);
  return [...others.slice(0, to), steps[from] as Step, ...others.slice(to)];
}

function split(plan: Plan, stepId: string): Edited {
  const at = indexOfStep(plan.steps, stepId);
  const [below, step] = [plan.steps[at - 1], plan.steps[at] as Step];
  if (!below) return refuse({ kind: 'lowest-step', stepId });
  // The same name that the engine gives it, so that a session and the plan speak of one step.
  const half = halfStep(below, step, `${below.id}~${stepId}`);
  if (!half) return refuse({ kind: 'no-half', stepId });
  if (plan.steps.some(({ halfOf }) => halfOf?.aboveId === stepId && step.kind === 'handling'))
    return refuse({ kind: 'split-already', stepId });
  return { ok: true, plan: { ...plan, steps: insertBefore(plan.steps, stepId, half) } };
}

function unsplit(plan: Plan, stepId: string): Edited {
  const step = plan.steps[indexOfStep(plan.steps, stepId)];
  if (!step?.halfOf) return refuse({ kind: 'not-a-half', stepId });
  return { ok: true, plan: { ...plan, steps: plan.steps.filter(({ id }) => id !== stepId) } };
}

function reworded(step: Step, newTitle: string, seconds: Seconds): Step {
  const follows = newTitle === step.title && seconds !== criterionS(step);
  const title = (follows ? titleWith(step, seconds) : null) ?? newTitle;
  return step.kind === 'duration' ? { ...step, title, holdForS: seconds } : { ...step, title, forS: seconds };
}

function withHalfway(step: Step, halfway: (Handling & { readonly title: string }) | null): Step {
  if (step.kind !== 'handling') return step;
  const { halfway: _, ...bare } = step;
  return halfway ? { ...bare, halfway } : bare;
}

function rehandled(step: Step, edit: StepChange & { kind: 'rehandle' }): Step {
  const isIt = step.id === edit.stepId;
  if (step.kind !== 'handling' || !(isIt || step.halfOf?.aboveId === edit.stepId)) return step;
  const { caution: _, ...bare } = step;
  const moved: Step = {
    ...{ ...bare, area: edit.area, extent: isIt ? edit.extent : step.extent },
    ...(edit.caution === '' ? {} : { caution: edit.caution }),
  };
  // Filled in where the place is new; taken away from a place that had it, it is missed and the edit refused.
  return edit.area === step.area ? moved : withCaution(moved);
}

/** A step near the face gets its caution, whoever wrote it. */
function withCaution(step: Step): Step {
  const missing = step.kind === 'handling' && FACE.includes(step.area) && !step.caution;
  return missing ? { ...step, caution: cautionFor(step.area) } : step;
}

/** A half step that lost a neighbour, or was moved out from between them, becomes a step like any other: nothing vanishes unasked. */
function withoutLooseHalves(steps: readonly Step[]): readonly Step[] {
  return steps.map((step, i) => {
    if (!step.halfOf) return step;
    const below = indexOfStep(steps, step.halfOf.belowId);
    const above = indexOfStep(steps, step.halfOf.aboveId);
    if (below >= 0 && below < i && i < above) return step;
    const { halfOf: _, ...plain } = step;
    return plain;
  });
}

export interface Refused {
  readonly edit: PlanEdit;
  readonly why: Refusal;
}

/** A plan in the making, with what it was before. */
export interface Draft {
  readonly plan: Plan;
  readonly past: readonly Plan[];
  /** The latest edit, where it was refused, and why; null when it was not. */
  readonly refused: Refused | null;
}

export function draftOf(plan: Plan): Draft {
  return { plan, past: [], refused: null };
}

export function editDraft(draft: Draft, edit: PlanEdit): Draft {
  const edited = editPlan(draft.plan, edit);
  if (!edited.ok) return { ...draft, refused: { edit, why: edited.refusal } };
  return { plan: edited.plan, past: [...draft.past, draft.plan], refused: null };
}

export function undoEdit(draft: Draft): Draft {
  const plan = draft.past.at(-1);
  return plan ? { plan, past: draft.past.slice(0, -1), refused: null } : { ...draft, refused: null };
}
