/** The ear as a trainer meets it: teach three words, talk, listen. Words are made by code; the network is not needed. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Hearing } from '../../src/hearing/decide.ts';
import { enrol, inspectTake, type Teaching } from '../../src/hearing/enrol.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Model } from '../../src/hearing/model.ts';
import type { Take } from '../../src/hearing/take.ts';
import { type GlideName, noise, room, say } from './sounds.ts';

const takes = (name: GlideName, count: number, first = 1, rateHz = 16_000): Take[] =>
  Array.from({ length: count }, (_, i) => ({ samples: say(name, first + i, rateHz), sampleRateHz: rateHz }));

const TEACHING: Teaching = {
  words: { hold: takes('hold', 4), mark: takes('mark', 4), lifted: takes('lifted', 4) },
  talk: [...takes('good', 2), ...takes('come', 2), ...takes('name', 2)],
};

function modelOf(teaching: Teaching): Model {
  const enrolled = enrol(teaching);
  if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
  return enrolled.model;
}

const MODEL = modelOf(TEACHING);

function hear(samples: Float32Array, sampleRateHz = 16_000, block = 320, startsAtS = 0, model = MODEL): Hearing[] {
  const listener = createListener(model, { sampleRateHz, startsAtS });
  const heard: Hearing[] = [];
  for (let at = 0; at < samples.length; at += block) heard.push(...listener.push(samples.subarray(at, at + block)));
  heard.push(...listener.flush());
  return heard;
}

type Word = Extract<Hearing, { kind: 'word' }>;
const wordsOf = (heard: readonly Hearing[]): Word[] => heard.filter((h): h is Word => h.kind === 'word');

const SESSION = [
  { name: 'hold', atS: 1, seed: 31 },
  { name: 'mark', atS: 3, seed: 32 },
  { name: 'good', atS: 4.5, seed: 33 },
  { name: 'hold', atS: 6, seed: 34 },
  { name: 'lifted', atS: 8.2, seed: 35 },
  { name: 'name', atS: 10, seed: 36 },
] as const;
const TAUGHT = SESSION.filter((s) => s.name in TEACHING.words);

test('three taught words are heard in order, and praise and the name of the dog are not words', () => {
  const words = wordsOf(hear(room(12, SESSION)));
  expect(words.map((w) => w.word)).toEqual(TAUGHT.map((s) => s.name));
  words.forEach((w, i) => {
    expect(Math.abs(w.startedAtS - (TAUGHT[i]?.atS ?? 0))).toBeLessThan(0.25);
    expect(w.decidedAtS).toBeGreaterThan(w.endedAtS);
    expect(w.confidence).toBeGreaterThan(0.5);
  });
});

test('a clear word is heard even when nobody expects it, only with less confidence', () => {
  const heardWhile = (words: readonly string[] | null): Word[] => {
    const listener = createListener(MODEL, { sampleRateHz: 16_000 });
    listener.expect(words);
    return wordsOf([...listener.push(room(12, SESSION)), ...listener.flush()]);
  };
  const all = heardWhile(null);
  const surprised = heardWhile([]);
  expect(surprised.map((w) => w.word)).toEqual(TAUGHT.map((s) => s.name));
  surprised.forEach((w, i) => {
    expect(w.confidence).toBeLessThan(all[i]?.confidence ?? 0);
  });
  expect(heardWhile(['hold', 'mark', 'lifted'])).toEqual(all);
});

test('a word said in another pitch than it was taught is heard with less confidence, however the sound is handed over', () => {
  // The same sound, and a handler who taught it an octave higher: as if somebody else said it.
  const higher = Object.fromEntries(
    Object.entries(MODEL.voice.words).map(([word, all]) => [word, all.map((pitch) => pitch + 1)]),
  );
  const stranger: Model = { ...MODEL, voice: { taught: Object.values(higher).flat(), words: higher } };
  const track = room(12, SESSION);
  const own = wordsOf(hear(track));
  for (const block of [160, 320, track.length]) {
    const words = wordsOf(hear(track, 16_000, block, 0, stranger));
    expect(words.map(({ word }) => word)).toEqual(TAUGHT.map(({ name }) => name));
    words.forEach((word, i) => {
      const margin = (confidence: number) => Math.log(confidence / (1 - confidence));
      expect(margin(own[i]?.confidence ?? 0) - margin(word.confidence)).toBeCloseTo(1.5, 6);
    });
  }
});

test.each([8_000, 44_100, 48_000, 96_000])('a microphone at %i Hz hears the same words', (rate) => {
  expect(wordsOf(hear(room(12, SESSION, rate), rate, Math.round(rate / 50))).map((w) => w.word)).toEqual(
    TAUGHT.map((s) => s.name),
  );
});

test('the size of the blocks changes nothing but when a decision is out', () => {
  const withoutTime = (heard: readonly Hearing[]): unknown => heard.map(({ decidedAtS: _, ...rest }) => rest);
  const track = room(12, SESSION);
  const expected = withoutTime(hear(track));
  expect(withoutTime(hear(track, 16_000, 101))).toEqual(expected);
  expect(withoutTime(hear(track, 16_000, 4_096))).toEqual(expected);
});

test('times are stream times: a listener that starts at 100 s reports words after 100 s', () => {
  const shift = (heard: readonly Hearing[], by: number): number[] =>
    heard.map((h) => Math.round((h.startedAtS + by) * 1e4) / 1e4);
  const track = room(12, SESSION);
  expect(shift(hear(track, 16_000, 320, 100), 0)).toEqual(shift(hear(track), 100));
});

test('a handler who speaks four times as loud as while teaching is still heard', () => {
  const track = room(12, SESSION).map((x) => 4 * x);
  expect(wordsOf(hear(track)).map((w) => w.word)).toEqual(TAUGHT.map((s) => s.name));
});

test('a model survives being cloned and sent to a worker', () => {
  const track = room(12, SESSION);
  expect(hear(track, 16_000, 320, 0, structuredClone(MODEL))).toEqual(hear(track));
});

test('noise, hum and silence are not words', () => {
  const hum = Float32Array.from({ length: 16_000 * 5 }, (_, i) => 0.3 * Math.sin((2 * Math.PI * 100 * i) / 16_000));
  for (const track of [
    noise(16_000 * 10, 5, 0.05),
    noise(16_000 * 10, 6, 0.9),
    hum,
    new Float32Array(16_000 * 5),
    new Float32Array(16_000 * 3).fill(0.7),
  ]) {
    expect(wordsOf(hear(track))).toEqual([]);
  }
});

test('whatever the microphone delivers, nothing crashes and no word comes out of it', () => {
  const sample = fc.oneof(
    fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 1, -1, 1e30, -1e30),
    fc.float({ min: -1, max: 1, noNaN: true }),
  );
  const block = fc.array(sample, { maxLength: 700 }).map((a) => Float32Array.from(a));
  fc.assert(
    fc.property(fc.array(block, { maxLength: 30 }), (blocks) => {
      const listener = createListener(MODEL, { sampleRateHz: 16_000 });
      const heard = [...blocks.flatMap((b) => listener.push(b)), ...listener.flush()];
      expect(wordsOf(heard)).toEqual([]);
    }),
    { numRuns: 25, seed: 4 },
  );
});

const RATE = 16_000;
const tone = (hertz: number, gain: number): Float32Array =>
  Float32Array.from({ length: 4 * RATE }, (_, i) => gain * Math.sin((2 * Math.PI * hertz * i) / RATE));
/** What a microphone, a cable or a driver may deliver instead of speech. */
const ODD_STREAMS: Readonly<Record<string, Float32Array>> = {
  nothing: new Float32Array(0),
  'one sample': Float32Array.of(1),
  'a constant': new Float32Array(4 * RATE).fill(-0.8),
  'a constant with hiss': noise(4 * RATE, 3, 0.01).map((x) => x + 0.9),
  'a full-scale square': tone(220, 1).map(Math.sign),
  'a clipped hum': tone(100, 9).map((x) => Math.max(-1, Math.min(1, x))),
  'the highest tone': tone(7_999, 1),
  'one loud sample a second': Float32Array.from({ length: 6 * RATE }, (_, i) => (i % RATE === 777 ? 1 : 0)),
  'noise that is switched on and off': noise(6 * RATE, 9, 0.3).map((x, i) => (i % 9_600 < 4_800 ? x : 0)),
  'samples far beyond full scale': noise(4 * RATE, 4, 1e30),
};

