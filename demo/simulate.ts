/** Trains invented dogs by the real engine from the first step of a plan to its goal, and counts how it went. Seeded; no clock. */
import type { Call } from '../src/core/call.ts';
import { isTrial, type Standing, stepOf } from '../src/core/criterion.ts';
import type { SessionStart } from '../src/core/event.ts';
import { firstStart, nextStart } from '../src/core/next-start.ts';
import { criterionS, type Plan } from '../src/core/plan.ts';
import type { EndedRep } from '../src/core/rep.ts';
import type { SessionRule } from '../src/core/rule.ts';
import { between, type Chance, chanceOf } from './chance.ts';
import { type Coach, quickCoach, type Trial } from './coach.ts';
import { bornBy, type InventedDog, inventedDog, type Population } from './invented-dog.ts';
import { sessionStart } from './typed-session.ts';

/** After so many reps without the goal a dog counts as not reaching the top. */
export const MOST_REPS = 1600;
/** A rep needs this long besides the hold, s. */
const BETWEEN_REPS_S = 6;
/** Reps that are no trials: a slip of the handler or a distraction, and one paid early on purpose. */
const VOID_CHANCE = 0.03;
const SHORT_CHANCE = 0.02;
/** Chance that the dog does not offer the position, and what each lift before it adds. */
const REFUSE_CHANCE = 0.01;
const REFUSE_AFTER_LIFT = 0.05;
/** Below this true success a raise came too early (CRITERION.md). */
const TOO_EARLY = 0.8;
/** Below this true success a rep was too hard (CRITERION.md). */
const TOO_HARD = 0.7;

/** How one dog's training went. */
export interface Career {
  readonly reached: boolean;
  readonly sessions: number;
  readonly reps: number;
  readonly kept: number;
  readonly lifts: number;
  readonly raises: number;
  readonly earlyRaises: number;
  readonly hardReps: number;
  readonly longestRunOfLifts: number;
  readonly splits: number;
  readonly alarms: number;
  /** True success of the rested dog on the weakest step of the plan, at the end. */
  readonly weakestStep: number;
}

export interface Training {
  readonly plan: Plan;
  readonly rule: SessionRule;
  readonly population?: Population;
  /** Made anew for each dog: a trial may remember. */
  readonly trial?: (plan: Plan) => Trial;
  readonly coach?: (start: SessionStart, trial: Trial) => Coach;
  /** Sees every rep, for tests and pictures. */
  readonly watch?: (rep: EndedRep, before: Standing, calls: readonly Call[]) => void;
}

/** One dog, from its first session to the goal or to MOST_REPS. The same seed is the same dog under every rule. */
export function trainDog(seed: number, training: Training): Career {
  const { plan } = training;
  const dog = inventedDog(bornBy(chanceOf(2 * seed), plan.steps.length, training.population), plan.steps);
  const chance = chanceOf(2 * seed + 1);
  const trial = training.trial?.(plan) ?? {};
  const count = emptyCount();
  let start = firstStart(plan.steps);
  while (count.reps < MOST_REPS && !count.reached) {
    const session = {
      dog,
      chance,
      trial,
      training,
      count,
      limits: { reps: Math.floor(between(chance, 10, 31)), minutes: 1000, treats: null },
    };
    const { standing, endedOnLift } = playSession(session, { ...sessionStart(plan, start, session.limits), rule: training.rule });
    const days = daysUntilNext(chance);
    dog.wait(days);
    start = nextStart(standing, endedOnLift, days);
  }
  const weakestStep = Math.min(...plan.steps.map((step) => dog.success(step)));
  return { ...count, weakestStep };
}

/** A session a day or every few days; one in thirty after a longer break. */
function daysUntilNext(chance: Chance): number {
  return chance() < 1 / 30 ? 8 + Math.floor(10 * chance()) : 1 + Math.floor(3 * chance());
}

interface Session {
  readonly dog: InventedDog;
  readonly chance: Chance;
  readonly trial: Trial;
  readonly training: Training;
  readonly count: Count;
  readonly limits: SessionStart['limits'];
}

function playSession(session: Session, start: SessionStart): { standing: Standing; endedOnLift: boolean } {
  const { dog, training, count, chance } = session;
  const coach = (training.coach ?? quickCoach)(start, session.trial);
  let atS = 1;
  let lastTrial: EndedRep | null = null;
  let lifts = 0;
  for (let n = 0; ; n++) {
    const before = coach.standing();
    const success = dog.successNow(stepOf(before), n);
    const rested = dog.success(stepOf(before));
    const rep = playRep(before, success, atS, chance, lifts);
    const calls = coach.hear(rep);
    training.watch?.(rep, before, calls);
    if (isTrial(rep)) dog.learn(stepOf(before), rep.outcome === 'kept');
    for (const { inserted } of calls) if (inserted) dog.meet(inserted);
    countRep(count, rep, rested, calls);
    if (isTrial(rep)) lastTrial = rep;
    lifts = rep.outcome === 'lifted' ? lifts + 1 : 0;
    atS = rep.endAtS + BETWEEN_REPS_S;
    if (calls.some(({ kind }) => kind === 'rest') || n + 1 >= session.limits.reps) break;
  }
  count.sessions += 1;
  return { standing: coach.standing(), endedOnLift: lastTrial?.outcome === 'lifted' };
}

