/** The steady rule in the live engine: what a trainer would see it call. Rules of CRITERION.md, confirmed paragraph. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, LONG, open, type Played, sessionStart, type } from '../../demo/typed-session.ts';
import { NO_TRIALS } from '../../src/core/chain/machine.ts';
import { stepOf } from '../../src/core/criterion.ts';
import type { Limits } from '../../src/core/limits.ts';
import { firstStart, NOTHING_CARRIED } from '../../src/core/next-start.ts';
import type { Step } from '../../src/core/plan.ts';

/** A session that stands on one step with no warm-up before it: the ladder below it was passed. */
function standingOn(stepId: string, limits: Limits = LONG): Played {
  const played = open(sessionStart(DEMO_PLAN, firstStart(DEMO_PLAN.steps), limits));
  const standing = { ...played.state.standing, stepId, warmUp: null };
  return { ...played, state: { ...played.state, standing } };
}

const lastCalls = (played: Played) => calls(played);
const at = (played: Played) => stepOf(played.state.standing).id;

test('on a duration step five clean trials on arrival raise', () => {
  expect(lastCalls(type(standingOn('hold-2'), 'kkkk'))).toEqual([]);
  expect(lastCalls(type(standingOn('hold-2'), 'kkkkk'))).toEqual(['raise hold-3']);
});

test('after one lift a duration step asks for nine of the last ten', () => {
  expect(lastCalls(type(standingOn('hold-2'), 'l kkkkkkkk'))).toEqual([]);
  expect(lastCalls(type(standingOn('hold-2'), 'l kkkkkkkkk'))).toEqual(['raise hold-3']);
});

test('a handling step gets no short cut: nine straight, not five', () => {
  expect(lastCalls(type(standingOn('paw-touch'), 'kkkkkkkk'))).toEqual([]);
  expect(lastCalls(type(standingOn('paw-touch'), 'kkkkkkkkk'))).toEqual(['raise paw-rest']);
});

test('two lifts running split the rise: the half step is put in and re-earned', () => {
  const played = type(standingOn('hold-5'), 'k ll');
  expect(lastCalls(played)).toEqual(['split hold-4~hold-5']);
  expect(stepOf(played.state.standing)).toMatchObject({
    kind: 'duration',
    holdForS: 4.5,
    halfOf: { belowId: 'hold-4', aboveId: 'hold-5' },
  });
  expect(played.state.standing.steps.map(({ id }) => id).slice(4, 7)).toEqual(['hold-4', 'hold-4~hold-5', 'hold-5']);
});

test('three lifts in the last five split too', () => {
  expect(lastCalls(type(standingOn('hold-5'), 'l k l k l'))).toEqual(['split hold-4~hold-5']);
  expect(lastCalls(type(standingOn('hold-5'), 'l k l k k'))).toEqual([]);
});

test('a handling step splits by the half-way that the plan prepared, with its caution', () => {
  const played = type(standingOn('paw-rest'), 'll');
  expect(stepOf(played.state.standing)).toMatchObject({
    kind: 'handling',
    area: 'paws',
    forS: 1,
    title: 'Rest a hand on the paw 1 s',
  });
  expect(stepOf(played.state.standing).caution).toContain('veterinarian');
});

test('a handling step with no half-way prepared returns: halves of handling are never invented', () => {
  const steps: Step[] = DEMO_PLAN.steps.map((step) => (step.kind === 'handling' ? withoutHalfway(step) : step));
  const opened = open(sessionStart({ ...DEMO_PLAN, steps }));
  const played = type(
    { ...opened, state: { ...opened.state, standing: { ...opened.state.standing, stepId: 'paw-rest' } } },
    'll',
  );
  expect(lastCalls(played)).toEqual(['return paw-touch']);
  expect(played.state.reps.at(-1)?.calls[0]?.reasons.map(({ kind }) => kind)).toEqual(['two-lifts-running', 'no-half-step']);
});

function withoutHalfway(step: Extract<Step, { kind: 'handling' }>): Step {
  const { halfway: _, ...rest } = step;
  return rest;
}

test('a step is re-earned in full after a return, not by three in a row', () => {
  const split = type(standingOn('hold-5'), 'll');
  expect(lastCalls(type(split, 'kkk'))).toEqual(['split hold-4~hold-5']);
  expect(at(type(split, 'kkkkk'))).toBe('hold-5');
});

test('the second return in a session advises a rest', () => {
  const played = type(standingOn('hold-5'), 'll ll');
  expect(lastCalls(played)).toEqual(['split hold-4~hold-5', 'return hold-4', 'rest second-return']);
});

test('the second return from the same step does not split again', () => {
  const again = type(standingOn('hold-5'), 'll kkkkk ll');
  expect(lastCalls(again)).toEqual(['split hold-4~hold-5', 'raise hold-5', 'return hold-4~hold-5', 'rest second-return']);
});

test('on the lowest step it stays, and says that there is nothing easier', () => {
  const played = type(standingOn('hold-0'), 'll');
  expect(lastCalls(played)).toEqual(['stay hold-0']);
  expect(lastCalls(type(played, 'll'))).toContain('rest second-return');
});

test('four lifts in the last eight advise a rest, across steps', () => {
  expect(lastCalls(type(standingOn('paw-lift'), 'l k l kk l k l'))).toContain('rest lifts-of-last');
});

test('three times never offered, running, advise a rest', () => {
  expect(lastCalls(type(standingOn('hold-3'), 'n n k n n'))).toEqual([]);
  expect(lastCalls(type(standingOn('hold-3'), 'n n n'))).toEqual(['rest never-offered']);
});

