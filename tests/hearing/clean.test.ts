/** The noise is taken out, the word stays where it was, and a word that the cleaner would take for noise is not lost. */
import { beforeAll, describe, expect, test } from 'vitest';
import { loadWeights } from '../../src/command/ear-weights.ts';
import { type Cleaner, createCleaner } from '../../src/hearing/clean.ts';
import type { Hearing } from '../../src/hearing/decide.ts';
import { enrol, type Teaching } from '../../src/hearing/enrol.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Model } from '../../src/hearing/model.ts';
import { createNoiseMemory } from '../../src/hearing/noise-memory.ts';
import { pinkNoise } from '../../src/hearing/room-noise.ts';
import type { Take } from '../../src/hearing/take.ts';
import type { NetworkWeights } from '../../src/hearing/weights/shape.ts';
import { type GlideName, room, say } from './sounds.ts';

const RATE_HZ = 16_000;
const loaded = loadWeights();

function powerDb(samples: Float32Array, fromS = 0, toS = samples.length / RATE_HZ): number {
  const part = samples.subarray(Math.round(fromS * RATE_HZ), Math.round(toS * RATE_HZ));
  return 10 * Math.log10(part.reduce((sum, x) => sum + x * x, 0) / part.length);
}

/** Where `later` lies best on `samples`, in samples. */
function shiftOf(samples: Float32Array, later: Float32Array): number {
  const likeness = (shift: number): number => {
    let sum = 0;
    for (let i = 500; i < samples.length - 500; i++) sum += (samples[i] as number) * (later[i + shift] as number);
    return sum;
  };
  const shifts = Array.from({ length: 801 }, (_, i) => i - 400);
  return shifts.reduce((best, shift) => (likeness(shift) > likeness(best) ? shift : best), 0);
}

/** Two words at 1 and 3 s in pink noise, `snrDb` under them. */
function noisy(snrDb: number): Float32Array {
  const words = room(5, [
    { name: 'hold', atS: 1, seed: 3 },
    { name: 'lifted', atS: 3, seed: 4 },
  ]);
  const gain = 10 ** ((powerDb(say('hold', 3)) - snrDb) / 20);
  const noise = pinkNoise(words.length, 9);
  return words.map((x, i) => x + gain * (noise[i] as number));
}

const takes = (name: GlideName, count: number): Take[] =>
  Array.from({ length: count }, (_, i) => ({ samples: say(name, 1 + i), sampleRateHz: RATE_HZ }));
const TEACHING: Teaching = {
  words: { hold: takes('hold', 4), mark: takes('mark', 4), lifted: takes('lifted', 4) },
  talk: [...takes('good', 2), ...takes('come', 2), ...takes('name', 2)],
};

function whistle(hertz: number): Take {
  const length = Math.round(0.45 * RATE_HZ);
  const edge = 800;
  const samples = Float32Array.from(
    { length },
    (_, i) => 0.1 * Math.sin((2 * Math.PI * hertz * i) / RATE_HZ) * Math.min(1, i / edge, (length - i) / edge),
  );
  return { samples, sampleRateHz: RATE_HZ };
}

describe('the noise is taken out', () => {
  let cleaner: Cleaner;
  beforeAll(() => {
    const made = loaded.ok && loaded.weights.cleaner && createCleaner(loaded.weights.cleaner);
    if (!made) throw new Error('what takes out the noise is not installed: npm ci');
    cleaner = made;
  });

  test('the room falls by 10 dB and more where nobody speaks, a word by less than 2', () => {
    const before = noisy(5);
    const after = cleaner.whole(before);
    expect(powerDb(before, 2, 2.8) - powerDb(after, 2, 2.8)).toBeGreaterThan(10);
    expect(Math.abs(powerDb(before, 1.05, 1.4) - powerDb(after, 1.05, 1.4))).toBeLessThan(2);
  });

  test('a word stays where it was, to the sample', () => {
    const clear = room(5, [
      { name: 'hold', atS: 1, seed: 3 },
      { name: 'lifted', atS: 3, seed: 4 },
    ]);
    expect(Math.abs(shiftOf(clear, cleaner.whole(clear)))).toBeLessThanOrEqual(1);
  });

  test('the answer does not hang on how the microphone cuts its blocks, and two streams do not mix', () => {
    const samples = noisy(10);
    const whole = cleaner.whole(samples);
    const [one, two] = [cleaner.open(), cleaner.open()];
    const heard: number[] = [];
    for (let at = 0, size = 1; at < samples.length; at += size, size = (7 * size) % 501) {
      heard.push(...one.push(samples.subarray(at, at + size)));
      two.push(pinkNoise(size, at + 1));
    }
    expect(heard.length).toBeGreaterThan(samples.length - 520);
    heard.forEach((x, i) => {
      if (x !== whole[i]) throw new Error(`sample ${i}: ${x}, whole ${whole[i]}`);
    });
    one.close();
    two.close();
  });

  test('voice and noise add up to what came in', () => {
    const samples = noisy(5);
    const sum: number[] = [];
    cleaner.open().push(samples, (voice, noise) => void sum.push(voice + noise));
    sum.forEach((x, i) => {
      expect(Math.abs(x - (samples[i] as number))).toBeLessThan(1e-6);
    });
  });

  test('no stream is lost: more can be opened and closed than fit at once', () => {
    for (let i = 0; i < 2_000; i++) cleaner.open().close();
    expect(() => Array.from({ length: 2_000 }, () => cleaner.open())).toThrow('no room');
  });

  test('what is no module, or another one, is done without', () => {
    expect(createCleaner(new Uint8Array(10))).toBeUndefined();
    expect(createCleaner(Uint8Array.of(0, 0x61, 0x73, 0x6d, 1, 0, 0, 0))).toBeUndefined();
  });
});

