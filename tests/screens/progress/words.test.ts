/** The sentences over the charts: a trend is claimed only where it is there, and every share has its n. */
import { expect, test } from 'vitest';
import { seriesOf, trendOf } from '../../../src/core/progress/series.ts';
import { findDays, findKept, sayHow, sayNext, sayPoint } from '../../../src/screens/progress/words.ts';
import { digest, on } from '../../core/progress/digests.ts';

const said = (kept: readonly number[]) => {
  const points = seriesOf(kept.map((k, nth) => digest(nth + 1, on('a', k, 10))));
  return findKept(points, trendOf(points));
};

test('seven sessions are no trend', () => {
  expect(said([1, 2, 3, 4, 5, 6, 7])).toContain(
    'A trend is told from 8 sessions on that may be joined; since the latest change there are 7.',
  );
});

test('eight that rise are a rise, and eight that fall a fall', () => {
  expect(said([2, 3, 4, 5, 6, 7, 8, 9])).toContain('Over the latest 8 sessions it rises, by about 10 of 100 a session.');
  expect(said([9, 8, 7, 6, 5, 4, 3, 2])).toContain('it falls, by about 10 of 100 a session.');
});

test('eight that go up and down are neither', () => {
  expect(said([5, 9, 4, 8, 5, 9, 4, 8])).toContain('No clear rise or fall over the latest 8 sessions.');
});

test('four trials are counted, not judged', () => {
  const [point] = seriesOf([digest(1, on('a', 3, 4))]);
  expect(point && sayPoint(point)).toBe('Session 1, 2 January, kitchen, with Kim. 3 of 4 trials kept; mostly a.');
});

test('what is new in a session is said with it', () => {
  const [, point] = seriesOf([digest(1, on('a', 3, 4)), digest(30, on('b', 9, 10), { place: 'garden' })]);
  expect(point && sayPoint(point)).toContain('New here: 29 days between · b · garden.');
});

test('rest days are counted beside the days of practice', () => {
  expect(findDays({ days: 14, practised: 4, rest: 10, sessions: 5, mostRunning: 2 })).toBe(
    '4 days of practice and 10 rest days in the latest 14 days. At most 2 days of practice ran without rest.',
  );
});

test('on the first day nothing is said of rest', () => {
  expect(findDays({ days: 1, practised: 1, rest: 0, sessions: 1, mostRunning: 1 })).toBe('The first day of practice.');
});

test('a new place comes with the advice to begin easy', () => {
  const next = { kind: 'try-here', title: 'Lie flat 2 s', isNew: 'place', at: { place: 'garden', handler: 'Kim' } } as const;
  expect(sayNext(next)).toBe('Try “Lie flat 2 s” in a new place: garden, with Kim.');
  expect(sayHow(next)).toContain('Begin a step or two lower');
});