test('at the top of the plan it says that the goal is reached', () => {
  expect(lastCalls(type(standingOn('claw-file'), 'kkkkkkkkk'))).toEqual(['rest goal-reached']);
});

test('that the goal is reached is said once a session: who goes on for joy is left in peace', () => {
  const played = type(standingOn('claw-file'), 'kkkkkkkkk kkkkkkkkkkkk');
  expect(lastCalls(played)).toEqual(['rest goal-reached']);
});

test('a goal reached earlier does not hide another reason to rest', () => {
  const played = type(standingOn('claw-file', { ...LONG, reps: 18 }), 'kkkkkkkkk kkkkkkkkk');
  expect(lastCalls(played)).toEqual(['rest goal-reached', 'rest reps-done']);
});

test('a warm-up that lifts counts for the alarm of its place, though not for the step', () => {
  const played = type(warming('paw-lift'), 'l');
  expect(played.state.standing.alarms).toEqual({ paws: 1 });
  expect(played.state.standing.trials).toEqual(NO_TRIALS);
});

test('twenty reps are enough, and that is said once', () => {
  const played = type(standingOn('paw-touch', { ...LONG, reps: 4 }), 's s s s s s');
  expect(lastCalls(played)).toEqual(['rest reps-done']);
  expect(played.state.reps[3]?.calls).toHaveLength(1);
});

test('right after a raise with fewer than five reps left it stops while ahead', () => {
  const played = type(standingOn('hold-2', { ...LONG, reps: 8 }), 'kkkkk');
  expect(lastCalls(played)).toEqual(['raise hold-3', 'rest ahead']);
});

test('five minutes of practice are enough; a pause is not practice', () => {
  const late = { ...standingOn('hold-1', { ...LONG, minutes: 1 }), atS: 62 };
  expect(lastCalls(type(late, 'k'))).toEqual(['rest time-up']);
  const paused = { ...late, state: { ...late.state, pausedS: 50 } };
  expect(lastCalls(type(paused, 'k'))).toEqual([]);
});

test('spent treats advise a rest; a lift costs none', () => {
  expect(lastCalls(type(standingOn('hold-3', { ...LONG, treats: 2 }), 'l k'))).toEqual([]);
  expect(lastCalls(type(standingOn('hold-3', { ...LONG, treats: 2 }), 'k s'))).toEqual(['rest treats-spent']);
});

test('short and void reps are shown and counted, but move nothing', () => {
  const played = type(standingOn('hold-3'), 's v n s v n s v s v s');
  expect(lastCalls(played)).toEqual([]);
  expect(played.state.standing.trials).toEqual(NO_TRIALS);
  expect(played.state.standing.today.reps).toBe(11);
});

function warming(startStepId: string): Played {
  return open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId }));
}

test('a session opens with two uncounted reps one step lower', () => {
  const played = type(warming('hold-3'), 'k');
  expect(played.state.reps[0]).toMatchObject({ isWarmUp: true, step: { id: 'hold-2' } });
  const warmed = type(played, 'l');
  expect(lastCalls(warmed)).toEqual(['begin hold-3']);
  expect(warmed.state.standing.trials).toEqual(NO_TRIALS);
});

test('if both warm-ups lift, it starts there', () => {
  expect(lastCalls(type(warming('hold-3'), 'll'))).toEqual(['begin hold-2']);
});

test('trials carried over from last time survive the warm-up', () => {
  const trials = { last: [true, true, true, true], count: 4, kept: 4 };
  const carried = { ...NOTHING_CARRIED, trials };
  const opened = open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: 'hold-3', carried }));
  expect(lastCalls(type(opened, 'kk k'))).toEqual(['begin hold-3', 'raise hold-4']);
});

test('there is no warm-up on the lowest step: nothing is easier', () => {
  expect(warming('hold-0').state.standing.warmUp).toBeNull();
});

function passedUpTo(stepId: string): Played {
  const played = standingOn(stepId);
  const passed = DEMO_PLAN.steps.map(({ id }) => id);
  return { ...played, state: { ...played.state, standing: { ...played.state.standing, passed } } };
}

test('lifts on steps that were easy ask whether something hurts: first to leave the place and look, then for a veterinarian', () => {
  const looked = type(passedUpTo('claw-hold'), 'l k l k l');
  expect(lastCalls(looked)).not.toContain('rest area-alarm');
  const asked = type(looked, 'l');
  const rests = asked.state.reps.flatMap((rep) =>
    rep.calls.flatMap((call) => call.reasons.filter(({ kind }) => kind === 'area-alarm')),
  );
  expect(rests).toEqual([{ kind: 'area-alarm', area: 'paws', level: 'look' }]);
  const vet = type(asked, 'l l');
  expect(vet.state.reps.at(-1)?.calls.at(-1)?.reasons[0]).toEqual({ kind: 'area-alarm', area: 'paws', level: 'veterinarian' });
});

test('a kept rep never raises the alarm, however high it stands', () => {
  const played = passedUpTo('claw-hold');
  const standing = { ...played.state.standing, alarms: { paws: 9 } };
  expect(lastCalls(type({ ...played, state: { ...played.state, standing } }, 'k'))).toEqual([]);
});

test('easier and harder overrule the engine, and a skipped step is not a passed step', () => {
  const harder = type(standingOn('hold-2'), 'h');
  expect(at(harder)).toBe('hold-3');
  expect(harder.state.standing.passed).toEqual([]);
  const easier = type(standingOn('hold-2'), 'e');
  expect(at(easier)).toBe('hold-1');
  expect(easier.state.standing.returns).toEqual({});
});
