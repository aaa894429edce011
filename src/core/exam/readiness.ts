/** Lays what is to be done beside what the dog has practised: ready, nearly, begun or never, with the counts and what is lacking. */
import { type Evidence, evidenceOf } from '../card/evidence.ts';
import { areaOf, criterionS, type Plan, type Step } from '../plan.ts';
import type { Day } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { CHECK_AFTER_DAYS } from '../progress/mastery.ts';
import type { Seconds } from '../units.ts';
import type { ExamItem } from './exam.ts';

/** A step of one of the dog's plans. */
export interface PlanStep {
  readonly plan: Plan;
  readonly step: Step;
}

/** Why something practised is not ready. */
export type Lack =
  /** Practised for fewer seconds than are asked for. */
  | { readonly kind: 'seconds'; readonly practisedS: Seconds; readonly askedS: Seconds }
  | { readonly kind: 'not-lately'; readonly days: number }
  /** Of the three sessions running at 9 in 10, in two places, so many are there. */
  | { readonly kind: 'not-for-good'; readonly running: number; readonly places: number };

export type Readiness =
  /** Kept for good, as long as is asked for, and practised lately. */
  | { readonly kind: 'ready'; readonly at: PlanStep; readonly evidence: Evidence }
  /** The latest sessions are at 9 in 10, for half of the seconds at least. */
  | { readonly kind: 'nearly'; readonly at: PlanStep; readonly evidence: Evidence; readonly lacks: readonly Lack[] }
  /** Practised, and the head still lifts or the seconds are far away. */
  | { readonly kind: 'begun'; readonly at: PlanStep; readonly evidence: Evidence; readonly lacks: readonly Lack[] }
  /** `at`: the step of a plan that leads there; null: no plan of this dog does. */
  | { readonly kind: 'never'; readonly at: PlanStep | null };

/** A dog that keeps half of the seconds is told as nearly there (common practice, no source). */
const NEARLY_SHARE = 0.5;

/** @param digests of this dog's practice. */
export function readinessOf(item: ExamItem, plans: readonly Plan[], digests: readonly SessionDigest[], today: Day): Readiness {
  const found = matching(item, plans).map((at) => judge(item, at, digests, today));
  return found.toSorted((a, b) => RANK[a.kind] - RANK[b.kind])[0] ?? { kind: 'never', at: null };
}

const RANK: Readonly<Record<Readiness['kind'], number>> = { ready: 0, nearly: 1, begun: 2, never: 3 };

/** The step that was picked; else those whose place and words are the same. What is only alike is never taken for the same. */
function matching({ step: picked, area, what }: ExamItem, plans: readonly Plan[]): readonly PlanStep[] {
  const all = plans.flatMap((plan) => plan.steps.map((step) => ({ plan, step })));
  if (picked) return all.filter(({ plan, step }) => plan.id === picked.planId && step.id === picked.stepId);
  return all.filter(({ step }) => areaOf(step) === area && plain(step.title) === plain(what));
}

const plain = (words: string): string => words.trim().toLowerCase().replaceAll(/\s+/g, ' ');

function judge(item: ExamItem, at: PlanStep, digests: readonly SessionDigest[], today: Day): Readiness {
  const evidence = evidenceOf(digests, at.plan.id, at.step.id);
  if (!evidence) return { kind: 'never', at };
  const lacks = lacksOf(item, at.step, evidence, today);
  if (lacks.length === 0) return { kind: 'ready', at, evidence };
  return { kind: isNearly(item, at.step, evidence) ? 'nearly' : 'begun', at, evidence, lacks };
}

function lacksOf({ forS }: ExamItem, step: Step, { standing, lastDay }: Evidence, today: Day): readonly Lack[] {
  const lacks: Lack[] = [];
  if (standing.kind === 'on-the-way') lacks.push({ kind: 'not-for-good', running: standing.running, places: standing.places });
  if (criterionS(step) < forS) lacks.push({ kind: 'seconds', practisedS: criterionS(step), askedS: forS });
  if (today - lastDay >= CHECK_AFTER_DAYS) lacks.push({ kind: 'not-lately', days: today - lastDay });
  return lacks;
}

function isNearly({ forS }: ExamItem, step: Step, { standing }: Evidence): boolean {
  const keeps = standing.kind === 'kept-for-good' || standing.running > 0;
  return keeps && criterionS(step) >= NEARLY_SHARE * forS;
}
