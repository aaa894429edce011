/** What a step's line on the card says of its places. */
import { expect, test } from 'vitest';
import type { Evidence } from '../../../src/core/card/evidence.ts';
import { sayPlaces } from '../../../src/screens/card/words.ts';

const placed = (keptIn: readonly string[], triedIn: readonly string[]) => sayPlaces({ keptIn, triedIn } as unknown as Evidence);

test('where it goes well and where not yet are told apart, and never by the bare name of a place', () => {
  expect(placed(['kitchen'], ['park'])).toBe('well: kitchen; not yet: park');
  expect(placed(['kitchen', 'car'], [])).toBe('well: kitchen and car');
  expect(placed([], ['at home'])).toBe('not yet: at home');
  expect(placed([''], [])).toBe('well: a place without a name');
});
