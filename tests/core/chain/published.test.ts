/** Published values of runs, windows, staircases and control charts, written out so that a clone without the reference folder checks them. */
import { describe, expect, it } from 'vitest';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { longRun } from '../../../src/core/chain/ladder.ts';
import { blocksKOfM, inARow, slidingKOfM } from '../../../src/core/chain/rules.ts';
import { visit, within } from '../../../src/core/chain/visit.ts';
import { chainNamed, runOf } from './named.ts';
import { halfDecimal } from './reference.ts';
import { meanRunLength, type RunRule } from './run-rules.ts';
import { approximateMeans, bounds, exactMean } from './wald.ts';

/** |computed - printed| is at most half the last printed digit. */
function expectPrinted(computed: number, printed: number, decimals: number): void {
  expect(Math.abs(computed - printed), `${computed} against ${printed}`).toBeLessThanOrEqual(halfDecimal(decimals));
}

describe('runs of kept trials', () => {
  it.each([
    { n: 5, counts: [31, 19, 8, 3, 1], flag: 'R: Feller 1968 p. 300' },
    { n: 8, counts: [255, 201, 107, 48, 20, 8, 3, 1], flag: 'R: Feller 1968 p. 300' },
    { n: 10, counts: [1023, 880, 520, 251, 112, 48, 20, 8, 3, 1], flag: 'C' },
  ])('of the 2^$n sequences of a fair coin so many hold a run ($flag)', ({ n, counts }) => {
    counts.forEach((count, i) => {
      expect((within(chainOf(runOf(i + 1)), 0.5, n).raised[n] as number) * 2 ** n).toBeCloseTo(count, 9);
    });
  });

  it.each([
    [0.5, 3, 14, 9],
    [0.5, 5, 62, 9],
    [0.8, 3, 4.765625, 6],
    [0.8, 5, 10.2587890625, 10],
    [0.9, 5, 6.935088, 6],
    [0.9, 10, 18.67972, 5],
  ])('at p = %d the mean wait for %d in a row is %d (R2; C)', (p, k, wait, decimals) => {
    expectPrinted(visit(chainOf(runOf(k)), p).meanTrials, wait, decimals);
  });

  it('the wait for three heads has variance 142 (M; C)', () => {
    const { raised } = within(chainOf(runOf(3)), 0.5, 2000);
    const secondMoment = raised.reduce((sum, chance, n) => sum + (2 * n + 1) * (1 - chance), 0);
    expect(secondMoment - 14 ** 2).toBeCloseTo(142, 6);
  });
});

describe('control charts with run rules (Champ & Woodall 1987, Technometrics; M, reproduced C)', () => {
  it.each<[string, RunRule[], number]>([
    ['one beyond three sigma', [], 370.4],
    ['and two of three beyond two', ['2of3'], 225.44],
    ['and four of five beyond one', ['4of5'], 166.05],
    ['and eight on one side', ['8run'], 152.73],
    ['and 2 of 3 and 4 of 5', ['2of3', '4of5'], 132.89],
    ['and 2 of 3 and eight', ['2of3', '8run'], 122.05],
    ['and 4 of 5 and eight', ['4of5', '8run'], 105.78],
    ['and all', ['2of3', '4of5', '8run'], 91.75],
  ])('%s signals for nothing every so many points', (_, rules, points) => {
    expectPrinted(meanRunLength(rules), points, 2);
  });
});

describe('staircases', () => {
  it.each([
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the value as it was printed, to be checked as such
    [2, 0.7071],
    [3, 0.7937],
    [4, 0.8409],
    [5, 0.8706],
  ])('%d in a row up, one back, equal steps, is even at %d (Levitt 1971, M)', (n, p) => {
    // Even: as likely up as down from a fresh start.
    expect(visit(chainOf(inARow(n)), 0.5 ** (1 / n)).chanceToRaise).toBeCloseTo(0.5, 12);
    expectPrinted(0.5 ** (1 / n), p, 4);
  });

  it.each([
    [1, 0.2845, 0.7785],
    [2, 0.5488, 0.8035],
    [3, 0.7393, 0.8315],
    [4, 0.8415, 0.8584],
  ])(
    '%d up, one back with steps %d to 1 is even at %d (García-Pérez 1998, Vision Res 38:1861-81, R; formula C)',
    (n, ratio, p) => {
      expectPrinted((1 / (1 + ratio)) ** (1 / n), p, 4);
      const { chanceToRaise, chanceToReturn } = visit(chainOf(inARow(n)), (1 / (1 + ratio)) ** (1 / n));
      expect(chanceToReturn / chanceToRaise).toBeCloseTo(ratio, 12);
    },
  );
});

