/**
 * Says why a dog needs the trainer: from the digests of its latest sessions and what was asked of its owner. Every reason carries its counts.
 * The bounds are common practice without a published source, unless a line names one. None of it is a finding: it is where to look first.
 */

import type { BodyArea } from '../plan.ts';
import { trialsOf } from '../progress/choice.ts';
import type { Day } from '../progress/day.ts';
import type { SessionDigest, StepDigest } from '../progress/digest.ts';
import { GAP_DAYS } from '../progress/series.ts';
import { FEWEST_FOR_INTERVAL } from '../statistics/interval.ts';
import { newcombe } from '../statistics/share.ts';

export type Need =
  /** So many of the latest sessions named the veterinarian for this place. */
  | { readonly kind: 'veterinarian'; readonly area: BodyArea; readonly sessions: number; readonly of: number }
  | { readonly kind: 'lifts-rising'; readonly now: Lifts; readonly before: Lifts }
  /** In so many sessions running no step was harder than in the first of them; on the step practised most, so many kept. */
  | { readonly kind: 'stuck'; readonly title: string; readonly sessions: number; readonly kept: number; readonly of: number }
  | { readonly kind: 'too-many-reps'; readonly sessions: number; readonly of: number; readonly most: number }
  | { readonly kind: 'too-many-a-day'; readonly most: number; readonly days: number }
  /** `asked` null: no homework says how many. */
  | { readonly kind: 'too-many-a-week'; readonly sessions: number; readonly asked: number | null }
  /** `days` since the latest session that came back, or since the homework was given. */
  | { readonly kind: 'not-practised'; readonly days: number; readonly asked: number | null; readonly hasBegun: boolean };

export interface Lifts {
  readonly lifted: number;
  readonly of: number;
  readonly sessions: number;
}

/** What is known of one dog on the desk. */
export interface Practice {
  /** The latest sessions, oldest first; `LATEST` of them are enough. */
  readonly sessions: readonly SessionDigest[];
  /** Ids of the steps of each plan, easiest first. */
  readonly ladders: ReadonlyMap<string, readonly string[]>;
  /** The latest homework: how many sessions a week it asks for, and since when. */
  readonly asked: { readonly aWeek: number; readonly since: Day } | null;
}

/** No need looks further back than so many sessions of a dog. */
export const LATEST = 16;
/** What lies longer back is not what a dog needs now, days: six weeks, so that five sessions once a week lie within. */
const RECENT_DAYS = 42;
const WEEK_DAYS = 7;

export function needsOf(practice: Practice, today: Day): readonly Need[] {
  const recent = practice.sessions.filter(({ day }) => today - day <= RECENT_DAYS);
  const found = [
    veterinarian(recent),
    ...plansIn(recent).flatMap((sessions) => [liftsRising(sessions), stuck(sessions, practice.ladders)]),
    tooManyReps(recent),
    tooManyADay(recent, today),
    tooManyAWeek(recent, practice.asked, today),
    notPractised(practice, today),
  ];
  return found.filter((need) => need !== null);
}

/** Sessions of one plan, each since the latest gap: across a gap other things change too. */
function plansIn(sessions: readonly SessionDigest[]): readonly (readonly SessionDigest[])[] {
  const withTrials = sessions.filter((digest) => trialsOf(digest).of > 0);
  const planIds = [...new Set(withTrials.map(({ planId }) => planId))];
  return planIds.map((planId) => sinceGap(withTrials.filter((digest) => digest.planId === planId)));
}

function sinceGap(sessions: readonly SessionDigest[]): readonly SessionDigest[] {
  const from = sessions.findLastIndex(({ day }, at) => at > 0 && day - (sessions[at - 1]?.day ?? day) >= GAP_DAYS);
  return sessions.slice(Math.max(0, from));
}

/** Named once in three sessions is enough: a place that hurts is no matter of counts. */
const FOR_VETERINARIAN = 3;

function veterinarian(recent: readonly SessionDigest[]): Need | null {
  const latest = recent.slice(-FOR_VETERINARIAN);
  const named = latest.flatMap(({ veterinarianFor }) => veterinarianFor);
  const [area] = named.toSorted((a, b) => countOf(named, b) - countOf(named, a));
  return area ? { kind: 'veterinarian', area, sessions: countOf(named, area), of: latest.length } : null;
}

const countOf = (areas: readonly BodyArea[], area: BodyArea): number => areas.filter((each) => each === area).length;

const NOW_SESSIONS = 3;
const BEFORE_SESSIONS = 5;
const FEWEST_BEFORE = 2;

/** The latest three sessions against up to five before: more of the trials were lifts, beyond what chance explains (95 %, Newcombe's). */
function liftsRising(sessions: readonly SessionDigest[]): Need | null {
  const [now, before] = [sessions.slice(-NOW_SESSIONS), sessions.slice(-NOW_SESSIONS - BEFORE_SESSIONS, -NOW_SESSIONS)];
  if (before.length < FEWEST_BEFORE) return null;
  const [late, early] = [liftsIn(now), liftsIn(before)];
  if (Math.min(late.of, early.of) < FEWEST_FOR_INTERVAL) return null;
  const { interval } = newcombe(late.lifted, late.of, early.lifted, early.of);
  return interval.lower > 0 ? { kind: 'lifts-rising', now: late, before: early } : null;
}

