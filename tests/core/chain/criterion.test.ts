/** Every check value of criterion.json, each with its flag. A key that nothing here knows fails. */
import { describe, expect, it } from 'vitest';
import { meanTrialsToAlarm, type StepAge } from '../../../src/core/chain/alarm.ts';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { longRun } from '../../../src/core/chain/ladder.ts';
import { visit, within } from '../../../src/core/chain/visit.ts';
import { halfwayS } from '../../../src/core/plan.ts';
import { kappa } from '../../../src/core/statistics/agreement.ts';
import { fisherTwoSided } from '../../../src/core/statistics/fisher.ts';
import { holdCurve } from '../../../src/core/statistics/hold-time.ts';
import { logRank } from '../../../src/core/statistics/log-rank.ts';
import { chanceAtLeast, chanceNext } from '../../../src/core/statistics/posterior.ts';
import { garwood } from '../../../src/core/statistics/rate.ts';
import { newcombe } from '../../../src/core/statistics/share.ts';
import { kendallTail } from '../../../src/core/statistics/trend.ts';
import { PLACEBO, SIX_MP } from '../statistics/freireich.ts';
import { chainNamed, nineOfTenNoBack, runOf } from './named.ts';
import { type Check, halfDecimal, halfTenthDigit, reference } from './reference.ts';

interface CriterionFile {
  readonly operating_characteristics_P_raise_before_backup_and_mean_reps: Readonly<Record<string, readonly [number, number]>>;
  readonly checks: Readonly<Record<string, Check>>;
}

const file = reference<CriterionFile>('criterion.json');

const LADDER = [0.98, 0.95, 0.9, 0.8, 0.65, 0.5, 0.3];
const nineOfTen = chainOf(nineOfTenNoBack);

/** A way to compute keys of one form: the pattern's groups go in, the value comes out. */
type Way = readonly [RegExp, (...groups: string[]) => number | readonly number[]];

const numbers =
  (compute: (...of: number[]) => number) =>
  (...groups: string[]) =>
    compute(...groups.map(Number));
const visitOf = (letter: string, p: string) => visit(chainNamed(letter), Number(p));
const ageOf = (name: string): StepAge => (name === 'mastered' ? 'passed' : 'new');
const survival = (t: number) => holdCurve(SIX_MP).drops.find(({ atS }) => atS === t)?.survival ?? Number.NaN;
const freireich = logRank(SIX_MP, PLACEBO);
const difference = (end: 'lower' | 'upper') =>
  numbers((a, b, c, d) => newcombe(a as number, b as number, c as number, d as number).interval[end]);

const WAYS: readonly Way[] = [
  [
    /^D_raise_within_(\d+)@p=(.+)$/,
    numbers((n, p) => within(chainNamed('D'), p as number, n as number).raised[n as number] as number),
  ],
  [
    /^nineOfTen_noBackup_raise_within_(\d+)@p=([\d.]+)(?: \(vs existing sliding table\))?$/,
    (n, p) => within(nineOfTen, Number(p), Number(n)).raised[Number(n)] as number,
  ],
  [/^visit_(\w+)_P_raise@p=(.+)$/, (letter, p) => visitOf(letter as string, p as string).chanceToRaise],
  [/^visit_(\w+)_expected_reps@p=(.+)$/, (letter, p) => visitOf(letter as string, p as string).meanTrials],
  [/^visit_U3_closed_P@p=(.+)$/, (p) => visitOf('U3', p as string).chanceToRaise],
  [/^visit_U3_closed_E@p=(.+)$/, (p) => visitOf('U3', p as string).meanTrials],
  [/^expected_reps_8_in_row@p=(.+)$/, numbers((p) => visit(chainOf(runOf(8)), p as number).meanTrials)],
  [/^expected_reps_nineOfTen_noBackup@p=(.+)$/, numbers((p) => visit(nineOfTen, p as number).meanTrials)],
  [/^ladder_fixture_longrun_success_(\w+)$/, (letter) => longRun(chainNamed(letter as string), LADDER).kept],
  [/^ladder_fixture_U3_vs_existing$/, () => longRun(chainNamed('U3'), LADDER).kept],
  [
    /^alarm_(mastered|new_step)_h(\d)_mean_reps@lift=(.+)$/,
    (age, h, lift) => meanTrialsToAlarm(Number(h), ageOf(age as string), Number(lift)),
  ],
  [
    /^flatprior_P\(p>=([\d.]+)\)\|(\d+)good_(\d+)lift$/,
    numbers((x, k, l) => chanceAtLeast(x as number, k as number, (k as number) + (l as number))),
  ],
  [
    /^flatprior_P\(next_ten>=9\)\|(\d+)good_(\d+)lift$/,
    numbers((k, l) => chanceNext(9, 10, k as number, (k as number) + (l as number))),
  ],
  [
    /^fisher_two_sided_\((\d+), (\d+), (\d+), (\d+)\)$/,
    numbers((a, b, c, d) => fisherTwoSided(a as number, b as number, c as number, d as number)),
  ],
  [/^mann_kendall_exact_one_sided_n(\d+)_S>=(\d+)$/, (n, s) => kendallTail(new Array(Number(n)).fill(1), Number(s))],
  [/^newcombe_diff_(\d+)\/(\d+)-(\d+)\/(\d+)_lower$/, difference('lower')],
  [/^newcombe_diff_(\d+)\/(\d+)-(\d+)\/(\d+)_upper$/, difference('upper')],
  [/^KM_6MP_S\((\d+)\)$/, numbers((t) => survival(t as number))],
  [/^logrank_6MP_expected$/, () => freireich?.expected[0] ?? Number.NaN],
  [/^logrank_placebo_expected$/, () => freireich?.expected[1] ?? Number.NaN],
  [/^logrank_6MP_chi2$/, () => freireich?.chiSquare ?? Number.NaN],
  [
    /^kappa_\[\[20,5\],\[10,15\]\]$/,
    () =>
      kappa([
        [20, 5],
        [10, 15],
      ]).kappa ?? Number.NaN,
  ],
  [
    /^pabak_\[\[20,5\],\[10,15\]\]$/,
    () =>
      kappa([
        [20, 5],
        [10, 15],
      ]).pabak,
  ],
  [/^poisson_exact95_count_(\d+)$/, (count) => Object.values(garwood(Number(count)))],
];

