/** Published values of the review's statistics, written out with their flags so that a clone without the reference folder checks them. */
import { describe, expect, it } from 'vitest';
import {
  exactCount,
  intervalByInterval,
  kappa,
  meanCountPerInterval,
  totalCount,
} from '../../../src/core/statistics/agreement.ts';
import { fisherTwoSided } from '../../../src/core/statistics/fisher.ts';
import { holdCurve, medianHold } from '../../../src/core/statistics/hold-time.ts';
import { logRank } from '../../../src/core/statistics/log-rank.ts';
import { percentileRank } from '../../../src/core/statistics/percentile.ts';
import { chanceAtLeast, chanceNext } from '../../../src/core/statistics/posterior.ts';
import { garwood } from '../../../src/core/statistics/rate.ts';
import { clopperPearson, newcombe, wilson } from '../../../src/core/statistics/share.ts';
import { restingEnergyKcal, treatBudgetKcal } from '../../../src/core/statistics/treats.ts';
import { kendallTail } from '../../../src/core/statistics/trend.ts';
import { halfDecimal } from '../chain/reference.ts';
import { PLACEBO, SIX_MP } from './freireich.ts';

/** |computed - printed| is at most half the last printed digit. */
function expectPrinted(computed: number | null | undefined, printed: number, decimals: number): void {
  expect(Math.abs((computed ?? Number.NaN) - printed), `${computed} against ${printed}`).toBeLessThanOrEqual(
    halfDecimal(decimals),
  );
}

describe('share kept', () => {
  it.each([
    [81, 263, 0.2553, 0.3662, 'R: Newcombe 1998, Stat Med 17:857-872'],
    [15, 148, 0.0624, 0.1605, 'R: Newcombe 1998'],
    [0, 20, 0, 0.1611, 'R: Newcombe 1998'],
    [1, 29, 0.0061, 0.1718, 'R: Newcombe 1998'],
    [29, 29, 0.883, 1, 'R; C'],
    [4, 5, 0.3755, 0.9638, 'C'],
    [5, 5, 0.5655, 1, 'C'],
    [8, 10, 0.4902, 0.9433, 'C'],
    [9, 10, 0.5958, 0.9821, 'C'],
    [10, 10, 0.7225, 1, 'C'],
  ])('Wilson for %d of %d is %d to %d (%s)', (k, n, lower, upper) => {
    expectPrinted(wilson(k, n).lower, lower, 4);
    expectPrinted(wilson(k, n).upper, upper, 4);
  });

  it.each([
    [81, 263, 0.2527, 0.3676],
    [15, 148, 0.0578, 0.1617],
    [0, 20, 0, 0.1684],
    [1, 29, 0.0009, 0.1776],
  ])('Clopper-Pearson for %d of %d is %d to %d (R: Newcombe 1998; C)', (k, n, lower, upper) => {
    expectPrinted(clopperPearson(k, n).lower, lower, 4);
    expectPrinted(clopperPearson(k, n).upper, upper, 4);
  });

  it.each([
    [56, 70, 48, 80, 0.0524, 0.3339],
    [9, 10, 3, 10, 0.1705, 0.809],
  ])(
    'Newcombe for %d of %d less %d of %d is %d to %d (M: Newcombe 1998, Stat Med 17:873-890, method 10; C)',
    (a, b, c, d, lower, upper) => {
      const { interval } = newcombe(a, b, c, d);
      expectPrinted(interval.lower, lower, 4);
      expectPrinted(interval.upper, upper, 4);
    },
  );

  it.each([
    [0.8, 9, 10, 0.67788],
    [0.8, 5, 5, 0.73786],
    [0.9, 10, 10, 0.68619],
  ])('with a flat prior the chance that p is at least %d after %d of %d is %d (C)', (x, k, n, chance) => {
    expectPrinted(chanceAtLeast(x, k, n), chance, 5);
  });

  it('after nine of ten, nine or more of the next ten have a chance of .5376, not .9 (C)', () => {
    expectPrinted(chanceNext(9, 10, 9, 10), 0.5376, 4);
  });

  it('the lady who tasted three of four teas right has p .4857 (M: Fisher 1935; C)', () => {
    expectPrinted(fisherTwoSided(3, 1, 1, 3), 0.4857, 4);
  });
});