test.each(Object.keys(ODD_STREAMS))('out of %s comes no word', (name) => {
  expect(wordsOf(hear(ODD_STREAMS[name] ?? new Float32Array(0)))).toEqual([]);
});

test('after an hour of quiet the next word is heard, at its time', () => {
  // Time is what the stream says: an hour is skipped by where the stream starts, then a minute is really listened to.
  const words = wordsOf(hear(room(72, [{ name: 'hold', atS: 70, seed: 31 }]), RATE, 320, 3_600));
  expect(words.map(({ word }) => word)).toEqual(['hold']);
  expect(Math.abs((words[0]?.startedAtS ?? 0) - 3_670)).toBeLessThan(0.25);
});

test.each([0, -1, Number.NaN, 7_999, 192_001, Number.POSITIVE_INFINITY])(
  'a stream of %s samples a second is refused with its bounds',
  (rate) => {
    expect(() => createListener(MODEL, { sampleRateHz: rate })).toThrow(/8000 to 192000/);
  },
);

test('a broken stretch of samples does not deafen the ear for what follows', () => {
  const track = room(12, SESSION);
  track.fill(Number.NaN, 0, 8_000);
  track.fill(Number.POSITIVE_INFINITY, 8_000, 8_100);
  expect(wordsOf(hear(track)).map((w) => w.word)).toEqual(TAUGHT.map((s) => s.name));
});

