/** Kept for good: earned three times running, on two days, in two places; lost by one session below 9 in 10. */
import { array, assert, integer, property, record } from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { CHECK_AFTER_DAYS, dueOf, gridOf, nextToTry, standingOf } from '../../../src/core/progress/mastery.ts';
import { digest, on } from './digests.ts';

const LADDER = ['a', 'b', 'c'].map((id) => ({ id, title: id }));
const visit = (day: number, kept: number, of: number, place = 'kitchen') => ({ day, place, handler: 'Kim', kept, of });

describe('a step is kept for good', () => {
  test('after three sessions running at 9 in 10, on two days, once in another place', () => {
    const run = [visit(1, 9, 10), visit(1, 10, 10), visit(2, 9, 10, 'garden')];
    expect(standingOf(run)).toEqual({ kind: 'kept-for-good', since: 2, lastDay: 2 });
  });

  test.each([
    ['two sessions are not three', [visit(1, 9, 10), visit(2, 9, 10, 'garden')], [2, 2, 2]],
    ['one place is not two', [visit(1, 9, 10), visit(2, 9, 10), visit(3, 9, 10)], [3, 3, 1]],
    ['one day is not two', [visit(1, 9, 10), visit(1, 9, 10), visit(1, 9, 10, 'garden')], [3, 1, 2]],
    ['8 of 9 is below 9 in 10', [visit(1, 9, 10), visit(2, 9, 10, 'garden'), visit(3, 8, 9)], [0, 0, 0]],
    ['four kept of four prove nothing', [visit(1, 9, 10), visit(2, 9, 10, 'garden'), visit(3, 4, 4)], [2, 2, 2]],
    ['the count begins afresh', [visit(1, 9, 10), visit(2, 5, 10), visit(3, 9, 10, 'garden'), visit(4, 9, 10)], [2, 2, 2]],
  ])('not yet: %s', (_, visits, [running, days, places]) => {
    expect(standingOf(visits)).toEqual({ kind: 'on-the-way', running, days, places });
  });

  test('until a session falls below 9 in 10', () => {
    const run = [visit(1, 9, 10), visit(2, 10, 10), visit(3, 9, 10, 'garden')];
    expect(standingOf([...run, visit(9, 9, 10)])).toMatchObject({ kind: 'kept-for-good', since: 3, lastDay: 9 });
    expect(standingOf([...run, visit(9, 3, 4)]).kind).toBe('on-the-way');
  });

  test('one more kept trial never takes it away', () => {
    const visits = array(
      record({ day: integer({ min: 1, max: 9 }), kept: integer({ min: 0, max: 10 }), place: integer({ min: 0, max: 1 }) }),
      { minLength: 1, maxLength: 8 },
    );
    assert(
      property(visits, integer({ min: 0, max: 7 }), (all, at) => {
        const worse = all.map(({ day, kept, place }) => visit(day, kept, 10, String(place)));
        const better = worse.map((one, nth) => (nth === at % worse.length ? { ...one, kept: Math.min(10, one.kept + 1) } : one));
        if (standingOf(worse).kind === 'kept-for-good') expect(standingOf(better).kind).toBe('kept-for-good');
      }),
    );
  });
});

test('a grid says where and with whom each step was tried, and where never', () => {
  const grid = gridOf(
    [digest(1, on('a', 9, 10)), digest(2, on('a', 5, 10), { place: 'garden' }), digest(3, on('b', 2, 4))],
    LADDER,
  );
  expect(grid.columns).toEqual([
    { place: 'kitchen', handler: 'Kim' },
    { place: 'garden', handler: 'Kim' },
  ]);
  expect(
    grid.rows.map(({ cells }) => cells.map((cell) => (cell.kind === 'never' ? '' : `${cell.kept}/${cell.of} ${cell.isMet}`))),
  ).toEqual([
    ['9/10 true', '5/10 false'],
    ['2/4 false', ''],
    ['', ''],
  ]);
});

const good = (day: number, step: string, under: Partial<SessionDigest> = {}) => digest(day, on(step, 10, 10), under);

test('a check is due after a month, the longest ago first', () => {
  const earn = (step: string, from: number) => [
    good(from, step),
    good(from + 1, step),
    good(from + 2, step, { place: 'garden' }),
  ];
  const grid = gridOf([...earn('a', 1), ...earn('b', 5)], LADDER);
  expect(dueOf(grid, 7 + CHECK_AFTER_DAYS - 1).map(({ title }) => title)).toEqual(['a']);
  expect(dueOf(grid, 7 + CHECK_AFTER_DAYS).map(({ title, days }) => [title, days])).toEqual([
    ['a', CHECK_AFTER_DAYS + 4],
    ['b', CHECK_AFTER_DAYS],
  ]);
  expect(nextToTry(grid, 100)).toEqual({ kind: 'check', title: 'a', days: 97 });
});

