/** What the sound check says of takes: each trouble in plain words, with what would help, blaming nobody. */
import { expect, test } from 'vitest';
import {
  sayAdvice,
  sayForecast,
  sayProblem,
  sayReport,
  sayTrouble,
  sayUnlike,
  unlikeTakes,
} from '../../../src/screens/sound-check/take-words.ts';

type Caught = Parameters<typeof sayReport>[0];
type Fault = Caught['report']['faults'][number];

function caught(faults: readonly Fault[], more: { cut?: boolean; isClick?: boolean } = {}): Caught {
  return {
    caught: { samples: new Float32Array(0), sampleRateHz: 16_000, startedAtS: 0, endedAtS: 1, cut: more.cut ?? false },
    report: {
      ...{ levelDb: -20, noiseDb: -60, clippedShare: 0, speechStartsAtS: 0, speechEndsAtS: 1, speechLengthS: 1 },
      ...{ faults, isClick: more.isClick ?? false },
    },
  };
}

test.each([
  ['too-quiet', /come closer or speak up/],
  ['too-noisy', /switch off what hums, or come closer/],
  ['too-short', /say it a little longer/],
  ['too-long', /leave a pause after it/],
  ['clipped', /move the phone away/],
  ['cut-off-start', /wait a moment before you speak/],
  ['cut-off-end', /wait a moment after you spoke/],
] as const)('a take that is %s is told with what would help', (fault, help) => {
  expect(sayReport(caught([fault]), true, null)).toMatch(help);
  expect(sayProblem({ kind: fault, word: 'hold', take: 1 })).toMatch(/^Take 2 of “hold”: /);
  expect(sayProblem({ kind: fault, word: 'hold', take: 1 })).toMatch(help);
});

test('a take that is kept says so; a click says that it was one', () => {
  expect(sayReport(caught([]), false, null)).toBe('Kept. Again, the same way.');
  expect(sayReport(caught([]), true, null)).toMatch(/enough: tap Done/);
  expect(sayReport(caught([], { isClick: true }), true, null)).toMatch(/a click/);
  expect(sayReport(caught([], { cut: true }), false, null)).toMatch(/leave a pause/);
});

test('two words too alike come with how many would be mistaken, and with another vowel or another length', () => {
  const said = sayAdvice({ kind: 'too-like', other: 'mark', share: 0.36 });
  expect(said).toMatch(/7 of 20 of your “mark”/);
  expect(said).toMatch(/another vowel or another length/);
  expect(sayAdvice({ kind: 'too-like', other: 'mark', share: 0.01 })).toMatch(/1 of 20/);
});

test('a take unlike the others is named by its place', () => {
  expect(sayAdvice({ kind: 'takes-unlike', take: 2 })).toMatch(/^Take 3 is unlike the others/);
});

test('numbers come with what they rest on, and never as nought', () => {
  const word = { word: 'hold', heardAs: 'speech', takes: 3, expectedMissShare: 0, expectedFalseShare: 0, advice: [] } as const;
  const said = sayForecast({ ...word, advice: [] }, 1);
  expect(said).toMatch(/About 3 of 20 may need saying again, about 5 of 20 other words/);
  expect(said).toMatch(/3 takes and 1 piece of talk/);
  expect(sayForecast({ ...word, heardAs: 'click', advice: [] }, 6)).toMatch(/Heard as a click.*knock/);
});

test('what goes wrong while something is being taught is said at once', () => {
  expect(sayTrouble('clipped')).toMatch(/phone away/);
  expect(sayTrouble('too-short')).toMatch(/longer/);
  expect(sayTrouble('loud-room')).toMatch(/hums/);
});

test('a take that may be something else is kept and said to be, and how it is forgotten', () => {
  expect(sayReport(caught([]), true, 'longer')).toMatch(/^Kept, but much longer .* tap its number/);
  expect(sayReport(caught([]), false, 'shorter')).toMatch(/^Kept, but much shorter/);
  expect(sayReport(caught([]), false, 'long')).toMatch(/^Kept, but long for one word/);
  expect(sayReport(caught(['too-quiet']), false, 'longer')).toMatch(/^Heard, but/);
});

test('takes that are unlike the others are named in one sentence', () => {
  const unlike = (take: number) => ({ kind: 'takes-unlike', take }) as const;
  expect(unlikeTakes([unlike(4), { kind: 'too-few-takes', takes: 2 }, unlike(7), unlike(9)])).toEqual([4, 7, 9]);
  expect(sayUnlike([4, 7, 9])).toBe(
    'Takes 5, 8 and 10 are unlike the others and would be missed: tap their numbers to forget them, and say it again the usual way.',
  );
  expect(sayUnlike([4, 7])).toMatch(/^Takes 5 and 8 are unlike/);
  expect(sayUnlike([2])).toBe(sayAdvice(unlike(2)));
});
