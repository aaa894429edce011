/**
 * Plans the time to an examination at the dog's own pace, and says when it will not be ready. It never asks for more than the dog has
 * shown: what is missing is missing, and is for the veterinarian to know.
 */
import { criterionS, type Plan } from '../plan.ts';
import type { Day } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { countAhead } from '../statistics/count-ahead.ts';
import type { Interval } from '../statistics/interval.ts';
import type { ExamItem } from './exam.ts';
import { type Pace, stepsUpTo } from './pace.ts';
import type { Readiness } from './readiness.ts';

/** The last days bring nothing new, days (common practice, no source). */
export const EASY_DAYS = 2;
/** Before them what is reached is tried in other places, days (common practice, no source). */
export const ELSEWHERE_DAYS = 7;
/** One a day beat three in a row, and one or two a week beat daily (R: Demant et al. 2011; Meyer & Ladewig 2008): never more than this. */
export const MOST_A_WEEK = 7;

export interface Judged {
  readonly item: ExamItem;
  readonly readiness: Readiness;
}

/** One stretch of the way there; later ones ask for less that is new. */
export interface Stretch {
  readonly kind: 'raise' | 'elsewhere' | 'easy';
  readonly fromDay: Day;
  /** Belongs to it. */
  readonly toDay: Day;
  readonly sessions: number;
  /** Whole steps reached by its end, counted from today; null: the pace is not known. */
  readonly steps: Interval | null;
}

export type Verdict =
  /** Everything is ready. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'past' }
  /** Nothing is on the list. */
  | { readonly kind: 'empty' }
  /** Too few sessions to know its pace. */
  | { readonly kind: 'pace-unknown'; readonly missing: number }
  /** All steps are reached; what is lacking is keeping them: lately, elsewhere, three sessions running. */
  | { readonly kind: 'reached' }
  | { readonly kind: 'likely' | 'perhaps' | 'not-ready'; readonly missing: number; readonly steps: Interval };

export type Ask = 'shorter-list' | 'two-visits' | 'another-way' | 'sedation' | 'pain' | 'visit-first';

export interface Rehearsal {
  readonly daysLeft: number;
  readonly verdict: Verdict;
  readonly stretches: readonly Stretch[];
  /** On no plan of this dog: how many steps they need is not known. */
  readonly unplanned: readonly ExamItem[];
  /** What to ask the practice for, the first thing first. */
  readonly asks: readonly Ask[];
}

export interface RehearsalInput {
  readonly judged: readonly Judged[];
  readonly plans: readonly Plan[];
  /** Of this dog's practice. */
  readonly digests: readonly SessionDigest[];
  readonly pace: Pace;
  readonly today: Day;
  readonly examDay: Day;
  /** Of the place of the examination; '' when it is not said. */
  readonly place: string;
}

export function rehearse(input: RehearsalInput): Rehearsal {
  const { judged, pace, today, examDay } = input;
  const daysLeft = examDay - today;
  const stretches = stretchesTo(daysLeft, today, pace);
  const verdict = verdictOf(input, daysLeft);
  const unplanned = judged.filter(({ readiness }) => readiness.kind === 'never' && !readiness.at).map(({ item }) => item);
  return { daysLeft, verdict, stretches, unplanned, asks: asksFor(input, verdict, unplanned.length) };
}

/** Raising first, then other places, then nothing new. What is too short for a part goes without it. */
function stretchesTo(daysLeft: number, today: Day, pace: Pace): readonly Stretch[] {
  if (daysLeft <= 0) return [];
  const easyFrom = Math.max(today, today + daysLeft - EASY_DAYS);
  const elsewhereFrom = today + raiseDays(daysLeft);
  const raise = weeksBetween(today, elsewhereFrom).map(([from, to]) => ['raise', from, to] as const);
  const parts = [...raise, ['elsewhere', elsewhereFrom, easyFrom], ['easy', easyFrom, today + daysLeft]] as const;
  return parts
    .filter(([, from, to]) => to > from)
    .map(([kind, from, to]) => ({
      ...{ kind, fromDay: from, toDay: to - 1, sessions: sessionsIn(to - today, pace) - sessionsIn(from - today, pace) },
      // What is new comes while raising alone.
      steps: stepsWithin(Math.min(to, elsewhereFrom) - today, pace),
    }));
}

