/** Ready ladders: four positions to hold still in, six places to handle, each handling with its half-way prepared and its caution where it can hurt. */
import { type PlainMessage, t } from './language.ts';
import type { BodyArea, DurationStep, Handling, HandlingStep, Plan, Step } from './plan.ts';
import type { Seconds } from './units.ts';

export const POSITIONS = ['chin-on-lap', 'chin-on-towel', 'standing-on-mat', 'lying-on-side'] as const;
export type Position = (typeof POSITIONS)[number];

export type HandledArea = Exclude<BodyArea, 'position'>;
export const HANDLED_AREAS: readonly HandledArea[] = ['ears', 'eyes', 'mouth', 'paws', 'collar-and-neck', 'coat-and-tail'];

interface PositionWords {
  /** For lists. */
  readonly name: string;
  /** The same within a title. */
  readonly inTitle: string;
  /** What the dog does, for the head of the plan. */
  readonly position: string;
  /** Above the seconds: "Chin on lap 3 s". */
  readonly short: string;
}

export function positionWords(position: Position): PositionWords {
  switch (position) {
    case 'chin-on-lap':
      return {
        ...{ name: t('Chin on your lap'), inTitle: t('chin on your lap') },
        ...{ position: t('Chin resting on your lap, you sitting'), short: t('Chin on lap') },
      };
    case 'chin-on-towel':
      return {
        ...{ name: t('Chin on a rolled towel'), inTitle: t('chin on a rolled towel') },
        ...{ position: t('Chin resting on a rolled towel'), short: t('Chin on towel') },
      };
    case 'standing-on-mat':
      return {
        ...{ name: t('Standing on a mat'), inTitle: t('standing on a mat') },
        ...{ position: t('Standing still with four feet on a mat'), short: t('Stand on mat') },
      };
    case 'lying-on-side':
      return {
        ...{ name: t('Lying on the side'), inTitle: t('lying on the side') },
        ...{ position: t('Lying flat on the side, head down'), short: t('Lie flat') },
      };
  }
}

const AREA_NAMES = {
  ears: ['Ears', 'ears'],
  eyes: ['Eyes', 'eyes'],
  mouth: ['Mouth', 'mouth'],
  paws: ['Paws', 'paws'],
  'collar-and-neck': ['Collar and neck', 'collar and neck'],
  'coat-and-tail': ['Coat and tail', 'coat and tail'],
} as const satisfies Record<HandledArea, readonly [PlainMessage, PlainMessage]>;

/** For lists and at the head of a title. */
export const areaName = (area: HandledArea): string => t(AREA_NAMES[area][0]);

/** Within a sentence. */
export const areaInSentence = (area: HandledArea): string => t(AREA_NAMES[area][1]);

const CAUTIONS = {
  ears: 'Nothing goes into the ear canal, and an ear that is red, smells or hurts is for your veterinarian, not for practice.',
  eyes: 'Sit beside your dog and never bend over the face; an eye that is red, half shut or weeping is for your veterinarian.',
  mouth:
    'Keep your own face away and stop when your dog stiffens or pulls back: sore teeth and gums are for your veterinarian, not for practice.',
  paws: 'If a paw that was given before is pulled away, stop: a sore paw can be pain, and that is a question for your veterinarian.',
  'collar-and-neck': 'A stiff neck or a yelp at a touch can be pain: stop, and ask your veterinarian before you go on.',
  'coat-and-tail': 'A flinch at the back, the hips or the tail can be pain: stop, and ask your veterinarian before you go on.',
} as const satisfies Record<HandledArea, PlainMessage>;

/** One sentence, said before the place is handled; it names the veterinarian. */
export const cautionFor = (area: HandledArea): string => t(CAUTIONS[area]);

/** Paid at once, then a second a step; handling begins when five are reliable (FACTS, common practice). */
const HOLDS_S: readonly Seconds[] = [0, 1, 2, 3, 4, 5];

/** In English, as the catalogue knows them. */
interface Words {
  readonly title: PlainMessage;
  readonly extent: PlainMessage;
  readonly forS: Seconds;
}

/** In the language spoken now: a plan keeps the words that it was made with. */
const spoken = ({ title, extent, forS }: Words): Handling & { readonly title: string } => ({
  title: t(title),
  extent: t(extent),
  forS,
});

/** One rung: the step, its half-way, and whether it is said with caution. */
interface Rung {
  readonly step: Words;
  readonly half: Words;
  readonly risky: boolean;
}

type TypedWords = [title: PlainMessage, extent: PlainMessage, forS: Seconds];

const rung = (risky: boolean, step: TypedWords, half: TypedWords): Rung => ({
  ...{ step: words(step), half: words(half), risky },
});

function words([title, extent, forS]: TypedWords): Words {
  return { title, extent, forS };
}

