/** Every number of values.json and window_rules.json, computed here and compared to half the last printed digit. */
import { describe, expect, it } from 'vitest';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { longRun } from '../../../src/core/chain/ladder.ts';
import { blocksKOfM, inARow, slidingKOfM } from '../../../src/core/chain/rules.ts';
import { visit, within } from '../../../src/core/chain/visit.ts';
import {
  exactCount,
  intervalByInterval,
  kappa,
  type LabelTable,
  meanCountPerInterval,
  totalCount,
} from '../../../src/core/statistics/agreement.ts';
import { betaQuantile } from '../../../src/core/statistics/beta.ts';
import type { Interval } from '../../../src/core/statistics/interval.ts';
import { clopperPearson, wilson } from '../../../src/core/statistics/share.ts';
import { restingEnergyKcal } from '../../../src/core/statistics/treats.ts';
import { runOf } from './named.ts';
import { halfDecimal, reference } from './reference.ts';
import { meanRunLength, type RunRule } from './run-rules.ts';
import { approximateMeans, bounds, type Design, exactMean } from './wald.ts';

type Tree = { readonly [key: string]: number | string | readonly number[] | Tree };

/** One printed number and what we compute for it. */
interface Line {
  readonly name: string;
  readonly printed: number;
  readonly computed: number;
  readonly decimals: number;
}

const line = (name: string, printed: unknown, computed: number, decimals: number): Line => ({
  name,
  printed: printed as number,
  computed,
  decimals,
});

/** Entries of a group that are no flag, formula or rule in words. */
const entries = (group: Tree) => Object.entries(group).filter(([, value]) => typeof value !== 'string');

function runs(group: Tree): Line[] {
  return entries(group).flatMap(([name, value]) => {
    const n = Number(name.slice(2));
    const counts = (Array.isArray(value) ? value : (value as Tree).v) as number[];
    return counts.map((count, i) =>
      line(`${name} r=${i + 1}`, count, (within(chainOf(runOf(i + 1)), 0.5, n).raised[n] as number) * 2 ** n, 6),
    );
  });
}

function waits(group: Tree): Line[] {
  return entries(group).map(([name, wait]) => {
    const [, p, k] = /^p([\d.]+)k(\d+)$/.exec(name) as unknown as [string, string, string];
    return line(name, wait, visit(chainOf(runOf(Number(k))), Number(p)).meanTrials, 5);
  });
}

function charts(group: Tree): Line[] {
  const rules: Readonly<Record<string, RunRule>> = { '2of3': '2of3', '4of5': '4of5', '8run': '8run', '8': '8run' };
  return entries(group).map(([name, points]) => {
    const parts =
      name === 'all'
        ? (['2of3', '4of5', '8run'] as const)
        : name
            .split('+')
            .slice(1)
            .map((part) => rules[part] as RunRule);
    return line(name, points, meanRunLength(parts), 2);
  });
}

function staircases(group: Tree): Line[] {
  const ratios = group.ratio_Dminus_over_Dplus as Tree;
  const even = group.p as Tree;
  return Object.keys(ratios).flatMap((n) => {
    const p = (1 / (1 + (ratios[n] as number))) ** (1 / Number(n));
    const { chanceToRaise, chanceToReturn } = visit(chainOf(inARow(Number(n))), p);
    return [line(`p ${n}`, even[n], p, 4), line(`ratio ${n}`, ratios[n], chanceToReturn / chanceToRaise, 4)];
  });
}

function ladder(group: Tree): Line[] {
  const steps = group.p_by_level as number[];
  const kept = (machine: ReturnType<typeof inARow>) => longRun(chainOf(machine), steps).kept;
  return [
    ...entries(group.long_run_success as Tree).map(([r, share]) => line(r, share, kept(inARow(Number(r.slice(1)))), 4)),
    line('4 of 5', group['blocks_of_5_raise>=4_lower<=2'], kept(blocksKOfM(4, 5, { returnAt: 2 })), 4),
    line('5 of 5', group['blocks_of_5_raise5_lower<=2'], kept(blocksKOfM(5, 5, { returnAt: 2 })), 4),
    line('9 of 10', group['blocks_of_10_raise>=9_lower<=6'], kept(blocksKOfM(9, 10, { returnAt: 6 })), 4),
  ];
}

const intervals = (of: (k: number, n: number) => Interval) => (group: Tree) =>
  entries(group).flatMap(([name, ends]) => {
    const { lower, upper } = of(...(name.split('/').map(Number) as [number, number]));
    const [low, high] = ends as readonly number[];
    return [line(`${name} lower`, low, lower, 4), line(`${name} upper`, high, upper, 4)];
  });

/** Beta(k + 1/2, n - k + 1/2); used for checking the beta quantile, not offered by the app. */
const jeffreys = (k: number, n: number): Interval => ({
  lower: betaQuantile(0.025, k + 0.5, n - k + 0.5),
  upper: betaQuantile(0.975, k + 0.5, n - k + 0.5),
});

