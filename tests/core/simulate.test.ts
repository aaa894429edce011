/** The simulator: it drives the real engine, the same seed is the same dog, and its dogs do what its page says of them. */
import { expect, test } from 'vitest';
import { chanceOf } from '../../demo/chance.ts';
import { spokenCoach } from '../../demo/coach.ts';
import { bornBy, inventedDog } from '../../demo/invented-dog.ts';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import { simulate, type Training, trainDog } from '../../demo/simulate.ts';
import type { Step } from '../../src/core/plan.ts';
import { type SessionRule, STEADY, STEADY_AHEAD } from '../../src/core/rule.ts';

const RULES: readonly SessionRule[] = [
  STEADY,
  STEADY_AHEAD,
  { kind: 'cautious' },
  { kind: 'k-of-m', kept: 9, of: 10, window: 'blocks' },
];

/** Everything that happened to a dog, rep by rep, as text. */
function diary(seed: number, training: Training): string {
  const lines: string[] = [];
  const watch: Training['watch'] = (rep, before, calls) => lines.push(JSON.stringify([rep, before, calls]));
  const career = trainDog(seed, { ...training, watch });
  return [...lines, JSON.stringify(career)].join('\n');
}

test.each(RULES)(
  'a dog trained by words goes the same way as one trained by the decisions alone: $kind, seeds 1 to 3',
  (rule) => {
    for (const seed of [1, 2, 3]) {
      const training = { plan: LONG_LADDER, rule };
      expect(diary(seed, { ...training, coach: spokenCoach })).toBe(diary(seed, training));
    }
  },
);

test('the same seed is the same dog, another seed another', () => {
  const training = { plan: LONG_LADDER, rule: STEADY };
  expect(diary(7, training)).toBe(diary(7, training));
  expect(diary(8, training)).not.toBe(diary(7, training));
});

test('a kept rep makes a step easier, a lift harder, tiredness and rust harder for a while', () => {
  const step = LONG_LADDER.steps[4] as Step;
  const traits = { ...bornBy(chanceOf(5), LONG_LADDER.steps.length), tires: 0.05, rusts: 0.2, freshReps: 5 };
  const dog = inventedDog(traits, LONG_LADDER.steps);
  const fresh = dog.success(step);
  dog.learn(step, true);
  const taught = dog.success(step);
  expect(taught).toBeGreaterThan(fresh);
  expect(dog.successNow(step, 20)).toBeLessThan(taught);
  dog.wait(3);
  expect(dog.successNow(step, 0)).toBeLessThan(dog.successNow(step, 4));
  expect(dog.success(step)).toBe(taught);
  dog.learn(step, false);
  expect(dog.success(step)).toBeLessThan(taught);
});

test('a half step lies between its neighbours once the one below is mastered, and putting it in teaches nothing', () => {
  const [below, above] = LONG_LADDER.steps.slice(3, 5) as [Step, Step];
  const traits = { ...bornBy(chanceOf(6), LONG_LADDER.steps.length), spreads: 0 };
  const dog = inventedDog(traits, LONG_LADDER.steps);
  for (const step of LONG_LADDER.steps.slice(0, 4)) for (let n = 0; n < 60; n++) dog.learn(step, true);
  const before = dog.success(above);
  const half = { ...below, id: 'half', halfOf: { belowId: below.id, aboveId: above.id } };
  dog.meet(half);
  expect(dog.success(above)).toBeCloseTo(before, 12);
  expect(dog.success(half)).toBeLessThan(dog.success(below));
  expect(dog.success(half)).toBeGreaterThan(before);
});

test('four of five asks for more lifts and raises earlier than steady, on the same forty dogs', () => {
  const steady = simulate({ plan: LONG_LADDER, rule: STEADY }, 40, 100);
  const fast = simulate({ plan: LONG_LADDER, rule: { kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' } }, 40, 100);
  expect(fast.earlyRaises).toBeGreaterThan(3 * steady.earlyRaises);
  expect(fast.kept).toBeLessThan(steady.kept);
  expect(fast.weakestStep).toBeLessThan(steady.weakestStep);
});
