/** What the app knows of its own sound. */
import { expect, test } from 'vitest';
import { createOwnSound } from '../../src/hearing/own-sound.ts';

test('a tap that is told twice covers a word once', () => {
  const own = createOwnSound();
  own.expect(10, 10.2);
  own.expect(10, 10.2);
  own.expect(10.1, 10.3);
  expect(own.share(9.9, 10.4)).toBeCloseTo(0.6);
});

test('a stretch with no sound of ours is the handler\u2019s, one inside a call is ours', () => {
  const own = createOwnSound();
  expect(own.share(1, 2)).toBe(0);
  own.expect(0, 5);
  expect(own.share(1, 2)).toBe(1);
  expect(own.share(2, 2)).toBe(0);
});
