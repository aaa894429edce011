/** Says what is wrong with a plan before it is kept: where, what was found, and what would be right. Problems are values; nothing throws. */

import { t, written } from './language.ts';
import { BODY_AREAS, criterionS, FACE, type HandlingStep, indexOfStep, LONGEST_S, type Plan, type Step } from './plan.ts';
import { isStoredRule } from './stored-rule.ts';
import type { Seconds } from './units.ts';

/** One thing that is wrong. */
export interface PlanProblem {
  /** Where: `steps[3].holdForS`. */
  readonly path: string;
  readonly value: unknown;
  /** What it should be: "more than 4, the step below". */
  readonly bound: string;
}

/** Most steps of a plan; more cannot be read as a ladder. */
const MOST_STEPS = 60;

/** Everything that is wrong with a plan, in the order of the plan; empty: it may be kept. */
export function checkPlan(plan: Plan): readonly PlanProblem[] {
  const { title, position, steps, rule } = plan;
  return [
    ...blank('title', title),
    ...blank('position', position),
    ...unless(
      rule === undefined || isStoredRule(rule),
      'rule',
      rule,
      t('a rule, with 1 <= kept <= of and a window that can be counted'),
    ),
    ...unless(steps.length >= 1 && steps.length <= MOST_STEPS, 'steps', steps.length, t('1 to {n} steps', { n: MOST_STEPS })),
    ...steps.flatMap((step, i) => checkStep(steps, step, i)),
  ];
}

/** "steps[3].holdForS: expected more than 4, the step below; got 3" */
export function sayProblem({ path, value, bound }: PlanProblem): string {
  return t('{path}: expected {bound}; got {value}', {
    path,
    bound,
    value: typeof value === 'string' ? `"${value}"` : sayValue(value),
  });
}

const sayValue = (value: unknown): string => (Number.isFinite(value) ? written(value as number) : String(value));

function unless(fine: boolean, path: string, value: unknown, bound: string): readonly PlanProblem[] {
  return fine ? [] : [{ path, value, bound }];
}

function blank(path: string, text: string): readonly PlanProblem[] {
  return unless(text.trim() !== '', path, text, t('some words'));
}

function checkStep(steps: readonly Step[], step: Step, i: number): readonly PlanProblem[] {
  const at = `steps[${i}]`;
  const first = indexOfStep(steps, step.id);
  return [
    ...blank(`${at}.id`, step.id),
    ...unless(first === i, `${at}.id`, step.id, t('an id of its own, not that of steps[{n}]', { n: first })),
    ...blank(`${at}.title`, step.title),
    ...(step.kind === 'duration' ? checkSeconds(`${at}.holdForS`, step.holdForS) : checkSeconds(`${at}.forS`, step.forS)),
    ...checkRise(steps, step, i),
    ...(step.kind === 'handling' ? checkHandling(step, at) : []),
    ...checkHalf(steps, step, i),
  ];
}

function checkSeconds(path: string, seconds: Seconds): readonly PlanProblem[] {
  return unless(seconds >= 0 && seconds <= LONGEST_S, path, seconds, t('0 to {n} s', { n: LONGEST_S }));
}

/** Of two holds, one on the other, the upper is longer. */
function checkRise(steps: readonly Step[], step: Step, i: number): readonly PlanProblem[] {
  const below = steps[i - 1];
  if (step.kind !== 'duration' || below?.kind !== 'duration') return [];
  // Not "unless it is longer": a hold that is no number has been named already.
  const falls = step.holdForS <= below.holdForS;
  return unless(!falls, `steps[${i}].holdForS`, step.holdForS, t('more than {n}, the step below', { n: below.holdForS }));
}

/** In any language: a plan may have been made in another than is spoken now. */
const VETERINARIAN = /veterin[aä]r|tier(?:arzt|ärzt)/i;

function checkHandling(step: HandlingStep, at: string): readonly PlanProblem[] {
  const { area, caution, halfway, forS, extent } = step;
  const known = area !== ('position' as string) && BODY_AREAS.includes(area);
  const said = caution ?? '';
  return [
    ...unless(known, `${at}.area`, area, t('one of {areas}', { areas: BODY_AREAS.slice(1).join(', ') })),
    ...blank(`${at}.extent`, extent),
    ...unless(
      !FACE.includes(area) || VETERINARIAN.test(said),
      `${at}.caution`,
      caution,
      t('a sentence that names the veterinarian'),
    ),
    ...(halfway ? blank(`${at}.halfway.title`, halfway.title) : []),
    ...(halfway ? blank(`${at}.halfway.extent`, halfway.extent) : []),
    ...(halfway ? unless(isLess(halfway, step), `${at}.halfway`, halfway.title, t('less of the handling than the whole')) : []),
    ...(halfway
      ? unless(
          halfway.forS >= 0 && halfway.forS <= forS,
          `${at}.halfway.forS`,
          halfway.forS,
          t('0 to {n} s, not more than the whole', { n: forS }),
        )
      : []),
  ];
}

/** Other words for what the hand does, or less time; as little as the whole itself is no half. */
function isLess(halfway: NonNullable<HandlingStep['halfway']>, { extent, forS }: HandlingStep): boolean {
  return halfway.extent.trim() !== extent.trim() || halfway.forS !== forS;
}

/** A half step lies strictly between the two that it names, with no other step of the plan taking its place. */
function checkHalf(steps: readonly Step[], step: Step, i: number): readonly PlanProblem[] {
  if (!step.halfOf) return [];
  const { belowId, aboveId } = step.halfOf;
  const [below, above] = [indexOfStep(steps, belowId), indexOfStep(steps, aboveId)];
  const path = `steps[${i}].halfOf`;
  if (!(below >= 0 && below < i && i < above))
    return [{ path, value: `${belowId}~${aboveId}`, bound: t('a step below it and a step above it') }];
  const [low, high] = [steps[below] as Step, steps[above] as Step];
  if (step.kind !== 'duration' || low.kind !== 'duration' || high.kind !== 'duration') return [];
  const between = criterionS(step) > criterionS(low) && criterionS(step) < criterionS(high);
  return unless(
    between,
    `steps[${i}].holdForS`,
    criterionS(step),
    t('between {low} and {high}', { low: criterionS(low), high: criterionS(high) }),
  );
}
