/** The sentences of the review, each number with its n. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { feed, LONG, open, type Played, say, sessionStart, type } from '../../demo/typed-session.ts';
import { firstStart } from '../../src/core/next-start.ts';
import { callsInOrder } from '../../src/core/placed-calls.ts';
import {
  deafForS,
  heardIn,
  sayHeld,
  sayLength,
  sayLifts,
  sayMoment,
  sayMoves,
  sayOthers,
  sayPicture,
  sayRange,
  sayRep,
  sayTrials,
  summarize,
  tally,
} from '../../src/core/summary.ts';

const begin = (stepId = 'hold-3'): Played =>
  open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: stepId }, LONG));
const typed = (reps: string, stepId?: string) => type(begin(stepId), reps);
const heapsOf = (reps: string, stepId?: string) => tally(typed(reps, stepId).state.reps);

test('every rep lies in exactly one heap, whatever was said', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...'klsvneh'), maxLength: 40 }), (reps) => {
      const { state } = typed(reps);
      const { kept, lifts, short, warmUps, voids } = tally(state.reps);
      const inVoids = Object.values(voids).reduce((sum, n) => sum + n, 0);
      expect(kept + lifts.length + short + warmUps.length + inVoids).toBe(state.reps.length);
    }),
    { seed: 20260302, numRuns: 200 },
  );
});

describe('what was kept', () => {
  test('is said with its n', () => expect(sayTrials(heapsOf('kk kkkkl'))).toBe('4 of 5 trials kept.'));
  test('one trial is one trial', () => expect(sayTrials(heapsOf('kk k'))).toBe('1 of 1 trial kept.'));
  test('warm-ups are no trials', () => expect(sayTrials(heapsOf('kl'))).toBe('No trials yet.'));
  test('below five trials nothing is said about the next ones', () => {
    expect(sayRange(heapsOf('kk kkkl'))).toBeNull();
    expect(sayRange(heapsOf('kk kkkkl'))).toBe('5 trials fit a dog that keeps anything from 38 to 96 of 100 on these steps.');
  });
});

describe('lifts are said with their place', () => {
  test('none', () => expect(sayLifts(heapsOf('kk kk'))).toBe('No lift in 2 trials.'));
  test('one', () => expect(sayLifts(heapsOf('kk kl'))).toBe('1 lift, on the 3 s step.'));
  test('two at one step', () => expect(sayLifts(heapsOf('kk lkkkl'))).toBe('2 lifts, both on the 3 s step.'));
  test('three at one step', () => expect(sayLifts(heapsOf('kk lkkklkkl'))).toBe('3 lifts, all on the 3 s step.'));
  test('at several steps, most first', () =>
    expect(sayLifts(heapsOf('kk l kkkkk kkkkk ll'))).toMatch(/^3 lifts: 2 on the 4 s step, 1 on the 3 s step\.$/));
  test('at a handling, by its name', () =>
    expect(sayLifts(heapsOf('kk l', 'paw-touch'))).toBe('1 lift, on “Touch the top of the paw”.'));
  test('without a trial, not at all', () => expect(sayLifts(heapsOf('kk'))).toBeNull());
});

test('warm-ups, short and void reps are named apart', () => {
  expect(sayOthers(heapsOf('kl ksvvn'))).toBe(
    'Not counted as trials: 2 warm-ups (1 lifted), 1 short, 1 not offered, 2 slips or distractions.',
  );
  expect(sayOthers(tally([]))).toBeNull();
});

test('the way of the step is said from start to end', () => {
  expect(sayMoves(typed('kk kk').state)).toBe('All at 3 s.');
  expect(sayMoves(typed('kk kkkkk').state)).toBe('From 3 s to 4 s: 1 raise.');
  expect(sayMoves(typed('kk kkkkk ll').state)).toBe('From 3 s to 3.5 s: 1 raise, 1 half step.');
  expect(sayMoves(typed('kk k h e').state)).toBe('From 3 s and back to it: 2 steps at your word.');
  expect(sayMoves(typed('k').state)).toBe('The warm-up for 3 s was not over.');
  expect(sayMoves(begin().state)).toBeNull();
});

describe('the ear', () => {
  const ear = (played: Played, atS: number, state: 'listening' | 'restarting' | 'off', name = 'own-words') => ({
    ...feed(played, { kind: 'ear', atS, ear: name, state }),
    atS,
  });

  test('that never failed is said to have heard all', () => {
    expect(summarize(type(ear(begin(), 1, 'listening'), 'kk').state).grounds).toContain(
      'The ear heard all the time, and no stretch was unsure.',
    );
  });
  test('that is not used is not spoken of', () => {
    expect(summarize(typed('kk k').state).grounds.join(' ')).not.toMatch(/ear|unsure/);
  });
  test('is deaf from when it is lost until it listens again', () => {
    const lost = ear(ear(begin(), 1, 'listening'), 10, 'restarting');
    expect(deafForS(ear(lost, 22, 'listening').state)).toBe(12);
  });
  test('that is lost to the end is deaf to the end', () => {
    expect(deafForS(say(ear(begin(), 10, 'restarting'), 'finish', 15).state)).toBeCloseTo(5, 0);
  });
  test('is not deaf while another ear listens', () => {
    const two = ear(ear(begin(), 1, 'listening', 'platform'), 10, 'restarting');
    expect(deafForS(ear(two, 22, 'listening').state)).toBe(0);
  });
  test('misses nothing in a pause', () => {
    const paused = feed(ear(begin(), 10, 'restarting'), { kind: 'pause', atS: 12, why: 'hidden' });
    const resumed = feed(paused, { kind: 'resume', atS: 40 });
    expect(deafForS(ear(resumed, 43, 'listening').state)).toBe(5);
  });
});

test('a call that the handler made stands in its place, too', () => {
  const { state } = typed('kk kk h k');
  expect(callsInOrder(state).map(({ call, afterRep }) => `${call.kind} ${afterRep}`)).toEqual(['begin 2', 'raise 4']);
});

test('a call that was taken back does not stand', () => {
  expect(callsInOrder(typed('kk kkkkk').state)).toHaveLength(2);
  expect(callsInOrder(typed('kk kkkkk u').state)).toHaveLength(1);
});

test('a rep holds what was heard for it, and no more', () => {
  const { state } = typed('kk nkl');
  const heard = state.reps.map((rep) => heardIn(state, rep).map((it) => ('word' in it ? it.word : 'unsure')));
  expect(heard).toEqual([['hold', 'mark'], ['hold', 'mark'], ['void'], ['hold', 'mark'], ['hold', 'lifted']]);
});

test('a word taken back is told', () => {
  expect(summarize(typed('kk k u').state).grounds).toContain('1 word was taken back.');
});

test('a rep is told in a sentence', () => {
  const { reps } = typed('kk kln').state;
  expect(reps.map(sayRep)).toEqual([
    'Rep 1, warm-up, Lie flat 2 s. Kept, held 2.5 s.',
    'Rep 2, warm-up, Lie flat 2 s. Kept, held 2.5 s.',
    'Rep 3, Lie flat 3 s. Kept, held 3.5 s.',
    'Rep 4, Lie flat 3 s. Lifted after 1.5 s.',
    'Rep 5, Lie flat 3 s. Not a trial: not offered.',
  ]);
});

test('the picture is told in a sentence', () => {
  expect(sayPicture([])).toBe('Bars on stairs: no reps yet.');
  expect(sayPicture(typed('kk kkl').state.reps)).toBe('Bars on stairs: 5 reps on 2 steps. 2 of 3 trials kept.');
});

test('times are said as a person says them', () => {
  expect(['4.96', '5', '0'].map(Number).map(sayHeld)).toEqual(['4.9 s', '5.0 s', '0.0 s']);
  expect([0, 59.4, 60, 380].map(sayLength)).toEqual(['0 s', '59 s', '1 min', '6 min 20 s']);
  expect([0, 65, 600].map(sayMoment)).toEqual(['0:00', '1:05', '10:00']);
});
