/** Words the engine's calls and reasons: short for the ear, one sentence for the eye. Numbers always come with their n. */
import type { Call, Reason } from './call.ts';
import type { Reason as RuleReason } from './chain/machine.ts';
import { type Message, t } from './language.ts';
import { type BodyArea, indexOfStep, type Step } from './plan.ts';
import type { Outcome, Question, VoidReason } from './rep.ts';

const AREAS = {
  position: 'the position',
  ears: 'the ears',
  eyes: 'the eyes',
  mouth: 'the mouth',
  paws: 'the paws',
  'collar-and-neck': 'the collar and neck',
  'coat-and-tail': 'the coat and tail',
} as const satisfies Record<BodyArea, Message>;

/** Within a sentence: "the paws". */
export const areaWords = (area: BodyArea): string => t(AREAS[area]);

const CALLS = {
  raise: 'next step',
  return: 'one step back',
  split: 'half a step',
  rest: 'rest now',
  stay: 'make it easier',
  begin: 'warm-up over',
  remain: 'stay',
} as const satisfies Record<Call['kind'], Message>;

/** Two or three words, for the voice and the flag. */
export const callWords = (kind: Call['kind']): string => t(CALLS[kind]);

const OUTCOMES = {
  kept: 'kept',
  lifted: 'lifted',
  short: 'short',
  void: 'not a trial',
} as const satisfies Record<Outcome, Message>;

export const outcomeWords = (outcome: Outcome): string => t(OUTCOMES[outcome]);

const VOIDS = {
  'not-offered': 'not offered',
  'handler-says': 'a slip or a distraction',
  paused: 'broken off by a pause',
  finished: 'broken off by the end',
} as const satisfies Record<VoidReason, Message>;

/** "kept", or "not a trial: not offered". */
export function sayOutcome(outcome: Outcome, voidReason: VoidReason | null): string {
  return voidReason ? `${outcomeWords(outcome)}: ${t(VOIDS[voidReason])}` : outcomeWords(outcome);
}

export function sayQuestion(question: Question): string {
  return question.kind === 'mark-without-hold'
    ? t('A marker, but no hold was heard. Say hold when the dog settles.')
    : t('The step stays as it is during a hold. Say it again between reps.');
}

/** One sentence: what to do, then why. */
export function sayCall(call: Call, steps: readonly Step[]): string {
  return `${sayMove(call, steps)} ${call.reasons.map(sayReason).join(' ')}`;
}

function sayMove(call: Call, steps: readonly Step[]): string {
  const to = call.inserted?.title ?? steps[indexOfStep(steps, call.toStepId)]?.title ?? call.toStepId;
  switch (call.kind) {
    case 'raise':
      return t('Next step: {to}.', { to });
    case 'return':
      return t('One step back: {to}.', { to });
    case 'split':
      return t('Half a step: {to}.', { to });
    case 'rest':
      return call.reasons.some(({ kind }) => AHEAD.has(kind)) ? t('Stop while ahead.') : t('Rest now.');
    case 'stay':
      return t('This is the easiest step: make it easier yourself, or stop.');
    case 'begin':
      return t('Warm-up over: {to}.', { to });
    case 'remain':
      return t('Stay: {to}.', { to });
  }
}

/** Reasons to rest in which nothing went wrong. */
const AHEAD: ReadonlySet<string> = new Set(['goal-reached', 'reps-done', 'time-up', 'treats-spent', 'ahead']);

/** Why, as a sentence with its counts. */
export function sayReason(reason: Reason): string {
  switch (reason.kind) {
    case 'nine-straight':
    case 'straight':
      return t('{kept} of {of} held.', { kept: reason.kept, of: reason.kept });
    case 'first-five-kept':
    case 'first-kept':
      return t('The first {kept} of {of} on this step held.', { kept: reason.kept, of: reason.kept });
    case 'nine-of-ten':
    case 'kept-of-last':
      return t('{kept} of the last {of} held.', { kept: reason.kept, of: reason.of });
    case 'kept-of-block':
    case 'block-undecided':
      return t('{kept} of a block of {of} held.', { kept: reason.kept, of: reason.of });
    case 'counting':
      return t('{kept} of {of} held so far.', { kept: reason.kept, of: reason.of });
    case 'evidence-for':
    case 'evidence-against':
      return sayEvidence(reason.kept, reason.lifts);
    case 'one-lift':
      return t('The head lifted: the step was too big.');
    case 'two-lifts-running':
      return t('2 lifts running: the step was too big.');
    case 'lifts-running':
      return t('{lifts} lifts running: the step was too big.', { lifts: reason.lifts });
    case 'three-lifts-in-five':
    case 'two-lifts-in-four':
      return t('{lifts} lifts in the last {of}: the step was too big.', { lifts: reason.lifts, of: reason.of });
    case 'lifts-of-last':
      return t('{lifts} lifts in the last {of}.', { lifts: reason.lifts, of: reason.of });
    case 'lifts-of-block':
      return t('{lifts} lifts in a block of {of}.', { lifts: reason.lifts, of: reason.of });
    default:
      return sayOwnReason(reason);
  }
}

function sayEvidence(kept: number, lifts: number): string {
  return t('{kept} kept and {lifts} lifted of {of}: the evidence is enough.', { kept, lifts, of: kept + lifts });
}

type OwnReason = Exclude<Reason, { kind: RuleReason['kind'] }>;

function sayOwnReason(reason: OwnReason): string {
  switch (reason.kind) {
    case 'goal-reached':
      return t('The goal of the plan is reached.');
    case 'second-return':
      return t('The second return today: enough for now.');
    case 'never-offered':
      return t('Not offered {n} times running: the dog would rather not, for now.', { n: reason.running });
    case 'reps-done':
      return t('{n} reps are done.', { n: reason.reps });
    case 'time-up':
      return t('{n} minutes are up.', { n: reason.minutes });
    case 'treats-spent':
      return t(reason.treats === 1 ? '1 treat is spent.' : '{n} treats are spent.', { n: reason.treats });
    case 'ahead':
      return t('A step gained and {n} reps left: a good moment to end.', { n: reason.repsLeft });
    case 'area-alarm':
      return sayAlarm(reason.area, reason.level);
    case 'half-step-prepared':
      return t('The rise is halved.');
    case 'half-ahead':
      return t('{n} of the last {of} steps had to be halved, so this one is halved at once.', {
        n: reason.returned,
        of: reason.of,
      });
    case 'no-half-step':
      return t('No half step is prepared here.');
    case 'lowest-step':
      return t('There is no easier step in the plan.');
    case 'warm-up-over':
      return t('Two easy reps are done.');
    case 'warm-ups-lifted':
      return t('Both warm-ups lifted: start here today.');
    case 'handler-says':
      return t('You said so.');
    case 'not-followed':
      return t('The call “{call}” is not followed: the count begins afresh.', { call: callWords(reason.call) });
  }
}

// A question, never a finding: it also fires for healthy dogs (CRITERION.md).
function sayAlarm(area: BodyArea, level: 'look' | 'veterinarian'): string {
  const place = areaWords(area);
  return level === 'look'
    ? t('Many lifts at {place}: leave it for today and look. Is something sore?', { place })
    : t('Lifts keep coming at {place}. A change like this can be pain: stop handling this place and ask your veterinarian.', {
        place,
      });
}
