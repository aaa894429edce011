/** The ladder and its half steps. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { halfStep, halfwayS, insertBefore } from '../../src/core/plan.ts';

/** CRITERION.md and reference/criterion.json "split_seconds", flag C (definition). */
test.each([
  [0, 1, 0.5],
  [0, 2, 0.5],
  [1, 2, 1.5],
  [3, 5, 4],
  [4, 5, 4.5],
  [5, 8, 6.5],
  [5, 10, 7],
  [5, 15, 8.5],
  [10, 20, 14],
  [4, 4.5, null],
])('half-way between %s s and %s s is %s s', (below, above, half) => {
  expect(halfwayS(below, above)).toBe(half);
});

test('a half step always lies strictly between its neighbours, on the half-second grid', () => {
  for (let below = 0; below <= 60; below += 0.5)
    for (let above = below + 1; above <= 61; above += 0.5) {
      const half = halfwayS(below, above) as number;
      expect(half).toBeGreaterThan(below);
      expect(half).toBeLessThan(above);
      expect(Number.isInteger(2 * half)).toBe(true);
    }
});

test('a hold above a handling has no half-way: neither can be halved into the other', () => {
  const [hold, paw] = [DEMO_PLAN.steps[5], DEMO_PLAN.steps[6]] as const;
  if (!hold || !paw) throw new Error('scenario changed');
  expect(halfStep(paw, hold, 'x')).toBeNull();
});

test('inserting before a step that is not on the ladder is a broken promise, and throws', () => {
  expect(() => insertBefore([], 'nowhere', DEMO_PLAN.steps[0] as never)).toThrow('no step nowhere');
});
