/** Wrong plans are refused with the place, what was found and what would be right; the ready ladders are all right. */
import { describe, expect, test } from 'vitest';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { checkPlan, sayProblem } from '../../src/core/check-plan.ts';
import { areaName, HANDLED_AREAS, POSITIONS, readyLadder, readyPlan } from '../../src/core/ladders.ts';
import {
  criterionS,
  type DurationStep,
  FACE,
  type HandlingStep,
  halfStep,
  LONGEST_S,
  type Plan,
  type Step,
} from '../../src/core/plan.ts';

/** The demo plan with one step made wrong. */
function withStep(i: number, change: Partial<DurationStep> | Partial<HandlingStep>): Plan {
  return { ...DEMO_PLAN, steps: DEMO_PLAN.steps.map((step, j) => (j === i ? ({ ...step, ...change } as Step) : step)) };
}

const PAW = 6;
const half = (belowId: string, aboveId: string, holdForS: number): DurationStep => ({
  ...{ kind: 'duration', id: 'half', title: 'Half', holdForS, halfOf: { belowId, aboveId } },
});
const inserted = (step: Step, i: number): Plan => ({ ...DEMO_PLAN, steps: DEMO_PLAN.steps.toSpliced(i, 0, step) });

const WRONG: readonly [string, Plan, string][] = [
  ['a plan without a name', { ...DEMO_PLAN, title: '  ' }, 'title: expected some words; got "  "'],
  ['a plan without a step', { ...DEMO_PLAN, steps: [] }, 'steps: expected 1 to 60 steps; got 0'],
  [
    'two steps of one id',
    withStep(2, { id: 'hold-1' }),
    'steps[2].id: expected an id of its own, not that of steps[1]; got "hold-1"',
  ],
  ['a step without words', withStep(3, { title: '' }), 'steps[3].title: expected some words; got ""'],
  ['a hold of less than nothing', withStep(0, { holdForS: -1 }), 'steps[0].holdForS: expected 0 to 600 s; got -1'],
  ['a hold that is no number', withStep(4, { holdForS: Number.NaN }), 'steps[4].holdForS: expected 0 to 600 s; got NaN'],
  ['an hour of handling', withStep(PAW, { forS: 3600 }), 'steps[6].forS: expected 0 to 600 s; got 3600'],
  ['a ladder that goes down', withStep(3, { holdForS: 1 }), 'steps[3].holdForS: expected more than 2, the step below; got 1'],
  [
    'a place that no dog has',
    withStep(PAW, { area: 'wings' as HandlingStep['area'] }),
    'steps[6].area: expected one of ears, eyes, mouth, paws, collar-and-neck, coat-and-tail; got "wings"',
  ],
  [
    'the mouth without a word of caution',
    withStep(PAW, { area: 'mouth', caution: 'Be careful.' }),
    'steps[6].caution: expected a sentence that names the veterinarian; got "Be careful."',
  ],
  [
    'a half that lasts longer than the whole',
    withStep(7, { halfway: { title: 'Half', extent: 'half', forS: 3 } }),
    'steps[7].halfway.forS: expected 0 to 2 s, not more than the whole; got 3',
  ],
  [
    'a half that does not say what the hand does',
    withStep(7, { halfway: { title: 'Half', extent: ' ', forS: 1 } }),
    'steps[7].halfway.extent: expected some words; got " "',
  ],
  [
    'a half that is the whole again',
    withStep(7, { extent: 'the palm', halfway: { title: 'Half', extent: 'the palm', forS: 2 } }),
    'steps[7].halfway: expected less of the handling than the whole; got "Half"',
  ],
  [
    'a handling that does not say what the hand does',
    withStep(PAW, { extent: '' }),
    'steps[6].extent: expected some words; got ""',
  ],
  [
    'a half step away from its neighbours',
    inserted(half('hold-1', 'hold-2', 1.5), 5),
    'steps[5].halfOf: expected a step below it and a step above it; got "hold-1~hold-2"',
  ],
  [
    'a half step that is as hard as the whole',
    inserted(half('hold-4', 'hold-5', 5), 5),
    'steps[5].holdForS: expected between 4 and 5; got 5',
  ],
  [
    'six of five',
    { ...DEMO_PLAN, rule: { kind: 'k-of-m', kept: 6, of: 5, window: 'sliding' } },
    'rule: expected a rule, with 1 <= kept <= of and a window that can be counted; got [object Object]',
  ],
];

test.each(WRONG)('%s is refused, and says where and why', (_, plan, said) => {
  expect(checkPlan(plan).map(sayProblem)).toContain(said);
});

test('a problem carries its value and not only its words', () => {
  expect(checkPlan(withStep(0, { holdForS: LONGEST_S + 1 }))[0]).toEqual({
    path: 'steps[0].holdForS',
    value: 601,
    bound: '0 to 600 s',
  });
});

test('the plans of the demo are right', () => {
  expect(checkPlan(DEMO_PLAN)).toEqual([]);
  expect(checkPlan(LONG_LADDER)).toEqual([]);
});

const LADDERS = POSITIONS.flatMap((position) => HANDLED_AREAS.map((area) => ({ position, area })));

describe.each(LADDERS)('the ready ladder: $position, $area', ({ position, area }) => {
  const plan = readyPlan('plan-1', 'dog-1', position, area);
  const handling = plan.steps.filter((step): step is HandlingStep => step.kind === 'handling');

  test('is a plan that may be kept, named by its place', () => {
    expect(checkPlan(plan)).toEqual([]);
    expect(plan.title).toContain(areaName(area));
    expect(handling.length).toBeGreaterThanOrEqual(6);
    expect(handling.every((step) => step.area === area)).toBe(true);
  });

  test('begins with a hold paid at once, and reaches five seconds before a hand moves', () => {
    expect(plan.steps.slice(0, 6).map(criterionS)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(plan.steps.slice(0, 6).every(({ kind }) => kind === 'duration')).toBe(true);
  });

  test('has a half-way for every handling, in other words than the whole and not longer', () => {
    handling.forEach((step, i) => {
      const below = plan.steps[5 + i] as Step;
      const prepared = halfStep(below, step, 'half') as HandlingStep;
      expect(prepared, step.title).not.toBeNull();
      expect(prepared.title).not.toBe(step.title);
      expect(prepared.forS).toBeLessThanOrEqual(step.forS);
      expect(prepared.extent !== step.extent || prepared.forS < step.forS, step.title).toBe(true);
    });
  });

  test('cautions are one sentence that names the veterinarian, and no step near the face lacks one', () => {
    const cautions = handling.flatMap(({ caution }) => caution ?? []);
    expect(cautions.length).toBeGreaterThan(0);
    for (const caution of cautions) expect(caution).toMatch(/^[A-Z][^.!?]*veterinarian[^.!?]*\.$/);
    if (FACE.includes(area)) expect(cautions).toHaveLength(handling.length);
  });
});

test('a ladder is the same every time, so that sessions and plan speak of the same steps', () => {
  expect(readyLadder('chin-on-lap', 'ears')).toEqual(readyLadder('chin-on-lap', 'ears'));
});
