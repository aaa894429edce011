/** Computes what the rule's chart draws: the exact chance to raise before going back, over every true success. */
import { chainOf } from '../../core/chain/automaton.ts';
import { visit } from '../../core/chain/visit.ts';
import type { Step } from '../../core/plan.ts';
import { machineOf, ruleKey, type SessionRule } from '../../core/rule.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../../core/statistics/interval.ts';
import { wilson } from '../../core/statistics/share.ts';
import type { Share } from '../../core/units.ts';

export interface CurvePoint {
  readonly p: Share;
  readonly chance: Share;
}

/** Below this true success a raise is too early (CRITERION.md). */
export const TOO_EARLY: Share = 0.8;
/** The chart begins here: below even odds nobody practises. */
export const LEAST: Share = 0.5;
/** Exact points; the line between them is smooth. */
const POINTS = 25;
/** Rows of the table. */
const ROWS: readonly Share[] = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

export interface RuleRow {
  readonly p: Share;
  readonly holding: Share;
  readonly handling: Share;
  /** Mean trials of a visit to a handling step. */
  readonly trials: number;
}

export interface RuleCurves {
  readonly handling: readonly CurvePoint[];
  /** null where holding still is judged like handling. */
  readonly holding: readonly CurvePoint[] | null;
  readonly rows: readonly RuleRow[];
}

const drawn = new Map<string, RuleCurves>();

/** Computed once a rule: a chain is exact, so it never changes. */
export function curvesOf(rule: SessionRule): RuleCurves {
  const known = drawn.get(ruleKey(rule)) ?? compute(rule);
  drawn.set(ruleKey(rule), known);
  return known;
}

function compute(rule: SessionRule): RuleCurves {
  const alike = machineOf(rule, 'duration') === machineOf(rule, 'handling') || rule.kind === 'k-of-m';
  const chains = { duration: chainOf(machineOf(rule, 'duration')), handling: chainOf(machineOf(rule, 'handling')) };
  const curve = (kind: Step['kind']) =>
    Array.from({ length: POINTS + 1 }, (_, i) => {
      const p = LEAST + ((1 - LEAST) * i) / POINTS;
      return { p, chance: visit(chains[kind], p).chanceToRaise };
    });
  const rows = ROWS.map((p) => {
    const { chanceToRaise: handling, meanTrials: trials } = visit(chains.handling, p);
    return { p, holding: visit(chains.duration, p).chanceToRaise, handling, trials };
  });
  return { handling: curve('handling'), holding: alike ? null : curve('duration'), rows };
}

/** Trials counted on the step that comes next. */
export interface OwnTrials {
  readonly kept: number;
  readonly of: number;
}

/** The dog's own interval; null below five trials, where only counts are shown (CRITERION.md). */
export function ownInterval({ kept, of }: OwnTrials): Interval | null {
  return of >= FEWEST_FOR_INTERVAL ? wilson(kept, of) : null;
}

/** Whole visits of a hundred. */
const ofHundred = (chance: Share): number => Math.round(100 * chance);

/** A chance as the words of the screen: "29 of 100". */
export const sayChance = (chance: Share): string => `${ofHundred(chance)} of 100`;

/** At 7 of 10 this share of raises is too many to be patient. */
const TOO_MANY: Share = 0.5;

/** One sentence of finding: what the curve shows, and whether that is too fast. */
export function sayFinding(rule: SessionRule, { rows }: RuleCurves): string {
  const at = (p: Share) => rows.find((row) => row.p === p)?.handling ?? 0;
  const what = `A dog that truly keeps 7 of 10 is raised in ${sayChance(at(0.7))} visits before it goes back; one that keeps 9 of 10 in ${sayChance(at(0.9))}.`;
  if (at(0.7) >= TOO_MANY) return `Too fast: ${what.replace('A dog', 'a dog')}`;
  return rule.kind === 'steady' ? `Patient: ${what.replace('A dog', 'a dog')}` : what;
}

/** What is known of the dog on this step, with its n. */
export function sayOwn(own: OwnTrials): string {
  const counts = `${own.kept} of ${own.of} kept on the step that comes next`;
  const interval = ownInterval(own);
  if (!interval) return own.of === 0 ? 'No trial is counted on the step that comes next.' : `${counts}: too few to say more.`;
  return `${counts}: in the long run that can mean anything from ${ofTen(interval.lower)} to ${ofTen(interval.upper)} of 10.`;
}

const ofTen = (share: Share): string => (10 * share).toFixed(1);
