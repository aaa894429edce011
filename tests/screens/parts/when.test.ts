/** Moments and days as they are shown (between day and time browsers put what they like): by the wall clock of where it was, in the language spoken. */
import { afterEach, expect, test } from 'vitest';
import { speak } from '../../../src/core/language.ts';
import { sayDay, sayWhen, sayWhenInFull } from '../../../src/screens/parts/when.ts';

afterEach(() => speak('en'));

/** Six in the evening in New Zealand: the morning of another day nearly everywhere else. */
const EVENING = '2026-03-03T18:04:05.123+13:00';

test('a session that was held in the evening is shown in the evening, wherever it is read', () => {
  expect(sayWhen(EVENING)).toMatch(/^Tue,? 3 March\b.*\b18:04$/);
  expect(sayWhenInFull(EVENING)).toMatch(/^Tuesday,? 3 March 2026\b.*\b18:04$/);
  expect(sayDay(EVENING)).toBe('3 March 2026');
});

test('in German the day has a point and the month its German name', async () => {
  await speak('de');
  expect(sayWhen(EVENING)).toMatch(/^Di\.?, 3\. März\b.*\b18:04$/);
  expect(sayDay(EVENING)).toBe('3. März 2026');
});

test('what is no moment stands as it was written', () => {
  expect(sayDay('some day')).toBe('some day');
});