describe('the memory of voice and noise', () => {
  test('a stretch stands out of itself and of its room by the ratio of the powers', () => {
    const memory = createNoiseMemory();
    const fill = (seconds: number, voice: number, noise: number): void => {
      for (let i = 0; i < seconds * RATE_HZ; i++) memory.take(voice, noise);
    };
    fill(5.5, 0, 0.01);
    fill(0.5, 0.1, 0.1);
    expect(memory.aboveNoiseDb(5.5, 6)).toBeCloseTo(0, 3);
    // Of six seconds five and a half hold 1e-4, half a one 1e-2.
    expect(memory.aboveRoomDb(5.5, 6)).toBeCloseTo(10 * Math.log10(1e-2 / ((5.5 * 1e-4 + 0.5 * 1e-2) / 6)), 3);
    fill(20, 0, 0.01);
    expect(memory.aboveNoiseDb(25, 26)).toBeLessThan(-60);
  });

  test('what the app itself sounds is no noise of the room', () => {
    const memory = createNoiseMemory((seconds) => seconds >= 2 && seconds < 3);
    for (let i = 0; i < 4 * RATE_HZ; i++)
      memory.take(i < 3.5 * RATE_HZ ? 0 : 0.1, i >= 2 * RATE_HZ && i < 3 * RATE_HZ ? 1 : 0.01);
    expect(memory.aboveRoomDb(3.5, 4)).toBeCloseTo(20, 3);
    expect(memory.aboveNoiseDb(2.2, 2.6)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe.skipIf(!loaded.ok)('an ear that takes the noise out', () => {
  const weights = (loaded as { weights: NetworkWeights }).weights;
  const modelOf = (teaching: Teaching): Model => {
    const enrolled = enrol(teaching, { weights });
    if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
    return enrolled.model;
  };
  const wordsIn = (model: Model, samples: Float32Array, startsAtS = 0): Extract<Hearing, { kind: 'word' }>[] => {
    const listener = createListener(model, { sampleRateHz: RATE_HZ, weights, startsAtS });
    return [...listener.push(samples), ...listener.flush()].filter((h) => h.kind === 'word');
  };

  test('hears the words in a room that is nearly as loud as they are, at their time', () => {
    const model = modelOf(TEACHING);
    expect(model.features).toBe('cleaned');
    const words = wordsIn(model, noisy(3), 100);
    expect(words.map(({ word }) => word)).toEqual(['hold', 'lifted']);
    expect(model.words.every(({ loud }) => loud !== undefined)).toBe(true);
    expect(Math.abs((words[0]?.startedAtS ?? 0) - 101)).toBeLessThan(0.25);
    expect(Math.abs((words[1]?.startedAtS ?? 0) - 103)).toBeLessThan(0.25);
  }, 60_000);

  test('what is heard does not hang on how long the blocks are', () => {
    const model = modelOf(TEACHING);
    const samples = noisy(3);
    const listener = createListener(model, { sampleRateHz: RATE_HZ, weights });
    const inBlocks: Hearing[] = [];
    for (let at = 0; at < samples.length; at += 333) inBlocks.push(...listener.push(samples.subarray(at, at + 333)));
    inBlocks.push(...listener.flush());
    listener.close();
    const times = (heard: readonly Hearing[]) => heard.map(({ startedAtS, endedAtS }) => [startedAtS, endedAtS]);
    expect(times(inBlocks.filter((h) => h.kind === 'word'))).toEqual(times(wordsIn(model, samples)));
  }, 60_000);

  test('of one word alone, with no talk, nothing is told by loud rooms: clatter is no word', () => {
    const model = modelOf({ words: { hold: takes('hold', 4) }, talk: [] });
    expect(model.words.every(({ loud }) => loud === undefined)).toBe(true);
    expect(
      wordsIn(
        model,
        pinkNoise(20 * RATE_HZ, 5).map((x) => 0.1 * x),
      ),
    ).toEqual([]);
  }, 60_000);

  test('a whistle is a word still: with it the sound is heard as it comes', () => {
    const model = modelOf({ ...TEACHING, words: { ...TEACHING.words, mark: [1990, 2000, 2010, 2020].map(whistle) } });
    expect(model.features).toBe('fused');
    expect(model.templates.some(({ loud }) => loud)).toBe(false);
    const samples = room(4, [{ name: 'hold', atS: 1, seed: 31 }]);
    samples.set(whistle(2005).samples, 2.5 * RATE_HZ);
    expect(wordsIn(model, samples).map(({ word }) => word)).toEqual(['hold', 'mark']);
  }, 60_000);

  test('a model that was taught with the noise taken out is refused where that is missing', () => {
    const model = { ...modelOf({ words: { hold: takes('hold', 2) }, talk: [] }) };
    const { cleaner: _, ...without } = weights;
    expect(() => createListener(model, { sampleRateHz: RATE_HZ, weights: without })).toThrow('takes out the noise');
  }, 60_000);
});
