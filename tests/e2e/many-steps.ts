/** A dog with forty steps, most of them kept for good, and everything that can be written of a dog at its longest: what a card must find room for. */
import { events, open, type Played, say } from '../../demo/typed-session.ts';
import type { Dog, Draft, LibraryEvent, Settings, StoredEvent } from '../../src/core/event.ts';
import type { ExamPlan } from '../../src/core/exam/exam.ts';
import { stepsOf } from '../../src/core/exam/exam-steps.ts';
import { USUAL_LIMITS } from '../../src/core/limits.ts';
import { NOTHING_CARRIED } from '../../src/core/next-start.ts';
import type { HandlingStep, Plan } from '../../src/core/plan.ts';
import { USUAL_SETTINGS } from '../../src/core/settings.ts';
import { exportText } from '../../src/store/export.ts';

const AREAS = ['ears', 'eyes', 'mouth', 'paws'] as const;
const PLACES = ['the kitchen by the window', 'the back of the car', 'the waiting room of the practice', 'a friend’s garden'];
const TEXT = 'She licks her nose twice, then turns her head slowly away and shifts her weight back. ';

/** How much there is to say of the dog. */
export interface Much {
  /** Places of the body, 1 to 4, each with a plan of its own. */
  readonly areas: number;
  readonly steps: number;
  /** Of the steps of each plan so many are kept for good. */
  readonly kept: number;
  /** Of each of the five texts. */
  readonly letters: number;
}

export const MOST: Much = { areas: 4, steps: 10, kept: 6, letters: 1700 };

const dogWith = (letters: number): Dog => {
  const text = TEXT.repeat(20).slice(0, letters).trim();
  return {
    ...{ id: 'many', name: 'Bramble the Second of Long Meadow', notes: '', invented: true, weightKg: 20, kcalPerTreat: 3 },
    ...{ signs: text, pain: text, advice: text, food: text, scares: text },
    callWhom: 'The invented handler on 555 0100, or the invented neighbour on 555 0101, at any hour of the day',
  };
};
const DOG = dogWith(MOST.letters);

type LongPlan = Omit<Plan, 'steps'> & { readonly steps: readonly HandlingStep[] };

const planOf = (area: HandlingStep['area'], steps: number): LongPlan => ({
  ...{ id: `many-${area}`, dogId: DOG.id, title: `All about the ${area}` },
  position: `Chin resting on the rolled towel at the edge of the table, for the ${area} and whatever is near`,
  steps: Array.from(
    { length: steps },
    (_, n): HandlingStep => ({
      ...{ kind: 'handling', id: `${area}-${n}`, area, forS: n },
      title: `Hold the ${area} between two fingers, part ${n + 1} of a long name`,
      extent: `as far as part ${n + 1}`,
      caution: 'Ask your veterinarian when it hurts.',
    }),
  ),
});

/** Words as long as they can be, typed for the browser's recogniser. */
const SETTINGS: Settings = {
  ...USUAL_SETTINGS,
  platformEar: {
    ...{ on: true, mayLeave: false, language: 'en-GB' },
    sayings: {
      hold: ['down with your lovely chin', 'chin on the rolled towel'],
      mark: ['what a good dog you are'],
      lifted: ['oh you came up again'],
    },
  },
};

/** An examination that was held, with one thing that was refused. */
const EXAM: ExamPlan = {
  ...{ id: 'many-exam', dogId: DOG.id, date: '2026-01-20', place: '' },
  items: ['Look into the left ear with the lamp', 'Look into the right ear with the lamp'].map((what, n) => ({
    ...{ id: `item-${n}`, area: 'ears', what, forS: 10 },
  })),
};

/** Three sessions of ten on every step, at three places, as a copy from another device. */
export function manySteps({ areas, steps, kept, letters }: Much = MOST): string {
  const plans = AREAS.slice(0, areas).map((area) => planOf(area, steps));
  const library: readonly Draft<LibraryEvent>[] = [
    { type: 'dog-saved', body: dogWith(letters) },
    ...[...plans, planOf('coat-and-tail', steps)].map((body) => ({ type: 'plan-saved', body }) as const),
    { type: 'exam-planned', body: EXAM },
    { type: 'settings-saved', body: SETTINGS },
  ];
  const all = library.map((draft, nth) => ({
    ...{ id: `many:${nth + 1}`, device: 'many', seq: nth + 1, session: null, version: 1 },
    ...{ at: '2026-01-01T10:00:00.000+01:00', monoMs: nth },
    ...draft,
  })) as StoredEvent[];
  for (const [nth, day] of [10, 11, 12].entries())
    for (const one of plans)
      for (const [at, step] of one.steps.entries())
        all.push(...session(one, step, day, PLACES[nth] ?? '', all.length + 1, at < kept ? 10 : 6));
  all.push(...examination(all.length + 1));
  return exportText({ events: all, damaged: [] }, '2026-03-01T10:00:00.000+01:00');
}

function session(
  one: Plan,
  step: HandlingStep,
  day: number,
  place: string,
  seq: number,
  keptOf10: number,
): readonly StoredEvent[] {
  let played = open(
    {
      ...{ dogId: DOG.id, dogName: DOG.name, planId: one.id, planTitle: one.title, position: one.position, steps: [step] },
      ...{ startStepId: step.id, carried: NOTHING_CARRIED, rule: 'steady', limits: USUAL_LIMITS, handler: 'me', place },
    },
    { device: 'many', seq, session: `many-${step.id}-${day}`, at: `2026-01-${day}T18:00:00.000+01:00` },
  );
  for (let n = 0; n < 10; n++) played = rep(played, n < keptOf10 ? 'mark' : 'lifted', step.forS + 0.5);
  return events(say(played, 'finish', played.atS + 2));
}

function examination(seq: number): readonly StoredEvent[] {
  const steps = stepsOf(EXAM);
  const played = open(
    {
      ...{ kind: 'exam', dogId: DOG.id, dogName: DOG.name, planId: EXAM.id, planTitle: 'Examination', position: '', steps },
      ...{ startStepId: 'item-0', carried: NOTHING_CARRIED, rule: 'steady', limits: USUAL_LIMITS, handler: 'me', place: '' },
    },
    { device: 'many', seq, session: 'many-exam-held', at: '2026-01-20T10:00:00.000+01:00' },
  );
  const first = rep(played, 'mark', 8);
  const second = rep(say(first, 'harder', first.atS + 2), 'lifted', 3);
  return events(say(second, 'finish', second.atS + 2));
}

function rep(played: Played, end: 'mark' | 'lifted', heldS: number): Played {
  const holding = say({ ...played, atS: played.atS + 4 }, 'hold');
  return say(holding, end, holding.atS + heldS);
}
