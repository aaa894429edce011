/** The invented ladder of the simulator: eighteen steps, nine of holding still and nine of handling with their half-ways prepared. */
import type { DurationStep, HandlingStep, Plan } from '../src/core/plan.ts';

const hold = (holdForS: number): DurationStep => ({
  kind: 'duration',
  id: `hold-${holdForS}`,
  title: `Lie flat ${holdForS} s`,
  holdForS,
});

const handle = (n: number): HandlingStep => ({
  kind: 'handling',
  id: `handle-${n}`,
  title: `Handling ${n}`,
  area: 'paws',
  extent: `invented handling ${n}`,
  forS: 2,
  halfway: { title: `Half of handling ${n}`, extent: `invented handling ${n}, half of it`, forS: 1 },
});

export const LONG_LADDER: Plan = {
  id: 'long-ladder',
  dogId: 'demo-dog',
  title: 'Eighteen invented steps',
  position: 'Lying on her side on the bath mat',
  steps: [...[0, 1, 2, 3, 5, 7, 10, 15, 20].map(hold), ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map(handle)],
};