/** Days in which something new is asked for. */
function raiseDays(daysLeft: number): number {
  const days = Math.max(0, daysLeft - EASY_DAYS);
  return daysLeft >= 2 * ELSEWHERE_DAYS ? days - ELSEWHERE_DAYS : days;
}

/** Whole weeks from today, the last as long as it is. */
function weeksBetween(from: Day, to: Day): readonly (readonly [Day, Day])[] {
  const weeks = Math.ceil(Math.max(0, to - from) / 7);
  return Array.from({ length: weeks }, (_, n) => [from + 7 * n, Math.min(to, from + 7 * (n + 1))]);
}

function sessionsIn(days: number, pace: Pace): number {
  return pace.kind === 'known' ? Math.floor((Math.min(pace.sessionsAWeek, MOST_A_WEEK) * days) / 7) : 0;
}

function stepsWithin(days: number, pace: Pace): Interval | null {
  return pace.kind === 'known' ? countAhead(pace.steps, pace.sessions, sessionsIn(days, pace)) : null;
}

function verdictOf(input: RehearsalInput, daysLeft: number): Verdict {
  const { judged } = input;
  if (daysLeft < 0) return { kind: 'past' };
  if (judged.length === 0) return { kind: 'empty' };
  if (judged.every(({ readiness }) => readiness.kind === 'ready')) return { kind: 'ready' };
  const missing = missingSteps(input);
  const days = raiseDays(daysLeft);
  // Without a day to raise in, no pace helps.
  const steps = days > 0 ? stepsWithin(days, input.pace) : { lower: 0, upper: 0 };
  if (missing === 0 && judged.every(({ readiness }) => readiness.kind !== 'never')) return { kind: 'reached' };
  if (!steps) return { kind: 'pace-unknown', missing };
  const isPlanned = judged.every(({ readiness }) => readiness.kind !== 'never' || readiness.at);
  if (isPlanned && missing <= steps.lower) return { kind: 'likely', missing, steps };
  return { kind: missing > steps.upper ? 'not-ready' : 'perhaps', missing, steps };
}

/** Whole steps still to be reached: on each ladder up to the highest that is asked for, and a step for each second that no ladder has. */
export function missingSteps({ judged, digests }: Pick<RehearsalInput, 'judged' | 'digests'>): number {
  const byPlan = new Map<string, number>();
  const seconds = new Map<string, number>();
  for (const { item, readiness } of judged) {
    const { at } = readiness;
    if (!at) continue;
    byPlan.set(at.plan.id, Math.max(byPlan.get(at.plan.id) ?? 0, stepsUpTo(at.plan, at.step.id, digests)));
    // A second a step (common practice, no source).
    const key = `${at.plan.id}\n${at.step.id}`;
    seconds.set(key, Math.max(seconds.get(key) ?? 0, Math.ceil(item.forS - criterionS(at.step))));
  }
  return [...byPlan.values(), ...seconds.values()].reduce((sum, steps) => sum + steps, 0);
}

function asksFor({ judged, digests, place }: RehearsalInput, verdict: Verdict, unplanned: number): readonly Ask[] {
  if (verdict.kind === 'empty' || verdict.kind === 'past') return [];
  const visit: readonly Ask[] = place !== '' && !digests.some((digest) => digest.place === place) ? ['visit-first'] : [];
  if (verdict.kind === 'ready') return visit;
  const isFar = verdict.kind !== 'likely' && verdict.kind !== 'reached';
  const isShort = isFar || unplanned > 0 || judged.some(({ readiness }) => readiness.kind === 'begun');
  const some = judged.some(({ readiness }) => readiness.kind === 'ready');
  if (!isShort) return [...visit, 'pain'];
  return ['shorter-list', ...(some ? (['two-visits'] as const) : []), 'another-way', 'sedation', 'pain', ...visit];
}
