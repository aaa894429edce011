/** What goes wrong while words are taught, one by one: each is noticed, with what the handler is told resting on it. */
import { expect, test } from 'vitest';
import { createTakeCatcher, type TakeCatcher } from '../../src/hearing/catch-take.ts';
import { enrol, inspectTake, type Teaching } from '../../src/hearing/enrol.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Take } from '../../src/hearing/take.ts';
import { type GlideName, noise, say } from './sounds.ts';

const RATE = 16_000;
const takesOf = (name: GlideName, seeds: readonly number[]): Take[] =>
  seeds.map((seed) => ({ samples: say(name, seed), sampleRateHz: RATE }));

/** The word with a room around it. */
function recorded(name: GlideName, { gain = 1, hum = 0.0005, before = 0.3, after = 0.4 } = {}): Float32Array {
  const word = say(name, 5);
  const at = Math.round(before * RATE);
  const out = noise(at + word.length + Math.round(after * RATE), 3, hum);
  word.forEach((x, i) => {
    out[at + i] = Math.max(-1, Math.min(1, (out[at + i] as number) + gain * x));
  });
  return out;
}

const faultsOf = (samples: Float32Array) => inspectTake({ samples, sampleRateHz: RATE }).faults;

test('a word said as usual has no fault', () => {
  expect(faultsOf(recorded('hold'))).toEqual([]);
});

test('a word from far away is too quiet, and one in a loud room is too noisy', () => {
  expect(faultsOf(recorded('hold', { gain: 0.002, hum: 0.000_01 }))).toContain('too-quiet');
  // Told first: what the handler reads is the first fault.
  for (const hum of [0.12, 0.2, 0.4]) expect(faultsOf(recorded('hold', { gain: 0.25, hum }))[0], `${hum}`).toBe('too-noisy');
});

test('a word shouted into the phone is clipped', () => {
  expect(faultsOf(recorded('hold', { gain: 40 }))).toContain('clipped');
});

test('a word whose beginning or end the recording missed is cut off there', () => {
  const whole = recorded('lifted');
  expect(faultsOf(whole.subarray(0.45 * RATE))).toContain('cut-off-start');
  expect(faultsOf(whole.subarray(0, 0.55 * RATE))).toContain('cut-off-end');
});

function push(catcher: TakeCatcher, samples: Float32Array): number {
  let caught = 0;
  for (let at = 0; at < samples.length; at += 320) caught += catcher.push(samples.subarray(at, at + 320)).length;
  return caught;
}

test('clipping is told while it happens, and no longer when it is over', () => {
  const catcher = createTakeCatcher(RATE, 2);
  push(catcher, recorded('hold'));
  expect(catcher.level().trouble).toBeNull();
  push(catcher, recorded('hold', { gain: 40 }));
  expect(catcher.level().trouble).toBe('clipped');
  push(catcher, noise(3 * RATE, 1, 0.0005));
  expect(catcher.level().trouble).toBeNull();
});

test('a room too loud for any word to stand out is told while nothing is caught', () => {
  const catcher = createTakeCatcher(RATE, 2);
  push(catcher, noise(3 * RATE, 1, 0.1));
  expect(push(catcher, noise(12 * RATE, 2, 0.1))).toBe(0);
  expect(catcher.level().trouble).toBe('loud-room');
});

test('a sound too short for a take leaves no take, and is told all the same', () => {
  const blip = noise(2 * RATE, 1, 0.0005).map((x, i) => {
    const t = i / RATE - 1;
    return t < 0 || t > 0.045 ? x : x + 0.2 * Math.sin(Math.PI * (t / 0.045)) ** 2 * Math.sin(2 * Math.PI * 150 * t);
  });
  const catcher = createTakeCatcher(RATE, 2);
  expect(push(catcher, blip)).toBe(0);
  expect(catcher.level().trouble).toBe('too-short');
});

const TEACHING: Teaching = {
  words: { hold: takesOf('hold', [1, 2, 3, 4]), mark: takesOf('mark', [1, 2, 3, 4]), lifted: takesOf('lifted', [1, 2, 3, 4]) },
  talk: takesOf('good', [1, 2]).concat(takesOf('come', [1, 2]), takesOf('name', [1, 2])),
};

function forecast(words: Teaching['words']) {
  const enrolled = enrol({ ...TEACHING, words: { ...TEACHING.words, ...words } });
  if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
  return enrolled.forecast;
}

test('a take of another word among the takes is the one that is named as unlike the others', () => {
  const holds = [...takesOf('hold', [1, 2, 3]), ...takesOf('name', [9])];
  expect(forecast({ hold: holds }).find(({ word }) => word === 'hold')?.advice).toContainEqual({ kind: 'takes-unlike', take: 3 });
  expect(forecast({}).flatMap(({ advice }) => advice)).toEqual([]);
});

test('of two words that are one and the same, nearly all would be mistaken, and it says how many', () => {
  const advice = forecast({ mark: takesOf('hold', [61, 62, 63]) }).find(({ word }) => word === 'hold')?.advice ?? [];
  const like = advice.find(({ kind }) => kind === 'too-like');
  expect(like).toMatchObject({ other: 'mark' });
  expect(like?.kind === 'too-like' && like.share).toBeGreaterThan(0.3);
});

/** A whistle that glides from one pitch to another, never twice the same. */
function whistle(fromHz: number, toHz: number, seed: number): Take {
  const wobble = noise(4, 77 + seed);
  const length = Math.round(0.45 * RATE * (1 + 0.08 * (wobble[1] as number)));
  let phase = 0;
  const body = noise(length, seed, 0.002).map((breath, i) => {
    const share = i / length;
    phase += (2 * Math.PI * (1 + 0.03 * (wobble[2] as number)) * (fromHz + (toHz - fromHz) * share)) / RATE;
    return breath + 0.2 * Math.sin(phase) * Math.min(1, 20 * share, 20 * (1 - share));
  });
  const samples = noise(length + RATE, 5 + seed, 0.0005);
  body.forEach((x, i) => {
    samples[RATE / 2 + i] = (samples[RATE / 2 + i] as number) + x;
  });
  return { samples, sampleRateHz: RATE };
}

test('whistles can be words: rising, falling and level ones are told apart', () => {
  const made = { hold: [1500, 1500], mark: [1100, 2200], lifted: [2200, 1100] } as const;
  const words = Object.fromEntries(
    Object.entries(made).map(([word, [a, b]]) => [word, [1, 2, 3, 4].map((n) => whistle(a, b, n))]),
  );
  const enrolled = enrol({ words, talk: TEACHING.talk });
  if (!enrolled.ok) throw new Error('whistles can be taught');
  const catcher = createTakeCatcher(RATE, 2);
  for (const [word, [a, b]] of Object.entries(made)) {
    const again = whistle(a, b, 30);
    expect(push(catcher, again.samples), `${word} is caught`).toBe(1);
    const listener = createListener(enrolled.model, { sampleRateHz: RATE });
    const heard = [...listener.push(noise(RATE, 2, 0.0005)), ...listener.push(again.samples), ...listener.flush()];
    expect(heard.map((each) => each.kind === 'word' && each.word)).toEqual([word]);
  }
});
