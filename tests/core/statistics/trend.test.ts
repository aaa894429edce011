/** Trends over sessions: exact, with ties taken as they are, and silent on too few. */
import { describe, expect, it } from 'vitest';
import { kendallS, mannKendall, theilSen } from '../../../src/core/statistics/trend.ts';

/** All orders of a list, equal values told apart. */
function orders(values: readonly number[]): number[][] {
  if (values.length <= 1) return [[...values]];
  return values.flatMap((first, i) => orders(values.filter((_, j) => j !== i)).map((rest) => [first, ...rest]));
}

describe('Mann-Kendall', () => {
  it('draws and does not test fewer than eight sessions', () => {
    expect(mannKendall([1, 2, 3, 4, 5, 6, 7])).toEqual({ kind: 'too-few', n: 7, s: 21 });
  });
  it('gives eight rising sessions one chance in 8! each way', () => {
    const rising = mannKendall([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(rising).toMatchObject({ kind: 'tested', s: 28, ties: false, pFall: 1 });
    if (rising.kind !== 'tested') return;
    expect(rising.pRise).toBeCloseTo(1 / 40320, 15);
    expect(rising.pTwoSided).toBeCloseTo(2 / 40320, 15);
  });
  it.each([{ values: [3, 1, 4, 2, 6, 5, 8, 7] }, { values: [1, 1, 2, 2, 2, 3, 4, 4] }, { values: [0, 1, 0, 0, 1, 1, 0, 1] }])(
    'agrees with trying all 8! orders of $values',
    ({ values }) => {
      const tested = mannKendall(values);
      if (tested.kind !== 'tested') throw new Error('eight sessions are tested');
      const all = orders(values).map(kendallS);
      const share = (is: (s: number) => boolean) => all.filter(is).length / all.length;
      expect(tested.pRise).toBeCloseTo(
        share((s) => s >= tested.s),
        12,
      );
      expect(tested.pFall).toBeCloseTo(
        share((s) => s <= tested.s),
        12,
      );
      expect(tested.pTwoSided).toBeCloseTo(
        share((s) => Math.abs(s) >= Math.abs(tested.s)),
        12,
      );
    },
  );
  it('finds no trend in equal sessions and says that there were ties', () => {
    expect(mannKendall(new Array(9).fill(2))).toEqual({
      kind: 'tested',
      n: 9,
      s: 0,
      ties: true,
      pRise: 1,
      pFall: 1,
      pTwoSided: 1,
    });
  });
  it('stays exact for a year of sessions', () => {
    const zigzag = Array.from({ length: 104 }, (_, i) => i + (i % 2 ? -30 : 30));
    const tested = mannKendall(zigzag);
    if (tested.kind !== 'tested') throw new Error('104 sessions are tested');
    expect(tested.pRise).toBeGreaterThan(0);
    expect(tested.pRise).toBeLessThan(1e-6);
    expect(tested.pFall).toBeCloseTo(1, 6);
  });
});

describe('Theil-Sen slope', () => {
  it('is not moved by one wild session', () => {
    const points = [0, 1, 2, 3, 4, 5, 6].map((x) => ({ x, y: x === 3 ? 100 : 2 * x + 1 }));
    expect(theilSen(points)).toBe(2);
  });
  it('takes the days between sessions into account', () => {
    expect(
      theilSen([
        { x: 0, y: 0 },
        { x: 10, y: 5 },
      ]),
    ).toBe(0.5);
  });
  it('has no answer from one session or from one day', () => {
    expect(theilSen([{ x: 1, y: 2 }])).toBeNull();
    expect(
      theilSen([
        { x: 1, y: 2 },
        { x: 1, y: 5 },
      ]),
    ).toBeNull();
  });
  it('refuses what is not a number', () => {
    expect(() => theilSen([{ x: 1, y: Number.NaN }])).toThrow('got NaN');
  });
});
