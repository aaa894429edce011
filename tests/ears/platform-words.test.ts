/** From what a recogniser writes to the handler's words: at once, each once, at the head of a phrase. */
import { expect, test } from 'vitest';
import {
  foldText,
  type HeardByPlatform,
  NOTHING_SPOKEN,
  nextSpoken,
  readSayings,
  type Sayings,
  type Spoken,
  sayingProblems,
  UNTOLD,
} from '../../src/ears/platform-words.ts';

const SAYINGS: Sayings = { hold: ['steady'], mark: ['yes', 'très bien'], lifted: ['oh well'], pause: ['oh'] };

function hear(...spoken: Spoken[]): HeardByPlatform[] {
  let listening = NOTHING_SPOKEN;
  return spoken.flatMap((each) => {
    const next = nextSpoken(listening, each, SAYINGS);
    listening = next.listening;
    return next.heard;
  });
}

type More = { index?: number; isFinal?: boolean; confidence?: number; generation?: number };

function written(
  atS: number,
  text: string | string[],
  { index = 0, isFinal = false, confidence = 0.9, generation = 1 }: More = {},
): Spoken {
  const alternatives = [text].flat().map((each) => ({ text: each, confidence }));
  return { kind: 'written', generation, index, alternatives, isFinal, atS };
}

const speech = (atS: number): Spoken => ({ kind: 'speech-started', generation: 1, atS });
const words = (...spoken: Spoken[]) => hear(...spoken).map(({ heard }) => heard.word);

test('capitals, commas and the spelling of accents do not matter', () => {
  expect(words(written(1, ' Yes! '))).toEqual(['mark']);
  expect(words(written(1, 'Oh, WELL.'))).toEqual(['lifted']);
  expect(words(written(1, 'TRE\u0300S bien'))).toEqual(['mark']);
  expect(foldText('Don’t — stop…')).toEqual(['dont', 'stop']);
});

test('a word counts at the head of a phrase, not inside it', () => {
  expect(words(written(1, 'yes good dog'))).toEqual(['mark']);
  expect(words(written(1, 'good dog yes'))).toEqual([]);
  expect(words(written(1, 'yesterday'))).toEqual([]);
  expect(words(written(1, 'well oh'))).toEqual([]);
});

test('two of the handler’s words in a row are two words, the second when it is first written', () => {
  const heard = hear(speech(9.7), written(10, 'steady'), written(14, 'steady yes'), written(16, 'steady yes', { isFinal: true }));
  expect(heard.map(({ heard: { word, startedAtS } }) => [word, startedAtS])).toEqual([
    ['hold', 9.7],
    ['mark', 14],
  ]);
  expect(heard.map(({ onsetFrom }) => onsetFrom)).toEqual(['speech-start', 'own-writing']);
});

test('"oh well" is not also "oh"', () => {
  expect(words(written(1, 'oh well'))).toEqual(['lifted']);
});

test('an interim decides; the same again, a revision and an empty final add nothing', () => {
  expect(words(written(1, 'yes'), written(1.2, 'yes'), written(1.4, 'yet'), written(3, '', { isFinal: true }))).toEqual(['mark']);
  expect(words(written(1, 'yes'), written(1.2, ''), written(1.4, 'yes'))).toEqual(['mark']);
});

test('a final without an interim, two seconds late, is heard with the onset of the speech', () => {
  const [heard] = hear(speech(10), written(12.5, 'yes', { isFinal: true }));
  expect(heard).toMatchObject({ onsetFrom: 'speech-start', heard: { startedAtS: 10, endedAtS: 12.5, decidedAtS: 12.5 } });
});

test('speech that was noticed long before was something else', () => {
  const [heard] = hear(speech(2), written(10, 'y'), written(10.2, 'yes'));
  expect(heard).toMatchObject({ onsetFrom: 'first-writing', heard: { startedAtS: 10 } });
});

test('the same word said again in the next utterance is a second word', () => {
  expect(words(written(1, 'yes', { isFinal: true }), written(3, 'yes', { index: 1 }))).toEqual(['mark', 'mark']);
  expect(words(written(1, 'yes'), written(1.1, 'yes', { generation: 2 }))).toEqual(['mark', 'mark']);
});

test('a phone that calls each interim final and writes on under the next number repeats nothing', () => {
  const doubtful = { isFinal: true, confidence: 0 };
  expect(
    words(
      written(1, 'steady', doubtful),
      written(1.4, 'steady', { ...doubtful, index: 1 }),
      written(2, 'steady yes', { ...doubtful, index: 2 }),
    ),
  ).toEqual(['hold', 'mark']);
});

test('the second guess counts only when it is the word and nothing else, and counts less', () => {
  const [heard] = hear(written(1, ['guess', 'yes']));
  expect(heard?.heard).toMatchObject({ word: 'mark', confidence: UNTOLD });
  expect(words(written(1, ['guess what', 'yes what']))).toEqual([]);
});

test('a recogniser that tells no confidence is taken at half', () => {
  expect(hear(written(1, 'yes', { confidence: 0 }))[0]?.heard.confidence).toBe(UNTOLD);
  expect(hear(written(1, 'yes', { confidence: Number.NaN }))[0]?.heard.confidence).toBe(UNTOLD);
  expect(hear(written(1, 'yes', { confidence: 0.7 }))[0]?.heard.confidence).toBe(0.7);
});

test('a very long stretch of the same word does not break it', () => {
  expect(words(written(1, 'yes '.repeat(20_000)))).toHaveLength(20_000);
});

test('what the handler types is taken apart at the commas', () => {
  expect(readSayings(' yes, Oh well ;, !')).toEqual(['yes', 'Oh well']);
});

test('one saying for two words, or one that begins another, is said before practice', () => {
  expect(sayingProblems({ hold: ['Steady'], mark: ['steady!'] })).toEqual([
    { kind: 'same', said: 'Steady', word: 'hold', other: 'mark' },
  ]);
  expect(sayingProblems(SAYINGS)).toEqual([{ kind: 'begins-another', said: 'oh', word: 'pause', other: 'lifted' }]);
  expect(sayingProblems({ hold: ['steady'], mark: ['yes', 'yes please'] })).toEqual([]);
});
