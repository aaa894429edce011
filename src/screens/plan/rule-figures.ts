/** Computes what is shown of a rule, exactly and over every true success: how soon it raises, how soon it goes back, where it settles. */
import { type Chain, chainOf } from '../../core/chain/automaton.ts';
import { type Followed, follow } from '../../core/chain/follow.ts';
import { settle } from '../../core/chain/ladder.ts';
import type { Step } from '../../core/plan.ts';
import { machineOf, ruleKey, type SessionRule } from '../../core/rule.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../../core/statistics/interval.ts';
import { wilson } from '../../core/statistics/share.ts';
import type { Share } from '../../core/units.ts';

/** Within how many trials a raise is asked for; `all`: before it goes back, however long that takes. */
export const SPANS = ['all', '10', '20'] as const;
export type Span = (typeof SPANS)[number];

/** Chance that a visit has raised, by span. */
export type Raised = Readonly<Record<Span, Share>>;

export interface CurvePoint {
  readonly p: Share;
  readonly raised: Raised;
}

/** A row of the table. Means are in trials. */
export interface RuleRow extends CurvePoint {
  /** Of the visits that raise. */
  readonly trialsToRaise: number | null;
  /** Of the visits that go back. */
  readonly trialsToReturn: number | null;
}

/** How a rule judges one kind of step. */
export interface KindFigures {
  readonly curve: readonly CurvePoint[];
  readonly rows: readonly RuleRow[];
}

export interface RuleFigures {
  readonly handling: KindFigures;
  /** null where holding still is judged like handling. */
  readonly holding: KindFigures | null;
  /** Share kept in the long run on the ladder without learning. */
  readonly keptInLongRun: Share;
  /** [step of that ladder]: share of all trials spent there. */
  readonly timeByStep: readonly Share[];
}

/** Below this true success a raise is too early (CRITERION.md). */
export const TOO_EARLY: Share = 0.8;
/** The chart begins here: below even odds nobody practises. */
export const LEAST: Share = 0.5;
/** Exact points; the line between them is smooth. */
const POINTS = 20;
/** Rows of the table. */
const ROWS: readonly Share[] = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95];
/** The ladder without learning: true success of its seven steps, easiest first (the fixture of the check values, C). */
export const LADDER: readonly Share[] = [0.98, 0.95, 0.9, 0.8, 0.65, 0.5, 0.3];

const known = new Map<string, RuleFigures>();

/** Computed once a rule: a chain is exact, so it never changes. */
export function figuresOf(rule: SessionRule): RuleFigures {
  const figures = known.get(ruleKey(rule)) ?? computeFigures(rule, shared);
  known.set(ruleKey(rule), figures);
  return figures;
}

/** What was computed for one figure and is asked for again by another. */
interface Memory {
  readonly chains: Map<string, Chain>;
  /** By rule and p: curve, rows and ladder ask for the same few shares. */
  readonly visits: Map<string, Followed>;
}

const freshMemory = (): Memory => ({ chains: new Map(), visits: new Map() });
const shared = freshMemory();

/** Everything of one rule. The benchmark begins with nothing remembered. */
export function computeFigures(rule: SessionRule, memory: Memory = freshMemory()): RuleFigures {
  const alike = machineOf(rule, 'duration') === machineOf(rule, 'handling') || rule.kind === 'k-of-m';
  const chain = chainFor(rule, 'handling', memory);
  const { kept: keptInLongRun, timeByStep } = settle(
    LADDER.map((p) => visitAt(chain, p, memory)),
    LADDER,
  );
  const holding = alike ? null : figuresOfKind(chainFor(rule, 'duration', memory), memory);
  return { handling: figuresOfKind(chain, memory), holding, keptInLongRun, timeByStep };
}

function chainFor(rule: SessionRule, kind: Step['kind'], { chains }: Memory): Chain {
  const machine = machineOf(rule, kind);
  const chain = chains.get(machine.name) ?? chainOf(machine);
  chains.set(machine.name, chain);
  return chain;
}

function figuresOfKind(chain: Chain, memory: Memory): KindFigures {
  const curve = Array.from({ length: POINTS + 1 }, (_, i) => {
    const p = LEAST + ((1 - LEAST) * i) / POINTS;
    return { p, raised: raisedAt(visitAt(chain, p, memory)) };
  });
  const rows = ROWS.map((p) => {
    const at = visitAt(chain, p, memory);
    return { p, raised: raisedAt(at), trialsToRaise: at.meanTrialsIfRaised, trialsToReturn: at.meanTrialsIfReturned };
  });
  return { curve, rows };
}

function raisedAt({ chanceToRaise: all, raisedWithin }: Followed): Raised {
  return { all, '10': raisedWithin[10] as number, '20': raisedWithin[20] as number };
}

function visitAt(chain: Chain, p: Share, { visits }: Memory): Followed {
  const key = `${chain.name} ${p.toFixed(3)}`;
  const visit = visits.get(key) ?? follow(chain, p, 20);
  visits.set(key, visit);
  return visit;
}

/** For the table that sets rules side by side: chance to raise a handling step at 7 and at 9 of 10. */
export function speedOf(rule: SessionRule): { readonly at7: Share; readonly at9: Share } {
  const chain = chainFor(rule, 'handling', shared);
  return { at7: visitAt(chain, 0.7, shared).chanceToRaise, at9: visitAt(chain, 0.9, shared).chanceToRaise };
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
