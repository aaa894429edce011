/** What the review says of learning: numbers with their n, nothing promised that was not judged. */
import { expect, test } from 'vitest';
import { sayChange, sayToLearn } from '../../../src/screens/review/learn-words.ts';

const SAME = { words: 12, others: 3, leftOut: 0, lost: 0, won: 0, falseBefore: 3, falseAfter: 3 };
const NOTHING = { toLearn: 0, learned: 0, without: 0, ofAnother: null };

test('fewer false triggers are told beside the words that it cost, and what both rest on', () => {
  expect(sayChange({ ...SAME, falseAfter: 1 })).toBe(
    '2 false triggers fewer (3 before), no word lost. Each sound of this session was judged as if it were new: 12 words, 3 other sounds.',
  );
  expect(sayChange({ ...SAME, falseAfter: 2, lost: 1 })).toMatch(/^1 false trigger fewer \(3 before\), 1 word lost\./);
});

test('what got worse is said as plainly', () => {
  expect(sayChange({ ...SAME, falseAfter: 4, won: 2 })).toMatch(
    /^1 false trigger more \(3 before\), no word lost, 2 words more heard\./,
  );
  expect(sayChange({ ...SAME, falseBefore: 0, falseAfter: 0, lost: 2 })).toMatch(/^No false trigger, 2 words lost\./);
});

test('no difference is called no difference', () => {
  expect(sayChange(SAME)).toMatch(/makes no difference yet/);
  expect(sayChange(null)).toMatch(/cannot be told/);
});

test('what can teach, what has taught and what cannot are counted apart', () => {
  expect(sayToLearn({ ...NOTHING, toLearn: 1 })).toBe('1 correction can teach the ear to hear you better.');
  expect(sayToLearn({ ...NOTHING, toLearn: 2, learned: 3, without: 1 })).toMatch(
    /^2 corrections can .* learnt 3 things .* 1 correction cannot/,
  );
  expect(sayToLearn({ ...NOTHING, toLearn: 2, ofAnother: 'Ilse' })).toMatch(/words of Ilse/);
});
