/** One session, boiled down: nothing is lost that a trainer counts, and a warm-up counts nowhere. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { LONG, open, say, sessionStart, type } from '../../../demo/typed-session.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import { dayOf, isoDay, mondayOf, sayDay, weekdayOf } from '../../../src/core/progress/day.ts';
import { countsOf, digestOf } from '../../../src/core/progress/digest.ts';
import { tally } from '../../../src/core/summary.ts';

const begin = () => open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: 'hold-3' }, LONG));

test('every rep of a session lies in exactly one heap', () => {
  const { state } = type(begin(), 'kk kksvkkk kll nk');
  const { steps } = digestOf(state);
  const heaps = steps.map((step) => [step.keptForS, step.liftedAfterS, step.shortForS].flat().length + step.void + step.warmUps);
  expect(heaps.reduce((sum, n) => sum + n, 0)).toBe(state.reps.length);
  const { kept, trials } = tally(state.reps);
  expect(countsOf(steps)).toEqual({ kept, trials });
});

test('a warm-up is told apart, and is no trial of its step', () => {
  const [warmUp, three] = digestOf(type(begin(), 'kl kks').state).steps;
  expect(warmUp).toMatchObject({ stepId: 'hold-2', warmUps: 2, keptForS: [], liftedAfterS: [] });
  expect(three).toMatchObject({ stepId: 'hold-3', criterionS: 3, area: 'position', warmUps: 0 });
  expect(three?.keptForS).toHaveLength(2);
  expect(three?.shortForS).toHaveLength(1);
});

test('a pause is no practice', () => {
  const played = type(begin(), 'kk');
  const paused = say(say(played, 'pause', 60), 'resume', 360);
  expect(digestOf(paused.state).practisedForS).toBeLessThan(65);
});

test('a session late in the evening belongs to that evening, whatever the clock in Greenwich says', () => {
  expect(isoDay(dayOf('2026-03-02T23:30:00.000-08:00'))).toBe('2026-03-02');
  expect(isoDay(dayOf('2026-03-03T00:30:00.000+13:00'))).toBe('2026-03-03');
});

// 2 March 2026 is a Monday (C, by Zeller's congruence).
test('a week begins on Monday', () => {
  const monday = dayOf('2026-03-02');
  expect([0, 1, 6, 7].map((days) => weekdayOf(monday + days))).toEqual([0, 1, 6, 0]);
  expect(mondayOf(monday + 6)).toBe(monday);
  expect(mondayOf(monday - 1)).toBe(monday - 7);
  expect(sayDay(monday)).toBe('2 Mar');
});
