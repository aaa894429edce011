/** Where half a step is put in: once in front of what failed; by the rule that halves ahead every time, and where the last steps needed it. */
import { expect, test } from 'vitest';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, open, type Played, sessionStart, type } from '../../demo/typed-session.ts';
import { freshHalf } from '../../src/core/halves.ts';
import { NOTHING_CARRIED } from '../../src/core/next-start.ts';
import type { HandlingStep, Plan, Step } from '../../src/core/plan.ts';
import { STEADY, STEADY_AHEAD } from '../../src/core/rule.ts';
import { sayCall } from '../../src/core/sentences.ts';

/** Stands on a step with no warm-up, halving ahead unless another rule is named; `returned`: the steps that were returned from before. */
function standingOn(stepId: string, returned: readonly string[] = [], plan: Plan = DEMO_PLAN, rule = STEADY_AHEAD): Played {
  const returns = Object.fromEntries(returned.map((id) => [id, 1]));
  const next = { ...nextOn(plan, stepId), carried: { ...NOTHING_CARRIED, returns } };
  const played = open({ ...sessionStart(plan, next), rule });
  return { ...played, state: { ...played.state, standing: { ...played.state.standing, stepId, warmUp: null } } };
}

const nextOn = (plan: Plan, startStepId: string) => ({ steps: plan.steps, startStepId, why: { kind: 'step-reached' } as const });
const stepIn = (plan: Plan, id: string) => plan.steps.find((step) => step.id === id) as Step;

test('the usual rule halves a rise the first time it goes back, and then no more', () => {
  const again = type(standingOn('hold-7', [], LONG_LADDER, STEADY), 'll kkkkk ll');
  expect(calls(again).slice(0, 3)).toEqual(['split hold-5~hold-7', 'raise hold-7', 'return hold-5~hold-7']);
  expect(calls(type(standingOn('hold-7', ['hold-7'], LONG_LADDER, STEADY), 'll'))).toEqual(['return hold-5']);
});

test('the usual rule meets no step through its half before the step has failed', () => {
  const played = type(standingOn('hold-3', ['hold-1', 'hold-2', 'hold-3'], DEMO_PLAN, STEADY), 'kkkkk');
  expect(calls(played)).toEqual(['raise hold-4']);
});

test('by the rule that halves ahead, when two of the last three steps were returned from, the next new one is met through its half', () => {
  const played = type(standingOn('hold-3', ['hold-1', 'hold-3']), 'kkkkk');
  expect(calls(played)).toEqual(['raise hold-3~hold-4']);
  expect(played.state.standing.steps.map(({ id }) => id).slice(3, 6)).toEqual(['hold-3', 'hold-3~hold-4', 'hold-4']);
});

test('it says why', () => {
  const { state } = type(standingOn('hold-3', ['hold-1', 'hold-3']), 'kkkkk');
  const call = state.reps.at(-1)?.calls[0];
  expect(call && sayCall(call, state.standing.steps)).toBe(
    'Next step: Lie flat 3.5 s. The first 5 of 5 on this step held. 2 of the last 3 steps had to be halved, so this one is halved at once.',
  );
});

test('one of the last three, or two that lie longer back, are no reason', () => {
  expect(calls(type(standingOn('hold-3', ['hold-3']), 'kkkkk'))).toEqual(['raise hold-4']);
  expect(calls(type(standingOn('hold-4', ['hold-0', 'hold-1']), 'kkkkk'))).toEqual(['raise hold-5']);
});

test('from the half it goes on to the whole, not to a half of the half', () => {
  const played = type(standingOn('hold-3', ['hold-1', 'hold-3']), 'kkkkk kkkkk');
  expect(calls(played)).toEqual(['raise hold-3~hold-4', 'raise hold-4']);
});

test('a step that was met before is not halved on the way back to it', () => {
  const played = type(standingOn('hold-3', ['hold-2', 'hold-3', 'hold-4']), 'kkkkk');
  expect(calls(played)).toEqual(['raise hold-4']);
});

test('half steps do not count as steps that needed a half', () => {
  const half: Step = { ...(freshHalf(DEMO_PLAN.steps, stepIn(DEMO_PLAN, 'hold-3')) as Step) };
  const plan = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.toSpliced(3, 0, half) };
  expect(calls(type(standingOn('hold-3', [half.id, 'hold-3'], plan), 'kkkkk'))).toEqual(['raise hold-4']);
});

test('by the rule that halves ahead, a hold is halved at every return, as long as a second lies between', () => {
  const first = type(standingOn('hold-7', [], LONG_LADDER), 'll');
  expect(calls(first)).toEqual(['split hold-5~hold-7']);
  const again = type(first, 'kkkkk ll');
  expect(calls(again).slice(1, 3)).toEqual(['raise hold-7', 'split hold-5~hold-7~hold-7']);
  expect(again.state.standing.steps.slice(4, 8)).toMatchObject([
    { holdForS: 5 },
    { holdForS: 6 },
    { holdForS: 6.5 },
    { holdForS: 7 },
  ]);
  const third = type(again, 'kkkkk ll');
  expect(calls(third).at(-1)).toBe('return hold-5~hold-7~hold-7');
});

test('a handling has one half-way and no quarters', () => {
  const again = type(standingOn('paw-rest'), 'll kkkkkkkkk ll');
  expect(calls(again).filter((call) => !call.startsWith('rest'))).toEqual([
    'split paw-touch~paw-rest',
    'raise paw-rest',
    'return paw-touch~paw-rest',
  ]);
});

test('a handling without a half-way is met whole, whatever the last steps needed', () => {
  const bare = DEMO_PLAN.steps.map((step): Step => (step.kind === 'handling' ? withoutHalfway(step) : step));
  const played = type(standingOn('paw-touch', ['hold-5', 'paw-touch'], { ...DEMO_PLAN, steps: bare }), 'kkkkkkkkk');
  expect(calls(played)).toEqual(['raise paw-rest']);
});

function withoutHalfway(step: HandlingStep): Step {
  const { halfway: _, ...rest } = step;
  return rest;
}

test('there is nothing to halve below the lowest step', () => {
  expect(freshHalf(DEMO_PLAN.steps, stepIn(DEMO_PLAN, 'hold-0'))).toBeNull();
});
