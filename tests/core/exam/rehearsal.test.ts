/** The way to the day at the dog's own pace: counted by hand, honest when it will not be ready, and never a hurry. */
import { array, assert, boolean, constantFrom, integer, property, record } from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ExamItem } from '../../../src/core/exam/exam.ts';
import { type Pace, paceOf, stepsUpTo } from '../../../src/core/exam/pace.ts';
import { readinessOf } from '../../../src/core/exam/readiness.ts';
import { missingSteps, type Rehearsal, rehearse } from '../../../src/core/exam/rehearsal.ts';
import type { Plan } from '../../../src/core/plan.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { digest, on } from '../progress/digests.ts';

/** Ten handlings of the paw, two seconds each. */
const IDS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j'] as const;
const PLAN: Plan = {
  ...{ id: 'plan', dogId: 'dog', title: 'Paws', position: 'lying' },
  steps: IDS.map((id) => ({ kind: 'handling', id, title: id, area: 'paws', extent: id, forS: 2 })),
};
const half = { kind: 'handling', id: 'a~b', title: 'a~b', area: 'paws', extent: 'x', forS: 1 } as const;
const SPLIT: Plan = { ...PLAN, steps: PLAN.steps.toSpliced(1, 0, { ...half, halfOf: { belowId: 'a', aboveId: 'b' } }) };

const session = (day: number, ...steps: readonly string[]) =>
  digest(
    day,
    steps.map((step) => on(step, 9, 10)),
    { id: `s${day}` },
  );
const item = (stepId: string, forS = 2): ExamItem => ({
  ...{ id: stepId, area: 'paws', what: stepId, forS },
  step: { planId: 'plan', stepId },
});

describe('the pace of a dog', () => {
  const SIX = [
    session(1, 'a'),
    session(3, 'a', 'b'),
    session(5, 'b', 'c'),
    session(8, 'c'),
    session(10, 'c', 'd'),
    session(12, 'd'),
  ];

  test('is the whole steps first reached: b, c and d in six sessions of two weeks', () =>
    expect(paceOf(SIX, [PLAN], 14)).toMatchObject({
      ...{ kind: 'known', steps: 3, sessions: 6, weeks: 2, sessionsAWeek: 3, stepsAWeek: 1.5 },
      // M: exact limits of 3 events are 0.6187 and 8.7673 (Garwood 1936, table; C: jstat agrees); over two weeks half of each.
      interval: { lower: expect.closeTo(0.3094, 3), upper: expect.closeTo(4.3836, 3) },
    }));

  test('counts no half step, and no step twice', () => {
    const split = [session(1, 'a'), session(2, 'a~b'), session(3, 'b'), session(4, 'a'), session(5, 'b')];
    expect(paceOf(split, [SPLIT], 7)).toMatchObject({ steps: 1, sessions: 5 });
  });

  test('is not told from fewer than five sessions', () =>
    expect(paceOf(SIX.slice(0, 4), [PLAN], 14)).toEqual({ kind: 'too-few', sessions: 4, need: 5 }));

  test('gets slower with weeks in which nothing happens', () =>
    expect(paceOf(SIX, [PLAN], 28)).toMatchObject({ weeks: 4, sessionsAWeek: 1.5, stepsAWeek: 0.75 }));

  test('forgets what was longer ago than twelve weeks, but not which steps were reached then', () => {
    const long = [session(1, 'a', 'b', 'c'), ...[90, 92, 94, 96, 98].map((day) => session(day, 'c', 'd'))];
    expect(paceOf(long, [PLAN], 100)).toMatchObject({ steps: 1, sessions: 5 });
  });
});

test('steps are counted from the highest that was tried, half steps left out', () => {
  expect(stepsUpTo(SPLIT, 'd', [])).toBe(4);
  expect(stepsUpTo(SPLIT, 'd', [session(1, 'a')])).toBe(3);
  expect(stepsUpTo(SPLIT, 'b', [session(1, 'a', 'c')])).toBe(0);
});

/** Twelve steps in eighteen sessions, three a week. */
const KNOWN: Pace = {
  ...{ kind: 'known', steps: 12, sessions: 18, weeks: 6, sessionsAWeek: 3, stepsAWeek: 2 },
  interval: { lower: 1, upper: 3.5 },
};
const TODAY = 100;

function plan(
  items: readonly ExamItem[],
  daysLeft: number,
  { digests = [session(99, 'a')], pace = KNOWN, place = '' }: { digests?: SessionDigest[]; pace?: Pace; place?: string } = {},
): Rehearsal {
  const judged = items.map((each) => ({ item: each, readiness: readinessOf(each, [PLAN], digests, TODAY) }));
  return rehearse({ judged, plans: [PLAN], digests, pace, today: TODAY, examDay: TODAY + daysLeft, place });
}

describe('what is missing', () => {
  const missing = (...items: ExamItem[]) => {
    const digests = [session(99, 'a', 'b')];
    return missingSteps({
      judged: items.map((each) => ({ item: each, readiness: readinessOf(each, [PLAN], digests, 100) })),
      digests,
    });
  };
  test('on one ladder the highest counts, not each', () => expect(missing(item('d'), item('f'))).toBe(4));
  test('a second that no ladder has is a step', () => expect(missing(item('b', 5))).toBe(3));
  test('what was reached is not missing', () => expect(missing(item('a'))).toBe(0));
});

