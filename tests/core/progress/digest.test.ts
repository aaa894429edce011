/** One session, boiled down: nothing is lost that a trainer counts, and a warm-up is no trial. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { LONG, open, say, sessionStart, type } from '../../../demo/typed-session.ts';
import type { Reason } from '../../../src/core/call.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import { trialsOf } from '../../../src/core/progress/choice.ts';
import { dayOf, isoDay, mondayOf, sayDayShort, weekOf } from '../../../src/core/progress/day.ts';
import { digestLog, digestOf } from '../../../src/core/progress/digest.ts';
import { tally } from '../../../src/core/summary.ts';

const begin = () => open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: 'hold-3' }, LONG));

test('every rep of a session lies in exactly one heap', () => {
  const { state } = type(begin(), 'kk kksvkkk kll nk');
  const digest = digestOf(state);
  const counted = digest.steps.map(({ kept, lifted, others }) => kept + lifted + others);
  expect(counted.reduce((sum, n) => sum + n, 0)).toBe(state.reps.length);
  const { kept, trials } = tally(state.reps);
  expect(trialsOf(digest)).toEqual({ kept, of: trials });
});

test('a warm-up is no trial, but its hold was a hold', () => {
  const [warmUp, three] = digestOf(type(begin(), 'kl kks').state).steps;
  expect(warmUp).toMatchObject({ stepId: 'hold-2', kept: 0, lifted: 0, others: 2, markedS: [2.5], liftedS: [1] });
  expect(three).toMatchObject({ stepId: 'hold-3', criterionS: 3, area: 'position', kept: 2, lifted: 0, others: 1 });
  expect(three?.markedS).toEqual([3.5, 3.5, 1.5]);
});

test('a place at which the veterinarian was named is told once', () => {
  const paw = { ...firstStart(DEMO_PLAN.steps), startStepId: 'paw-rest' };
  const { state } = type(open(sessionStart(DEMO_PLAN, paw, LONG)), 'kk lllllll');
  const named = state.reps.flatMap(({ calls }) => calls.flatMap(({ reasons }) => reasons)).filter(isVeterinarian);
  expect(named.length).toBeGreaterThan(0);
  expect(digestOf(state).veterinarianFor).toEqual(['paws']);
  expect(digestOf(type(open(sessionStart(DEMO_PLAN, paw, LONG)), 'kk kkkk').state).veterinarianFor).toEqual([]);
});

const isVeterinarian = (why: Reason) => why.kind === 'area-alarm' && why.level === 'veterinarian';

test('a pause is no practice', () => {
  const played = type(begin(), 'kk');
  const paused = type(say(say(played, 'pause', 60), 'resume', 360), 'k');
  const [without, withPause] = [type({ ...played, atS: 60 }, 'k'), paused].map(({ state }) =>
    digestOf(state).steps.reduce((sum, { spanS }) => sum + spanS, 0),
  ) as [number, number];
  expect(withPause - without).toBeCloseTo(0.3, 1);
});

test('what was put right is counted as it was put right', () => {
  const { state } = type(begin(), 'kk kkl');
  const lift = state.reps.at(-1)?.endedBy ?? '';
  const stamp = { device: 'demo', seq: 999, session: 'demo-session', at: state.startedAt, monoMs: 0, version: 1 } as const;
  const corrected = { ...stamp, id: 'demo:999', type: 'corrected', body: { do: 'relabel', of: lift, as: 'mark' } } as const;
  expect(digestLog(state.log)?.steps[1]).toMatchObject({ kept: 2, lifted: 1 });
  expect(digestLog([...state.log, corrected])?.steps[1]).toMatchObject({ lifted: 0 });
});

test('a session late in the evening belongs to that evening, whatever the clock in Greenwich says', () => {
  expect(isoDay(dayOf('2026-03-02T23:30:00.000-08:00'))).toBe('2026-03-02');
  expect(isoDay(dayOf('2026-03-03T00:30:00.000+13:00'))).toBe('2026-03-03');
});

// 2 March 2026 is a Monday (C, by Zeller's congruence).
test('a week begins on Monday', () => {
  const monday = dayOf('2026-03-02');
  expect([0, 1, 6].map((days) => weekOf(monday + days))).toEqual([weekOf(monday), weekOf(monday), weekOf(monday)]);
  expect(weekOf(monday + 7)).toBe(weekOf(monday) + 1);
  expect(mondayOf(weekOf(monday + 6))).toBe(monday);
  expect(sayDayShort(monday)).toBe('2 Mar');
});
