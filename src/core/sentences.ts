/** Words the engine's calls and reasons: short for the ear, one sentence for the eye. Numbers always come with their n. */
import type { Call, Reason } from './call.ts';
import type { Reason as RuleReason } from './chain/machine.ts';
import { type BodyArea, indexOfStep, type Step } from './plan.ts';
import type { Outcome, Question, VoidReason } from './rep.ts';

const AREAS: Readonly<Record<BodyArea, string>> = {
  position: 'the position',
  ears: 'the ears',
  eyes: 'the eyes',
  mouth: 'the mouth',
  paws: 'the paws',
  'collar-and-neck': 'the collar and neck',
  'coat-and-tail': 'the coat and tail',
};

/** Two or three words, for the voice and the flag. */
export const CALL_WORDS: Readonly<Record<Call['kind'], string>> = {
  raise: 'next step',
  return: 'one step back',
  split: 'half a step',
  rest: 'rest now',
  stay: 'make it easier',
  begin: 'warm-up over',
  remain: 'stay',
};

export const OUTCOME_WORDS: Readonly<Record<Outcome, string>> = {
  kept: 'kept',
  lifted: 'lifted',
  short: 'short',
  void: 'not a trial',
};

const VOID_WORDS: Readonly<Record<VoidReason, string>> = {
  'not-offered': 'not offered',
  'handler-says': 'a slip or a distraction',
  paused: 'broken off by a pause',
  finished: 'broken off by the end',
};

/** "kept", or "not a trial: not offered". */
export function sayOutcome(outcome: Outcome, voidReason: VoidReason | null): string {
  return voidReason ? `${OUTCOME_WORDS[outcome]}: ${VOID_WORDS[voidReason]}` : OUTCOME_WORDS[outcome];
}

export function sayQuestion(question: Question): string {
  return question.kind === 'mark-without-hold'
    ? 'A marker, but no hold was heard. Say hold when the dog settles.'
    : 'The step stays as it is during a hold. Say it again between reps.';
}

/** One sentence: what to do, then why. */
export function sayCall(call: Call, steps: readonly Step[]): string {
  return `${sayMove(call, steps)} ${call.reasons.map(sayReason).join(' ')}`;
}

function sayMove(call: Call, steps: readonly Step[]): string {
  const to = call.inserted?.title ?? steps[indexOfStep(steps, call.toStepId)]?.title ?? call.toStepId;
  switch (call.kind) {
    case 'raise':
      return `Next step: ${to}.`;
    case 'return':
      return `One step back: ${to}.`;
    case 'split':
      return `Half a step: ${to}.`;
    case 'rest':
      return call.reasons.some(({ kind }) => AHEAD.has(kind)) ? 'Stop while ahead.' : 'Rest now.';
    case 'stay':
      return 'This is the easiest step: make it easier yourself, or stop.';
    case 'begin':
      return `Warm-up over: ${to}.`;
    case 'remain':
      return `Stay: ${to}.`;
  }
}

/** Reasons to rest in which nothing went wrong. */
const AHEAD: ReadonlySet<string> = new Set(['goal-reached', 'reps-done', 'time-up', 'treats-spent', 'ahead']);

/** Why, as a sentence with its counts. */
export function sayReason(reason: Reason): string {
  switch (reason.kind) {
    case 'nine-straight':
    case 'straight':
      return `${reason.kept} of ${reason.kept} held.`;
    case 'first-five-kept':
    case 'first-kept':
      return `The first ${reason.kept} of ${reason.kept} on this step held.`;
    case 'nine-of-ten':
    case 'kept-of-last':
      return `${reason.kept} of the last ${reason.of} held.`;
    case 'kept-of-block':
    case 'block-undecided':
      return `${reason.kept} of a block of ${reason.of} held.`;
    case 'counting':
      return `${reason.kept} of ${reason.of} held so far.`;
    case 'evidence-for':
    case 'evidence-against':
      return `${reason.kept} kept and ${reason.lifts} lifted of ${reason.kept + reason.lifts}: the evidence is enough.`;
    case 'one-lift':
      return 'The head lifted: the step was too big.';
    case 'two-lifts-running':
      return '2 lifts running: the step was too big.';
    case 'lifts-running':
      return `${reason.lifts} lifts running: the step was too big.`;
    case 'three-lifts-in-five':
    case 'two-lifts-in-four':
      return `${reason.lifts} lifts in the last ${reason.of}: the step was too big.`;
    case 'lifts-of-last':
      return `${reason.lifts} lifts in the last ${reason.of}.`;
    case 'lifts-of-block':
      return `${reason.lifts} lifts in a block of ${reason.of}.`;
    default:
      return sayOwnReason(reason);
  }
}

type OwnReason = Exclude<Reason, { kind: RuleReason['kind'] }>;

function sayOwnReason(reason: OwnReason): string {
  switch (reason.kind) {
    case 'goal-reached':
      return 'The goal of the plan is reached.';
    case 'second-return':
      return 'The second return today: enough for now.';
    case 'never-offered':
      return `Not offered ${reason.running} times running: the dog would rather not, for now.`;
    case 'reps-done':
      return `${reason.reps} reps are done.`;
    case 'time-up':
      return `${reason.minutes} minutes are up.`;
    case 'treats-spent':
      return reason.treats === 1 ? '1 treat is spent.' : `${reason.treats} treats are spent.`;
    case 'ahead':
      return `A step gained and ${reason.repsLeft} reps left: a good moment to end.`;
    case 'area-alarm':
      return sayAlarm(reason.area, reason.level);
    case 'half-step-prepared':
      return 'The rise is halved.';
    case 'half-ahead':
      return `${reason.returned} of the last ${reason.of} steps had to be halved, so this one is halved at once.`;
    case 'no-half-step':
      return 'No half step is prepared here.';
    case 'lowest-step':
      return 'There is no easier step in the plan.';
    case 'warm-up-over':
      return 'Two easy reps are done.';
    case 'warm-ups-lifted':
      return 'Both warm-ups lifted: start here today.';
    case 'handler-says':
      return 'You said so.';
    case 'not-followed':
      return `The call “${CALL_WORDS[reason.call]}” is not followed: the count begins afresh.`;
  }
}

// A question, never a finding: it also fires for healthy dogs (CRITERION.md).
function sayAlarm(area: BodyArea, level: 'look' | 'veterinarian'): string {
  return level === 'look'
    ? `Many lifts at ${AREAS[area]}: leave it for today and look. Is something sore?`
    : `Lifts keep coming at ${AREAS[area]}. A change like this can be pain: stop handling this place and ask your veterinarian.`;
}
