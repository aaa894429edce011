/** The small measures: agreement in time, percentile schedule, rates, medians, treats, and what each refuses. */
import { describe, expect, it } from 'vitest';
import { exactCount, intervalByInterval, kappa, timeWindow, totalCount } from '../../../src/core/statistics/agreement.ts';
import { fisherTwoSided } from '../../../src/core/statistics/fisher.ts';
import { median } from '../../../src/core/statistics/median.ts';
import { percentileCriterion, percentileRank } from '../../../src/core/statistics/percentile.ts';
import { chanceNext } from '../../../src/core/statistics/posterior.ts';
import { garwood, ratePerMinute } from '../../../src/core/statistics/rate.ts';
import { newcombe, wilson } from '../../../src/core/statistics/share.ts';
import { restingEnergyKcal, treatBudgetKcal } from '../../../src/core/statistics/treats.ts';

describe('time-window agreement', () => {
  it('pairs events one to one within the window', () => {
    expect(timeWindow([1, 5, 9], [1.4, 5.2, 12], 1)).toEqual({ agreed: 2, onlyFirst: 1, onlySecond: 1, share: 0.5 });
  });
  it('does not let one event agree with two', () => {
    expect(timeWindow([1], [0.8, 1.2], 1)).toEqual({ agreed: 1, onlyFirst: 0, onlySecond: 1, share: 0.5 });
  });
  it('counts a difference of exactly the window', () => {
    expect(timeWindow([0.3], [0.1], 0.2).agreed).toBe(1);
  });
  it('has no share when neither saw anything', () => {
    expect(timeWindow([], [], 1).share).toBeNull();
  });
  it('takes events in any order and refuses a window below 0 s', () => {
    expect(timeWindow([9, 1], [1, 9], 0).share).toBe(1);
    expect(() => timeWindow([1], [1], -1)).toThrow(RangeError);
  });
});

describe('agreement by interval and label', () => {
  it('two observers who saw nothing agree', () => {
    expect([totalCount([0, 0], [0, 0]), exactCount([0, 0], [0, 0]), intervalByInterval([0, 0], [0, 0])]).toEqual([1, 1, 1]);
  });
  it('refuses lists of different length, no interval, half events', () => {
    expect(() => totalCount([1], [1, 2])).toThrow('got 1 and 2');
    expect(() => exactCount([], [])).toThrow('at least one interval');
    expect(() => exactCount([0.5], [1])).toThrow(RangeError);
  });
  it('kappa has no value when both used one label only; PABAK has', () => {
    expect(
      kappa([
        [10, 0],
        [0, 0],
      ]),
    ).toMatchObject({ kappa: null, pabak: 1, observed: 1 });
  });
  it('refuses a table that is not square, or empty', () => {
    expect(() =>
      kappa([
        [1, 2, 3],
        [1, 2, 3],
      ]),
    ).toThrow('square');
    expect(() =>
      kappa([
        [0, 0],
        [0, 0],
      ]),
    ).toThrow('at least one rep');
  });
});

describe('percentile schedule', () => {
  const holds = [9, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  it('asks the next hold to beat the fifth lowest of the last ten, the lower of rank 5.5', () => {
    expect(percentileCriterion(holds)).toEqual({ kind: 'beat', holdS: 5, rank: 5 });
  });
  it('waits until it has seen enough, and pays any hold when the rank is below one', () => {
    expect(percentileCriterion([1, 2])).toEqual({ kind: 'too-few', have: 2, need: 10 });
    expect(percentileCriterion([1, 2, 3], 3, 0.9)).toEqual({ kind: 'any' });
  });
  it('beating the k-th lowest of m has chance 1 - k / (m + 1): all orders of five say so', () => {
    // The rank of the last among five is even; it beats the k-th lowest of the four before with chance (5 - k) / 5.
    const k = percentileRank(4, 0.8);
    const beats = [1, 2, 3, 4, 5].filter((last) => last > ([1, 2, 3, 4, 5].filter((x) => x !== last)[k - 1] as number));
    expect(beats.length / 5).toBe(1 - k / 5);
  });
  it('refuses shares and memories that cannot be', () => {
    expect(() => percentileRank(0, 0.5)).toThrow(RangeError);
    expect(() => percentileRank(10, 1)).toThrow(RangeError);
  });
});

describe('rates, medians, treats, shares', () => {
  it('a rate is a count over minutes, its interval too', () => {
    const { perMinute, interval } = ratePerMinute(10, 120);
    expect(perMinute).toBe(5);
    expect(interval.lower).toBeCloseTo(garwood(10).lower / 2, 12);
    expect(() => ratePerMinute(1, 0)).toThrow('got 0');
    expect(() => garwood(1.5)).toThrow('got 1.5');
  });
  it('a median latency lies in the middle, and there is none of nothing', () => {
    expect([median([3, 1, 2]), median([4, 1, 2, 3]), median([])]).toEqual([2, 2.5, null]);
  });
  it('a weight of 0 kg and a factor of 0 are refused', () => {
    expect(() => restingEnergyKcal(0)).toThrow('got 0');
    expect(() => treatBudgetKcal(10, 0)).toThrow('got 0');
  });
  it('counts that cannot be are refused with both numbers', () => {
    expect(() => wilson(6, 5)).toThrow('got 6 of 5');
    expect(() => wilson(0, 0)).toThrow('got 0 of 0');
    expect(() => newcombe(1, 2, 3, 2)).toThrow('got 3 of 2');
    expect(() => chanceNext(11, 10, 9, 10)).toThrow('got 11 of 10');
    expect(() => fisherTwoSided(-1, 1, 1, 1)).toThrow('got -1');
  });
});