// From the least to the most; a half-way is less of the same thing: less of the place, less pressure or less time.
const RUNGS: Readonly<Record<HandledArea, readonly Rung[]>> = {
  ears: [
    rung(
      true,
      ['Hand beside the ear', 'an open hand, a palm away from the ear', 0],
      ['Hand at the shoulder', 'an open hand beside the shoulder', 0],
    ),
    rung(
      true,
      ['Touch the ear', 'two fingers on the outside of the ear', 0],
      ['Touch the cheek', 'two fingers on the cheek below the ear', 0],
    ),
    rung(
      true,
      ['Stroke the ear 2 s', 'from the root of the ear to its tip, outside', 2],
      ['Finger on the ear root 1 s', 'one finger rests where the ear begins', 1],
    ),
    rung(
      true,
      ['Lift the ear flap 2 s', 'the flap is folded back, nothing else', 2],
      ['Lift the flap a little 1 s', 'the flap is raised a finger high', 1],
    ),
    rung(
      true,
      ['Look into the ear 4 s', 'the flap folded back, you look from the side', 4],
      ['Fold the flap back 2 s', 'the flap folded back, you look away', 2],
    ),
    rung(
      true,
      ['Pad on the ear rim 3 s', 'a dry pad rests on the rim of the flap', 3],
      ['Pad beside the ear 2 s', 'a dry pad is held beside the ear', 2],
    ),
    rung(
      true,
      ['Wipe the inside of the flap 4 s', 'slow strokes on the flap alone', 4],
      ['One wipe of the flap', 'one slow stroke on the flap alone', 1],
    ),
  ],
  eyes: [
    rung(
      true,
      ['Hand beside the cheek', 'an open hand comes from the side, below the eye', 0],
      ['Hand at the neck', 'an open hand beside the neck', 0],
    ),
    rung(
      true,
      ['Touch the cheekbone', 'one finger on the bone below the eye', 0],
      ['Touch the cheek', 'one finger on the cheek, a hand below the eye', 0],
    ),
    rung(
      true,
      ['Thumb on the brow 2 s', 'the thumb rests on the brow, the hand behind the eye', 2],
      ['Finger behind the eye 1 s', 'one finger rests behind the eye', 1],
    ),
    rung(
      true,
      ['Draw the lower lid 1 s', 'the thumb draws the lower lid down a little', 1],
      ['Thumb below the lid', 'the thumb rests below the lower lid and does not draw', 1],
    ),
    rung(
      true,
      ['Wipe the corner of the eye', 'a damp pad wipes outward from the corner', 2],
      ['Pad on the cheekbone', 'a damp pad rests on the bone below the eye', 1],
    ),
    rung(
      true,
      ['Closed bottle above the eye 3 s', 'a closed bottle is held a hand above the eye', 3],
      ['Closed bottle at the cheek 2 s', 'a closed bottle is held beside the cheek', 2],
    ),
    rung(
      true,
      ['Hold as for drops 4 s', 'lid drawn, closed bottle above, nothing drips', 4],
      ['Hold as for drops 2 s', 'lid drawn, closed bottle above, nothing drips', 2],
    ),
  ],
  mouth: [
    rung(
      true,
      ['Hand under the chin 1 s', 'the palm comes from below and rests', 1],
      ['Hand near the chin', 'the palm comes from below and stays off', 0],
    ),
    rung(
      true,
      ['Touch the lip', 'one finger on the side of the upper lip', 0],
      ['Touch the cheek', 'one finger on the cheek', 0],
    ),
    rung(
      true,
      ['Lift the lip 1 s', 'one side, until a tooth shows', 1],
      ['Slide the lip', 'one finger moves the lip, no tooth shows', 0],
    ),
    rung(
      true,
      ['Look at the teeth 3 s', 'one side, the lip raised to the back teeth', 3],
      ['Look at one tooth 2 s', 'one side, the lip raised at the front', 2],
    ),
    rung(
      true,
      ['Finger along the gum 3 s', 'outside of the teeth, one side', 3],
      ['Finger on one tooth 1 s', 'outside of the front teeth', 1],
    ),
    rung(
      true,
      ['Brush on one tooth 2 s', 'a soft brush rests on one tooth and does not move', 2],
      ['Brush at the lip 1 s', 'a soft brush rests on the closed lip', 1],
    ),
    rung(
      true,
      ['Brush the side teeth 5 s', 'the outside of the teeth, one side', 5],
      ['Brush two teeth 2 s', 'the outside of two teeth', 2],
    ),
  ],
  paws: [
    rung(
      true,
      ['Touch the top of the paw', 'two fingers on the top of a front paw', 0],
      ['Touch the leg', 'two fingers on the leg, a hand above the paw', 0],
    ),
    rung(
      true,
      ['Hand on the paw 2 s', 'the palm rests on the paw, no grip', 2],
      ['Hand on the paw 1 s', 'the palm rests on the paw, no grip', 1],
    ),
    rung(
      true,
      ['Lift the paw 2 s', 'the paw lies on your fingers, a finger high', 2],
      ['Fingers under the paw', 'fingers under the paw, not lifting', 1],
    ),
    rung(
      true,
      ['Between the toes 3 s', 'a finger moves between two toes', 3],
      ['Along the pad 1 s', 'a finger along the edge of the pad', 1],
    ),
    rung(
      true,
      ['Steady one claw 3 s', 'thumb and finger steady one claw, no pressure', 3],
      ['Touch one claw', 'one fingertip on one claw', 1],
    ),
    rung(
      true,
      ['File on the claw 3 s', 'the file rests on the claw and does not move', 3],
      ['File beside the paw 2 s', 'the file lies beside the paw', 2],
    ),
    rung(
      true,
      ['One stroke of the file', 'one light stroke on the steadied claw', 3],
      ['File moved once beside the claw', 'the stroke is made beside the claw', 2],
    ),
  ],
  'collar-and-neck': [
    rung(
      false,
      ['Hand at the neck', 'an open hand beside the neck', 0],
      ['Hand at the shoulder', 'an open hand beside the shoulder', 0],
    ),
    rung(
      false,
      ['Touch the collar', 'two fingers on the collar from the side', 0],
      ['Touch the shoulder', 'two fingers on the shoulder', 0],
    ),
    rung(
      true,
      ['Finger under the collar 2 s', 'one finger between collar and neck', 2],
      ['Hand on the collar 1 s', 'the palm rests on the collar', 1],
    ),
    rung(true, ['Turn the collar 3 s', 'a quarter turn, no pull', 3], ['Move the collar 1 s', 'a finger wide, no pull', 1]),
    rung(
      false,
      ['Clip a lead on', 'the lead is clipped on and off', 3],
      ['Touch the ring with the clip', 'the clip touches the ring and leaves', 1],
    ),
    rung(true, ['Hold the collar 5 s', 'two fingers hold, no pull', 5], ['Hold the collar 2 s', 'two fingers hold, no pull', 2]),
    rung(
      true,
      ['Fold of skin 4 s', 'a soft fold of skin between two fingers, as for a jab', 4],
      ['Part the coat 2 s', 'two fingers part the coat at the neck', 2],
    ),
  ],
  'coat-and-tail': [
    rung(
      false,
      ['Hand on the shoulder 1 s', 'the palm rests on the shoulder', 1],
      ['Hand beside the shoulder', 'an open hand beside the shoulder', 0],
    ),
    rung(
      true,
      ['Stroke along the back 3 s', 'the palm from shoulder to hip', 3],
      ['Stroke the shoulder 1 s', 'the palm a hand wide along the shoulder', 1],
    ),
    rung(
      false,
      ['Brush on the back 2 s', 'the brush rests on the back and does not move', 2],
      ['Brush beside the back 1 s', 'the brush is held beside the back', 1],
    ),
    rung(
      true,
      ['One stroke of the brush', 'from shoulder to hip, light', 2],
      ['Short stroke of the brush', 'a hand wide, at the shoulder', 1],
    ),
    rung(true, ['Brush the thigh 4 s', 'slow strokes, light', 4], ['Hand on the thigh 2 s', 'the palm rests on the thigh', 2]),
    rung(
      true,
      ['Hand at the tail root 2 s', 'the palm rests where the tail begins', 2],
      ['Hand on the hip 1 s', 'the palm rests on the hip', 1],
    ),
    rung(
      true,
      ['Raise the tail 2 s', 'a hand wide, from below, no pull', 2],
      ['Hand under the tail 1 s', 'the tail lies on the palm, not raised', 1],
    ),
    rung(
      true,
      ['Comb the tail 5 s', 'from the tip inward, never pulling', 5],
      ['Comb the tip 2 s', 'the last hand of the tail alone', 2],
    ),
  ],
};

