/**
 * Ten dogs on a trainer's desk, each written down with what a trainer would say of it, and the order in which they would be called.
 * P throughout: common practice, no published source; the figures are invented.
 */
import { describe, expect, test } from 'vitest';
import { deskOf } from '../../../src/core/desk/desk.ts';
import type { DeskDog } from '../../../src/core/desk/dogs.ts';
import type { Need } from '../../../src/core/desk/needs.ts';
import type { SessionDigest, StepDigest } from '../../../src/core/progress/digest.ts';
import { homework } from '../handover/homework-sample.ts';
import { digest, on } from '../progress/digests.ts';

/** Monday 2 March 2026, as days since 1970 (C). */
const TODAY = 20_514;
const LADDER = ['hold-1', 'hold-3', 'hold-5', 'paw-touch', 'paw-rest', 'claw-hold', 'claw-file'];

interface Case {
  readonly name: string;
  /** What a trainer would say, and why the dog comes before the next. */
  readonly because: string;
  /** Days ago, and what was practised. Oldest first. */
  readonly sessions: readonly (readonly [daysAgo: number, ...steps: StepDigest[]])[];
  readonly under?: Partial<SessionDigest>;
  readonly needs: readonly Partial<Need>[];
}

const longer = (step: StepDigest, others: number): StepDigest => ({ ...step, others });
const each = (days: readonly number[], ...steps: StepDigest[]) => days.map((daysAgo) => [daysAgo, ...steps] as const);

const CASES: readonly Case[] = [
  {
    name: 'Biscuit',
    because:
      'He pulls the paw away that he gave before, so often that the app named the veterinarian: pain comes before all training.',
    sessions: [...each([9, 7, 5], on('paw-rest', 9, 10)), ...each([2], on('paw-rest', 3, 10))],
    under: { veterinarianFor: ['paws'] },
    needs: [{ kind: 'veterinarian', area: 'paws', sessions: 3, of: 3 }],
  },
  {
    name: 'Mona',
    because:
      'She says no more and more often, and her sessions grow long: every further one teaches her to say no. Stop it today.',
    sessions: [...each([15, 13, 11, 9], on('paw-touch', 14, 15)), ...each([6, 4, 2], longer(on('paw-rest', 16, 26), 4))],
    needs: [
      { kind: 'lifts-rising', now: { lifted: 30, of: 78, sessions: 3 }, before: { lifted: 4, of: 60, sessions: 4 } },
      { kind: 'too-many-reps', sessions: 3, of: 5, most: 30 },
    ],
  },
  {
    name: 'Tara',
    because: 'She says no more and more often, in short sessions: make the step smaller before it becomes a habit.',
    sessions: [...each([15, 13, 11, 9], on('paw-touch', 14, 15)), ...each([6, 4, 2], on('paw-rest', 8, 13))],
    needs: [{ kind: 'lifts-rising', now: { lifted: 15, of: 39, sessions: 3 }, before: { lifted: 4, of: 60, sessions: 4 } }],
  },
  {
    name: 'Lumi',
    because: 'Stuck, and her people try to solve it by practising more: both need a word, and a smaller step.',
    sessions: each([6, 5, 4, 3, 2, 1], on('paw-touch', 4, 4), on('paw-rest', 6, 10)),
    needs: [
      { kind: 'stuck', title: 'paw-rest', sessions: 6, kept: 30, of: 50 },
      { kind: 'too-many-a-week', sessions: 6, asked: 3 },
    ],
  },
  {
    name: 'Otto',
    because:
      'Six sessions on one step, half of them lifts, and no more than before: the step is too big, and only the trainer can cut it.',
    sessions: each([14, 11, 9, 7, 4, 2], on('claw-hold', 5, 10)),
    needs: [{ kind: 'stuck', title: 'claw-hold', sessions: 6, kept: 25, of: 50 }],
  },
  {
    name: 'Fips',
    because: 'It goes well, but forty reps at a time will spoil it: one sentence to his owner mends that.',
    sessions: [
      ...each([10], on('hold-1', 12, 12)),
      ...each([8], on('hold-3', 12, 12)),
      ...each([6], longer(on('hold-5', 26, 27), 2)),
      ...each([4], longer(on('paw-touch', 36, 38), 3)),
      ...each([2], longer(on('paw-rest', 30, 31), 2)),
    ],
    needs: [{ kind: 'too-many-reps', sessions: 3, of: 5, most: 41 }],
  },
  {
    name: 'Juno',
    because: 'Three sessions in one day teach less than three days with one (R): tell her people, they mean well.',
    sessions: [...each([9], on('hold-1', 9, 10)), ...each([7], on('hold-3', 9, 10)), ...each([3, 3, 3], on('hold-5', 9, 10))],
    needs: [{ kind: 'too-many-a-day', most: 3, days: 1 }],
  },
  {
    name: 'Rex',
    because: 'Six sessions where three were asked for, one a day, and going up: dogs learn well with rest between.',
    sessions: ['hold-1', 'hold-3', 'hold-5', 'paw-touch', 'paw-rest', 'claw-hold'].map((id, nth) => [6 - nth, on(id, 9, 10)]),
    needs: [{ kind: 'too-many-a-week', sessions: 6, asked: 3 }],
  },
  {
    name: 'Senta',
    because: 'Nothing for twelve days. Nothing goes wrong meanwhile, so she is asked last; a friendly question is enough.',
    sessions: [...each([16], on('hold-1', 9, 10)), ...each([14], on('hold-3', 9, 10)), ...each([12], on('hold-5', 9, 10))],
    needs: [{ kind: 'not-practised', days: 12, asked: 3, hasBegun: true }],
  },
  {
    name: 'Pepper',
    because: 'Goes up, nine in ten, every other day: nobody needs to call. Well done.',
    sessions: ['hold-1', 'hold-3', 'hold-5', 'paw-touch', 'paw-rest'].map((id, nth) => [10 - 2 * nth, on(id, 9, 10)]),
    needs: [],
  },
];