/** Keys that carry a table of their own and have a test of their own below. */
const TABLES = ['split_seconds (lo,hi)->t'];

const wayTo = (key: string) => WAYS.filter(([form]) => form.test(key));

describe.skipIf(file === null)('criterion.json', () => {
  const { checks, operating_characteristics_P_raise_before_backup_and_mean_reps: characteristics } = file ?? {
    checks: {},
    operating_characteristics_P_raise_before_backup_and_mean_reps: {},
  };
  const single = Object.entries(checks).filter(([key]) => !TABLES.includes(key));

  it('has exactly one way here to compute each of its keys, and no way is left over', () => {
    for (const [key] of single) expect(wayTo(key), key).toHaveLength(1);
    for (const [form] of WAYS)
      expect(
        single.some(([key]) => form.test(key)),
        String(form),
      ).toBe(true);
  });

  it('every key of criterion.json is visited: 173 checks and 63 operating characteristics', () => {
    expect(single.length + TABLES.filter((key) => key in checks).length).toBe(Object.keys(checks).length);
    expect(Object.keys(checks)).toHaveLength(173);
    expect(Object.keys(characteristics)).toHaveLength(63);
  });

  it.each(single.map(([key, check]) => ({ key, flag: check.flag, check })))('$key holds, flag $flag', ({ key, check }) => {
    const [form, compute] = wayTo(key)[0] as Way;
    const computed = [compute(...(form.exec(key) as RegExpExecArray).slice(1))].flat();
    const printed = [check.value].flat() as number[];
    expect(computed).toHaveLength(printed.length);
    const half = halfPrinted(key);
    for (const [i, value] of printed.entries())
      expect(Math.abs((computed[i] as number) - value)).toBeLessThanOrEqual(half(value));
    expectPublished(check, computed[0] as number, key);
  });

  it.each(Object.entries(characteristics))('operating characteristic %s holds (C)', (key, [chance, trials]) => {
    const [letter, p] = key.split('@') as [string, string];
    const exact = visitOf(letter, p);
    expect(Math.abs(exact.chanceToRaise - chance)).toBeLessThanOrEqual(halfDecimal(6));
    expect(Math.abs(exact.meanTrials - trials)).toBeLessThanOrEqual(halfDecimal(4));
  });

  it('splits hold times as the table of halves says (C, by definition)', () => {
    const halves = Object.entries(checks['split_seconds (lo,hi)->t']?.values ?? {});
    expect(halves).toHaveLength(10);
    for (const [pair, half] of halves) {
      const [easier, harder] = pair.split(',').map(Number) as [number, number];
      expect(halfwayS(easier, harder), pair).toBe(half);
    }
  });
});

/** Half the last digit that an entry of this name prints: ten significant digits, but for two groups that were rounded to decimals. */
function halfPrinted(key: string): (value: number) => number {
  if (key.startsWith('poisson')) return () => halfDecimal(4);
  if (key.startsWith('visit_CV_P')) return () => halfDecimal(10);
  if (key.startsWith('visit_CV_expected')) return () => halfDecimal(8);
  return halfTenthDigit;
}

/** What else an entry prints: a published value of fewer digits, and Greenwood's error. */
function expectPublished(check: Check, computed: number, key: string): void {
  const { second_way: second, published_M: published, greenwood_se: error } = check;
  const digits = (value: number) => (String(value).split('.')[1] ?? '').length;
  if (typeof second === 'number' && second !== check.value)
    expect(Math.abs(computed - second)).toBeLessThanOrEqual(halfDecimal(Math.max(2, digits(second))));
  if (published !== undefined) expect(Math.abs(computed - published)).toBeLessThanOrEqual(halfDecimal(3));
  if (error !== undefined) {
    const at = Number(/\((\d+)\)/.exec(key)?.[1]);
    const drop = holdCurve(SIX_MP).drops.find(({ atS }) => atS === at);
    expect(Math.abs((drop?.standardError ?? Number.NaN) - error)).toBeLessThanOrEqual(halfDecimal(4));
  }
}