test('a sound that the app itself plays is not a word, and a word over a beat is', () => {
  const track = room(5, [{ name: 'hold', atS: 1, seed: 31 }]);
  const expected = (from: number, to: number): string[] => {
    const listener = createListener(MODEL, { sampleRateHz: 16_000 });
    listener.expectOwnSound(from, to);
    return wordsOf([...listener.push(track), ...listener.flush()]).map((w) => w.word);
  };
  expect(expected(0.9, 1.6)).toEqual([]);
  expect(expected(1.1, 1.16)).toEqual(['hold']);
});

test('the level says who speaks', () => {
  const listener = createListener(MODEL, { sampleRateHz: 16_000 });
  listener.push(noise(32_000, 1, 0.002));
  const quiet = listener.level();
  expect(quiet.speaking).toBe(false);
  listener.push(say('hold', 40).subarray(0, 4_000));
  expect(listener.level().speaking).toBe(true);
  expect(listener.level().nowDb).toBeGreaterThan(quiet.nowDb + 20);
});

test('without a usable take of every word nothing can be learnt, and it says which', () => {
  const hollow = enrol({
    words: { hold: takes('hold', 3), mark: [{ samples: new Float32Array(8_000), sampleRateHz: 16_000 }] },
    talk: [],
  });
  expect(hollow).toMatchObject({ ok: false });
  expect(hollow.problems).toContainEqual({ kind: 'no-takes', word: 'mark' });
  expect(enrol({ words: {}, talk: [] }).problems).toEqual([{ kind: 'no-words' }]);
});

test('a take with samples that are not numbers is left out and named', () => {
  const broken: Take = { samples: Float32Array.of(0.1, Number.NaN, 0.2), sampleRateHz: 16_000 };
  const enrolled = enrol({ ...TEACHING, words: { ...TEACHING.words, mark: [...takes('mark', 3), broken] } });
  expect(enrolled).toMatchObject({ ok: true, problems: [{ kind: 'not-finite', word: 'mark', take: 3 }] });
});

test('one take and no talk is enough to try, and the forecast says that it is little', () => {
  const enrolled = enrol({ words: { hold: takes('hold', 1) }, talk: [] });
  if (!enrolled.ok) throw new Error('one take should do');
  expect(enrolled.forecast[0]?.advice).toEqual(expect.arrayContaining([{ kind: 'too-few-takes', takes: 1 }]));
});

test('two words that sound alike are reported with the other word', () => {
  const enrolled = enrol({
    ...TEACHING,
    words: { hold: takes('hold', 3), mark: takes('hold', 3, 60), lifted: takes('lifted', 3) },
  });
  if (!enrolled.ok) throw new Error('alike words can be enrolled');
  expect(enrolled.forecast.find((f) => f.word === 'hold')?.advice).toContainEqual(
    expect.objectContaining({ kind: 'too-like', other: 'mark' }),
  );
});

test('a take is inspected while teaching: length, level, clipping, cut off, too quiet', () => {
  const word = say('lifted', 3);
  const around = (x: Float32Array, before: number, after: number): Float32Array => {
    const out = noise(x.length + before + after, 2, 0.0005);
    x.forEach((s, i) => {
      out[before + i] = (out[before + i] as number) + s;
    });
    return out;
  };
  const good = inspectTake({ samples: around(word, 4_000, 4_000), sampleRateHz: 16_000 });
  expect(good.faults).toEqual([]);
  expect(good.speechLengthS).toBeCloseTo(word.length / 16_000, 1);
  expect(good.speechStartsAtS).toBeCloseTo(0.25, 1);
  expect(good.levelDb).toBeCloseTo(20 * Math.log10(0.06), 0);
  expect(inspectTake({ samples: around(word, 0, 8_000).subarray(1_600), sampleRateHz: 16_000 }).faults).toContain(
    'cut-off-start',
  );
  expect(inspectTake({ samples: around(word, 8_000, 0).subarray(0, 14_000), sampleRateHz: 16_000 }).faults).toContain(
    'cut-off-end',
  );
  expect(inspectTake({ samples: word.map((x) => Math.max(-1, Math.min(1, 40 * x))), sampleRateHz: 16_000 }).faults).toContain(
    'clipped',
  );
  expect(inspectTake({ samples: word.map((x) => x / 1_000), sampleRateHz: 16_000 }).faults).toContain('too-quiet');
});

test('a word cut tight keeps its soft beginning; a room that is heard before and after it may cover that', () => {
  const hiss = noise(0.12 * 16_000, 5, 0.006);
  const vowel = say('lifted', 4);
  const word = new Float32Array(hiss.length + vowel.length);
  word.set(hiss);
  word.set(vowel, hiss.length);
  const tight = inspectTake({ samples: word, sampleRateHz: 16_000 });
  expect(tight.speechStartsAtS).toBe(0);
  expect(tight.speechLengthS).toBeCloseTo(word.length / 16_000, 1);

  const inRoom = noise(word.length + 16_000, 6, 0.02).map((x, i) => x + (word[i - 8_000] ?? 0));
  expect(inspectTake({ samples: inRoom, sampleRateHz: 16_000 }).speechStartsAtS).toBeGreaterThan(0.55);
});