const GIVEN_DAYS_AGO = 20;
const isoDaysAgo = (days: number) => new Date(86_400_000 * (TODAY - days)).toISOString();

function deskDog(name: string, givenDaysAgo = GIVEN_DAYS_AGO): DeskDog {
  const given = homework({ id: `homework of ${name}`, givenAt: isoDaysAgo(givenDaysAgo), sessionsAWeek: 3 });
  const own = { homework: given, dogId: name, planId: `plan of ${name}` };
  return { id: name, name, owner: 'Kim', dogIds: new Set([name]), pain: '', homework: [own] };
}

const digestsOf = ({ name, sessions, under }: Case): readonly SessionDigest[] =>
  sessions.map(([daysAgo, ...steps], nth) =>
    digest(TODAY - daysAgo, steps, { id: `${name} ${nth}`, dogId: name, planId: `plan of ${name}`, ...under }),
  );

const laddersOf = (cases: readonly { readonly name: string }[]) => new Map(cases.map(({ name }) => [`plan of ${name}`, LADDER]));

function rowOf(one: Case) {
  const [row] = deskOf([deskDog(one.name)], digestsOf(one), laddersOf([one]), TODAY);
  return row;
}

describe('what a trainer would say of each', () => {
  test.each(CASES.map((one) => [one.name, one.because, one] as const))('%s: %s', (_name, _because, one) => {
    const { needs } = rowOf(one) ?? {};
    expect(needs).toHaveLength(one.needs.length);
    expect(needs).toMatchObject(one.needs);
  });
});

test('they are called in the order in which they are written above, however they come', () => {
  const names = CASES.map(({ name }) => name);
  for (const cases of [CASES, CASES.toReversed(), CASES.toSorted((a, b) => (a.name < b.name ? -1 : 1))]) {
    const dogs = cases.map(({ name }) => deskDog(name));
    const rows = deskOf(dogs, cases.flatMap(digestsOf), laddersOf(cases), TODAY);
    expect(rows.map(({ dog }) => dog.name)).toEqual(names);
  }
});

describe('nobody is called for', () => {
  const calm = (what: string, sessions: Case['sessions']) =>
    test(what, () => expect(rowOf({ name: 'Calm', because: what, sessions, needs: [] })?.needs).toEqual([]));

  calm('a ladder that is done and kept: the same top step again is how it stays', [
    ...each([9, 7, 6, 4, 2], on('claw-file', 10, 10)),
  ]);
  calm('a few lifts more on a new step: chance explains them', [
    ...each([12, 10, 8, 6], on('paw-touch', 14, 15)),
    ...each([5, 3, 1], on('paw-rest', 12, 14)),
  ]);
  calm('one long session', [...each([6, 4], on('paw-touch', 9, 10)), ...each([2], on('paw-rest', 38, 40))]);
  calm('one session more than was asked for', each([6, 4, 2, 0], on('paw-rest', 9, 10)));
  calm('a step that was met again after a break of weeks: the way up is new', [
    ...each([40, 38], on('claw-hold', 9, 10)),
    ...['hold-3', 'hold-5', 'paw-touch', 'paw-rest'].flatMap((id, nth) => each([8 - 2 * nth], on(id, 9, 10))),
  ]);
});

test('homework that nobody began is asked about after a week, and who has waited longer comes first', () => {
  const dogs = [deskDog('Eight', 8), deskDog('Six', 6), deskDog('Nine', 9)];
  const rows = deskOf(dogs, [], new Map(), TODAY);
  expect(rows.map(({ dog, needs }) => [dog.name, ...needs])).toEqual([
    ['Nine', { kind: 'not-practised', days: 9, asked: 3, hasBegun: false }],
    ['Eight', { kind: 'not-practised', days: 8, asked: 3, hasBegun: false }],
    ['Six'],
  ]);
});

test('an answer begins the waiting anew', () => {
  const [row] = deskOf(
    [deskDog('Answered', 3)],
    [digest(TODAY - 20, on('hold-1', 9, 10), { dogId: 'Answered' })],
    new Map(),
    TODAY,
  );
  expect(row?.needs).toEqual([]);
});
