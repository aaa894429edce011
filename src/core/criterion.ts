/** Decides, after each rep, whether the step goes up, down, is halved or stays, and when to rest. Pure; every call carries its reasons. */
import type { Call, Move, Reason, RestReason } from './call.ts';
import { ALARM_ASK, ALARM_LOOK, alarmScore } from './chain/alarm.ts';
import { type Answer, type Machine, NO_TRIALS, type Trials } from './chain/machine.ts';
import { AHEAD_OF, halfAhead, halfOnReturn, returnedLately } from './halves.ts';
import type { Limits } from './limits.ts';
import { areaOf, type BodyArea, indexOfStep, insertBefore, type Step } from './plan.ts';
import type { EndedRep } from './rep.ts';
import { machineOf, type SessionRule } from './rule.ts';
import type { Seconds } from './units.ts';

/** Where dog and handler stand. JSON-able; carried from session to session by `next-start.ts`. */
export interface Standing {
  readonly steps: readonly Step[];
  /** The rule of this session. */
  readonly rule: SessionRule;
  readonly stepId: string;
  /** Trials since the step was reached. */
  readonly trials: Trials;
  /** While warming up, one step lower: how many reps are left, how many lifted, and where it leads. */
  readonly warmUp: { readonly left: number; readonly lifts: number; readonly toStepId: string } | null;
  /** How often a step was returned from, ever. */
  readonly returns: Readonly<Record<string, number>>;
  /** Steps that were raised from: a lift there weighs double in the alarm. */
  readonly passed: readonly string[];
  /** Alarm score by body area. */
  readonly alarms: Readonly<Partial<Record<BodyArea, number>>>;
  readonly today: Today;
}

/** What counts for this session alone. */
export interface Today {
  readonly reps: number;
  readonly treats: number;
  readonly returns: number;
  /** Outcomes of the latest trials on any step, at most 8, oldest first; true = kept. */
  readonly latest: readonly boolean[];
  readonly neverOfferedRunning: number;
  /** Rests already advised: none is advised twice. */
  readonly rested: readonly string[];
}

export const TODAY: Today = { reps: 0, treats: 0, returns: 0, latest: [], neverOfferedRunning: 0, rested: [] };

/** Reps that open a session one step lower and are no trials (CRITERION.md). */
export const WARM_UPS = 2;
/** Right after a raise, with fewer reps left than this, it stops while ahead (CRITERION.md). */
export const STOP_AHEAD_REPS = 5;
/** Lifts in the last eight trials that advise a rest (CRITERION.md, confirmed). */
const RESTING_LIFTS = { lifts: 4, of: 8 };
/** Reps never offered, running, that advise a rest (CRITERION.md, confirmed). */
const RESTING_REFUSALS = 3;

/** Names the machine that judges the step at hand. The simulator puts others in the place of the session's rule. */
export type Judge = (standing: Standing) => Machine;

/** The session's own rule. */
export const byRule: Judge = (standing) => machineOf(standing.rule, stepOf(standing).kind);

export function stepOf(standing: Standing): Step {
  const step = standing.steps[indexOfStep(standing.steps, standing.stepId)];
  if (!step) throw new Error(`criterion: step ${standing.stepId} is not on the ladder`);
  return step;
}

/** A trial says whether the dog could do the step: kept or lifted. Whether a warm-up is counted is for the caller to say. */
export function isTrial(rep: EndedRep): boolean {
  return rep.outcome === 'kept' || rep.outcome === 'lifted';
}

/** The standing after one more rep, before any call about it. */
export function countRep(standing: Standing, rep: EndedRep, judge: Judge = byRule): Standing {
  const today = countToday(standing, rep);
  if (rep.outcome === 'void') return { ...standing, today };
  // Warm-ups are no trials of a step, but they feed the alarm of their area: a place that hurts does so in the first rep.
  const alarms = isTrial(rep) ? countAlarm(standing, rep) : standing.alarms;
  if (standing.warmUp) return { ...standing, today, alarms, warmUp: countWarmUp(standing.warmUp, rep) };
  return { ...standing, today, alarms, trials: isTrial(rep) ? countTrial(standing, rep, judge) : standing.trials };
}