describe('the long run on the ladder .98 .95 .90 .80 .65 .50 .30 (C)', () => {
  const LADDER = [0.98, 0.95, 0.9, 0.8, 0.65, 0.5, 0.3];
  it.each([
    ['two in a row', inARow(2), 0.7055],
    ['three in a row', inARow(3), 0.7903],
    ['four in a row', inARow(4), 0.8374],
    ['five in a row', inARow(5), 0.8671],
    ['blocks of five, four up, two down', blocksKOfM(4, 5, { returnAt: 2 }), 0.5902],
    ['blocks of five, five up, two down', blocksKOfM(5, 5, { returnAt: 2 }), 0.6932],
    ['blocks of ten, nine up, six down', blocksKOfM(9, 10, { returnAt: 6 }), 0.7388],
  ])('%s settles at its share kept', (_, machine, kept) => {
    const { kept: share, timeByStep } = longRun(chainOf(machine), LADDER);
    expectPrinted(share, kept, 4);
    expect(timeByStep.reduce((sum, time) => sum + time, 0)).toBeCloseTo(1, 12);
  });

  it('nine of ten does not promise nine in ten: steady settles at .770', () => {
    expectPrinted(longRun(chainNamed('D'), LADDER).kept, 0.7702, 4);
  });

  it('a dog that never lifts ends on top, one that never holds stays at the bottom', () => {
    expect(longRun(chainNamed('D'), [1, 1, 1]).timeByStep).toEqual([0, 0, 1]);
    expect(longRun(chainNamed('D'), [0, 0, 0]).timeByStep).toEqual([1, 0, 0]);
  });

  it('a rule without a way back ends on top, and a step that it never leaves is refused', () => {
    expect(longRun(chainOf(slidingKOfM(4, 5)), [0.9, 0.5]).timeByStep).toEqual([0, 1]);
    expect(() => longRun(chainOf(slidingKOfM(4, 5)), [0.9, 0])).toThrow('never leaves');
    expect(() => longRun(chainNamed('D'), [])).toThrow('at least one step');
  });
});

describe('a sliding window raises far too easily (C)', () => {
  it.each([
    [4, 5, 0.5, 0.891, 0.188],
    [5, 5, 0.5, 0.368, 0.031],
    // FACTS prints .608 here; both reference files and this chain have .60748.
    [9, 10, 0.7, 0.607, 0.149],
    [8, 10, 0.8, 0.992, 0.678],
  ])('%d of %d at p = %d: within 30 trials sliding %d, one block %d', (k, m, p, slides, block) => {
    expectPrinted(within(chainOf(slidingKOfM(k, m)), p, 30).raised[30] as number, slides, 3);
    expectPrinted(within(chainOf(blocksKOfM(k, m)), p, m).raised[m] as number, block, 3);
  });
});

describe('steady as CRITERION prints it (C)', () => {
  it.each([
    [0.6, 0.095, 7.3, 0.145],
    [0.7, 0.291, 9.4, 0.361],
    [0.8, 0.615, 10.6, 0.679],
    [0.9, 0.902, 10.1, 0.928],
    [0.95, 0.976, 9.5, 0.985],
  ])(
    'at p = %d it raises a handling step with chance %d in %d trials on average, a duration step with %d',
    (p, handling, trials, duration) => {
      expectPrinted(visit(chainNamed('D'), p).chanceToRaise, handling, 3);
      expectPrinted(visit(chainNamed('D'), p).meanTrials, trials, 1);
      expectPrinted(visit(chainNamed('F5'), p).chanceToRaise, duration, 3);
    },
  );
});

describe('sequential tests (Wald 1947; designs M, numbers C)', () => {
  it.each([
    { p0: 0.01, p1: 0.1, a: 0.05, b: 0.1, h1: 0.9389, h2: 1.2054, s: 0.0397, wald: [27.957, 16.447], exact: [30.213, 22.369] },
    { p0: 0.1, p1: 0.3, a: 0.02, b: 0.03, h1: 2.5826, h2: 2.8754, s: 0.1862, wald: [28.705, 23.822], exact: [29.902, 26.602] },
    { p0: 0.5, p1: 0.8, a: 0.05, b: 0.05, h1: 2.124, h2: 2.124, s: 0.661, wald: [11.876, 13.749], exact: [13.809, 15.785] },
  ])('$p0 against $p1 has its bounds and its mean trials, approximate and exact', ({ h1, h2, s, wald, exact, ...design }) => {
    const found = bounds(design);
    const decimals = design.p0 === 0.5 ? 3 : 4;
    expectPrinted(found.h1, h1, decimals);
    expectPrinted(found.h2, h2, decimals);
    expectPrinted(found.s, s, decimals);
    expectPrinted(approximateMeans(design).at0, wald[0] as number, 3);
    expectPrinted(approximateMeans(design).at1, wald[1] as number, 3);
    expectPrinted(exactMean(design, design.p0), exact[0] as number, 3);
    expectPrinted(exactMean(design, design.p1), exact[1] as number, 3);
  });
});
