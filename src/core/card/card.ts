/** Folds what is known of a dog into the card for whoever examines it: what it keeps and where, what not yet, and how to stop. */
import type { Dog } from '../event.ts';
import type { ExamPlan } from '../exam/exam.ts';
import { type Library, takesOf } from '../library.ts';
import { areaOf, BODY_AREAS, type BodyArea, criterionS, type Plan, type Step } from '../plan.ts';
import { type Day, dayOf } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import { settingsOf } from '../settings.ts';
import { treatBudget } from '../treats.ts';
import { SPOKEN_WORDS, type SpokenWord } from '../word.ts';
import { type CardLine, condense, type Listed } from './condense.ts';
import { type AreaCount, countAreas } from './count-areas.ts';
import { evidenceOf } from './evidence.ts';
import { plansOf } from './plans-of.ts';

export interface Card {
  readonly dog: Dog;
  readonly today: Day;
  /** Null: this dog never practised. */
  readonly practised: { readonly sessions: number; readonly firstDay: Day; readonly lastDay: Day } | null;
  /** What the dog does to be handled; of the plans that were practised, or of all when none was. */
  readonly positions: readonly string[];
  /** Null: nobody gave a name. */
  readonly handler: string | null;
  /** What this handler says for each word; empty: it was never taught. */
  readonly words: Readonly<Record<SpokenWord, readonly string[]>>;
  readonly kept: Listed;
  readonly notYet: Listed;
  /** Steps of its plans that were never tried. */
  readonly never: readonly AreaCount[];
  /** Places that no plan of this dog has. */
  readonly unplanned: readonly BodyArea[];
  /** Treats of a day, as far as they can be told. */
  readonly treatsADay: number | null;
  /** The latest examination that was held with this app. */
  readonly exam: ExamHeld | null;
}

export interface ExamHeld {
  readonly day: Day;
  readonly done: readonly string[];
  /** Every hold ended with the head up. */
  readonly lifted: readonly string[];
  /** All that was on its list; null: the list is not known any more. */
  readonly of: number | null;
}

export interface CardInput {
  readonly dog: Dog;
  readonly library: Library;
  /** Of practice, with places named as they are now; of any dog. */
  readonly digests: readonly SessionDigest[];
  readonly exams: readonly SessionDigest[];
  readonly today: Day;
}

export function cardOf({ dog, library, digests, exams, today }: CardInput): Card {
  const own = digests.filter(({ dogId }) => dogId === dog.id);
  const plans = plansOf(dog.id, library.plans, own);
  const ladders = laddersOf(plans, own);
  const lines = ladders.flatMap(([planId, steps]) => linesOf(planId, steps, own));
  const isKept = ({ evidence }: CardLine) => evidence.standing.kind === 'kept-for-good';
  const { handler } = settingsOf(library);
  return {
    ...{ dog, today, practised: practisedIn(own), positions: positionsOf(plans, own) },
    handler: library.handlers.find(({ id }) => id === handler)?.name ?? null,
    words: wordsOf(library, handler),
    kept: condense(lines.filter(isKept), 'kept'),
    notYet: condense(
      lines.filter((line) => !isKept(line)),
      'not-yet',
    ),
    never: neverTried(ladders, lines),
    unplanned: BODY_AREAS.filter((area) => area !== 'position' && !ladders.some(([, steps]) => steps.some(isAt(area)))),
    treatsADay: treatBudget(dog)?.treatsADay ?? null,
    exam: examHeld(exams, dog.id, library.exams),
  };
}

const isAt =
  (area: BodyArea) =>
  (step: LadderStep): boolean =>
    step.area === area;

type LadderStep = Pick<CardLine, 'stepId' | 'title' | 'area' | 'askedS'>;
type Ladder = readonly [planId: string, steps: readonly LadderStep[]];

/** The ladders as they stand, with the steps that were practised and are on them no more. Half steps are a way, not a place to be: left out. */
function laddersOf(plans: readonly Plan[], digests: readonly SessionDigest[]): readonly Ladder[] {
  const ids = new Set([...plans.map(({ id }) => id), ...digests.map(({ planId }) => planId)]);
  return [...ids].map((id): Ladder => {
    const onIt = plans.find((plan) => plan.id === id)?.steps ?? [];
    const known = new Set(onIt.map((step) => step.id));
    const gone = new Map<string, LadderStep>();
    for (const step of digests.flatMap(({ planId, steps }) => (planId === id ? steps : []))) {
      const { stepId, title, area, criterionS: askedS } = step;
      if (!known.has(stepId)) gone.set(stepId, { stepId, title, area, askedS });
    }
    return [id, [...gone.values(), ...onIt.filter(({ halfOf }) => !halfOf).map(asLadderStep)]];
  });
}

function asLadderStep(step: Step): LadderStep {
  return { stepId: step.id, title: step.title, area: areaOf(step), askedS: criterionS(step) };
}

/** Easiest first. */
function linesOf(planId: string, steps: readonly LadderStep[], digests: readonly SessionDigest[]): readonly CardLine[] {
  return steps.flatMap((step) => {
    const evidence = evidenceOf(digests, planId, step.stepId);
    return evidence ? [{ ...step, planId, evidence }] : [];
  });
}

function practisedIn(own: readonly SessionDigest[]): Card['practised'] {
  if (own.length === 0) return null;
  const days = own.map(({ day }) => day);
  return { sessions: own.length, firstDay: Math.min(...days), lastDay: Math.max(...days) };
}

function positionsOf(plans: readonly Plan[], own: readonly SessionDigest[]): readonly string[] {
  const practised = plans.filter(({ id }) => own.some(({ planId }) => planId === id));
  return [...new Set((practised.length > 0 ? practised : plans).map(({ position }) => position))];
}

function wordsOf(library: Library, handler: string): Card['words'] {
  const takes = takesOf(library, handler);
  const { platformEar } = settingsOf(library);
  const saidFor = (word: SpokenWord): readonly string[] => {
    const sayings = platformEar?.on ? (platformEar.sayings[word] ?? []) : (takes.get(word) ?? []).map(({ said }) => said);
    return [...new Set(sayings.map((said) => said.trim()))].filter((said) => said !== '');
  };
  return Object.fromEntries(SPOKEN_WORDS.map((word) => [word, saidFor(word)])) as unknown as Card['words'];
}

function neverTried(ladders: readonly Ladder[], lines: readonly CardLine[]): readonly AreaCount[] {
  const tried = new Set(lines.map(({ planId, stepId }) => `${planId}\n${stepId}`));
  const never = ladders.flatMap(([planId, steps]) => steps.filter(({ stepId }) => !tried.has(`${planId}\n${stepId}`)));
  return countAreas(never.map(({ area }) => area));
}

function examHeld(exams: readonly SessionDigest[], dogId: string, planned: readonly ExamPlan[]): ExamHeld | null {
  const dateOf = (id: string) => planned.find((exam) => exam.id === id)?.date;
  // Before its day it was a rehearsal.
  const held = exams.filter((exam) => exam.dogId === dogId && exam.day >= dayOf(dateOf(exam.planId) ?? exam.startedAt));
  const last = held.toSorted((a, b) => a.atMs - b.atMs).at(-1);
  if (!last) return null;
  const titles = (isTold: (step: SessionDigest['steps'][number]) => boolean) =>
    last.steps.filter(isTold).map(({ title }) => title);
  return {
    day: last.day,
    done: titles(({ kept }) => kept > 0),
    lifted: titles(({ kept, lifted }) => kept === 0 && lifted > 0),
    of: planned.find(({ id }) => id === last.planId)?.items.length ?? null,
  };
}