function countToday({ today, warmUp }: Standing, rep: EndedRep): Today {
  const marked = rep.outcome === 'kept' || rep.outcome === 'short';
  const trial = isTrial(rep) && !warmUp;
  return {
    ...today,
    reps: today.reps + 1,
    treats: today.treats + (marked ? 1 : 0),
    latest: trial ? [...today.latest, rep.outcome === 'kept'].slice(-RESTING_LIFTS.of) : today.latest,
    neverOfferedRunning: rep.voidReason === 'not-offered' ? today.neverOfferedRunning + 1 : 0,
  };
}

function countAlarm(standing: Standing, rep: EndedRep): Standing['alarms'] {
  const area = areaOf(stepOf(standing));
  const age = standing.passed.includes(standing.stepId) ? 'passed' : 'new';
  return { ...standing.alarms, [area]: alarmScore(standing.alarms[area] ?? 0, rep.outcome === 'kept', age) };
}

function countWarmUp(warmUp: NonNullable<Standing['warmUp']>, rep: EndedRep): NonNullable<Standing['warmUp']> {
  return { ...warmUp, left: warmUp.left - 1, lifts: warmUp.lifts + (rep.outcome === 'lifted' ? 1 : 0) };
}

function countTrial(standing: Standing, rep: EndedRep, judge: Judge): Trials {
  const kept = rep.outcome === 'kept';
  const answer = answerTo(standing, kept, judge);
  if (answer.verdict === 'stay') return answer.state;
  // The verdict may be overruled or taken back: keep the trial, so that nothing heard is forgotten. A call empties it.
  const { last, count, kept: keptSoFar } = standing.trials;
  return { last: [...last, kept].slice(-10), count: count + 1, kept: keptSoFar + (kept ? 1 : 0) };
}

function answerTo(standing: Standing, kept: boolean, judge: Judge): Answer<Trials> {
  return judge(standing).next(standing.trials, kept);
}

/**
 * What to call after a rep; empty: stay, silently.
 * @param before the standing before the rep; @param practisedS time practised so far, pauses left out, s.
 */
export function decide(
  before: Standing,
  rep: EndedRep,
  practisedS: Seconds,
  limits: Limits,
  judge: Judge = byRule,
): readonly Call[] {
  const counted = countRep(before, rep, judge);
  const moves = before.warmUp
    ? endOfWarmUp(counted)
    : isTrial(rep)
      ? moveAfter(before, answerTo(before, rep.outcome === 'kept', judge))
      : [];
  const after = moves.reduce(applyCall, counted);
  if (moves.some((call) => call.kind === 'rest')) return moves;
  const liftedIn = rep.outcome === 'lifted' ? areaOf(stepOf(before)) : null;
  const reasons = restReasons(after, moves, liftedIn, practisedS, limits);
  return reasons.length === 0 ? moves : [...moves, here(after, 'rest', reasons)];
}

function here(standing: Standing, kind: Call['kind'], reasons: readonly Reason[]): Call {
  return { kind, fromStepId: standing.stepId, toStepId: standing.stepId, inserted: null, reasons };
}

function endOfWarmUp(standing: Standing): readonly Call[] {
  const { warmUp } = standing;
  if (!warmUp || warmUp.left > 0) return [];
  const lifted = warmUp.lifts >= WARM_UPS;
  const toStepId = lifted ? standing.stepId : warmUp.toStepId;
  return [{ ...here(standing, 'begin', [{ kind: lifted ? 'warm-ups-lifted' : 'warm-up-over' }]), toStepId }];
}

function moveAfter(standing: Standing, { verdict, because }: Answer<Trials>): readonly Call[] {
  if (verdict === 'stay') return [];
  if (verdict === 'return') return [returnFrom(standing, because)];
  const raise = raiseFrom(standing, because);
  const isOld = raise.kind === 'rest' && standing.today.rested.includes('goal-reached');
  return isOld ? [] : [raise];
}