describe('rates', () => {
  it.each([
    [0, 0, 3.6889],
    [10, 4.7954, 18.3904],
  ])('a count of %d has the exact interval %d to %d (M: Garwood 1936; C)', (count, lower, upper) => {
    expectPrinted(garwood(count).lower, lower, 4);
    expectPrinted(garwood(count).upper, upper, 4);
  });
});

describe('hold times: the 6-MP trial (M: Freireich et al. 1963, standard tables; C)', () => {
  it.each([
    [6, 0.857, 0.0764],
    [7, 0.807, 0.0869],
    [10, 0.753, 0.0963],
    [13, 0.69, 0.1068],
    [16, 0.627, 0.1141],
    [22, 0.538, 0.1282],
    [23, 0.448, 0.1346],
  ])('at %d the curve is %d with standard error %d', (atS, survival, error) => {
    const drop = holdCurve(SIX_MP).drops.find((each) => each.atS === atS);
    expectPrinted(drop?.survival, survival, 3);
    expectPrinted(drop?.standardError, error, 4);
  });

  it('placebo has a median of 8, 6-MP one of 23 whose upper end is not reached', () => {
    expect(medianHold(holdCurve(PLACEBO)).medianS).toBe(8);
    // Plain interval, by hand from the errors above: .690 - 1.96 × .1068 <= .5 first at 13; .448 + 1.96 × .1346 > .5 at the last drop (C).
    expect(medianHold(holdCurve(SIX_MP))).toEqual({ medianS: 23, lowerS: 13, upperS: null });
  });

  it('the log-rank test gives chi-square 16.79 with 19.25 and 10.75 lifts expected', () => {
    const test = logRank(SIX_MP, PLACEBO);
    expectPrinted(test?.chiSquare, 16.79, 2);
    expectPrinted(test?.expected[0], 19.25, 2);
    expectPrinted(test?.expected[1], 10.75, 2);
    expect(test?.observed).toEqual([9, 21]);
  });
});

describe('two observers', () => {
  const first = [1, 1, 1, 2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const second = [0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 4];

  it('may agree fully in total and in two thirds of the intervals (R2: Reed & Azulay 2011, BAP)', () => {
    expect(totalCount(first, second)).toBe(1);
    expectPrinted(meanCountPerInterval(first, second), 0.7, 3);
    expectPrinted(exactCount(first, second), 0.667, 3);
    expectPrinted(intervalByInterval(first, second), 0.733, 3);
  });

  it('kappa of [[20, 5], [10, 15]] is .40 and so is PABAK (R2; C)', () => {
    const {
      kappa: k,
      pabak,
      observed,
      byChance,
    } = kappa([
      [20, 5],
      [10, 15],
    ]);
    expect({ k, observed, byChance }).toEqual({ k: 0.4, observed: 0.7, byChance: 0.5 });
    expectPrinted(pabak, 0.4, 10);
  });
});

describe('trends', () => {
  it.each([
    [4, 6, 0.0417],
    [5, 8, 0.0417],
    [5, 10, 0.0083],
    [6, 11, 0.0278],
    [7, 13, 0.0345],
    [8, 16, 0.0305],
  ])('of %d sessions in random order S is at least %d with chance %d (C)', (n, s, chance) => {
    expectPrinted(kendallTail(new Array(n).fill(1), s), chance, 4);
  });
});

describe('schedules and treats', () => {
  it.each([
    [9, 0.5, 5],
    [9, 0.7, 3],
    [4, 0.8, 1],
    [5, 0.5, 3],
    [10, 0.5, 5.5],
    [20, 0.5, 10.5],
  ])('of the last %d with a share of %d the rank to beat is %d (M: Platt 1973, Galbicka 1994; C)', (m, w, k) => {
    expect(percentileRank(m, w)).toBe(k);
  });

  it.each([
    [2, 118],
    [5, 234],
    [10, 394],
    [15, 534],
    [20, 662],
    [30, 897],
  ])('a dog of %d kg needs %d kcal a day at rest (R2; C)', (kg, kcal) => {
    expectPrinted(restingEnergyKcal(kg), kcal, 0);
  });

  it('a neutered dog of 10 kg may have 63 kcal of its 630 in treats (C)', () => {
    expectPrinted(treatBudgetKcal(10), 63, 0);
    expectPrinted(treatBudgetKcal(10) * 10, 630, 0);
  });
});
