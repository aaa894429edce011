/** The card for the examiner: what it tells of a dog equals what was practised, with its counts, and nothing is left unsaid. */
import { array, assert, constantFrom, integer, property, record } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { type Card, cardOf } from '../../../src/core/card/card.ts';
import { forPaper, MOST_LINES, sizeFor } from '../../../src/core/card/condense.ts';
import { foldLibrary, type Library } from '../../../src/core/library.ts';
import type { Plan } from '../../../src/core/plan.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { digest, on } from '../progress/digests.ts';

const LIBRARY: Library = { ...foldLibrary([]), dogs: [DEMO_DOG], plans: [DEMO_PLAN] };
const of = (day: number, step: string, kept: number, all: number, place = 'kitchen') =>
  digest(
    day,
    { ...on(step, kept, all), area: step.startsWith('hold') ? 'position' : 'paws' },
    { dogId: DEMO_DOG.id, planId: DEMO_PLAN.id, place, id: `${day}${step}` },
  );
const card = (digests: readonly SessionDigest[], more: Partial<Parameters<typeof cardOf>[0]> = {}): Card =>
  cardOf({ dog: DEMO_DOG, library: LIBRARY, digests, exams: [], today: 100, ...more });
const titles = ({ kept, notYet }: Card) => [kept, notYet].map(({ lines }) => lines.map(({ stepId }) => stepId));

test('a dog with nothing practised gets an honest card: nothing kept, what its plan would be, what no plan has', () => {
  const empty = card([]);
  expect(empty).toMatchObject({ practised: null, exam: null, positions: ['Lying on her side on the bath mat'] });
  expect(titles(empty)).toEqual([[], []]);
  expect(empty.never).toEqual([
    { area: 'position', n: 6 },
    { area: 'paws', n: 5 },
  ]);
  expect(empty.unplanned).toEqual(['ears', 'eyes', 'mouth', 'collar-and-neck', 'coat-and-tail']);
  expect(empty.words).toEqual({ hold: [], mark: [], lifted: [] });
});

describe('a line of the card', () => {
  test('has the counts, days and places of the latest three sessions, and when the last one was', () => {
    const { kept } = card([
      of(1, 'hold-5', 2, 10),
      ...[2, 3].map((day) => of(day, 'hold-5', 9, 10)),
      of(4, 'hold-5', 10, 10, 'car'),
    ]);
    expect(kept.lines).toMatchObject([
      {
        stepId: 'hold-5',
        evidence: { kept: 28, of: 30, sessions: 3, days: 3, lastDay: 4, keptIn: ['kitchen', 'car'], triedIn: [] },
      },
    ]);
  });

  test('names a place as kept only while its latest session there that can tell was at 9 in 10', () => {
    const { notYet } = card([of(1, 'hold-5', 9, 10), of(2, 'hold-5', 5, 10, 'park'), of(3, 'hold-5', 4, 4, 'car')]);
    expect(notYet.lines[0]?.evidence).toMatchObject({ keptIn: ['kitchen'], triedIn: ['park', 'car'] });
  });

  test('stands under “not yet” until the step is kept for good', () => {
    const twice = [of(1, 'hold-5', 10, 10), of(2, 'hold-5', 10, 10, 'car')];
    expect(titles(card(twice))).toEqual([[], ['hold-5']]);
    expect(titles(card([...twice, of(3, 'hold-5', 9, 10)]))).toEqual([['hold-5'], []]);
    expect(titles(card([...twice, of(3, 'hold-5', 9, 10), of(4, 'hold-5', 4, 10)]))).toEqual([[], ['hold-5']]);
  });

  test('is not made of warm-ups: a step without a trial was never tried', () => {
    const warm = digest(1, { ...on('hold-1', 0, 0), others: 2 }, { dogId: DEMO_DOG.id, planId: DEMO_PLAN.id });
    expect(titles(card([warm]))).toEqual([[], []]);
  });

  test('of a plan that came back with homework under another dog’s record is told with its ladder', () => {
    const plans = [{ ...DEMO_PLAN, id: 'back', dogId: 'her record there' }];
    const back = card([{ ...of(1, 'hold-5', 9, 10), planId: 'back' }], { library: { ...LIBRARY, plans } });
    expect(back.notYet.lines.map(({ title }) => title)).toEqual(['Lie flat 5 s']);
    expect(back.positions).toEqual([DEMO_PLAN.position]);
  });

  test('is made of this dog alone', () => expect(card([{ ...of(1, 'hold-5', 9, 10), dogId: 'another' }]).practised).toBeNull());

  test('of a step that is on the plan no more is told all the same, and half steps are left out', () => {
    const half = {
      kind: 'duration',
      id: 'h',
      title: 'h',
      holdForS: 1.5,
      halfOf: { belowId: 'hold-1', aboveId: 'hold-2' },
    } as const;
    const plan: Plan = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.toSpliced(2, 0, half) };
    const digests = [of(1, 'h', 9, 10), of(2, 'gone', 9, 10)];
    expect(titles(card(digests, { library: { ...LIBRARY, plans: [plan] } }))).toEqual([[], ['gone']]);
  });
});

test('the words are those that this handler taught, each once', () => {
  const take = (id: string, word: string, said: string, handler = 'me') => ({
    ...{ id, word, said, handler, sampleRateHz: 16_000, samples: new Int16Array(1) },
  });
  const sounds = [
    take('1', 'hold', 'chin'),
    take('2', 'hold', 'chin'),
    take('3', 'lifted', 'up'),
    take('4', 'hold', 'kinn', 'Sam'),
  ];
  expect(card([], { library: { ...LIBRARY, sounds } }).words).toEqual({ hold: ['chin'], mark: [], lifted: ['up'] });
});

