/** The rep machine, in a trainer's words. */
import { expect, test } from 'vitest';
import { typedHeard } from '../../demo/typed-session.ts';
import { breakOff, hearInRep, type Phase, WAITING } from '../../src/core/rep.ts';
import type { Word } from '../../src/core/word.ts';

function hearAll(words: readonly [Word, number][], criterionS: number) {
  let phase: Phase = WAITING;
  const reps = [];
  const questions = [];
  for (const [word, atS] of words) {
    const after = hearInRep(phase, typedHeard(word, atS), criterionS);
    phase = after.phase;
    if (after.rep) reps.push(after.rep);
    if (after.question) questions.push(after.question.kind);
  }
  return { phase, reps, questions };
}

test('a marker at the criterion keeps the rep, and the onsets of the words count', () => {
  const { reps } = hearAll(
    [
      ['hold', 10],
      ['mark', 13],
    ],
    3,
  );
  expect(reps).toMatchObject([{ holdAtS: 10, endAtS: 13, heldForS: 3, outcome: 'kept' }]);
});

test.each([
  [2.75, 'kept'],
  [2.7501, 'kept'],
  [2.748, 'short'],
  [1, 'short'],
])('with 3 s to hold, a marker after %s s is %s', (heldS, outcome) => {
  expect(
    hearAll(
      [
        ['hold', 5],
        ['mark', 5 + heldS],
      ],
      3,
    ).reps[0]?.outcome,
  ).toBe(outcome);
});

test('a rep that is paid at once is kept however short it is', () => {
  expect(
    hearAll(
      [
        ['hold', 1],
        ['mark', 1.3],
      ],
      0,
    ).reps[0]?.outcome,
  ).toBe('kept');
});

test('a head that lifts before the marker is a lift, even after the criterion', () => {
  expect(
    hearAll(
      [
        ['hold', 1],
        ['lifted', 9],
      ],
      3,
    ).reps,
  ).toMatchObject([{ outcome: 'lifted', heldForS: 8 }]);
});

test('a head that lifts after the marker still counts as kept', () => {
  const { reps, questions } = hearAll(
    [
      ['hold', 1],
      ['mark', 5],
      ['lifted', 5.5],
    ],
    3,
  );
  expect(reps).toMatchObject([{ outcome: 'kept' }]);
  expect(questions).toEqual([]);
});

test('saying hold again restarts the hold and makes no rep of the first', () => {
  const { reps } = hearAll(
    [
      ['hold', 1],
      ['hold', 4],
      ['mark', 6],
    ],
    3,
  );
  expect(reps).toMatchObject([{ holdAtS: 4, heldForS: 2, outcome: 'short', restarts: 1 }]);
});

test('a marker with no hold is a question, not a rep', () => {
  const { reps, questions } = hearAll([['mark', 2]], 3);
  expect(reps).toEqual([]);
  expect(questions).toEqual(['mark-without-hold']);
});

test('a lift with no hold is nothing at all', () => {
  expect(hearAll([['lifted', 2]], 3)).toEqual({ phase: WAITING, reps: [], questions: [] });
});

test('a chin that was never offered is a void rep of no length', () => {
  expect(hearAll([['void', 2]], 3).reps).toMatchObject([{ outcome: 'void', voidReason: 'not-offered', heldForS: 0 }]);
});

test('a slip of the handler in the hold is void, and says so', () => {
  expect(
    hearAll(
      [
        ['hold', 2],
        ['void', 3],
      ],
      3,
    ).reps,
  ).toMatchObject([{ outcome: 'void', voidReason: 'handler-says', heldForS: 1 }]);
});

test('easier, harder and stay do not move the criterion under a dog that is holding', () => {
  const { phase, questions } = hearAll(
    [
      ['hold', 2],
      ['harder', 3],
      ['stay', 3],
    ],
    3,
  );
  expect(questions).toEqual(['not-during-a-hold', 'not-during-a-hold']);
  expect(phase).toMatchObject({ phase: 'holding', sinceS: 2 });
});

test('a hold that the session broke off is void, and never of negative length', () => {
  expect(breakOff({ phase: 'holding', sinceS: 8, restarts: 0 }, 7, 'paused')).toMatchObject({ outcome: 'void', heldForS: 0 });
  expect(breakOff(WAITING, 7, 'paused')).toBeNull();
});
