/** Picks from all sessions those that are asked about, and of each the steps that are. */
import type { BodyArea } from '../plan.ts';
import type { SessionDigest, StepDigest } from './digest.ts';

/** null: any. */
export interface Choice {
  readonly dogId: string | null;
  readonly planId: string | null;
  readonly stepId: string | null;
  readonly area: BodyArea | null;
  readonly place: string | null;
  readonly handler: string | null;
}

export const ANY: Choice = { dogId: null, planId: null, stepId: null, area: null, place: null, handler: null };

/** Oldest first; sessions that hold none of the steps asked about drop out. */
export function choose(digests: readonly SessionDigest[], choice: Choice): readonly SessionDigest[] {
  return digests
    .filter((digest) => isChosen(digest, choice))
    .flatMap((digest) => withSteps(digest, choice))
    .toSorted(byTime);
}

function isChosen({ dogId, planId, place, handler }: SessionDigest, choice: Choice): boolean {
  return (
    (choice.dogId === null || choice.dogId === dogId) &&
    (choice.planId === null || choice.planId === planId) &&
    (choice.place === null || choice.place === place) &&
    (choice.handler === null || choice.handler === handler)
  );
}

function withSteps(digest: SessionDigest, { stepId, area }: Choice): readonly SessionDigest[] {
  const isAsked = (step: StepDigest) => (stepId === null || step.stepId === stepId) && (area === null || step.area === area);
  const steps = stepId === null && area === null ? digest.steps : digest.steps.filter(isAsked);
  return steps.length === 0 ? [] : [steps === digest.steps ? digest : { ...digest, steps }];
}

/** By the local day, then by the instant, then by id: two devices may have written at the same instant. */
function byTime(a: SessionDigest, b: SessionDigest): number {
  return a.day - b.day || a.atMs - b.atMs || (a.id < b.id ? -1 : 1);
}

/** What there is to choose from, in the order in which it first came. */
export function valuesOf<T>(digests: readonly SessionDigest[], of: (digest: SessionDigest) => T): readonly T[] {
  return [...new Set(digests.map(of))];
}

/** Trials of a session on the steps that were chosen. */
export function trialsOf({ steps }: SessionDigest): { readonly kept: number; readonly of: number } {
  let [kept, of] = [0, 0];
  for (const step of steps) {
    kept += step.kept;
    of += step.kept + step.lifted;
  }
  return { kept, of };
}
