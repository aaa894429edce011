/** Homework for the tests: the invented plan, handed to an invented owner. */
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import type { Homework, HomeworkReceived } from '../../../src/core/handover/homework.ts';

export const HOMEWORK: Homework = {
  ...{ id: '0b8f1c52-7ce0-4c43-8f0f-6d7f5a7fa7b1', revision: 1, givenAt: '2026-03-02T18:04:05.000+01:00' },
  ...{ trainer: 'Alex', ownerName: 'Kim', dogName: 'Pixel' },
  ...{ title: DEMO_PLAN.title, position: DEMO_PLAN.position, steps: DEMO_PLAN.steps },
  words: { hold: 'chin', mark: 'yes', lifted: 'up' },
  caution: 'Stop when she flinches at the left paw; your veterinarian looks at it on Friday.',
  sessionsAWeek: 3,
  note: 'Five minutes at most, after her walk. Pay where the head rests.',
};

export function homework(changed: Partial<Homework> = {}): Homework {
  return { ...HOMEWORK, ...changed };
}

export const received = (changed: Partial<Homework> = {}, planId = 'her-plan'): HomeworkReceived => ({
  homework: homework(changed),
  dogId: 'her-dog',
  planId,
});