function raiseFrom(standing: Standing, because: Reason): Call {
  const above = standing.steps[indexOfStep(standing.steps, standing.stepId) + 1];
  if (!above) return here(standing, 'rest', [{ kind: 'goal-reached' }, because]);
  const half = halfAhead(standing, above);
  if (!half) return { ...here(standing, 'raise', [because]), toStepId: above.id };
  const ahead: Reason = { kind: 'half-ahead', returned: returnedLately(standing), of: AHEAD_OF };
  return { ...here(standing, 'raise', [because, ahead]), toStepId: half.id, inserted: half };
}

function returnFrom(standing: Standing, because: Reason): Call {
  const failed = stepOf(standing);
  const below = standing.steps[indexOfStep(standing.steps, failed.id) - 1];
  if (!below) return here(standing, 'stay', [because, { kind: 'lowest-step' }]);
  const half = halfOnReturn(standing, failed);
  if (half) return { ...here(standing, 'split', [because, { kind: 'half-step-prepared' }]), toStepId: half.id, inserted: half };
  const reasons: Reason[] = standing.returns[failed.id] ? [because] : [because, { kind: 'no-half-step' }];
  return { ...here(standing, 'return', reasons), toStepId: below.id };
}

/** The standing after a call was made: a move begins a fresh count, whatever was counted before. */
export function applyCall(standing: Standing, call: Call): Standing {
  switch (call.kind) {
    case 'begin':
      return beginStep(standing, call.toStepId);
    case 'raise':
      // A step that the handler skipped was not passed: its lifts weigh as those of a new step.
      return bySay(call)
        ? moved(standing, call)
        : { ...moved(withHalf(standing, call), call), passed: withStep(standing.passed, call.fromStepId) };
    case 'split':
    case 'return':
    case 'stay':
      return bySay(call) ? moved(standing, call) : countReturn(moved(withHalf(standing, call), call), call.fromStepId);
    case 'rest':
      return rested(standing, call);
    case 'remain':
      // What stood before the move is for the fold to know: see `remain`. This is what is left of it when a trial was put in between afterwards.
      return moved(standing, call);
  }
}

/** A move of the engine that can still be declined, and the standing before it. */
export interface OpenMove {
  readonly call: Call & { readonly kind: Move };
  readonly before: Standing;
}

/** Which move can be declined after this call: the engine's own until something else is decided; advice to rest decides nothing. */
export function openMoveAfter(open: OpenMove | null, standing: Standing, call: Call): OpenMove | null {
  if (call.kind === 'rest') return open;
  return isMove(call) && !bySay(call) ? { call, before: standing } : null;
}

function isMove(call: Call): call is OpenMove['call'] {
  return call.kind === 'raise' || call.kind === 'return' || call.kind === 'split';
}

/** The handler's *stay*: the step is the one before the move. */
export function declined({ call, before }: OpenMove): Call {
  return {
    ...{ kind: 'remain', fromStepId: call.toStepId, toStepId: before.stepId, inserted: null },
    reasons: [{ kind: 'not-followed', call: call.kind }, { kind: 'handler-says' }],
  };
}

/**
 * The standing once a move was declined: ladder, passes and returns as before it; the reps and the rests of today stay.
 * The count begins afresh, as after every call: else the same call would come again with the next rep.
 */
export function remain(standing: Standing, { before }: OpenMove): Standing {
  return { ...before, trials: NO_TRIALS, today: { ...standing.today, returns: before.today.returns } };
}

/** The half step that this call puts on the ladder, or null. */
export function putsIn(call: Call): Step | null {
  return isMove(call) && !bySay(call) ? call.inserted : null;
}

/** Overruled by the handler: it moves, but it is no evidence about the dog. */
function bySay(call: Call): boolean {
  return call.reasons.some((reason) => reason.kind === 'handler-says');
}

/** The move that the handler asks for with *easier* or *harder*; null at the end of the ladder. */
export function overrule(standing: Standing, word: 'easier' | 'harder'): Call | null {
  const to = standing.steps[indexOfStep(standing.steps, standing.stepId) + (word === 'harder' ? 1 : -1)];
  if (!to) return null;
  return { ...here(standing, word === 'harder' ? 'raise' : 'return', [{ kind: 'handler-says' }]), toStepId: to.id };
}