function playRep(before: Standing, success: number, holdAtS: number, chance: Chance, liftsRunning: number): EndedRep {
  const wantedS = criterionS(stepOf(before));
  const luck = chance();
  const held = { holdAtS, restarts: 0, voidReason: null } as const;
  const until = (heldForS: number) => ({ endAtS: holdAtS + heldForS, heldForS: holdAtS + heldForS - holdAtS });
  if (luck < REFUSE_CHANCE + REFUSE_AFTER_LIFT * liftsRunning)
    return { ...held, endAtS: holdAtS, heldForS: 0, outcome: 'void', voidReason: 'not-offered' };
  if (luck > 1 - VOID_CHANCE) return { ...held, ...until(0.5 + wantedS * chance()), outcome: 'void', voidReason: 'handler-says' };
  if (luck > 1 - VOID_CHANCE - SHORT_CHANCE && wantedS >= 1)
    return { ...held, ...until(wantedS * between(chance, 0.2, 0.6)), outcome: 'short' };
  const keeps = chance();
  if (keeps < success) return { ...held, ...until(wantedS + between(chance, 0.1, 0.6)), outcome: 'kept' };
  return { ...held, ...until(liftAtS(keeps, success, wantedS)), outcome: 'lifted' };
}

/** Hold times follow a Weibull curve of shape 1.5 that passes through the chance to keep; a touch and away lifts within a second. */
function liftAtS(keeps: number, success: number, wantedS: number): number {
  const within = Math.max(wantedS, 1);
  const share = (Math.log(keeps) / Math.log(success)) ** (1 / 1.5);
  return within * Math.min(1, Math.max(0.05, share));
}

type Count = { -readonly [K in Exclude<keyof Career, 'weakestStep'>]: Career[K] } & { run: number };

function emptyCount(): Count {
  return {
    ...{ reached: false, sessions: 0, reps: 0, kept: 0, lifts: 0, raises: 0, earlyRaises: 0, hardReps: 0 },
    ...{ longestRunOfLifts: 0, splits: 0, alarms: 0, run: 0 },
  };
}

function countRep(count: Count, rep: EndedRep, success: number, calls: readonly Call[]): void {
  count.reps += 1;
  if (success < TOO_HARD) count.hardReps += 1;
  if (rep.outcome === 'kept') count.kept += 1;
  if (rep.outcome === 'lifted') count.lifts += 1;
  if (isTrial(rep)) count.run = rep.outcome === 'lifted' ? count.run + 1 : 0;
  count.longestRunOfLifts = Math.max(count.longestRunOfLifts, count.run);
  for (const call of calls) countCall(count, call, success);
}

function countCall(count: Count, { kind, reasons }: Call, success: number): void {
  const reached = reasons.some((reason) => reason.kind === 'goal-reached');
  if (kind === 'raise' || reached) count.raises += 1;
  if ((kind === 'raise' || reached) && success < TOO_EARLY) count.earlyRaises += 1;
  if (kind === 'split') count.splits += 1;
  if (reasons.some((reason) => reason.kind === 'area-alarm')) count.alarms += 1;
  if (reached) count.reached = true;
}

/** How a population fared under one rule: means over all dogs, shares pooled over all trials and raises. */
export interface Outcome {
  readonly dogs: number;
  readonly reachTop: number;
  readonly reps: number;
  readonly sessions: number;
  readonly lifts: number;
  readonly kept: number;
  readonly earlyRaises: number;
  readonly hardReps: number;
  readonly fourLiftsRunning: number;
  readonly splits: number;
  readonly alarmed: number;
  /** Mean over all dogs: a rule is not the better for the dogs that it leaves behind. */
  readonly weakestStep: number;
}

export function summarise(careers: readonly Career[]): Outcome {
  const dogs = careers.length;
  const sum = (of: (career: Career) => number) => careers.reduce((total, career) => total + of(career), 0);
  const mean = (of: (career: Career) => number) => sum(of) / dogs;
  return {
    dogs,
    reachTop: mean(({ reached }) => Number(reached)),
    reps: mean(({ reps }) => reps),
    sessions: mean(({ sessions }) => sessions),
    lifts: mean(({ lifts }) => lifts),
    kept: sum(({ kept }) => kept) / sum(({ kept, lifts }) => kept + lifts),
    earlyRaises:
      sum(({ earlyRaises }) => earlyRaises) /
      Math.max(
        1,
        sum(({ raises }) => raises),
      ),
    hardReps: mean(({ hardReps }) => hardReps),
    fourLiftsRunning: mean(({ longestRunOfLifts }) => Number(longestRunOfLifts >= 4)),
    splits: mean(({ splits }) => splits),
    alarmed: mean(({ alarms }) => Number(alarms > 0)),
    weakestStep: mean(({ weakestStep }) => weakestStep),
  };
}

/** `dogs` dogs, seeds counted up from `seed`. */
export function simulate(training: Training, dogs: number, seed: number): Outcome {
  return summarise(Array.from({ length: dogs }, (_, i) => trainDog(seed + i, training)));
}
