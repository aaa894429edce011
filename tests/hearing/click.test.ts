/** A clicker and a click of the tongue as words: heard, told apart, and not mixed up with what else sounds in a kitchen. */
import { expect, test } from 'vitest';
import { createTakeCatcher } from '../../src/hearing/catch-take.ts';
import { clickOf } from '../../src/hearing/click.ts';
import type { Hearing } from '../../src/hearing/decide.ts';
import { enrol, inspectTake } from '../../src/hearing/enrol.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Model } from '../../src/hearing/model.ts';
import type { Take } from '../../src/hearing/take.ts';
import { type Chance, chanceFrom, clicker, inRoom, OTHER_SOUNDS, tongue, track } from './clicks-made.ts';
import { room, say } from './sounds.ts';

type Maker = (chance: Chance) => Float32Array;

const take = (make: Maker, chance: Chance): Take => ({
  samples: track(0.6, [{ sound: inRoom(make(chance), chance), atS: 0.25, peak: 0.3 }], chance),
  sampleRateHz: 16_000,
});
const takes = (make: Maker, chance: Chance, count = 4): Take[] => Array.from({ length: count }, () => take(make, chance));
const spoken = (name: 'hold' | 'good', count = 4): Take[] =>
  Array.from({ length: count }, (_, i) => ({ samples: say(name, 1 + i), sampleRateHz: 16_000 }));

const CLICKER = clicker(3);
const TONGUE = tongue(3);

function modelOf(words: Readonly<Record<string, readonly Take[]>>): Model {
  const enrolled = enrol({ words, talk: spoken('good', 2) });
  if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
  return enrolled.model;
}

const chance = chanceFrom(8);
const MODEL = modelOf({ hold: spoken('hold'), mark: takes(CLICKER, chance), lifted: takes(TONGUE, chance) });

function hear(samples: Float32Array, model = MODEL, own: readonly [number, number][] = []): Hearing[] {
  const listener = createListener(model, { sampleRateHz: 16_000 });
  for (const [fromS, toS] of own) listener.expectOwnSound(fromS, toS);
  const heard: Hearing[] = [];
  for (let at = 0; at < samples.length; at += 320) heard.push(...listener.push(samples.subarray(at, at + 320)));
  return [...heard, ...listener.flush()];
}

const names = (heard: readonly Hearing[]): string[] => heard.map((each) => (each.kind === 'word' ? each.word : each.kind));
const sounds = (...made: readonly (readonly [Maker, number])[]): Float32Array =>
  track(
    6,
    made.map(([make, atS]) => ({ sound: inRoom(make(chance), chance), atS, peak: 0.25 })),
    chance,
  );

test('a clicker marks, a click of the tongue means lifted, and a spoken hold is heard beside them', () => {
  const mixed = sounds([CLICKER, 3], [TONGUE, 4.5], [CLICKER, 5.5]);
  room(6, [{ name: 'hold', atS: 1, seed: 31 }]).forEach((x, i) => {
    mixed[i] = (mixed[i] as number) + x;
  });
  const heard = hear(mixed);
  expect(names(heard)).toEqual(['hold', 'mark', 'lifted', 'mark']);
  const onset = (word: number) => heard[word]?.startedAtS ?? 0;
  expect(Math.abs(onset(1) - 3.002)).toBeLessThan(0.005);
  expect(Math.abs(onset(2) - 4.502)).toBeLessThan(0.005);
});

test('a click is decided within a quarter of a second', () => {
  for (const each of hear(sounds([CLICKER, 1], [TONGUE, 3]))) expect(each.decidedAtS - each.startedAtS).toBeLessThan(0.25);
});

test.each(Object.entries(OTHER_SOUNDS))('a %s is no click of the handler', (_, make) => {
  expect(names(hear(sounds([make, 1], [make, 2.5], [make, 4])))).toEqual([]);
});

test('only clicks taught, no spoken word: the ear hears them all the same', () => {
  const model = modelOf({ mark: takes(CLICKER, chance), lifted: takes(TONGUE, chance) });
  expect(names(hear(sounds([CLICKER, 1], [TONGUE, 3]), model))).toEqual(['mark', 'lifted']);
});

test('a model with clicks survives being cloned and sent to a worker', () => {
  const samples = sounds([CLICKER, 1], [TONGUE, 3]);
  expect(hear(samples, structuredClone(MODEL))).toEqual(hear(samples));
});

test('a clicker over a beat of the app is heard, a sound of the app is not', () => {
  expect(names(hear(sounds([CLICKER, 1]), MODEL, [[0.98, 1.1]]))).toEqual(['mark']);
  expect(names(hear(sounds([OTHER_SOUNDS.latch, 1]), MODEL, [[0.98, 1.1]]))).toEqual([]);
});

test('a take of a clicker is not called too short, and one that is no click is named', () => {
  expect(inspectTake(take(CLICKER, chance)).faults).not.toContain('too-short');
  const enrolled = enrol({ words: { mark: [...takes(CLICKER, chance), ...spoken('hold', 1)] }, talk: [] });
  expect(enrolled).toMatchObject({ ok: true, problems: [{ kind: 'not-a-click', word: 'mark', take: 4 }] });
});

test('while teaching, a single click is caught as a take and a spoken word is still one take', () => {
  const caught = createTakeCatcher(16_000, 2.5).push(sounds([CLICKER, 1], [TONGUE, 3]));
  expect(caught.map((each) => clickOf(each) !== null)).toEqual([true, true]);
  expect(createTakeCatcher(16_000, 2.5).push(room(4, [{ name: 'hold', atS: 1, seed: 4 }]))).toHaveLength(1);
});

test.each([20, 40, 54, 60, 70, 78])('a slow press, its halves %i ms apart, is one click with two pulses', (apartMs) => {
  const one = TONGUE(chance);
  const pair = new Float32Array(one.length + 16 * apartMs);
  pair.set(one);
  for (const [i, x] of one.entries()) pair[16 * apartMs + i] = (pair[16 * apartMs + i] as number) + x;
  const found = clickOf({ samples: track(0.6, [{ sound: pair, atS: 0.25, peak: 0.3 }], chance), sampleRateHz: 16_000 });
  expect(found?.pulses).toHaveLength(2);
});

test('one stray take of another kind does not make the word deaf', () => {
  const model = modelOf({ mark: [...takes(CLICKER, chance, 2), ...takes(TONGUE, chance, 1)] });
  expect(names(hear(sounds([CLICKER, 1], [CLICKER, 3]), model))).toEqual(['mark', 'mark']);
  const both = modelOf({ mark: [...takes(CLICKER, chance, 1), ...takes(TONGUE, chance, 1)] });
  expect(names(hear(sounds([CLICKER, 1], [TONGUE, 3]), both))).toEqual(['mark', 'mark']);
});

test('two takes of one click are alike, and the forecast promises little of one take', () => {
  const enrolled = enrol({ words: { mark: takes(CLICKER, chance), lifted: takes(CLICKER, chance, 1) }, talk: [] });
  if (!enrolled.ok) throw new Error('clicks can be enrolled');
  const [mark, lifted] = enrolled.forecast;
  expect(mark?.advice).toContainEqual(expect.objectContaining({ kind: 'too-like', other: 'lifted' }));
  expect(lifted?.advice).toContainEqual({ kind: 'too-few-takes', takes: 1 });
});
