/** Invented sessions for a screen that has nothing to show yet: one dog, two places, two people, three steps. */
import { type Message, t } from '../../core/language.ts';
import type { SessionDigest, StepDigest } from '../../core/progress/digest.ts';
import { STEADY } from '../../core/rule.ts';

/** 5 January 2026, a Monday. */
const FIRST_DAY = 20_458;

/** Days after the first, the step's seconds, kept, lifted, where, with whom. */
const SESSIONS = [
  [0, 2, 6, 4, 'bathroom', 'you'],
  [2, 2, 8, 2, 'bathroom', 'you'],
  [3, 2, 9, 1, 'bathroom', 'you'],
  [6, 2, 10, 0, 'bathroom', 'you'],
  [8, 2, 9, 1, 'garden', 'you'],
  [9, 4, 5, 5, 'bathroom', 'you'],
  [13, 4, 7, 3, 'bathroom', 'you'],
  [15, 4, 3, 1, 'bathroom', 'a friend'],
  [33, 4, 8, 2, 'bathroom', 'you'],
  [35, 4, 9, 1, 'bathroom', 'you'],
  [36, 4, 10, 0, 'bathroom', 'you'],
  [38, 4, 12, 1, 'bathroom', 'you'],
] as const satisfies readonly (readonly [
  day: number,
  holdForS: number,
  kept: number,
  lifted: number,
  place: Message,
  who: Message,
])[];

export const INVENTED_TODAY = FIRST_DAY + 39;

export const inventedLadder = () => [2, 4].map((holdForS) => ({ id: `lie-flat-${holdForS}`, title: titleOf(holdForS) }));

const titleOf = (n: number): string => t('Lie flat {n} s', { n });

export function inventedDigests(): readonly SessionDigest[] {
  return SESSIONS.map(([after, holdForS, kept, lifted, place, handler], nth) => ({
    ...{
      id: `invented-${nth}`,
      dogId: 'invented',
      planId: 'invented',
      planTitle: t('File one claw'),
      rule: STEADY,
      handler: t(handler),
      place: t(place),
    },
    ...{ startedAt: '2026-01-05T18:00:00.000Z', atMs: 0, day: FIRST_DAY + after, steps: [stepOf(holdForS, kept, lifted)] },
    veterinarianFor: [],
  }));
}

function stepOf(holdForS: number, kept: number, lifted: number): StepDigest {
  return {
    ...{ stepId: `lie-flat-${holdForS}`, title: titleOf(holdForS), area: 'position', criterionS: holdForS },
    ...{ kept, lifted, others: 2, spanS: (kept + lifted) * (holdForS + 6) },
    markedS: Array.from({ length: kept }, (_, n) => holdForS + 0.1 + 0.05 * n),
    liftedS: Array.from({ length: lifted }, (_, n) => holdForS * (0.3 + 0.13 * n)),
  };
}
