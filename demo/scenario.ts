/** The invented scenario: one dog, one position, one handling, in the language spoken. Opens the app, feeds the demo, the tests and the pictures. */
import type { Dog } from '../src/core/event.ts';
import { type PlainMessage, t } from '../src/core/language.ts';
import type { DurationStep, HandlingStep, Plan } from '../src/core/plan.ts';

const DOG_ID = 'demo-dog';

export function demoDog(): Dog {
  return {
    id: DOG_ID,
    name: 'Pixel',
    notes: t('Invented.'),
    invented: true,
    food: t('Likes dried sprats.'),
    scares: t('The sound of clippers worries her.'),
  };
}

const hold = (holdForS: number): DurationStep => ({
  kind: 'duration',
  id: `hold-${holdForS}`,
  title: holdForS === 0 ? t('Lie flat, paid at once') : t('Lie flat {n} s', { n: holdForS }),
  holdForS,
});

/** One sentence, where the risk is; names the veterinarian. */
const CLAW_CAUTION =
  'If she pulls a paw away that she gave before, stop: a sore paw can be pain, and that is a question for your veterinarian.';

const paw = (
  id: string,
  title: PlainMessage,
  extent: PlainMessage,
  forS: number,
  halfway: { title: PlainMessage; extent: PlainMessage; forS: number },
): HandlingStep => ({
  kind: 'handling',
  id,
  title: t(title),
  area: 'paws',
  extent: t(extent),
  forS,
  caution: t(CLAW_CAUTION),
  halfway: { title: t(halfway.title), extent: t(halfway.extent), forS: halfway.forS },
});

/** Side lying on a mat, up to a nail file on one claw. */
export const demoPlan = (): Plan => ({
  id: 'demo-plan',
  dogId: DOG_ID,
  title: t('File one claw'),
  position: t('Lying on her side on the bath mat'),
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
});

// Made before another language can be chosen: both in English, as the tests and the recordings know them.
export const DEMO_DOG = demoDog();
export const DEMO_PLAN = demoPlan();
