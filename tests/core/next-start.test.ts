/** Where the next session starts. Gaps of 7 and 21 days: common practice, no source. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { open, type Played, sessionStart, type } from '../../demo/typed-session.ts';
import { NO_TRIALS } from '../../src/core/chain/machine.ts';
import { endedOnLift } from '../../src/core/fold.ts';
import { firstStart, nextStart } from '../../src/core/next-start.ts';

const from = (startStepId: string): Played => open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId }));
const after = (played: Played, days: number) => nextStart(played.state.standing, endedOnLift(played.state), days);

test('within a week it starts on the step reached, and its trials carry over', () => {
  const played = type(from('hold-3'), 'kk kkk');
  expect(after(played, 2)).toMatchObject({ startStepId: 'hold-3', why: { kind: 'step-reached' } });
  expect(after(played, 7).carried.trials.count).toBe(3);
});

test('a session that ended on a lift starts one step lower, afresh', () => {
  const played = type(from('hold-3'), 'kk kkl');
  expect(after(played, 1)).toMatchObject({
    startStepId: 'hold-2',
    why: { kind: 'ended-on-a-lift' },
    carried: { trials: NO_TRIALS },
  });
});

test.each([
  [7, 'hold-4'],
  [7.1, 'hold-3'],
  [21, 'hold-3'],
  [21.1, 'hold-2'],
])('after %s days it starts on %s', (days, stepId) => {
  expect(after(type(from('hold-4'), 'kk kkk'), days).startStepId).toBe(stepId);
});

test('it never starts below the lowest step', () => {
  expect(after(type(from('hold-0'), 'kkl'), 40).startStepId).toBe('hold-0');
});

test('a session stopped in its warm-up starts where it was heading', () => {
  expect(after(type(from('hold-3'), 'k'), 1).startStepId).toBe('hold-3');
});

test('half steps stay on the ladder of the next session', () => {
  const split = type(from('hold-3'), 'kk ll');
  const next = after(split, 1);
  expect(next.steps.map(({ id }) => id)).toContain('hold-2~hold-3');
  // It ended on a lift, so one lower than the half step.
  expect(next.startStepId).toBe('hold-2');
});

test('another rule counts afresh, but what is known of the dog on the step stays known', () => {
  const { standing } = type(from('hold-3'), 'kk kklk').state;
  const other = nextStart(standing, false, 1, { steps: standing.steps, rule: { kind: 'cautious' } });
  expect(other.carried.trials).toEqual(NO_TRIALS);
  expect(other.known).toEqual({ kept: 3, of: 4 });
  expect(nextStart(standing, false, 1).known).toEqual({ kept: 3, of: 4 });
  // On another step, or after a gap, it says nothing.
  expect(nextStart(standing, true, 1).known).toEqual({ kept: 0, of: 0 });
  expect(nextStart(standing, false, 8).known).toEqual({ kept: 0, of: 0 });
});
