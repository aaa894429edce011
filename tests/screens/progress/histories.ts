/** What progress is tested on: no session, one, and forty of an invented dog with phases and two gaps, through the real engine. */
import { inventedHistory } from '../../../demo/history.ts';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { ANY, type Choice } from '../../../src/core/progress/choice.ts';
import { digestOf, type SessionDigest } from '../../../src/core/progress/digest.ts';
import { foldAll } from '../../../src/screens/progress/folds.tsx';

const FORTY = {
  ...{ plan: DEMO_PLAN, sessions: 40, seed: 3, gaps: { 12: 18, 27: 16 } },
  ...{ places: ['bathroom', 'garden', 'surgery'], handlers: ['Kim', 'a friend'] },
};

export const nothing: readonly SessionDigest[] = [];
export const oneSession = (): readonly SessionDigest[] => fortySessions().slice(0, 1);
export const fortySessions = (): readonly SessionDigest[] => inventedHistory(FORTY).map(({ state }) => digestOf(state));

/** Folded as the screen does, on the day after the last session. */
export function folded(digests: readonly SessionDigest[], choice: Partial<Choice> = {}) {
  const today = (digests.at(-1)?.day ?? 20_458) + 1;
  return foldAll({ digests, choice: { ...ANY, planId: DEMO_PLAN.id, ...choice }, ladder: DEMO_PLAN.steps, today });
}
