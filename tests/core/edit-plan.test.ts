/** Changing a plan: every edit can be undone, none leaves a plan that would be refused. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { checkPlan } from '../../src/core/check-plan.ts';
import { type Draft, draftOf, editDraft, editPlan, type PlanEdit, undoEdit } from '../../src/core/edit-plan.ts';
import type { HandlingStep, Plan, Step } from '../../src/core/plan.ts';

const SEED = Number(process.env.SEED ?? 20260305);

function edited(edit: PlanEdit, plan: Plan = DEMO_PLAN): Plan {
  const result = editPlan(plan, edit);
  if (!result.ok) throw new Error(result.refusal.kind);
  return result.plan;
}

function refused(edit: PlanEdit, plan: Plan = DEMO_PLAN) {
  const result = editPlan(plan, edit);
  return result.ok ? null : result.refusal;
}

const ids = (plan: Plan) => plan.steps.map(({ id }) => id);
const stepIn = (plan: Plan, id: string) => plan.steps.find((step) => step.id === id) as Step;
const seconds = (stepId: string, s: number, plan: Plan = DEMO_PLAN): PlanEdit => ({
  ...{ kind: 'reword', stepId, seconds: s },
  title: stepIn(plan, stepId)?.title ?? '',
});
const hold = (id: string, holdForS: number): Step => ({ kind: 'duration', id, title: `Lie flat ${holdForS} s`, holdForS });

test('a step put in lies where it was put', () => {
  const plan = edited({ kind: 'insert', step: hold('hold-8', 8), at: 6 });
  expect(ids(plan).slice(5, 8)).toEqual(['hold-5', 'hold-8', 'paw-touch']);
});

test('a step put in out of order is refused with its seconds', () => {
  expect(refused({ kind: 'insert', step: hold('late', 1), at: 5 })).toEqual({
    kind: 'bad-plan',
    problems: [{ path: 'steps[5].holdForS', value: 1, bound: 'more than 4, the step below' }],
    steps: DEMO_PLAN.steps.toSpliced(5, 0, hold('late', 1)),
  });
});

test('a step near the face gets its caution when it is put in without one', () => {
  const step: HandlingStep = {
    kind: 'handling',
    id: 'lip',
    title: 'Touch the lip',
    area: 'mouth',
    extent: 'one finger',
    forS: 0,
  };
  expect(stepIn(edited({ kind: 'insert', step, at: 11 }), 'lip').caution).toContain('veterinarian');
});

test('the last step cannot be taken out', () => {
  const one = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.slice(0, 1) };
  expect(refused({ kind: 'remove', stepId: 'hold-0' }, one)).toMatchObject({ kind: 'bad-plan' });
});

test('a handling step moves one easier; past the ends it stays', () => {
  expect(ids(edited({ kind: 'move', stepId: 'claw-hold', by: -1 })).slice(8)).toEqual(['claw-hold', 'paw-lift', 'claw-file']);
  expect(ids(edited({ kind: 'move', stepId: 'claw-file', by: 3 }))).toEqual(ids(DEMO_PLAN));
});

test('a split duration lies half-way, and undoing the split takes it out', () => {
  const plan = edited({ kind: 'split', stepId: 'hold-5' });
  expect(stepIn(plan, 'hold-4~hold-5')).toMatchObject({ holdForS: 4.5, halfOf: { belowId: 'hold-4', aboveId: 'hold-5' } });
  expect(edited({ kind: 'unsplit', stepId: 'hold-4~hold-5' }, plan)).toEqual(DEMO_PLAN);
  expect(refused({ kind: 'unsplit', stepId: 'hold-5' }, plan)).toEqual({ kind: 'not-a-half', stepId: 'hold-5' });
});

test('half a second is not halved, the lowest step neither, and a handling not twice', () => {
  const plan = edited({ kind: 'split', stepId: 'hold-5' });
  expect(refused({ kind: 'split', stepId: 'hold-5' }, plan)).toEqual({ kind: 'no-half', stepId: 'hold-5' });
  expect(refused({ kind: 'split', stepId: 'hold-0' })).toEqual({ kind: 'lowest-step', stepId: 'hold-0' });
  const paw = edited({ kind: 'split', stepId: 'paw-rest' });
  expect(refused({ kind: 'split', stepId: 'paw-rest' }, paw)).toEqual({ kind: 'split-already', stepId: 'paw-rest' });
});

test('a handling step without a half-way is split only after the handler has written one', () => {
  const { halfway: _, ...bare } = stepIn(DEMO_PLAN, 'paw-rest') as HandlingStep;
  const plan = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.map((step) => (step.id === 'paw-rest' ? bare : step)) };
  expect(refused({ kind: 'split', stepId: 'paw-rest' }, plan)).toEqual({ kind: 'no-half', stepId: 'paw-rest' });
  const halfway = { title: 'One finger on the paw', extent: 'one finger, no weight', forS: 1 };
  const written = edited({ kind: 'prepare-half', stepId: 'paw-rest', halfway }, plan);
  expect(stepIn(edited({ kind: 'split', stepId: 'paw-rest' }, written), 'paw-touch~paw-rest')).toMatchObject(halfway);
});

test('a half step whose neighbour is taken out stays, as a step like any other', () => {
  const plan = edited({ kind: 'remove', stepId: 'hold-5' }, edited({ kind: 'split', stepId: 'hold-5' }));
  expect(ids(plan)).toContain('hold-4~hold-5');
  expect(stepIn(plan, 'hold-4~hold-5').halfOf).toBeUndefined();
});

test('new words and new seconds change that step alone', () => {
  const renamed = edited({ kind: 'reword', stepId: 'hold-3', title: 'Flat, three', seconds: 3 });
  expect(renamed.steps.filter((step, i) => step !== DEMO_PLAN.steps[i])).toEqual([
    { ...stepIn(DEMO_PLAN, 'hold-3'), title: 'Flat, three' },
  ]);
  expect(refused(seconds('hold-3', 4))).toMatchObject({ kind: 'bad-plan' });
  expect(stepIn(edited(seconds('hold-3', 3.5)), 'hold-3')).toMatchObject({ holdForS: 3.5 });
});

test('words and seconds changed together are both kept', () => {
  const both = edited({ kind: 'reword', stepId: 'hold-3', title: 'Flat on the mat', seconds: 3.5 });
  expect(stepIn(both, 'hold-3')).toMatchObject({ title: 'Flat on the mat', holdForS: 3.5 });
});

test('a title that names its seconds follows them, one that does not is left alone', () => {
  expect(stepIn(edited(seconds('hold-3', 3.5)), 'hold-3').title).toBe('Lie flat 3.5 s');
  expect(stepIn(edited(seconds('hold-5', 13)), 'hold-5').title).toBe('Lie flat 13 s');
  const named = edited({ kind: 'reword', stepId: 'hold-3', title: 'Flat, 13 s in all', seconds: 3 });
  expect(stepIn(edited(seconds('hold-3', 3.5, named), named), 'hold-3').title).toBe('Flat, 13 s in all');
});

test('seconds that are left empty are refused: they are not nothing', () => {
  expect(refused(seconds('hold-0', Number.NaN))).toMatchObject({ kind: 'bad-plan' });
});

test('a half step bears the name of the step that it halves', () => {
  expect(stepIn(edited({ kind: 'split', stepId: 'hold-2' }), 'hold-1~hold-2').title).toBe('Lie flat 1.5 s');
  const named = edited({ kind: 'reword', stepId: 'hold-2', title: 'Flat for two', seconds: 2 });
  expect(stepIn(edited({ kind: 'split', stepId: 'hold-2' }, named), 'hold-1~hold-2').title).toBe('Lie flat 1.5 s');
});

test('an edit of a step that is not there says so', () => {
  expect(refused({ kind: 'remove', stepId: 'gone' })).toEqual({ kind: 'no-such-step', stepId: 'gone' });
});

test('a refused edit leaves the draft as it was, and says why until the next one', () => {
  const draft = editDraft(draftOf(DEMO_PLAN), { kind: 'split', stepId: 'hold-0' });
  const edit = { kind: 'split', stepId: 'hold-0' };
  expect(draft).toEqual({ plan: DEMO_PLAN, past: [], refused: { edit, why: { kind: 'lowest-step', stepId: 'hold-0' } } });
  expect(editDraft(draft, { kind: 'remove', stepId: 'hold-3' }).refused).toBeNull();
});

const anyStep = fc.nat({ max: 40 });
const anyEdit: fc.Arbitrary<(plan: Plan) => PlanEdit> = fc.oneof(
  anyStep.map(
    (n) =>
      (plan: Plan): PlanEdit => ({ kind: 'remove', stepId: pick(plan, n) }),
  ),
  fc.tuple(anyStep, fc.integer({ min: -3, max: 3 })).map(
    ([n, by]) =>
      (plan: Plan): PlanEdit => ({ kind: 'move', stepId: pick(plan, n), by }),
  ),
  anyStep.map(
    (n) =>
      (plan: Plan): PlanEdit => ({ kind: 'split', stepId: pick(plan, n) }),
  ),
  anyStep.map(
    (n) =>
      (plan: Plan): PlanEdit => ({ kind: 'unsplit', stepId: pick(plan, n) }),
  ),
  fc.tuple(anyStep, fc.double({ min: -2, max: 20 })).map(
    ([n, s]) =>
      (plan: Plan): PlanEdit =>
        seconds(pick(plan, n), s, plan),
  ),
  fc.tuple(anyStep, fc.integer({ min: 1, max: 15 })).map(
    ([at, s]) =>
      (): PlanEdit => ({ kind: 'insert', step: hold(`new-${at}-${s}`, s), at }),
  ),
);

function pick(plan: Plan, n: number): string {
  return plan.steps[n % plan.steps.length]?.id ?? '';
}

test(`whatever is edited, the plan stays one that may be kept, and undoing all gives the first back, seed ${SEED}`, () => {
  fc.assert(
    fc.property(fc.array(anyEdit, { maxLength: 25 }), (edits) => {
      let draft: Draft = draftOf(DEMO_PLAN);
      for (const edit of edits) {
        draft = editDraft(draft, edit(draft.plan));
        expect(checkPlan(draft.plan)).toEqual([]);
      }
      while (draft.past.length > 0) draft = undoEdit(draft);
      expect(draft.plan).toBe(DEMO_PLAN);
    }),
    { seed: SEED, numRuns: 200 },
  );
});

const rehandle = (change: Partial<PlanEdit & { kind: 'rehandle' }>): PlanEdit => {
  const { area, extent, caution = '' } = stepIn(DEMO_PLAN, 'paw-rest') as HandlingStep;
  return { kind: 'rehandle', stepId: 'paw-rest', area, extent, caution, ...change };
};

test('what the hand does, where and with which caution can be changed; the rest of the step stays', () => {
  const edit = rehandle({
    area: 'coat-and-tail',
    extent: 'the palm on the hip',
    caution: 'A sore hip is for your veterinarian.',
  });
  expect(stepIn(edited(edit), 'paw-rest')).toEqual({
    ...stepIn(DEMO_PLAN, 'paw-rest'),
    ...{ area: 'coat-and-tail', extent: 'the palm on the hip', caution: 'A sore hip is for your veterinarian.' },
  });
  expect(stepIn(edited(rehandle({ caution: '' })), 'paw-rest').caution).toBeUndefined();
});

test('a half step on the ladder goes to the same place as its whole, and keeps what its own hand does', () => {
  const split = edited({ kind: 'split', stepId: 'paw-rest' });
  const half = stepIn(
    edited(rehandle({ area: 'mouth', extent: 'the palm on the lip', caution: '' }), split),
    'paw-touch~paw-rest',
  );
  expect(half).toMatchObject({ area: 'mouth', extent: 'the palm rests on the paw, no grip' });
  expect(half.caution).toContain('veterinarian');
});

test('a step that moves to the face gets the caution of that place; one of its own must name the veterinarian', () => {
  expect(stepIn(edited(rehandle({ area: 'eyes', caution: '' })), 'paw-rest').caution).toContain(
    'weeping is for your veterinarian',
  );
  expect(refused(rehandle({ area: 'eyes', caution: 'Be gentle.' }))).toMatchObject({
    problems: [{ path: 'steps[7].caution', value: 'Be gentle.' }],
  });
});

test('near the face the caution cannot be emptied', () => {
  const eyes = edited(rehandle({ area: 'eyes', caution: '' }));
  expect(refused(rehandle({ area: 'eyes', caution: '' }), eyes)).toMatchObject({ problems: [{ path: 'steps[7].caution' }] });
});

test.each([
  ['no words', { extent: '  ' }, 'steps[7].extent'],
  ['a place that no dog has', { area: 'wings' as HandlingStep['area'] }, 'steps[7].area'],
])('a handling with %s is refused', (_, change, path) => {
  expect(refused(rehandle(change))).toMatchObject({ kind: 'bad-plan', problems: [{ path }] });
});

const half = (change: object): PlanEdit => ({
  ...{ kind: 'prepare-half', stepId: 'paw-rest' },
  halfway: { title: 'Two fingers 1 s', extent: 'two fingers, no weight', forS: 1, ...change },
});

test('the half of a handling has words, an extent and seconds of its own, and can be taken away', () => {
  const plan = edited(half({ extent: 'one finger', forS: 1.5 }));
  expect(stepIn(plan, 'paw-rest')).toMatchObject({ halfway: { title: 'Two fingers 1 s', extent: 'one finger', forS: 1.5 } });
  const without = edited({ kind: 'prepare-half', stepId: 'paw-rest', halfway: null }, plan);
  expect(refused({ kind: 'split', stepId: 'paw-rest' }, without)).toEqual({ kind: 'no-half', stepId: 'paw-rest' });
});

test.each([
  ['without words', { title: ' ' }, 'halfway.title'],
  ['that does not say what the hand does', { extent: '' }, 'halfway.extent'],
  ['that lasts longer than the whole', { forS: 3 }, 'halfway.forS'],
  ['of no known length', { forS: Number.NaN }, 'halfway.forS'],
  ['that is the whole again', { extent: 'the palm rests on the paw, no grip', forS: 2 }, 'halfway'],
])('a half %s is refused', (_, change, field) => {
  expect(refused(half(change))).toMatchObject({ kind: 'bad-plan', problems: [{ path: `steps[7].${field}` }] });
});

test('the seconds inside a handling step can be changed, and hold what its half allows', () => {
  expect(stepIn(edited(seconds('paw-rest', 4)), 'paw-rest')).toMatchObject({ forS: 4, title: 'Rest a hand on the paw 4 s' });
  expect(refused(seconds('paw-rest', 0.5))).toMatchObject({ problems: [{ path: 'steps[7].halfway.forS' }] });
});