describe('the way to the day', () => {
  // 30 days: 21 to raise (9 sessions), 7 elsewhere (3), 2 easy. 12 steps in 18 sessions give 1 to 13 in 9 more (C: count-ahead.test.ts).
  test('rises a week at a time, then goes elsewhere, and ends with nothing new', () => {
    const { stretches } = plan([item('j')], 30);
    expect(stretches.map(({ kind, fromDay, toDay, sessions }) => [kind, fromDay - TODAY, toDay - TODAY, sessions])).toEqual([
      ['raise', 0, 6, 3],
      ['raise', 7, 13, 3],
      ['raise', 14, 20, 3],
      ['elsewhere', 21, 27, 3],
      ['easy', 28, 29, 0],
    ]);
    expect(stretches.map(({ steps }) => steps?.upper)).toEqual([6, 10, 13, 13, 13]);
  });

  test.each([
    ['one step more is likely', 'b', 30, 'likely', 1],
    ['nine steps may be reached, or may not', 'j', 30, 'perhaps', 9],
    // 9 days: 7 to raise, 3 sessions, 0 to 6 steps.
    ['nine steps in nine days are not ready', 'j', 9, 'not-ready', 9],
    ['on the day itself nothing more is reached', 'b', 0, 'not-ready', 1],
    ['nor on the day before', 'b', 1, 'not-ready', 1],
  ] as const)('%s', (_, stepId, daysLeft, kind, missing) => {
    expect(plan([item(stepId)], daysLeft).verdict).toMatchObject({ kind, missing });
  });

  test('a dog that will not be ready is told to the practice: a shorter list, another way, and the veterinarian decides', () => {
    const { asks, verdict } = plan([item('j')], 9, { place: 'practice' });
    expect(verdict).toEqual({ kind: 'not-ready', missing: 9, steps: { lower: 0, upper: 6 } });
    expect(asks).toEqual(['shorter-list', 'another-way', 'sedation', 'pain', 'visit-first']);
  });

  test('what is on no plan can be neither counted nor promised', () => {
    const odd: ExamItem = { id: 'x', area: 'eyes', what: 'drops', forS: 4 };
    const { verdict, unplanned, asks } = plan([item('b'), odd], 30);
    expect(unplanned).toEqual([odd]);
    expect(verdict.kind).toBe('perhaps');
    expect(asks).toContain('shorter-list');
  });

  test('steps that are reached and not kept for good are told as reached', () =>
    expect(plan([item('a')], 30).verdict).toEqual({ kind: 'reached' }));

  test('a dog that is ready rehearses, and is asked for nothing', () => {
    const digests = [session(90, 'a'), session(91, 'a'), { ...session(92, 'a'), place: 'car' }];
    expect(plan([item('a')], 10, { digests })).toMatchObject({ verdict: { kind: 'ready' }, asks: [] });
    expect(plan([item('a')], 10, { digests, place: 'practice' }).asks).toEqual(['visit-first']);
  });

  test('of too few sessions no pace is made up', () => {
    const pace: Pace = { kind: 'too-few', sessions: 2, need: 5 };
    const { verdict, stretches } = plan([item('c')], 30, { pace });
    expect(verdict).toEqual({ kind: 'pace-unknown', missing: 2 });
    expect(stretches.every(({ steps }) => steps === null)).toBe(true);
  });

  test('a day that is over plans nothing', () =>
    expect(plan([item('j')], -1)).toMatchObject({ verdict: { kind: 'past' }, stretches: [], asks: [] }));

  test('an empty list asks for nothing', () => expect(plan([], 9)).toMatchObject({ verdict: { kind: 'empty' }, asks: [] }));
});

test('no plan hurries: never more sessions than the dog has, nor more than one a day, nothing new at the end, every day in one stretch', () => {
  const paces = record({
    steps: integer({ min: 0, max: 40 }),
    sessions: integer({ min: 5, max: 60 }),
    weeks: integer({ min: 1, max: 12 }),
  });
  assert(
    property(
      paces,
      integer({ min: 1, max: 120 }),
      array(constantFrom(...IDS), { maxLength: 4 }),
      boolean(),
      (rough, days, ids, isLong) => {
        const { steps, sessions, weeks } = rough;
        const pace: Pace = {
          ...{ kind: 'known', steps, sessions, weeks, sessionsAWeek: sessions / weeks, stepsAWeek: steps / weeks },
          interval: { lower: 0, upper: 99 },
        };
        const items = [...new Set(ids)].map((id) => item(id, isLong ? 8 : 2));
        const { stretches } = plan(items, days, { pace });
        const all = stretches.reduce((sum, stretch) => sum + stretch.sessions, 0);
        expect(all).toBeLessThanOrEqual((Math.min(7, sessions / weeks) * days) / 7);
        expect(
          stretches.flatMap(({ fromDay, toDay }) => Array.from({ length: toDay - fromDay + 1 }, (_, n) => fromDay + n)),
        ).toEqual(Array.from({ length: days }, (_, n) => TODAY + n));
        expect(stretches.at(-1)?.kind).toBe('easy');
        const upper = stretches.map((stretch) => stretch.steps?.upper ?? 0);
        expect(upper).toEqual(upper.toSorted((a, b) => a - b));
      },
    ),
    { seed: 20260302, numRuns: 300 },
  );
});
