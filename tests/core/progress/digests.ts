/** Digests typed by hand, for tests of what many sessions say. */
import type { SessionDigest, StepDigest } from '../../../src/core/progress/digest.ts';
import { STEADY } from '../../../src/core/rule.ts';

/** So many kept of so many trials on a step. */
export function on(stepId: string, kept: number, of: number): StepDigest {
  const lifted = of - kept;
  return {
    ...{ stepId, title: stepId, area: 'position', criterionS: 3, kept, lifted, others: 0, spanS: 10 * of },
    markedS: Array.from({ length: kept }, () => 3.5),
    liftedS: Array.from({ length: lifted }, () => 1.5),
  };
}

/** One session on that day (1 for 2 January 1970), on one step. */
export function digest(day: number, step: StepDigest | readonly StepDigest[], under: Partial<SessionDigest> = {}): SessionDigest {
  return {
    ...{ id: `s-${day}`, dogId: 'dog', planId: 'plan', planTitle: 'Paws', handler: 'Kim', place: 'kitchen', rule: STEADY },
    ...{ startedAt: new Date(day * 86_400_000).toISOString(), atMs: day * 86_400_000, day, steps: [step].flat() },
    veterinarianFor: [],
    ...under,
  };
}