function beginStep(standing: Standing, toStepId: string): Standing {
  const carriedOn = standing.warmUp?.toStepId === toStepId;
  return { ...standing, stepId: toStepId, warmUp: null, trials: carriedOn ? standing.trials : NO_TRIALS };
}

function moved(standing: Standing, call: Call): Standing {
  return { ...standing, stepId: call.toStepId, warmUp: null, trials: NO_TRIALS };
}

function withHalf(standing: Standing, call: Call): Standing {
  const { inserted } = call;
  if (!inserted || indexOfStep(standing.steps, inserted.id) >= 0) return standing;
  return { ...standing, steps: insertBefore(standing.steps, inserted.halfOf?.aboveId ?? call.fromStepId, inserted) };
}

function countReturn(standing: Standing, fromStepId: string): Standing {
  const returns = { ...standing.returns, [fromStepId]: (standing.returns[fromStepId] ?? 0) + 1 };
  return { ...standing, returns, today: { ...standing.today, returns: standing.today.returns + 1 } };
}

function rested(standing: Standing, call: Call): Standing {
  const keys = call.reasons.map(restKey);
  const today = { ...standing.today, rested: [...standing.today.rested, ...keys] };
  const atTop = call.reasons.some((reason) => reason.kind === 'goal-reached');
  return atTop
    ? { ...standing, today, trials: NO_TRIALS, passed: withStep(standing.passed, call.fromStepId) }
    : { ...standing, today };
}

function withStep(ids: readonly string[], id: string): readonly string[] {
  return ids.includes(id) ? ids : [...ids, id];
}

/** Each kind of rest is advised once a session; an alarm once an area and level. */
function restKey(reason: Reason): string {
  return reason.kind === 'area-alarm' ? `${reason.kind} ${reason.area} ${reason.level}` : reason.kind;
}

/** Every reason to stop that was not given yet today, the gravest first. `liftedIn`: the area of the lift just seen. */
function restReasons(
  after: Standing,
  moves: readonly Call[],
  liftedIn: BodyArea | null,
  practisedS: Seconds,
  limits: Limits,
): readonly RestReason[] {
  const alarm = liftedIn && alarmReason(after, liftedIn);
  const ahead = moves.some((call) => call.kind === 'raise') ? aheadReason(after.today, limits) : null;
  return [alarm, ...tiredReasons(after.today), ...spentReasons(after.today, practisedS, limits), ahead].filter(
    (reason) => reason !== null && !after.today.rested.includes(restKey(reason)),
  ) as RestReason[];
}

function alarmReason(standing: Standing, area: BodyArea): RestReason | null {
  const score = standing.alarms[area] ?? 0;
  if (score < ALARM_LOOK) return null;
  return { kind: 'area-alarm', area, level: score >= ALARM_ASK ? 'veterinarian' : 'look' };
}

function tiredReasons(today: Today): (RestReason | null)[] {
  const lifts = today.latest.filter((kept) => !kept).length;
  return [
    today.returns >= 2 ? { kind: 'second-return' } : null,
    lifts >= RESTING_LIFTS.lifts ? { kind: 'lifts-of-last', lifts, of: today.latest.length } : null,
    today.neverOfferedRunning >= RESTING_REFUSALS ? { kind: 'never-offered', running: today.neverOfferedRunning } : null,
  ];
}

function spentReasons(today: Today, practisedS: Seconds, limits: Limits): (RestReason | null)[] {
  return [
    limits.treats !== null && today.treats >= limits.treats ? { kind: 'treats-spent', treats: today.treats } : null,
    today.reps >= limits.reps ? { kind: 'reps-done', reps: today.reps } : null,
    practisedS >= 60 * limits.minutes ? { kind: 'time-up', minutes: limits.minutes } : null,
  ];
}

function aheadReason(today: Today, limits: Limits): RestReason | null {
  const repsLeft = limits.reps - today.reps;
  return repsLeft > 0 && repsLeft < STOP_AHEAD_REPS ? { kind: 'ahead', repsLeft } : null;
}
