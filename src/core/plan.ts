/** Describes a plan: a ladder of small steps, what a step asks for, and where half a step lies. */
import { t, written } from './language.ts';
import type { StoredRule } from './rule.ts';
import type { Seconds } from './units.ts';

/** Where on the dog a step works. `position` is the hold itself, before any handling. */
export const BODY_AREAS = ['position', 'ears', 'eyes', 'mouth', 'paws', 'collar-and-neck', 'coat-and-tail'] as const;
export type BodyArea = (typeof BODY_AREAS)[number];

/** Places near the face, where no handling step may be without a caution. */
export const FACE: readonly BodyArea[] = ['ears', 'eyes', 'mouth'];

/** How far and how long a handling goes. */
export interface Handling {
  /** What the hand does, in the handler's words: "thumb along the outer edge of the pad". */
  readonly extent: string;
  /** How long the handling lasts before the marker, s. 0: a touch and away. */
  readonly forS: Seconds;
}

interface StepCommon {
  readonly id: string;
  /** A few words that fit above the big number. */
  readonly title: string;
  /** Shown before the step, where it can hurt or frighten. */
  readonly caution?: string;
  /** Set on a half step that the engine put in: the two neighbours it lies between. */
  readonly halfOf?: { readonly belowId: string; readonly aboveId: string };
}

/** Hold still for so long. 0 s: paid at once. */
export interface DurationStep extends StepCommon {
  readonly kind: 'duration';
  readonly holdForS: Seconds;
}

/** Hold still while a place is handled. */
export interface HandlingStep extends StepCommon, Handling {
  readonly kind: 'handling';
  readonly area: Exclude<BodyArea, 'position'>;
  /** The half-way that the plan prepared. Without it the engine returns instead of splitting: halves of handling are never invented. */
  readonly halfway?: Handling & { readonly title: string };
}

export type Step = DurationStep | HandlingStep;

export interface Plan {
  readonly id: string;
  readonly dogId: string;
  readonly title: string;
  /** What the dog does: "side lying on the blanket". */
  readonly position: string;
  /** Easiest first. */
  readonly steps: readonly Step[];
  /** How steps are judged; none named: steady. */
  readonly rule?: StoredRule;
}

/** Longest hold or handling that a plan may ask for, s: ten minutes, far beyond any vet's need. */
export const LONGEST_S: Seconds = 600;

/** The seconds a marker must wait for on this step. */
export function criterionS(step: Step): Seconds {
  return step.kind === 'duration' ? step.holdForS : step.forS;
}

export function areaOf(step: Step): BodyArea {
  return step.kind === 'duration' ? 'position' : step.area;
}

export function indexOfStep(steps: readonly Step[], id: string): number {
  return steps.findIndex((step) => step.id === id);
}

/**
 * The duration half-way between two, s; null when they lie less than a second apart.
 * The geometric middle offset by half a second, on a half-second grid, half rounds down (CRITERION.md, flag C).
 */
export function halfwayS(belowS: Seconds, aboveS: Seconds): Seconds | null {
  if (aboveS - belowS < 1) return null;
  const middle = Math.sqrt((belowS + 0.5) * (aboveS + 0.5)) - 0.5;
  const onGrid = Math.ceil(2 * middle - 0.5) / 2;
  return Math.min(Math.max(onGrid, belowS + 0.5), aboveS - 0.5);
}

/** The half step between `below` and the step that failed, or null when the plan has none to offer. */
export function halfStep(below: Step, failed: Step, id: string): Step | null {
  const halfOf = { belowId: below.id, aboveId: failed.id };
  if (failed.kind === 'handling') return failed.halfway ? halfHandling(failed, failed.halfway, id, halfOf) : null;
  if (below.kind !== 'duration') return null;
  const holdForS = halfwayS(below.holdForS, failed.holdForS);
  return holdForS === null ? null : { kind: 'duration', id, title: titleLike([failed, below], holdForS), holdForS, halfOf };
}

/** The title with other seconds in it; null when it does not name its own. "Lie flat 3 s" with 3.5: "Lie flat 3.5 s". */
export function titleWith(step: Step, seconds: Seconds): string | null {
  // A plan may have been made in another language than is spoken now.
  const own = String(criterionS(step)).replace('.', '[.,]');
  const named = new RegExp(`(?<![\\d.,])${own}(?=\\s?(?:s|sec|seconds?|Sek|Sekunden?)\\b)`, 'g');
  return step.title.search(named) < 0 ? null : step.title.replace(named, written(seconds));
}

/** "Lie flat 3.5 s" of a step of 3.5 s, in whatever language it was written. */
export function titleSaysSeconds(step: Step): boolean {
  const seconds = String(criterionS(step));
  return [seconds, seconds.replace('.', ',')].some((said) => step.title.includes(`${said} s`));
}

/** The title of a hold like these, in the words of the first that names its seconds. */
export function titleLike(steps: readonly Step[], holdForS: Seconds): string {
  const titles = steps.map((step) => (step.kind === 'duration' ? titleWith(step, holdForS) : null));
  return titles.find((title) => title !== null) ?? t('Hold {n} s', { n: holdForS });
}

function halfHandling(
  failed: HandlingStep,
  halfway: NonNullable<HandlingStep['halfway']>,
  id: string,
  halfOf: NonNullable<Step['halfOf']>,
): HandlingStep {
  const { caution } = failed;
  return { kind: 'handling', id, area: failed.area, ...halfway, halfOf, ...(caution === undefined ? {} : { caution }) };
}

/** The ladder with one step put in before the step named. Throws when that step is not on it: the caller has just stood on it. */
export function insertBefore(steps: readonly Step[], aboveId: string, step: Step): readonly Step[] {
  const at = indexOfStep(steps, aboveId);
  if (at < 0) throw new Error(`plan: no step ${aboveId} to insert before`);
  return [...steps.slice(0, at), step, ...steps.slice(at)];
}
