/** Weighing of what speaks for a word: each cue by itself, against values worked out by hand from the weights. */
import { expect, test } from 'vitest';
import { type Cues, createEvidence, type Evidence } from '../../src/hearing/evidence.ts';

/** A word that is just at its threshold, said as high as it was taught, in a middling room. */
const WORD: Cues = {
  inQuiet: 0,
  inLoud: 0,
  mean: 0,
  aboveNoiseDb: 4,
  aboveRoomDb: 5,
  hasPitch: true,
  strangeness: 0,
  levelDb: -30,
};
const weighed = (evidence: Evidence, cues: Partial<Cues>): number => evidence.weigh(evidence.terms({ ...WORD, ...cues }));
const fresh = (cues: Partial<Cues>): number => weighed(createEvidence(), cues);

function afterWords(count: number, cues: Partial<Cues>): Evidence {
  const evidence = createEvidence();
  for (let i = 0; i < count; i++) evidence.heard({ ...WORD, ...cues });
  return evidence;
}

test('of a word at its threshold it is what the constant, the room and its strictness give', () => {
  // By hand: 3.464 + 5 x .167 - .75.
  expect(fresh({})).toBeCloseTo(3.549, 6);
});

test('the nearer to the word, by quiet and by loud rooms, the more it is one', () => {
  expect(fresh({ inQuiet: 1, inLoud: 1, mean: 1 }) - fresh({})).toBeCloseTo(0.404 + 0.458 + 0.124, 6);
  expect(fresh({ inQuiet: -2 })).toBeLessThan(fresh({}));
  expect(fresh({ inLoud: -2 })).toBeLessThan(fresh({}));
});

test('without templates of loud rooms the quiet ones count in their stead', () => {
  expect(fresh({ inQuiet: 1, inLoud: null })).toBe(fresh({ inQuiet: 1, inLoud: 1 }));
});

test('a clatter without a pitch near its room is hardly a word, a whisper far above it is', () => {
  expect(fresh({ hasPitch: false, aboveRoomDb: 0 })).toBeLessThan(-1);
  expect(fresh({ hasPitch: false, aboveRoomDb: 16 })).toBe(fresh({ hasPitch: true, aboveRoomDb: 16 }));
});

test('another pitch than the handler’s speaks against it', () => {
  expect(fresh({ strangeness: 1.5 })).toBeLessThan(fresh({ strangeness: 0.5 }));
});

test('what is heard clearly must be more like the word than what is heard in noise', () => {
  expect(fresh({ aboveNoiseDb: 14 })).toBeLessThan(fresh({ aboveNoiseDb: 4 }));
  expect(fresh({ aboveNoiseDb: 0 })).toBe(fresh({ aboveNoiseDb: 4 }));
});

test('much louder or softer than the last words speaks against it, once three were heard', () => {
  const two = afterWords(2, { levelDb: -30 });
  expect(weighed(two, { levelDb: -42 })).toBe(weighed(two, { levelDb: -30 }));
  const three = afterWords(3, { levelDb: -30 });
  expect(weighed(three, { levelDb: -36 })).toBeCloseTo(weighed(three, { levelDb: -30 }) - 6 * 0.113, 6);
  expect(weighed(three, { levelDb: -24 })).toBe(weighed(three, { levelDb: -36 }));
  expect(weighed(three, { levelDb: -90 })).toBe(weighed(three, { levelDb: -42 }));
  expect(weighed(three, { levelDb: null })).toBe(weighed(three, { levelDb: -30 }));
});

test('a handler who moves away is followed: only the last words count', () => {
  const evidence = afterWords(9, { levelDb: -20 });
  for (let i = 0; i < 5; i++) evidence.heard({ ...WORD, levelDb: -40 });
  expect(weighed(evidence, { levelDb: -40 })).toBeGreaterThan(weighed(evidence, { levelDb: -20 }));
});

test('a room in which the words stood out asks for more than a loud one', () => {
  const quiet = afterWords(3, { aboveRoomDb: 16 });
  const loud = afterWords(3, { aboveRoomDb: 6 });
  expect(weighed(loud, {}) - weighed(quiet, {})).toBeCloseTo(1, 6);
  expect(weighed(afterWords(3, { aboveRoomDb: 12 }), {}) - weighed(quiet, {})).toBeCloseTo(0.5, 6);
});

test('what the app’s own sound hides is told nothing of: every answer stays a number', () => {
  const hidden: Partial<Cues> = { aboveNoiseDb: Number.POSITIVE_INFINITY, aboveRoomDb: Number.POSITIVE_INFINITY, levelDb: null };
  expect(fresh(hidden)).toBeCloseTo(fresh({ aboveNoiseDb: 5, aboveRoomDb: 5 }), 6);
  expect(fresh({ inQuiet: Number.NEGATIVE_INFINITY, inLoud: Number.NEGATIVE_INFINITY, mean: -10 })).toBeGreaterThan(-20);
  const evidence = afterWords(3, hidden);
  expect(weighed(evidence, {})).toBeCloseTo(fresh({}), 6);
});
