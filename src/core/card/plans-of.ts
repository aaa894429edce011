/** Says which plans are a dog's: those made for it, and those it was practised on, as when its sessions came back with homework. */
import type { Plan } from '../plan.ts';
import type { SessionDigest } from '../progress/digest.ts';

/** @param digests of this dog. */
export function plansOf(dogId: string, plans: readonly Plan[], digests: readonly SessionDigest[]): readonly Plan[] {
  const practised = new Set(digests.map(({ planId }) => planId));
  return plans.filter((plan) => plan.dogId === dogId || practised.has(plan.id));
}
