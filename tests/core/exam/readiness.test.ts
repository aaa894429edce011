/** What the veterinarian asks for beside what the dog has practised: never told as more than it is. */
import { assert, integer, property, tuple } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import type { ExamItem } from '../../../src/core/exam/exam.ts';
import { readinessOf } from '../../../src/core/exam/readiness.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { digest, on } from '../progress/digests.ts';

const CLAW: ExamItem = {
  ...{ id: 'i', area: 'paws', what: 'steady the claw', forS: 3 },
  step: { planId: DEMO_PLAN.id, stepId: 'claw-hold' },
};
const own = (day: number, kept: number, of: number, place = 'kitchen', step = 'claw-hold') =>
  digest(day, on(step, kept, of), { planId: DEMO_PLAN.id, place });
/** Three sessions running at 9 in 10, in two places: kept for good since day 3. */
const GOOD = [own(1, 9, 10), own(2, 10, 10), own(3, 9, 10, 'car')];
const judge = (digests: readonly SessionDigest[], item: Partial<ExamItem> = {}, today = 10) =>
  readinessOf({ ...CLAW, ...item }, [DEMO_PLAN], digests, today);

describe('something to be done is', () => {
  test('ready when it is kept for good, as long as is asked for, lately; with its counts and places', () =>
    expect(judge(GOOD)).toMatchObject({
      kind: 'ready',
      evidence: { kept: 28, of: 30, sessions: 3, days: 3, lastDay: 3, keptIn: ['kitchen', 'car'], triedIn: [] },
    }));

  test('nearly there when one place is missing', () =>
    expect(judge([own(1, 9, 10), own(2, 9, 10), own(3, 9, 10)])).toMatchObject({
      kind: 'nearly',
      lacks: [{ kind: 'not-for-good', running: 3, places: 1 }],
    }));

  test('nearly there when it is kept for good, but for fewer seconds', () => {
    const lacks = [{ kind: 'seconds', practisedS: 3, askedS: 6 }];
    expect(judge(GOOD, { forS: 6 })).toMatchObject({ kind: 'nearly', lacks });
  });

  test('only begun when the seconds are less than half', () => expect(judge(GOOD, { forS: 7 }).kind).toBe('begun'));

  test('nearly there when it was kept for good and not practised for a month', () =>
    expect(judge(GOOD, {}, 31)).toMatchObject({ kind: 'nearly', lacks: [{ kind: 'not-lately', days: 28 }] }));

  test('only begun while heads lift, however many sessions there were', () =>
    expect(judge([...GOOD, own(4, 5, 10)])).toMatchObject({ kind: 'begun', evidence: { kept: 24, of: 30 } }));

  test('never practised when a plan leads there and no trial was made', () =>
    expect(judge([own(1, 10, 10, 'kitchen', 'paw-lift')])).toMatchObject({ kind: 'never', at: { step: { id: 'claw-hold' } } }));
});

describe('an item in words of its own', () => {
  const { step: _, ...words } = CLAW;
  const judgeWords = (what: string, area: ExamItem['area'] = 'paws') =>
    readinessOf({ ...words, what, area }, [DEMO_PLAN], GOOD, 10);

  test('is the step with the same place and the same words', () =>
    expect(judgeWords('  steady one CLAW  3 s ').kind).toBe('ready'));

  test('is not a step that is merely like it: that would promise what nobody has seen', () =>
    expect(judgeWords('Steady one claw')).toEqual({ kind: 'never', at: null }));

  test('is not the same words at another place', () =>
    expect(judgeWords('Steady one claw 3 s', 'ears')).toEqual({ kind: 'never', at: null }));
});

test('the better of two plans tells', () => {
  const { step: _, ...words } = CLAW;
  const other = { ...DEMO_PLAN, id: 'other' };
  const item = { ...words, what: 'Steady one claw 3 s' };
  expect(readinessOf(item, [other, DEMO_PLAN], GOOD, 10)).toMatchObject({ kind: 'ready', at: { plan: { id: DEMO_PLAN.id } } });
});

test('asking for more seconds never makes a dog readier', () => {
  const rank = { ready: 0, nearly: 1, begun: 2, never: 3 };
  const session = tuple(integer({ min: 0, max: 10 }), integer({ min: 0, max: 1 }));
  assert(
    property(tuple(session, session, session, session), integer({ min: 0, max: 20 }), (sessions, forS) => {
      const digests = sessions.map(([kept, place], nth) => own(nth, kept, 10, String(place)));
      const [less, more] = [judge(digests, { forS }), judge(digests, { forS: forS + 1 })];
      expect(rank[more.kind]).toBeGreaterThanOrEqual(rank[less.kind]);
    }),
    { seed: 20260302 },
  );
});
