/** Side by side: only what both practised is weighed, and a difference comes with its interval or not at all. */
import { describe, expect, test } from 'vitest';
import { calendarOf, countDays } from '../../../src/core/progress/calendar.ts';
import { compare } from '../../../src/core/progress/compare.ts';
import { csvOf } from '../../../src/core/progress/csv.ts';
import { dayOf } from '../../../src/core/progress/day.ts';
import { digest, on } from './digests.ts';

describe('comparing', () => {
  test('56 of 70 against 48 of 80 is the published interval', () => {
    const { shared, steps } = compare([digest(1, on('a', 48, 80))], [digest(2, on('a', 56, 70))]);
    // Newcombe 1998, Stat Med 17:873-890, table II, method 10 (M): .2000, .0524 to .3339.
    expect(shared.difference?.difference).toBeCloseTo(0.2, 12);
    expect(shared.difference?.interval.lower).toBeCloseTo(0.0524, 4);
    expect(shared.difference?.interval.upper).toBeCloseTo(0.3339, 4);
    expect(steps).toHaveLength(1);
  });

  test('an easier mix of steps does not look like a better dog', () => {
    const easy = on('easy', 40, 40);
    const hard = on('hard', 5, 10);
    const { shared, onlySecond, second } = compare([digest(1, hard)], [digest(2, [easy, hard])]);
    expect(second.all).toEqual({ kept: 45, of: 50 });
    expect(shared).toMatchObject({ first: { kept: 5, of: 10 }, second: { kept: 5, of: 10 }, difference: { difference: 0 } });
    expect(onlySecond).toEqual(['easy']);
  });

  test('below five trials on one side only the counts are said', () => {
    expect(compare([digest(1, on('a', 4, 4))], [digest(2, on('a', 9, 10))]).shared).toMatchObject({
      ...{ first: { kept: 4, of: 4 }, second: { kept: 9, of: 10 }, difference: null },
    });
  });

  test('turned round, the difference turns its sign', () => {
    const [a, b] = [[digest(1, on('a', 4, 10))], [digest(2, on('a', 9, 10))]];
    const [there, back] = [compare(a, b).shared.difference, compare(b, a).shared.difference];
    expect(there?.difference).toBeCloseTo(-(back?.difference ?? 0), 12);
    expect(there?.interval.lower).toBeCloseTo(-(back?.interval.upper ?? 0), 12);
  });

  test('nothing beside nothing is nothing', () => {
    expect(compare([], [])).toMatchObject({ steps: [], shared: { first: { of: 0 }, difference: null }, first: { holds: 0 } });
  });
});

test('a calendar counts rest days from the first session to today; what lies outside is neither', () => {
  // Wednesday 4 March 2026.
  const today = dayOf('2026-03-04');
  const weeks = calendarOf(
    [digest(today - 7, on('a', 5, 6)), digest(today - 6, on('a', 1, 2)), digest(today - 6, on('a', 1, 2))],
    today,
    2,
  );
  expect(weeks.map(({ days }) => days.map(({ sessions }) => sessions).join(''))).toEqual(['0012000', '0000000']);
  expect(weeks.map(({ days }) => days.filter(({ isOutside }) => isOutside).length)).toEqual([2, 4]);
  expect(countDays(weeks)).toEqual({ days: 8, practised: 2, rest: 6, sessions: 3, mostRunning: 2 });
});

describe('a spreadsheet', () => {
  test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1+1', '＋1', '－1', '＠SUM(A1)'])(
    'does not run a place called %j',
    (place) => {
      const [, row] = csvOf(['place'], [[place]]).split(/\r\n(?!=)/);
      expect(row?.replace(/^"/, '')[0]).toBe("'");
    },
  );

  test('gets numbers as numbers, nothing as nothing, and quotes doubled', () => {
    expect(csvOf(['a', 'b', 'c'], [[-1.5, null, 'say "hold", then wait']])).toBe('a,b,c\r\n-1.5,,"say ""hold"", then wait"\r\n');
  });
});
