/** Steps to be expected: against scipy, and against pretended dogs whose pace is known. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countAhead } from '../../../src/core/statistics/count-ahead.ts';

describe('how many steps may come', () => {
  // C: binomial tails summed with Python's exact integers (math.comb), y from 0 to 400.
  test.each([
    [0, 10, 10, 0, 5],
    [10, 10, 10, 3, 22],
    [12, 18, 9, 1, 13],
    [12, 18, 6, 0, 10],
    [3, 5, 20, 1, 37],
    [20, 40, 4, 0, 6],
    [1, 6, 1, 0, 2],
  ])('%i steps in %i sessions: in %i more from %i to %i', (count, past, ahead, lower, upper) => {
    expect(countAhead(count, past, ahead)).toEqual({ lower, upper });
  });

  test('without a session ahead nothing comes', () => expect(countAhead(7, 9, 0)).toEqual({ lower: 0, upper: 0 }));

  test('what no session can yield is refused', () => {
    expect(() => countAhead(1.5, 9, 1)).toThrow(RangeError);
    expect(() => countAhead(1, 0, 1)).toThrow(RangeError);
    expect(() => countAhead(1, 9, Number.NaN)).toThrow(RangeError);
  });

  test('more sessions ahead never promise less, and more steps before never promise less', () => {
    const some = fc.tuple(fc.nat(60), fc.integer({ min: 1, max: 60 }), fc.nat(60));
    fc.assert(
      fc.property(some, ([count, past, ahead]) => {
        const [here, longer, quicker] = [
          countAhead(count, past, ahead),
          countAhead(count, past, ahead + 1),
          countAhead(count + 1, past, ahead),
        ];
        expect(here.lower).toBeLessThanOrEqual(here.upper);
        for (const more of [longer, quicker]) {
          expect(more.lower).toBeGreaterThanOrEqual(here.lower);
          expect(more.upper).toBeGreaterThanOrEqual(here.upper);
        }
      }),
      { seed: 20260302 },
    );
  });

  test('of dogs with a steady pace it is right about at least 95 in 100', () => {
    // Exact: every earlier and later count, weighed by its Poisson chance.
    const chances = (mean: number) => {
      const all = [Math.exp(-mean)];
      for (let k = 1; k < 120; k++) all.push(((all[k - 1] as number) * mean) / k);
      return all;
    };
    for (const [pace, past, ahead] of [
      [0.3, 10, 10],
      [0.7, 18, 9],
      [1.5, 8, 20],
    ] as const) {
      let right = 0;
      for (const [x, before] of chances(pace * past).entries()) {
        const { lower, upper } = countAhead(x, past, ahead);
        for (const [y, after] of chances(pace * ahead).entries()) if (y >= lower && y <= upper) right += before * after;
      }
      expect(right).toBeGreaterThanOrEqual(0.95);
    }
  });
});