function sequentialTests(group: Tree): Line[] {
  return entries(group).flatMap(([name, value]) => {
    const printed = value as Tree;
    const design = designOf(name);
    const { h1, h2, s } = bounds(design);
    const { at0, at1 } = approximateMeans(design);
    const decimals = design.p0 === 0.5 ? 3 : 4;
    return [
      line(`${name} h1`, printed.h1, h1, decimals),
      line(`${name} h2`, printed.h2, h2, decimals),
      line(`${name} s`, printed.s, s, decimals),
      line(`${name} ASN0 Wald`, printed.ASN0_wald, at0, 3),
      line(`${name} ASN1 Wald`, printed.ASN1_wald, at1, 3),
      line(`${name} ASN0`, printed.ASN0_exact, exactMean(design, design.p0), 3),
      line(`${name} ASN1`, printed.ASN1_exact, exactMean(design, design.p1), 3),
    ];
  });
}

/** Reads `p0=.5,p1=.8,a=b=.05`. */
function designOf(name: string): Design {
  const at = (letter: string) => Number(new RegExp(`${letter}=(?:b=)?([\\d.]+)`).exec(name)?.[1]);
  return { p0: at('p0'), p1: at('p1'), a: at('a'), b: at('b') };
}

function observers(group: Tree): Line[] {
  const [a, b] = [group.obs1 as number[], group.obs2 as number[]];
  return [
    line('total count', group.total_count, totalCount(a, b), 4),
    line('mean count per interval', group.mean_count_per_interval, meanCountPerInterval(a, b), 4),
    line('exact count', group.exact_count, exactCount(a, b), 4),
    line('interval by interval', group.interval_by_interval, intervalByInterval(a, b), 4),
  ];
}

function labels(group: Tree): Line[] {
  const found = kappa(group.table as unknown as LabelTable);
  return [
    line('po', group.po, found.observed, 4),
    line('pe', group.pe, found.byChance, 4),
    line('kappa', group.kappa, found.kappa ?? Number.NaN, 4),
  ];
}

const energies = (group: Tree) => entries(group).map(([kg, kcal]) => line(`${kg} kg`, kcal, restingEnergyKcal(Number(kg)), 0));

/** Printed with all digits of a double; sums of many products agree to about 1e-14, so twelve decimals are asked. */
function windows(group: Tree): Line[] {
  const named = (name: string) => /^(\d+)\/(\d+)@([\d.]+)$/.exec(name)?.slice(1).map(Number) as [number, number, number];
  const slide = entries(group.kofm_sliding_P_by_n as Tree).flatMap(([name, byN]) => {
    const [k, m, p] = named(name);
    const { raised } = within(chainOf(slidingKOfM(k, m)), p, 30);
    return entries(byN as Tree).map(([n, chance]) => line(`${name} within ${n}`, chance, raised[Number(n)] as number, 12));
  });
  const blocks = entries(group.fixed_block_P as Tree).map(([name, chance]) => {
    const [k, m, p] = named(name);
    return line(`${name} block`, chance, within(chainOf(blocksKOfM(k, m)), p, m).raised[m] as number, 12);
  });
  return [...slide, ...blocks];
}

/** [group of values.json]: how its numbers are computed. */
const GROUPS: Readonly<Record<string, (group: Tree) => Line[]>> = {
  'runs_fair_coin_counts_2^n*R(r,n)': runs,
  mean_wait_k_consecutive: waits,
  champ_woodall_ARL0: charts,
  garcia_perez_1998: staircases,
  ladder_fixture: ladder,
  wilson95: intervals(wilson),
  clopper_pearson95: intervals(clopperPearson),
  jeffreys95: intervals(jeffreys),
  small_n_wilson95: intervals(wilson),
  sprt: sequentialTests,
  ioa_reed_azulay_fig1: observers,
  kappa: labels,
  RER_kcal: energies,
  kofm: windows,
};

/** Numbers that are given and not to be found: a ladder, two observers' counts, a table. */
const GIVEN: Readonly<Record<string, number>> = { ladder_fixture: 7, ioa_reed_azulay_fig1: 30, kappa: 4 };

function countNumbers(value: unknown): number {
  if (typeof value === 'number') return 1;
  if (typeof value !== 'object' || value === null) return 0;
  return Object.values(value).reduce((sum: number, part) => sum + countNumbers(part), 0);
}

const values = reference<Tree>('values.json');
const windowRules = reference<Tree>('window_rules.json');

function expectAll(lines: readonly Line[]): void {
  for (const { name, printed, computed, decimals } of lines)
    expect(Math.abs(computed - printed), `${name}: ${computed} against ${printed}`).toBeLessThanOrEqual(halfDecimal(decimals));
}

describe.skipIf(values === null)('values.json', () => {
  const groups = Object.entries(values ?? {}).filter(([name]) => name !== '_note') as [string, Tree][];

  it('has a way here to compute each of its groups, and no way is left over', () => {
    expect(Object.keys(GROUPS).sort()).toEqual(groups.map(([name]) => name).sort());
  });

  it.each(groups.map(([name, group]) => ({ name, group, flag: group.flag ?? 'C' })))(
    '$name holds, every number of it, flag $flag',
    ({ name, group }) => {
      const lines = GROUPS[name]?.(group) ?? [];
      expect(lines.length + (GIVEN[name] ?? 0)).toBe(countNumbers(group));
      expectAll(lines);
    },
  );
});

describe.skipIf(windowRules === null)('window_rules.json', () => {
  it('holds, every number of it, flag C', () => {
    const lines = windows(windowRules ?? {});
    expect(lines).toHaveLength(countNumbers(windowRules));
    expectAll(lines);
  });
});
