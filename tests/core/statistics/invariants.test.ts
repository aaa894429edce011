/** What must hold of any session's statistics, tried on random ones; the seed is in the titles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kappa, timeWindow } from '../../../src/core/statistics/agreement.ts';
import { fisherTwoSided } from '../../../src/core/statistics/fisher.ts';
import { type Hold, holdCurve, medianHold } from '../../../src/core/statistics/hold-time.ts';
import { clopperPearson, newcombe, wilson } from '../../../src/core/statistics/share.ts';
import { mannKendall } from '../../../src/core/statistics/trend.ts';

const SEED = Number(process.env.SEED ?? 20260301);
const RUNS = { seed: SEED, numRuns: 300 };

const counts = fc.integer({ min: 1, max: 200 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
const hold: fc.Arbitrary<Hold> = fc.record({
  heldForS: fc.integer({ min: 0, max: 40 }).map((halves) => halves / 2),
  end: fc.constantFrom('lifted' as const, 'marked' as const),
});
const holds = fc.array(hold, { minLength: 1, maxLength: 30 });

describe(`hold curves, seed ${SEED}`, () => {
  it('a curve starts at 1 and never rises', () => {
    fc.assert(
      fc.property(holds, (some) => {
        let before = 1;
        for (const { survival } of holdCurve(some).drops) {
          expect(survival).toBeLessThan(before);
          expect(survival).toBeGreaterThanOrEqual(0);
          before = survival;
        }
      }),
      RUNS,
    );
  });
  it('without marks the curve is the share of heads still down', () => {
    fc.assert(
      fc.property(holds, (some) => {
        const all = some.map(({ heldForS }): Hold => ({ heldForS, end: 'lifted' }));
        for (const { atS, survival } of holdCurve(all).drops)
          expect(survival).toBeCloseTo(all.filter(({ heldForS }) => heldForS > atS).length / all.length, 12);
      }),
      RUNS,
    );
  });
  it('holds marked later than the last lift may have been marked later still: the curve is the same', () => {
    fc.assert(
      fc.property(holds, (some) => {
        const lastLift = Math.max(-1, ...some.filter(({ end }) => end === 'lifted').map(({ heldForS }) => heldForS));
        const later = some.map(
          (one): Hold => (one.end === 'marked' && one.heldForS > lastLift ? { ...one, heldForS: one.heldForS + 9 } : one),
        );
        expect(holdCurve(later).drops).toEqual(holdCurve(some).drops);
      }),
      RUNS,
    );
  });
  it('the order of holds means nothing, and a median lies within its interval', () => {
    fc.assert(
      fc.property(holds, (some) => {
        expect(holdCurve(some.toReversed())).toEqual(holdCurve(some));
        const { medianS, lowerS, upperS } = medianHold(holdCurve(some));
        if (medianS !== null) expect(lowerS).toBeLessThanOrEqual(medianS);
        if (upperS !== null) expect(upperS).toBeGreaterThanOrEqual(medianS as number);
      }),
      RUNS,
    );
  });
});

describe(`shares, seed ${SEED}`, () => {
  it('the interval of k of n mirrors that of n - k of n, holds k / n and stays within 0 and 1', () => {
    fc.assert(
      fc.property(counts, fc.constantFrom(wilson, clopperPearson), ([k, n], interval) => {
        const [one, other] = [interval(k, n), interval(n - k, n)];
        expect(one.lower).toBeCloseTo(1 - other.upper, 12);
        expect(one.upper).toBeCloseTo(1 - other.lower, 12);
        expect(one.lower).toBeLessThanOrEqual(k / n);
        expect(one.upper).toBeGreaterThanOrEqual(k / n);
        expect(one.lower >= 0 && one.upper <= 1).toBe(true);
      }),
      RUNS,
    );
  });
  it('exchanging the two shares turns their difference round', () => {
    fc.assert(
      fc.property(counts, counts, ([a, b], [c, d]) => {
        const [one, other] = [newcombe(a, b, c, d), newcombe(c, d, a, b)];
        expect(one.interval.lower).toBeCloseTo(-other.interval.upper, 12);
        expect(one.interval.lower).toBeLessThanOrEqual(one.difference);
        expect(one.interval.upper).toBeLessThanOrEqual(1 + 1e-12);
      }),
      RUNS,
    );
  });
  it('Fisher’s test does not care which row or column comes first', () => {
    const count = fc.integer({ min: 0, max: 30 });
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        const p = fisherTwoSided(a, b, c, d);
        expect(fisherTwoSided(c, d, a, b)).toBeCloseTo(p, 9);
        expect(fisherTwoSided(a, c, b, d)).toBeCloseTo(p, 9);
        expect(p > 0 && p <= 1).toBe(true);
      }),
      RUNS,
    );
  });
});

describe(`agreement and trends, seed ${SEED}`, () => {
  it('kappa is the same with the observers exchanged and with the labels exchanged', () => {
    const count = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        fc.pre(a + b + c + d > 0);
        const here = kappa([
          [a, b],
          [c, d],
        ]);
        expect(
          kappa([
            [a, c],
            [b, d],
          ]),
        ).toEqual(here);
        expect(
          kappa([
            [d, c],
            [b, a],
          ]),
        ).toEqual(here);
      }),
      RUNS,
    );
  });
  it('time-window agreement finds as many pairs as any pairing could', () => {
    const times = fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 6 });
    fc.assert(
      fc.property(times, times, fc.integer({ min: 0, max: 4 }), (a, b, window) => {
        expect(timeWindow(a, b, window).agreed).toBe(mostPairs(a, b, window));
      }),
      RUNS,
    );
  });
  it('a trend reversed in time changes the sides of its test', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 8, maxLength: 16 }), (values) => {
        const [there, back] = [mannKendall(values), mannKendall(values.toReversed())];
        if (there.kind !== 'tested' || back.kind !== 'tested') throw new Error('eight or more are tested');
        expect(back.s).toBe(-there.s === 0 ? 0 : -there.s);
        expect(back.pRise).toBeCloseTo(there.pFall, 12);
        expect(back.pTwoSided).toBeCloseTo(there.pTwoSided, 12);
      }),
      RUNS,
    );
  });
});

/** Most pairs by trying, for each event of the first, every free one of the second or none. */
function mostPairs(a: readonly number[], b: readonly number[], window: number): number {
  const [first, ...rest] = a;
  if (first === undefined) return 0;
  const paired = b.flatMap((time, i) =>
    Math.abs(time - first) <= window ? [1 + mostPairs(rest, b.toSpliced(i, 1), window)] : [],
  );
  return Math.max(mostPairs(rest, b, window), ...paired);
}
