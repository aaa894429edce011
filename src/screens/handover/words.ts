/** Says homework in plain sentences: a step, what an answer changes, and why something was not taken. */
import type { HomeworkChange, StepPart } from '../../core/handover/changes.ts';
import type { Homework, HomeworkWord } from '../../core/handover/homework.ts';
import { type Message, t } from '../../core/language.ts';
import { criterionS, type Step } from '../../core/plan.ts';
import { nameRule } from '../../core/rule.ts';
import type { Opened } from '../../session/handover.ts';

type Refusal = Extract<Opened, { kind: 'refused' }>['refusal'];

/** What is done on a step, beside its title. */
export function sayStep(step: Step): string {
  const seconds = criterionS(step);
  if (step.kind === 'duration') return seconds === 0 ? t('paid at once') : t('hold for {n} s', { n: seconds });
  return seconds === 0
    ? t('{extent}; a touch and away', { extent: step.extent })
    : t('{extent}, for {n} s', { extent: step.extent, n: seconds });
}

/** Its caution; where the step below has the very same, a word that says so. Null: it has none. */
export function sayCaution(steps: readonly Step[], at: number): string | null {
  const caution = steps[at]?.caution;
  if (!caution) return null;
  return steps[at - 1]?.caution === caution ? t('Mind the same as on the step before.') : caution;
}

export function sayASessionsAWeek(n: number): string {
  return n === 1 ? t('1 session a week') : t('{n} sessions a week', { n });
}

const WORDS = {
  hold: 'the dog has settled',
  mark: 'paid',
  lifted: 'the head came up',
} as const satisfies Record<HomeworkWord, Message>;

export const wordMeaning = (word: HomeworkWord): string => t(WORDS[word]);

const PARTS = {
  title: 'its name',
  seconds: 'its seconds',
  place: 'the place',
  extent: 'what the hand does',
  caution: 'the caution',
  halfway: 'its half-way',
} as const satisfies Record<StepPart, Message>;

export function sayChange(change: HomeworkChange): string {
  switch (change.kind) {
    case 'step-added':
    case 'step-moved':
      return sayPlaced(change);
    case 'step-removed':
      return change.step.halfOf
        ? t('Taken out: “{step}”, a half step that practice had put in.', { step: change.step.title })
        : t('Taken out: “{step}”.', { step: change.step.title });
    case 'step-changed':
      return sayStepChanged(change);
    case 'rule':
      return t('Another rule judges the steps: {rule}.', { rule: nameRule(change.to) });
    case 'sessions':
      return t('Sessions a week: {to} instead of {from}.', { to: change.to, from: change.from });
    case 'word':
      return change.to === ''
        ? t('Your own word for: {meaning}.', { meaning: wordMeaning(change.word) })
        : t('The word for “{meaning}” is now “{word}”.', { meaning: wordMeaning(change.word), word: change.to });
    case 'title':
      return t('It is called “{title}” now.', { title: change.to });
    case 'position':
      return t('The position is now: {position}.', { position: change.to });
    case 'caution':
      return change.to === ''
        ? t('The caution beside the steps is gone.')
        : t('A new caution: {caution}', { caution: change.to });
    case 'note':
      return change.to === '' ? t('The note is gone.') : t('A new note: {note}', { note: change.to });
  }
}

function sayPlaced({ kind, step, below }: Extract<HomeworkChange, { kind: 'step-added' | 'step-moved' }>): string {
  const [title, under] = [step.title, below?.title ?? ''];
  if (kind === 'step-added')
    return below
      ? t('New: “{step}” ({what}), after “{below}”.', { step: title, what: sayStep(step), below: under })
      : t('New: “{step}” ({what}), the easiest.', { step: title, what: sayStep(step) });
  return below
    ? t('Moved: “{step}” comes after “{below}” now.', { step: title, below: under })
    : t('Moved: “{step}” is the easiest now.', { step: title });
}

function sayStepChanged({ step, was, parts }: Extract<HomeworkChange, { kind: 'step-changed' }>): string {
  if (parts.length === 1 && parts[0] === 'seconds')
    return t('“{step}” is {to} s long instead of {from} s.', { step: step.title, to: criterionS(step), from: criterionS(was) });
  if (parts.length === 1 && parts[0] === 'title')
    return t('“{was}” is called “{step}” now.', { was: was.title, step: step.title });
  return t('“{step}” is changed: {parts}. Now: {what}.', {
    step: step.title,
    parts: parts.map((part) => t(PARTS[part])).join(', '),
    what: sayStep(step),
  });
}

/** What happened, then what to do. Nothing was kept in any of these. */
export function sayRefusal(refusal: Refusal): string {
  switch (refusal.kind) {
    case 'not-homework':
      return t('This is no homework: {path}: expected {expected}, got {got}. Ask your trainer for the file or the code again.', {
        ...{ path: refusal.damage.path, expected: refusal.damage.expected, got: refusal.damage.got },
      });
    case 'newer':
      return t('It was made by a newer Stillbeat than this one. Load the newest version here, then open it again.');
    case 'changed-on-the-way':
      return t('It does not say any more what the trainer’s app wrote: it was damaged or changed on the way. Ask for it again.');
    case 'unfit':
      return t('It cannot be practised as it is: {path}: expected {expected}, got {got}. Tell your trainer.', {
        ...{ path: refusal.damage.path, expected: refusal.damage.expected, got: refusal.damage.got },
      });
    case 'cannot-unpack':
      return t('This browser cannot unpack a code. Ask your trainer for the file instead.');
  }
}

/** "Homework from Alex, version 2". */
export function sayFrom({ trainer, revision }: Pick<Homework, 'trainer' | 'revision'>): string {
  return trainer === ''
    ? t('Homework, version {n}', { n: revision })
    : t('Homework from {trainer}, version {n}', { trainer, n: revision });
}
