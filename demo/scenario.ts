/** The invented scenario: one dog, one position, one handling. Opens the app, feeds the demo, the tests and the pictures. */
import type { Dog } from '../src/core/event.ts';
import type { DurationStep, HandlingStep, Plan } from '../src/core/plan.ts';

export const DEMO_DOG: Dog = {
  id: 'demo-dog',
  name: 'Pixel',
  notes: 'Invented.',
  invented: true,
  food: 'Likes dried sprats.',
  scares: 'The sound of clippers worries her.',
};

const hold = (holdForS: number): DurationStep => ({
  kind: 'duration',
  id: `hold-${holdForS}`,
  title: holdForS === 0 ? 'Lie flat, paid at once' : `Lie flat ${holdForS} s`,
  holdForS,
});

/** One sentence, where the risk is; names the veterinarian. */
const CLAW_CAUTION =
  'If she pulls a paw away that she gave before, stop: a sore paw can be pain, and that is a question for your veterinarian.';

const paw = (
  id: string,
  title: string,
  extent: string,
  forS: number,
  halfway?: { title: string; extent: string; forS: number },
): HandlingStep => ({
  kind: 'handling',
  id,
  title,
  area: 'paws',
  extent,
  forS,
  caution: CLAW_CAUTION,
  ...(halfway ? { halfway } : {}),
});

/** Side lying on a mat, up to a nail file on one claw. */
export const DEMO_PLAN: Plan = {
  id: 'demo-plan',
  dogId: DEMO_DOG.id,
  title: 'File one claw',
  position: 'Lying on her side on the bath mat',
  steps: [
    ...[0, 1, 2, 3, 4, 5].map(hold),
    paw('paw-touch', 'Touch the top of the paw', 'two fingers on the top of the front paw', 0, {
      title: 'Touch the leg above the paw',
      extent: 'two fingers on the leg, a hand above the paw',
      forS: 0,
    }),
    paw('paw-rest', 'Rest a hand on the paw 2 s', 'the palm rests on the paw, no grip', 2, {
      title: 'Rest a hand on the paw 1 s',
      extent: 'the palm rests on the paw, no grip',
      forS: 1,
    }),
    paw('paw-lift', 'Lift the paw a finger high 2 s', 'the paw lies on the fingers, a finger off the mat', 2, {
      title: 'Slide fingers under the paw',
      extent: 'fingers under the paw, not lifting',
      forS: 1,
    }),
    paw('claw-hold', 'Steady one claw 3 s', 'thumb and finger steady one claw, no pressure', 3, {
      title: 'Touch one claw',
      extent: 'one fingertip on one claw',
      forS: 1,
    }),
    paw('claw-file', 'One stroke of the file', 'one light stroke of the nail file on the steadied claw', 3, {
      title: 'Lay the file on the claw',
      extent: 'the file lies on the claw and does not move',
      forS: 2,
    }),
  ],
};
