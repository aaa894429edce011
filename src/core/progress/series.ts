/** Lines sessions up: kept of trials with its interval and its rate, and what was different from the session before. */
import { nameRule } from '../rule.ts';
import { FEWEST_FOR_INTERVAL, type Interval } from '../statistics/interval.ts';
import { type Rate, ratePerMinute } from '../statistics/rate.ts';
import { wilson } from '../statistics/share.ts';
import { FEWEST_FOR_TREND, mannKendall, theilSen } from '../statistics/trend.ts';
import type { IsoTime, Seconds } from '../units.ts';
import { trialsOf } from './choice.ts';
import type { Day } from './day.ts';
import type { SessionDigest, StepDigest } from './digest.ts';

/** A gap from which on points are not joined, days (common practice, no source). */
export const GAP_DAYS = 14;

/** Under what a point was measured. */
const CONDITIONS = ['plan', 'step', 'rule', 'place', 'handler'] as const;
export type Condition = (typeof CONDITIONS)[number];

/** Why a point is not joined to the one before. */
export type Change = { readonly kind: 'gap'; readonly days: number } | { readonly kind: Condition; readonly to: string };

export interface Point {
  /** The session's. */
  readonly id: string;
  /** 1 for the first. */
  readonly n: number;
  readonly day: Day;
  readonly startedAt: IsoTime;
  readonly kept: number;
  readonly of: number;
  /** The step is the one with most trials; of two the later. */
  readonly under: Readonly<Record<Condition, string>>;
  /** The same by id: a plan or a step that was given another name is still the same. */
  readonly underId: Readonly<Record<Condition, string>>;
  /** Wilson's, 95 %; null below five trials. */
  readonly interval: Interval | null;
  /** Trials kept and lifted a minute; null when no time was counted. */
  readonly perMinute: { readonly kept: number; readonly lifted: number } | null;
  readonly spanS: Seconds;
  /** Empty: the point is joined to the one before. */
  readonly changes: readonly Change[];
}

/** Oldest first. A session without a trial has no share, and no point. */
export function seriesOf(chosen: readonly SessionDigest[]): readonly Point[] {
  const points: Point[] = [];
  for (const digest of chosen) {
    const { kept, of } = trialsOf(digest);
    if (of === 0) continue;
    const before = points.at(-1);
    const under = conditionsOf(digest);
    const underId = { ...under, plan: digest.planId, step: mainStep(digest.steps)?.stepId ?? '' };
    points.push({
      ...{ id: digest.id, n: points.length + 1, day: digest.day, startedAt: digest.startedAt, kept, of, under, underId },
      interval: of < FEWEST_FOR_INTERVAL ? null : wilson(kept, of),
      ...rateOf(digest, kept, of - kept),
      changes: before ? changesBetween(before, { day: digest.day, under, underId }) : [],
    });
  }
  return points;
}

function rateOf({ steps }: SessionDigest, kept: number, lifted: number): Pick<Point, 'perMinute' | 'spanS'> {
  const spanS = steps.reduce((sum, step) => sum + step.spanS, 0);
  const perMinute = spanS > 0 ? { kept: (60 * kept) / spanS, lifted: (60 * lifted) / spanS } : null;
  return { perMinute, spanS };
}

function conditionsOf({ steps, planTitle, rule, place, handler }: SessionDigest): Point['under'] {
  return { plan: planTitle, step: mainStep(steps)?.title ?? '', rule: nameRule(rule), place, handler };
}

const trialsOn = ({ kept, lifted }: StepDigest): number => kept + lifted;

function mainStep(steps: readonly StepDigest[]): StepDigest | undefined {
  return steps.reduce<StepDigest | undefined>(
    (most, step) => (!most || trialsOn(step) >= trialsOn(most) ? step : most),
    undefined,
  );
}

function changesBetween(before: Point, now: Pick<Point, 'day' | 'under' | 'underId'>): readonly Change[] {
  const days = now.day - before.day;
  const changed = CONDITIONS.filter((kind) => before.underId[kind] !== now.underId[kind]);
  const named = changed.map((kind) => ({ kind, to: now.under[kind] }));
  return days >= GAP_DAYS ? [{ kind: 'gap', days }, ...named] : named;
}

/** Points that may be joined: never across a change or a gap. [stretch][point] */
export function stretchesOf(points: readonly Point[]): readonly (readonly Point[])[] {
  const stretches: Point[][] = [];
  for (const point of points) {
    const last = stretches.at(-1);
    if (last && point.changes.length === 0) last.push(point);
    else stretches.push([point]);
  }
  return stretches;
}

export type SeriesTrend =
  | { readonly kind: 'too-few'; readonly n: number; readonly need: number }
  /** `slopePer100`: of 100 trials so many more are kept from session to session. `chance`: two-sided, exact. */
  | { readonly kind: 'tested'; readonly n: number; readonly slopePer100: number; readonly chance: number };

/** The exact test's work grows fast with n, and what was longer ago is no trend of today, sessions. */
const MOST_TESTED = 60;

/** Within the latest stretch only: across a change it would tell of the change. */
export function trendOf(points: readonly Point[]): SeriesTrend {
  const latest = (stretchesOf(points).at(-1) ?? []).slice(-MOST_TESTED);
  const n = latest.length;
  const tested = mannKendall(latest.map(({ kept, of }) => kept / of));
  if (tested.kind === 'too-few') return { kind: 'too-few', n, need: FEWEST_FOR_TREND };
  const slope = theilSen(latest.map(({ kept, of, n: x }) => ({ x, y: kept / of }))) ?? 0;
  return { kind: 'tested', n, slopePer100: 100 * slope, chance: tested.pTwoSided };
}

/** All sessions together. */
export function pooledRate(points: readonly Point[]): { readonly kept: Rate; readonly lifted: Rate } | null {
  const timed = points.filter(({ spanS }) => spanS > 0);
  const spanS = timed.reduce((sum, point) => sum + point.spanS, 0);
  if (spanS === 0) return null;
  const kept = timed.reduce((sum, point) => sum + point.kept, 0);
  const lifted = timed.reduce((sum, point) => sum + point.of - point.kept, 0);
  return { kept: ratePerMinute(kept, spanS), lifted: ratePerMinute(lifted, spanS) };
}

export function pooled(points: readonly Point[]): { readonly kept: number; readonly of: number } {
  return points.reduce((sum, { kept, of }) => ({ kept: sum.kept + kept, of: sum.of + of }), { kept: 0, of: 0 });
}
