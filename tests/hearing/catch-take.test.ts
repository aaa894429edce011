/** Teaching a word: what is cut out of the stream. */

import { expect, test } from 'vitest';
import { type Caught, createTakeCatcher, LONGEST_STRETCH_S } from '../../src/hearing/catch-take.ts';
import { inspectTake } from '../../src/hearing/enrol.ts';

/** A room with a faint hiss and tones of the given moments, seconds. */
function room(sampleRateHz: number, lengthS: number, sounds: readonly (readonly [number, number])[]): Float32Array {
  let seed = 7;
  const hiss = () => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return (seed / 2 ** 31 - 1) * 0.002;
  };
  return Float32Array.from({ length: lengthS * sampleRateHz }, (_, i) => {
    const t = i / sampleRateHz;
    const on = sounds.some(([from, to]) => t >= from && t < to);
    return hiss() + (on ? 0.2 * Math.sin(2 * Math.PI * 300 * t) : 0);
  });
}

/** The same room, and at 1 s 40 ms of a low tone that swells and fades. */
function bump(): Float32Array {
  return room(16_000, 4, []).map((x, i) => {
    const t = i / 16_000 - 1;
    return t < 0 || t > 0.04 ? x : x + 0.2 * Math.sin(Math.PI * (t / 0.04)) ** 2 * Math.sin(2 * Math.PI * 150 * t);
  });
}

function catchAll(samples: Float32Array, sampleRateHz: number, longestS = 2): Caught[] {
  const catcher = createTakeCatcher(sampleRateHz, longestS);
  const caught: Caught[] = [];
  for (let at = 0; at < samples.length; at += 777) caught.push(...catcher.push(samples.subarray(at, at + 777)));
  return caught;
}

test.each([16_000, 44_100, 48_000])('three words with pauses between are three takes, at %s Hz', (rate) => {
  const words = [
    [1, 1.4],
    [2.2, 2.7],
    [4, 4.3],
  ] as const;
  const caught = catchAll(room(rate, 6, words), rate);
  expect(caught).toHaveLength(3);
  for (const [i, [from, to]] of words.entries()) {
    expect(caught[i]?.startedAtS).toBeGreaterThan(from - 0.3);
    expect(caught[i]?.startedAtS).toBeLessThan(from);
    expect(caught[i]?.endedAtS).toBeGreaterThan(to);
    expect(caught[i]?.endedAtS).toBeLessThan(to + 0.3);
    expect((caught[i]?.samples.length ?? 0) / 16_000).toBeCloseTo((caught[i]?.endedAtS ?? 0) - (caught[i]?.startedAtS ?? 0), 1);
  }
});

test('the stop inside a word does not cut it in two', () => {
  expect(
    catchAll(
      room(16_000, 4, [
        [1, 1.2],
        [1.35, 1.6],
      ]),
      16_000,
    ),
  ).toHaveLength(1);
});

test('a stretch longer than a word is cut there, and says so', () => {
  const caught = catchAll(room(16_000, 6, [[1, 4]]), 16_000, 2);
  expect(caught[0]?.cut).toBe(true);
  expect((caught[0]?.samples.length ?? 0) / 16_000).toBeCloseTo(2, 1);
});

test('a room with nobody speaking gives no take', () => {
  expect(catchAll(room(48_000, 8, []), 48_000)).toEqual([]);
  expect(catchAll(new Float32Array(48_000 * 3), 48_000)).toEqual([]);
});

test('a short bump of the table is too soft an edge for a click and too short for a word', () => {
  expect(catchAll(bump(), 16_000)).toEqual([]);
});

test('a hard click is caught and named as one: it may be a clicker, it may be the table', () => {
  const [caught, ...more] = catchAll(room(16_000, 4, [[1, 1.02]]), 16_000);
  expect(more).toEqual([]);
  expect(caught && inspectTake(caught).isClick).toBe(true);
});

test('a broken stream (not numbers) gives no take and does not stop the ear', () => {
  const samples = room(16_000, 4, [[2, 2.5]]);
  samples.fill(Number.NaN, 8000, 9000);
  const caught = catchAll(samples, 16_000);
  expect(caught.some(({ startedAtS }) => startedAtS > 1.5)).toBe(true);
});

test('a noise that sets in and stays is soon the room, and no stretch is kept longer than the longest, whatever is asked', () => {
  const samples = room(16_000, 30, []).map((x, i) => (i < 2 * 16_000 ? x : 100 * x));
  const catcher = createTakeCatcher(16_000, 3600);
  const [caught, ...others] = catcher.push(samples);
  expect(others).toEqual([]);
  expect(caught).toMatchObject({ cut: true });
  expect((caught?.endedAtS ?? 0) - (caught?.startedAtS ?? 0)).toBeCloseTo(LONGEST_STRETCH_S, 1);
  expect(catcher.level()).toMatchObject({ speaking: false, trouble: 'loud-room' });
});
