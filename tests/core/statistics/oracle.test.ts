/** Our distributions against jstat, and where jstat is coarse, against exact sums. */
import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { betaBelow, betaQuantile } from '../../../src/core/statistics/beta.ts';
import { chiSquareTail } from '../../../src/core/statistics/chi-square.ts';
import { fisherTwoSided } from '../../../src/core/statistics/fisher.ts';
import { gammaAbove, gammaBelow, logChoose, logFactorial, logGamma } from '../../../src/core/statistics/gamma.ts';
import { Z_95 } from '../../../src/core/statistics/interval.ts';
import { chanceAtLeast } from '../../../src/core/statistics/posterior.ts';
import { garwood } from '../../../src/core/statistics/rate.ts';

const SHAPES = [0.5, 1, 1.5, 2, 5, 11, 40, 300];
const SHARES = [0.001, 0.025, 0.2, 0.5, 0.8, 0.975, 0.999];

describe('against jstat', () => {
  it('z is the 97.5 % point of the normal distribution', () => {
    expect(Z_95).toBeCloseTo(jStat.normal.inv(0.975, 0, 1), 12);
    expect(jStat.normal.cdf(Z_95, 0, 1)).toBeCloseTo(0.975, 12);
  });
  it('chi-square with one degree of freedom has the same tail', () => {
    for (const x of [0, 0.01, 0.5, 1, 2.706, 3.841, 6.635, 16.79])
      expect(chiSquareTail(x)).toBeCloseTo(1 - jStat.chisquare.cdf(x, 1), 9);
    // jstat's inverse stops at about nine digits.
    expect(chiSquareTail(jStat.chisquare.inv(0.95, 1))).toBeCloseTo(0.05, 7);
  });
  it('the incomplete beta and its inverse are the same over shapes from .5 to 300', () => {
    for (const a of SHAPES)
      for (const b of SHAPES)
        for (const x of SHARES) {
          expect(betaBelow(x, a, b)).toBeCloseTo(jStat.beta.cdf(x, a, b), 7);
          // Where the density is endless (b = .5 at 1) the spacing of doubles alone costs 1e-11.
          expect(betaBelow(betaQuantile(x, a, b), a, b)).toBeCloseTo(x, 10);
        }
    expect(betaQuantile(0.025, 9, 2)).toBeCloseTo(jStat.beta.inv(0.025, 9, 2), 7);
  });
  it('the logarithm of gamma is the same', () => {
    for (const x of [0.1, 0.5, 1, 1.5, 2, 10.5, 171, 1000])
      expect(logGamma(x) / (jStat.gammaln(x) || 1)).toBeCloseTo(x === 1 || x === 2 ? 0 : 1, 12);
  });
  it('the ends of a Poisson interval leave 2.5 % outside', () => {
    for (const count of [1, 3, 10, 47, 100]) {
      const { lower, upper } = garwood(count);
      expect(jStat.poisson.cdf(count, upper)).toBeCloseTo(0.025, 9);
      expect(1 - jStat.poisson.cdf(count - 1, lower)).toBeCloseTo(0.025, 9);
    }
  });
  it('Fisher’s test sums the hypergeometric chances that are no larger', () => {
    const [a, b, c, d] = [9, 1, 4, 6] as const;
    const chance = (x: number) => jStat.hypgeom.pdf(x, a + b + c + d, a + c, a + b);
    const p = Array.from({ length: 11 }, (_, x) => x)
      .filter((x) => x >= 3)
      .map(chance)
      .filter((each) => each <= chance(a) * (1 + 1e-7))
      .reduce((sum, each) => sum + each, 0);
    expect(fisherTwoSided(a, b, c, d)).toBeCloseTo(p, 9);
  });
});

describe('against exact sums', () => {
  it('the beta tail equals the binomial tail to 1e-12', () => {
    for (const n of [1, 5, 10, 60])
      for (let k = 0; k <= n; k++)
        for (const x of [0.05, 0.5, 0.8, 0.95]) {
          let sum = 0;
          for (let j = 0; j <= k; j++) sum += Math.exp(logChoose(n + 1, j)) * x ** j * (1 - x) ** (n + 1 - j);
          expect(Math.abs(chanceAtLeast(x, k, n) - sum)).toBeLessThan(1e-12);
        }
  });
  it('the gamma tail equals the Poisson sum to 1e-12, and both tails make one', () => {
    for (const n of [1, 4, 20])
      for (const mean of [0.1, 1, 5, 25, 60]) {
        let sum = 0;
        for (let j = 0; j < n; j++) sum += Math.exp(j * Math.log(mean) - mean - logFactorial(j));
        expect(Math.abs(gammaAbove(n, mean) - sum)).toBeLessThan(1e-12);
        expect(gammaAbove(n, mean) + gammaBelow(n, mean)).toBeCloseTo(1, 14);
      }
  });
  it('small tails keep their digits: chi-square 100 is 1.5239706e-23', () => {
    expect(chiSquareTail(100) / 1.5239706048321e-23).toBeCloseTo(1, 10);
  });
});