function liftsIn(sessions: readonly SessionDigest[]): Lifts {
  const counts = sessions.map(trialsOf);
  const of = counts.reduce((sum, each) => sum + each.of, 0);
  return { lifted: of - counts.reduce((sum, each) => sum + each.kept, 0), of, sessions: sessions.length };
}

const STUCK_SESSIONS = 5;
const STUCK_DAYS = 3;

/**
 * Five sessions running or more, on three days or more, none of which went higher than the first of them. Not at the top of the
 * ladder with nine in ten kept: that is a plan that is done.
 */
function stuck(sessions: readonly SessionDigest[], ladders: Practice['ladders']): Need | null {
  const ladder = ladders.get(sessions[0]?.planId ?? '') ?? [];
  const heights = sessions.map(({ steps }) => heightOf(steps, ladder));
  const from = heights.findIndex((height, at) => height >= 0 && heights.slice(at + 1).every((later) => later <= height));
  const running = sessions.slice(from);
  if (from < 0 || running.length < STUCK_SESSIONS || new Set(running.map(({ day }) => day)).size < STUCK_DAYS) return null;
  const most = mostPractised(running.slice(-STUCK_SESSIONS));
  if (!most) return null;
  const { title, stepId, kept, of } = most;
  const isDone = stepId === ladder.at(-1) && 10 * kept >= 9 * of;
  return isDone ? null : { kind: 'stuck', title, sessions: running.length, kept, of };
}

/** Place on the ladder of the hardest step with a trial; -1: none of them is on it any more. */
function heightOf(steps: readonly StepDigest[], ladder: readonly string[]): number {
  const tried = steps.filter(({ kept, lifted }) => kept + lifted > 0);
  return Math.max(-1, ...tried.map(({ stepId }) => ladder.indexOf(stepId)));
}

function mostPractised(sessions: readonly SessionDigest[]) {
  const sums = new Map<string, { stepId: string; title: string; kept: number; of: number }>();
  for (const { stepId, title, kept, lifted } of sessions.flatMap(({ steps }) => steps)) {
    const sum = sums.get(stepId) ?? { stepId, title, kept: 0, of: 0 };
    sums.set(stepId, { ...sum, title, kept: sum.kept + kept, of: sum.of + kept + lifted });
  }
  return [...sums.values()].toSorted((a, b) => b.of - a.of)[0];
}

/** Rest is advised at 20; up to so many are still "one more" (common practice, no source). */
export const MOST_REPS = 25;
const REPS_SESSIONS = 5;
const FEWEST_OVER = 2;

function tooManyReps(recent: readonly SessionDigest[]): Need | null {
  const reps = recent.slice(-REPS_SESSIONS).map(repsIn);
  const over = reps.filter((n) => n > MOST_REPS);
  if (over.length < FEWEST_OVER) return null;
  return { kind: 'too-many-reps', sessions: over.length, of: reps.length, most: Math.max(...over) };
}

function repsIn({ steps }: SessionDigest): number {
  return steps.reduce((sum, { kept, lifted, others }) => sum + kept + lifted + others, 0);
}

/** Dogs trained once a day learned in fewer sessions than dogs trained three times in a row (R: Demant et al. 2011; Meyer & Ladewig 2008). */
const TOO_MANY_A_DAY = 3;

function tooManyADay(recent: readonly SessionDigest[], today: Day): Need | null {
  const perDay = new Map<Day, number>();
  for (const { day } of inLatestWeek(recent, today)) perDay.set(day, (perDay.get(day) ?? 0) + 1);
  const over = [...perDay.values()].filter((n) => n >= TOO_MANY_A_DAY);
  return over.length > 0 ? { kind: 'too-many-a-day', most: Math.max(...over), days: over.length } : null;
}

const inLatestWeek = (sessions: readonly SessionDigest[], today: Day): readonly SessionDigest[] =>
  sessions.filter(({ day }) => day <= today && today - day < WEEK_DAYS);

/** One more than asked is zeal; two more are another plan. Without homework: more than one a day. */
const MORE_THAN_ASKED = 2;

function tooManyAWeek(recent: readonly SessionDigest[], asked: Practice['asked'], today: Day): Need | null {
  const sessions = inLatestWeek(recent, today).length;
  const bound = asked ? asked.aWeek + MORE_THAN_ASKED : WEEK_DAYS + 1;
  return sessions >= bound ? { kind: 'too-many-a-week', sessions, asked: asked?.aWeek ?? null } : null;
}

/** Twice as long as lies between two sessions when they are spread evenly, and a week at least. Without homework: 14 days. */
function notPractised({ sessions, asked }: Practice, today: Day): Need | null {
  const last = sessions.at(-1)?.day;
  const since = Math.max(last ?? Number.NEGATIVE_INFINITY, asked?.since ?? Number.NEGATIVE_INFINITY);
  if (!Number.isFinite(since)) return null;
  const patience = asked ? Math.max(WEEK_DAYS, 2 * Math.ceil(WEEK_DAYS / asked.aWeek)) : GAP_DAYS;
  const days = today - since;
  if (days < patience) return null;
  const hasBegun = last !== undefined && (asked === null || last >= asked.since);
  return { kind: 'not-practised', days, asked: asked?.aWeek ?? null, hasBegun };
}