/** The ladder for one position and one place: holding still first, then handling. The same every time. */
export function readyLadder(position: Position, area: HandledArea): readonly Step[] {
  return [...HOLDS_S.map((s) => holdStep(position, s)), ...RUNGS[area].map((each, i) => handlingStep(area, each, i + 1))];
}

function holdStep(position: Position, holdForS: Seconds): DurationStep {
  const { short } = positionWords(position);
  return {
    kind: 'duration',
    id: `hold-${holdForS}`,
    title:
      holdForS === 0
        ? t('{position}, paid at once', { position: short })
        : t('{position} {n} s', { position: short, n: holdForS }),
    holdForS,
  };
}

function handlingStep(area: HandledArea, { step, half, risky }: Rung, n: number): HandlingStep {
  return {
    kind: 'handling',
    id: `${area}-${n}`,
    area,
    ...spoken(step),
    halfway: spoken(half),
    ...(risky ? { caution: cautionFor(area) } : {}),
  };
}

/** A ready plan, to be kept as it is or changed. */
export function readyPlan(id: string, dogId: string, position: Position, area: HandledArea): Plan {
  const { inTitle, position: does } = positionWords(position);
  return { id, dogId, title: `${areaName(area)}: ${inTitle}`, position: does, steps: readyLadder(position, area) };
}