test('the latest examination is told as it went: done, not done, and what was never begun', () => {
  const exam = digest(
    9,
    [
      { ...on('ear', 1, 2), title: 'look' },
      { ...on('paw', 0, 2), title: 'lift' },
    ],
    {
      ...{ dogId: DEMO_DOG.id, planId: 'e', kind: 'exam' },
    },
  );
  const items = ['ear', 'paw', 'eye'].map((id) => ({ id, area: 'ears' as const, what: id, forS: 1 }));
  const exams = [{ id: 'e', dogId: DEMO_DOG.id, date: '1970-01-10', place: '', items }];
  const told = card([], { exams: [exam], library: { ...LIBRARY, exams } });
  expect(told.exam).toEqual({ day: 9, done: ['look'], lifted: ['lift'], of: 3 });
  const before = [{ ...exam, day: 8 }];
  expect(card([], { exams: before, library: { ...LIBRARY, exams } }).exam, 'before its day it was a rehearsal').toBeNull();
  expect(told.practised, 'an examination is no training').toBeNull();
});

/** Forty steps at four places of the body. */
const AREAS = ['paws', 'ears', 'mouth', 'eyes'] as const;
const LONG: Plan = {
  ...DEMO_PLAN,
  steps: Array.from({ length: 40 }, (_, n) => ({
    ...{ kind: 'handling', id: `s${n}`, title: `Step ${n}`, extent: `${n}`, forS: 1 },
    area: AREAS[Math.floor(n / 10)] as (typeof AREAS)[number],
  })),
};
const long = (steps: readonly number[], kept = 10) =>
  steps.flatMap((n) =>
    [1, 2, 3].map((day) =>
      digest(
        day,
        { ...on(`s${n}`, kept, 10), area: AREAS[Math.floor(n / 10)] as (typeof AREAS)[number] },
        {
          ...{ dogId: DEMO_DOG.id, planId: LONG.id, place: day === 3 ? 'car' : 'kitchen', id: `${day} ${n}` },
        },
      ),
    ),
  );
const ALL = Array.from({ length: 40 }, (_, n) => n);

test('forty steps become six lines: the hardest of every place in turn, the others by their number', () => {
  const { kept } = card(long(ALL), { library: { ...LIBRARY, plans: [LONG] } });
  expect(kept.lines.map(({ stepId }) => stepId)).toEqual(['s8', 's9', 's18', 's19', 's29', 's39']);
  expect(kept.more).toEqual([
    { area: 'ears', n: 8 },
    { area: 'eyes', n: 9 },
    { area: 'mouth', n: 9 },
    { area: 'paws', n: 8 },
  ]);
});

test('every step that was tried is told once, as a line or by its number, and every other one as never tried', () => {
  const session = record({
    n: integer({ min: 0, max: 39 }),
    kept: integer({ min: 0, max: 10 }),
    day: integer({ min: 1, max: 9 }),
    place: constantFrom('a', 'b'),
  });
  assert(
    property(array(session, { maxLength: 60 }), (sessions) => {
      const digests = sessions.map(({ n, kept, day, place }, nth) =>
        digest(day, on(`s${n}`, kept, 10), { dogId: DEMO_DOG.id, planId: LONG.id, place, id: String(nth) }),
      );
      const { kept, notYet, never } = card(digests, { library: { ...LIBRARY, plans: [LONG] } });
      const sum = (counts: readonly { n: number }[]) => counts.reduce((all, { n }) => all + n, 0);
      const lines = [...kept.lines, ...notYet.lines];
      expect(new Set(lines.map(({ stepId }) => stepId)).size).toBe(lines.length);
      expect(lines.length + sum(kept.more) + sum(notYet.more)).toBe(new Set(sessions.map(({ n }) => n)).size);
      expect(lines.length + sum(kept.more) + sum(notYet.more) + sum(never)).toBe(40);
      expect(kept.lines.length).toBeLessThanOrEqual(MOST_LINES.kept);
      expect(notYet.lines.length).toBeLessThanOrEqual(MOST_LINES['not-yet']);
      for (const { evidence } of lines) {
        expect(evidence.kept).toBeLessThanOrEqual(evidence.of);
        expect(evidence.days).toBeLessThanOrEqual(evidence.sessions);
        expect(evidence.sessions).toBeLessThanOrEqual(3);
      }
      // An outline may not be told as kept: 9 in 10 of the latest sessions at the least.
      for (const { evidence } of kept.lines) expect(10 * evidence.kept).toBeGreaterThanOrEqual(9 * evidence.of);
    }),
    { seed: 20260302 },
  );
});

describe('a text on paper', () => {
  test('that fits is whole', () => expect(forPaper(' licks  her nose\n')).toEqual({ text: 'licks her nose', isCut: false }));
  test('is cut at a word, and says so', () =>
    expect(forPaper('licks her nose, then turns away', 20)).toEqual({ text: 'licks her nose,…', isCut: true }));
  test('of one endless word is cut anyway', () => expect(forPaper('a'.repeat(500), 20).text).toHaveLength(20));
});

test('a card with little on it is set larger', () => {
  expect([sizeFor(0, 0), sizeFor(3, 150), sizeFor(4, 0), sizeFor(0, 151), sizeFor(8, 500)]).toEqual([
    'large',
    'large',
    'medium',
    'medium',
    'medium',
  ]);
  expect([sizeFor(9, 0), sizeFor(0, 501)]).toEqual(['small', 'small']);
});
