/** What an answer changes, as the owner reads it before accepting it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { homeworkChanges } from '../../../src/core/handover/changes.ts';
import { halfStep, insertBefore, type Step } from '../../../src/core/plan.ts';
import { HOMEWORK, homework } from './homework-sample.ts';

const { steps } = DEMO_PLAN;
const step = (id: string): Step => steps.find((each) => each.id === id) as Step;
const without = (id: string) => steps.filter((each) => each.id !== id);
const changes = (now: Parameters<typeof homework>[0], plan = DEMO_PLAN) => homeworkChanges(plan, HOMEWORK, homework(now));

test('the same again changes nothing', () => {
  expect(changes({ revision: 2, givenAt: '2026-04-01T10:00:00Z' })).toEqual([]);
});

describe('of the steps it tells', () => {
  test('which is new, and above which it lies', () => {
    const hold7: Step = { kind: 'duration', id: 'hold-7', title: 'Lie flat 7 s', holdForS: 7 };
    expect(changes({ steps: insertBefore(steps, 'paw-touch', hold7) })).toEqual([
      { kind: 'step-added', step: hold7, below: step('hold-5') },
    ]);
  });

  test('which is taken out, a half step that practice had put in among them', () => {
    const half = halfStep(step('hold-4'), step('hold-5'), 'hold-4~hold-5') as Step;
    const asPractised = { ...DEMO_PLAN, steps: insertBefore(steps, 'hold-5', half) };
    expect(changes({}, asPractised)).toEqual([{ kind: 'step-removed', step: half }]);
    expect(changes({ steps: without('hold-4') })).toEqual([{ kind: 'step-removed', step: step('hold-4') }]);
  });

  test('which one moved, not all that it moved past', () => {
    const moved = [...without('paw-touch'), step('paw-touch')];
    expect(changes({ steps: moved })).toEqual([{ kind: 'step-moved', step: step('paw-touch'), below: step('claw-file') }]);
  });

  test('what of one is other than it was', () => {
    const was = step('paw-rest');
    const is = { ...was, title: 'Rest a hand on the paw 1 s', forS: 1, caution: 'Ask your veterinarian first.' } as Step;
    const found = changes({ steps: steps.map((each) => (each === was ? is : each)) });
    expect(found).toEqual([{ kind: 'step-changed', step: is, was, parts: ['title', 'seconds', 'caution'] }]);
  });
});

test('of the rest it tells the rule, the sessions a week, the words and the texts, each with what it is now', () => {
  const now = {
    rule: { kind: 'cautious' } as const,
    sessionsAWeek: 2,
    words: { ...HOMEWORK.words, mark: 'good' },
    note: '',
  };
  expect(changes(now)).toEqual([
    { kind: 'rule', to: { kind: 'cautious' } },
    { kind: 'sessions', from: 3, to: 2 },
    { kind: 'word', word: 'mark', to: 'good' },
    { kind: 'note', to: '' },
  ]);
});

test('whatever is shuffled, put in and taken out: every step is told or stands where it stood', () => {
  const ids = steps.map(({ id }) => id);
  fc.assert(
    fc.property(fc.shuffledSubarray(ids), fc.shuffledSubarray(ids), (before, now) => {
      const found = homeworkChanges({ steps: before.map(step) }, HOMEWORK, homework({ steps: now.map(step) }));
      const told = new Set(found.flatMap((change) => ('step' in change ? [change.step.id] : [])));
      const stayed = now.filter((id) => !told.has(id));
      expect(before.filter((id) => stayed.includes(id))).toEqual(stayed);
      expect(new Set([...told, ...stayed])).toEqual(new Set([...before, ...now]));
    }),
  );
});
