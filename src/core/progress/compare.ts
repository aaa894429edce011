/** Sets two heaps of sessions side by side: kept of trials on the steps that both practised, and the interval of the difference. */
import { holdCurve, type MedianHold, medianHold } from '../statistics/hold-time.ts';
import { FEWEST_FOR_INTERVAL } from '../statistics/interval.ts';
import { newcombe, type ShareDifference } from '../statistics/share.ts';
import type { SessionDigest, StepDigest } from './digest.ts';
import { holdsOf } from './weeks.ts';

export interface Counts {
  readonly kept: number;
  readonly of: number;
}

export interface StepBeside {
  readonly stepId: string;
  readonly title: string;
  readonly first: Counts;
  readonly second: Counts;
  /** Second less first; null below five trials on either side. */
  readonly difference: ShareDifference | null;
}

export interface Side {
  readonly sessions: number;
  /** All of its trials. */
  readonly all: Counts;
  readonly holds: number;
  readonly median: MedianHold;
}

export interface Comparison {
  readonly first: Side;
  readonly second: Side;
  /** Steps that both practised. */
  readonly steps: readonly StepBeside[];
  /** Over those steps alone: an easier mix of steps must not look like a better dog. */
  readonly shared: StepBeside;
  /** Steps that only one of them practised. */
  readonly onlyFirst: readonly string[];
  readonly onlySecond: readonly string[];
}

/** @param ladder ids of steps in the order in which they are listed; those that it lacks come last. */
export function compare(
  first: readonly SessionDigest[],
  second: readonly SessionDigest[],
  ladder: readonly string[] = [],
): Comparison {
  const [one, two] = [countsByStep(first), countsByStep(second)];
  const place = new Map(ladder.map((id, nth) => [id, nth]));
  const placeOf = (id: string) => place.get(id) ?? ladder.length;
  const both = [...one].filter(([id]) => two.has(id)).toSorted(([a], [b]) => placeOf(a) - placeOf(b));
  const steps = both.map(([id, { title, counts }]) => beside(id, title, counts, two.get(id)?.counts ?? NONE));
  const onlyIn = (here: ByStep, there: ByStep) => [...here].filter(([id]) => !there.has(id)).map(([, { title }]) => title);
  return {
    first: sideOf(first),
    second: sideOf(second),
    steps,
    shared: beside('', '', sum(steps.map((step) => step.first)), sum(steps.map((step) => step.second))),
    onlyFirst: onlyIn(one, two),
    onlySecond: onlyIn(two, one),
  };
}

const NONE: Counts = { kept: 0, of: 0 };

type ByStep = ReadonlyMap<string, { readonly title: string; readonly counts: Counts }>;

function countsByStep(digests: readonly SessionDigest[]): ByStep {
  const steps = new Map<string, { title: string; counts: Counts }>();
  for (const step of digests.flatMap((digest) => digest.steps)) {
    const counts = sum([steps.get(step.stepId)?.counts ?? NONE, trialsOn(step)]);
    if (counts.of > 0) steps.set(step.stepId, { title: step.title, counts });
  }
  return steps;
}

const trialsOn = ({ kept, lifted }: StepDigest): Counts => ({ kept, of: kept + lifted });

function sum(counts: readonly Counts[]): Counts {
  return counts.reduce((total, { kept, of }) => ({ kept: total.kept + kept, of: total.of + of }), NONE);
}

function beside(stepId: string, title: string, first: Counts, second: Counts): StepBeside {
  const isEnough = first.of >= FEWEST_FOR_INTERVAL && second.of >= FEWEST_FOR_INTERVAL;
  const difference = isEnough ? newcombe(second.kept, second.of, first.kept, first.of) : null;
  return { stepId, title, first, second, difference };
}

function sideOf(digests: readonly SessionDigest[]): Side {
  const holds = digests.flatMap(holdsOf);
  const all = sum(digests.flatMap(({ steps }) => steps.map(trialsOn)));
  return { sessions: digests.length, all, holds: holds.length, median: medianHold(holdCurve(holds)) };
}
