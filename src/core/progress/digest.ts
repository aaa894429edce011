/** Boils one session down to what progress over many sessions needs: tallies and hold times per step, where, with whom, when. */
import type { SessionState } from '../fold.ts';
import { areaOf, type BodyArea, criterionS, type Step } from '../plan.ts';
import type { Outcome } from '../rep.ts';
import { ruleOf, type SessionRule } from '../rule.ts';
import type { IsoTime, Seconds } from '../units.ts';
import { type Day, dayOf } from './day.ts';

/** What was done on one step in one session. Warm-ups count nowhere but in `warmUps`. */
export interface StepDigest {
  readonly stepId: string;
  readonly title: string;
  readonly kind: Step['kind'];
  readonly area: BodyArea;
  readonly criterionS: Seconds;
  readonly void: number;
  readonly warmUps: number;
  /** Trials that were kept, and how long until the marker, s. */
  readonly keptForS: readonly Seconds[];
  /** Trials that were lifted, and after how long, s. */
  readonly liftedAfterS: readonly Seconds[];
  /** Paid before the criterion on purpose: no trials, but holds that were marked, s. */
  readonly shortForS: readonly Seconds[];
}

export interface SessionDigest {
  readonly sessionId: string;
  readonly dogId: string;
  readonly dogName: string;
  readonly planId: string;
  readonly planTitle: string;
  readonly rule: SessionRule;
  /** As written at the start; '' when it was not named. */
  readonly place: string;
  readonly handler: string;
  readonly startedAt: IsoTime;
  /** On the calendar of the place where it was held. */
  readonly day: Day;
  /** Pauses taken out. */
  readonly practisedForS: Seconds;
  /** In the order in which each was first practised. */
  readonly steps: readonly StepDigest[];
}

type Growing = { -readonly [K in keyof StepDigest]: StepDigest[K] extends readonly Seconds[] ? Seconds[] : StepDigest[K] };

/** The digest of a folded session; of one that was put right, of its corrected fold. */
export function digestOf(state: SessionState): SessionDigest {
  const { start, startedAt, latestS, pausedS } = state;
  const steps = new Map<string, Growing>();
  for (const { step, outcome, isWarmUp, heldForS } of state.reps) {
    const digest = steps.get(step.id) ?? emptyStep(step);
    steps.set(step.id, digest);
    if (isWarmUp) digest.warmUps++;
    else countRep(digest, outcome, heldForS);
  }
  return {
    sessionId: state.log[0]?.session ?? '',
    ...{ dogId: start.dogId, dogName: start.dogName, planId: start.planId, planTitle: start.planTitle },
    ...{ rule: ruleOf(start.rule), place: tidy(start.place), handler: tidy(start.handler) },
    ...{ startedAt, day: dayOf(startedAt) },
    practisedForS: Math.max(0, latestS - pausedS),
    steps: [...steps.values()],
  };
}

/** "garden " is the garden. */
function tidy(name: string): string {
  return name.trim().normalize('NFC');
}

function emptyStep(step: Step): Growing {
  return {
    ...{ stepId: step.id, title: step.title, kind: step.kind, area: areaOf(step), criterionS: criterionS(step) },
    ...{ void: 0, warmUps: 0, keptForS: [], liftedAfterS: [], shortForS: [] },
  };
}

function countRep(digest: Growing, outcome: Outcome, heldForS: Seconds): void {
  switch (outcome) {
    case 'kept':
      digest.keptForS.push(heldForS);
      return;
    case 'lifted':
      digest.liftedAfterS.push(heldForS);
      return;
    case 'short':
      digest.shortForS.push(heldForS);
      return;
    case 'void':
      digest.void++;
  }
}

/** So many kept of so many trials. */
export interface Counts {
  readonly kept: number;
  readonly trials: number;
}

export function countsOf(steps: readonly StepDigest[]): Counts {
  let [kept, trials] = [0, 0];
  for (const { keptForS, liftedAfterS } of steps) {
    kept += keptForS.length;
    trials += keptForS.length + liftedAfterS.length;
  }
  return { kept, trials };
}