describe('the next best thing to try', () => {
  const next = (...sessions: SessionDigest[]) => nextToTry(gridOf(sessions, LADDER), 10);

  test('before any session: begin', () => expect(next()).toEqual({ kind: 'begin' }));

  test('the easiest step that is good here, in the place where it was never tried', () =>
    expect(next(good(1, 'c'), good(2, 'b'), good(3, 'a'), good(4, 'a', { place: 'garden' }))).toEqual({
      ...{ kind: 'try-here', title: 'b', isNew: 'place', at: { place: 'garden', handler: 'Kim' } },
    }));

  test('not where something harder goes well already', () =>
    expect(next(good(1, 'a'), good(2, 'b', { place: 'garden' }))).toEqual({
      ...{ kind: 'try-here', title: 'b', isNew: 'place', at: { place: 'kitchen', handler: 'Kim' } },
    }));

  test('one thing new at a time: a new place with a new person is not advised', () =>
    expect(next(good(1, 'a'), digest(2, on('c', 1, 10), { place: 'garden', handler: 'Ro' }))).toMatchObject({ kind: 'go-on' }));

  test('a new person in the same place', () =>
    expect(next(good(1, 'a'), digest(2, on('c', 1, 10), { handler: 'Ro' }))).toMatchObject({
      kind: 'try-here',
      isNew: 'handler',
      at: { handler: 'Ro' },
    }));

  test('with one place only, another one', () =>
    expect(next(good(1, 'a'), good(2, 'a'), good(3, 'a'))).toEqual({ kind: 'another-place', title: 'a', knownPlace: 'kitchen' }));

  test('not the lowest step again where half of it lifted: it is too big there', () => {
    const lifted = digest(3, on('a', 5, 10), { place: 'garden' });
    expect(next(good(1, 'a'), lifted)).toMatchObject({
      ...{ kind: 'too-big', title: 'a', at: { place: 'garden' }, better: { place: 'kitchen' } },
    });
    expect(next(digest(1, on('a', 2, 10)))).toMatchObject({ kind: 'too-big', at: { place: 'kitchen' }, better: null });
    expect(next(digest(1, on('a', 6, 10)))).toEqual({ kind: 'go-on', title: 'a', isPractised: true });
  });

  test('on a higher step that lifted it is the step itself: the next session begins lower of its own accord', () =>
    expect(next(digest(1, on('a', 9, 10)), digest(2, on('b', 2, 10)))).toEqual({ kind: 'go-on', title: 'b', isPractised: true }));

  test('else the step that is under way, not one that was left behind', () =>
    expect(next(digest(1, on('a', 5, 10)), digest(2, on('b', 5, 10)))).toEqual({ kind: 'go-on', title: 'b', isPractised: true }));

  test('never a step that was taken out of the ladder', () =>
    expect(next(digest(1, on('a', 9, 10)), digest(2, on('taken out', 5, 10)))).toEqual({
      ...{ kind: 'go-on', title: 'a', isPractised: true },
    }));

  test('nor is a step that was taken out sent to another place', () =>
    expect(next(digest(1, on('taken out', 9, 10)), digest(2, on('a', 5, 10), { place: 'garden' }))).toMatchObject({
      ...{ kind: 'too-big', title: 'a' },
    }));

  test('and the next on the ladder, not practised yet, once all below is kept for good', () => {
    const sessions = [1, 3, 5, 8, 10].flatMap((day) => [
      digest(day, on('a', 10, 10)),
      digest(day, on('a', 10, 10), { place: 'garden' }),
      digest(day, on('a', 10, 10), { handler: 'Ro' }),
      digest(day, on('a', 10, 10), { handler: 'Ro', place: 'garden' }),
    ]);
    expect(next(...sessions)).toEqual({ kind: 'go-on', title: 'b', isPractised: false });
  });
});

test('an easy step is not sent to a place where a harder one was done already', () => {
  const home = [digest(1, on('a', 9, 10)), digest(2, on('b', 9, 10)), digest(3, on('c', 9, 10))];
  const garden = { place: 'garden' };
  const never = nextToTry(gridOf([...home, digest(4, on('b', 9, 10), garden)], LADDER), 5);
  expect(never).toMatchObject({ kind: 'try-here', title: 'c', at: { place: 'garden' } });
});
