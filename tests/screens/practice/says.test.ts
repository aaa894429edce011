/** The one thing that the practice screen says. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { feed, LONG, open, type Played, say, sessionStart, type } from '../../../demo/typed-session.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import { sayStill, whatToSay } from '../../../src/screens/practice/says.ts';

const CALM = { unsure: false, hears: true };
const begin = (startStepId = 'hold-0', limits = LONG): Played =>
  open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId }, limits));

test('before the first rep it asks for the word, or for a tap where nothing listens', () => {
  expect(whatToSay(begin().state, CALM).detail).toContain('Say your hold word');
  expect(whatToSay(begin().state, { ...CALM, hears: false }).detail).toContain('Tap Hold');
});

test('during a hold it is silent, but for the caution of a step not met yet', () => {
  expect(whatToSay(say(begin(), 'hold').state, CALM)).toEqual({ headline: '', detail: '' });
  const opened = begin();
  const onPaw = { ...opened, state: { ...opened.state, standing: { ...opened.state.standing, stepId: 'paw-touch' } } };
  expect(whatToSay(say(onPaw, 'hold').state, CALM).detail).toContain('veterinarian');
});

test('after a rep the headline is its outcome, or what was called', () => {
  expect(whatToSay(type(begin(), 'k').state, CALM).headline).toBe('kept');
  const raised = whatToSay(type(begin(), 'kkkkk').state, CALM);
  expect(raised.headline).toBe('next step');
  expect(raised.detail).toContain('Next step: Lie flat 1 s');
});

test('to rest outranks the step that was just gained', () => {
  const ahead = type(begin('hold-0', { ...LONG, reps: 8 }), 'kkkkk');
  expect(whatToSay(ahead.state, CALM).headline).toBe('rest now');
});

test('a question comes before everything else, and an unclear word is asked for only while it is fresh', () => {
  expect(whatToSay(say(type(begin(), 'k'), 'mark').state, CALM).detail).toContain('no hold was heard');
  const nearest = [
    { word: 'hold', confidence: 0.4 },
    { word: 'mark', confidence: 0.3 },
  ];
  const unsure = { startedAtS: 20, endedAtS: 20.3, decidedAtS: 20.5, nearest, by: 'own-words' } as const;
  const unclear = feed(type(begin(), 'k'), { kind: 'unsure', unsure });
  expect(whatToSay(unclear.state, { unsure: true, hears: true })).toEqual({
    headline: 'say it again',
    detail: 'Unsure: hold or mark?',
  });
  expect(whatToSay(unclear.state, CALM).headline).toBe('kept');
});

test('in a pause it says that nothing counts', () => {
  expect(whatToSay(say(type(begin(), 'k'), 'pause').state, CALM).detail).toContain('Nothing you say counts');
});

test('what you say of the step is answered in place of the call: stay, and with which count', () => {
  const stayed = whatToSay(type(begin(), 'kkkkkt').state, CALM);
  expect(stayed).toEqual({
    headline: 'stay',
    detail: 'Stay: Lie flat, paid at once. The call “next step” is not followed: the count begins afresh. You said so.',
  });
  expect(whatToSay(type(begin(), 'kh').state, CALM).headline).toBe('next step');
  expect(whatToSay(type(begin(), 'kkkkktk').state, CALM).headline).toBe('kept');
});

test('a rep that is over tells its whole seconds, and tenths where it had none: kept must not read as nothing', () => {
  expect([0, 0.04, 0.87, 0.999, 1, 2.96].map(sayStill)).toEqual(['0', '0.0', '0.8', '0.9', '1', '2']);
});
