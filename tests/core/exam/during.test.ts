/** An examination in the log: hold, lifted and pause alone; nothing is called, nothing is asked, and progress leaves it out. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { calls, events, feed, open, type Played, say, typedHeard } from '../../../demo/typed-session.ts';
import { foldCorrected } from '../../../src/core/correct.ts';
import { seenIn } from '../../../src/core/exam/during.ts';
import { type ExamPlan, isIsoDate, nearestExam } from '../../../src/core/exam/exam.ts';
import { stepsOf } from '../../../src/core/exam/exam-steps.ts';
import { USUAL_LIMITS } from '../../../src/core/limits.ts';
import { NOTHING_CARRIED } from '../../../src/core/next-start.ts';
import { digestLog } from '../../../src/core/progress/digest.ts';
import { WORDS } from '../../../src/core/word.ts';

const EXAM: ExamPlan = {
  ...{ id: 'e', dogId: 'dog', date: '2026-03-20', place: 'practice' },
  items: [
    { id: 'ear', area: 'ears', what: 'look into the ear', forS: 10 },
    { id: 'paw', area: 'paws', what: 'lift the paw', forS: 5 },
    { id: 'scale', area: 'position', what: 'stand on the scale', forS: 8 },
  ],
};

function begin(): Played {
  const steps = stepsOf(EXAM);
  return open({
    ...{ kind: 'exam', dogId: 'dog', dogName: 'Pixel', planId: 'e', planTitle: 'Examination', position: '', steps },
    ...{ startStepId: 'ear', carried: NOTHING_CARRIED, rule: 'steady', limits: USUAL_LIMITS, handler: 'me', place: 'practice' },
  });
}

const by = (played: Played, word: Parameters<typeof typedHeard>[0], atS: number, ear: 'own-words' | 'button') =>
  feed({ ...played, atS }, { kind: 'heard', heard: { ...typedHeard(word, atS), by: ear } });

describe('in an examination', () => {
  test('a hold that ends well is done, however short: nothing was asked of the dog', () => {
    const done = say(say(begin(), 'hold', 2), 'mark', 3.5);
    expect(done.state.reps).toMatchObject([{ outcome: 'kept', heldForS: 1.5, isWarmUp: false }]);
    expect(seenIn(done.state)).toMatchObject({ done: 1, at: 0, items: [{ state: 'done', heldForS: 1.5, lifts: 0 }, {}, {}] });
  });

  test('the seconds are tapped and no doubled tap says that it is enough', () =>
    expect(say(begin(), 'hold', 2).effects).toContainEqual({ do: 'startBeats', sinceS: 2, criterionS: 0 }));

  test('two lifts at one thing are an answer', () => {
    const once = say(say(begin(), 'hold', 2), 'lifted', 3);
    expect(seenIn(once.state)).toMatchObject({ isEnough: false, items: [{ state: 'lifted', lifts: 1 }, {}, {}] });
    const twice = say(say(once, 'hold', 8), 'lifted', 9);
    expect(seenIn(twice.state).isEnough).toBe(true);
    expect(seenIn(say(say(twice, 'hold', 12), 'mark', 13).state).isEnough).toBe(false);
  });

  test('the handler goes on to the next thing in silence, and back', () => {
    const next = by(say(say(begin(), 'hold', 2), 'mark', 3), 'harder', 5, 'button');
    expect(seenIn(next.state).at).toBe(1);
    expect(next.effects.filter((effect) => effect.do === 'call')).toEqual([]);
    expect(seenIn(by(next, 'easier', 7, 'button').state).at).toBe(0);
  });

  test.each(['harder', 'easier', 'stay', 'void', 'finish', 'undo'] as const)('“%s” by ear is not heard', (word) => {
    const holding = say(begin(), 'hold', 2);
    expect(events(by(holding, word, 4, 'own-words'))).toEqual(events(holding));
  });

  test('a pause breaks the hold off: everybody stops', () => {
    const paused = by(say(begin(), 'hold', 2), 'pause', 4, 'own-words');
    expect(paused.state.phase.phase).toBe('paused');
    expect(paused.state.reps).toMatchObject([{ outcome: 'void', voidReason: 'paused' }]);
    expect(seenIn(paused.state).items[0]?.state).toBe('open');
  });

  test('whatever is said, nothing is called of its own', () => {
    const said = fc.array(fc.tuple(fc.constantFrom(...WORDS), fc.constantFrom('own-words' as const, 'button' as const)), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(said, (words) => {
        const played = words.reduce((so, [word, ear], nth) => by(so, word, 2 + 2 * nth, ear), begin());
        expect(played.effects.filter((effect) => effect.do === 'call')).toEqual([]);
        const reasons = events(played).flatMap((event) => (event.type === 'called' ? event.body.reasons : []));
        expect(reasons.filter(({ kind }) => kind !== 'handler-says')).toEqual([]);
        expect(played.state.reps.filter(({ outcome }) => outcome === 'short')).toEqual([]);
      }),
      { seed: 20260302 },
    );
  });

  test('its digest says what it is, and a rep put right in it has no calls either', () => {
    let played = begin();
    for (let n = 0; n < 12; n++) played = say(say(played, 'hold', 10 * n + 2), 'mark', 10 * n + 4);
    expect(calls(played)).toEqual([]);
    expect(digestLog(events(played))).toMatchObject({ kind: 'exam', planId: 'e', steps: [{ stepId: 'ear', kept: 12 }] });
    const corrected = foldCorrected(events(played));
    expect(corrected.ok && corrected.session.calls.flatMap(({ wouldCall }) => wouldCall)).toEqual([]);
  });
});

test('the nearest examination is the next to come, and when none is left the latest', () => {
  const on = (id: string, date: string, more = {}) => ({ ...EXAM, id, date, ...more });
  const exams = [
    on('late', '2026-05-01'),
    on('soon', '2026-04-01'),
    on('off', '2026-03-25', { calledOff: true }),
    on('past', '2026-01-01'),
  ];
  expect(nearestExam(exams, 'dog', '2026-03-20')?.id).toBe('soon');
  expect(nearestExam(exams, 'dog', '2026-04-01')?.id).toBe('soon');
  expect(nearestExam(exams, 'dog', '2026-06-01')?.id).toBe('late');
  expect(nearestExam(exams, 'other dog', '2026-03-20')).toBeNull();
});

test.each(['2026-02-30', '2026-13-01', '26-01-01', 'soon', ''])('“%s” is no day', (text) => expect(isIsoDate(text)).toBe(false));
