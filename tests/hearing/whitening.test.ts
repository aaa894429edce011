/** Evening out: what differs within a word counts for little, what tells words apart still counts. */
import { expect, test } from 'vitest';
import { fitNormaliser, type Normaliser, normalise, type Part } from '../../src/hearing/feature.ts';
import { fitWhitening, type InRooms } from '../../src/hearing/whitening.ts';
import { noise } from './sounds.ts';

const PARTS: readonly Part[] = [
  { dims: 6, weight: 1 },
  { dims: 3, weight: 2 },
];
const DIMS = 9;
const ROWS = 12;

/** A word is a slow curve of its own; `nuisance` pushes dimensions 1 and 2 of it together, as a noisy room would. */
function say(word: number, nuisance: number, seed: number): Float32Array[] {
  const jitter = noise(ROWS * DIMS, seed, 0.05);
  return Array.from({ length: ROWS }, (_, r) =>
    Float32Array.from({ length: DIMS }, (_, d) => {
      const curve = Math.sin(1 + word * (d + 1) + (r * (d + 2)) / 12);
      const pushed = d === 1 || d === 2 ? nuisance * Math.cos(r + seed) : 0;
      return curve + pushed + (jitter[r * DIMS + d] as number);
    }),
  );
}

const TAKES: readonly InRooms[] = [0, 1].flatMap((word) =>
  [1, 2, 3].map((take) => ({
    word: `word ${word}`,
    rooms: [0, 1.5, 3].map((nuisance, room) => say(word, nuisance, 100 * word + 10 * take + room)),
  })),
);
const PLAIN = fitNormaliser(
  TAKES.flatMap(({ rooms }) => rooms.flat()),
  DIMS,
);
const evened = (takes: readonly InRooms[]): Normaliser => ({ ...PLAIN, whitening: fitWhitening(takes, PLAIN, PARTS) });

function meanDistance(a: readonly Float32Array[], b: readonly Float32Array[], normaliser: Normaliser): number {
  const [x, y] = [new Float32Array(DIMS), new Float32Array(DIMS)];
  const distances = a.map((row, r) => {
    normalise(row, normaliser, PARTS, x, 0);
    normalise(b[r] as Float32Array, normaliser, PARTS, y, 0);
    return Math.hypot(...x.map((value, d) => value - (y[d] as number)));
  });
  return distances.reduce((sum, d) => sum + d, 0) / ROWS;
}

test('the same word in a loud room comes nearer, and another word stays as far', () => {
  const normaliser = evened(TAKES);
  const ratio = (n: Normaliser): number =>
    meanDistance(say(0, 0, 901), say(0, 3, 902), n) / meanDistance(say(0, 0, 903), say(1, 0, 904), n);
  expect(ratio(normaliser)).toBeLessThan(0.75 * ratio(PLAIN));
});

test('every part still has length one, so that no part outweighs another', () => {
  const vector = new Float32Array(DIMS);
  normalise(say(0, 1, 905)[3] as Float32Array, evened(TAKES), PARTS, vector, 0);
  expect(Math.hypot(...vector.subarray(0, 6))).toBeCloseTo(1, 5);
  expect(Math.hypot(...vector.subarray(6))).toBeCloseTo(1, 5);
});

test('one take in one room says nothing of what varies: nothing is evened out, and nothing breaks', () => {
  const lone = evened([{ word: 'word 0', rooms: [say(0, 0, 906)] }]);
  const [a, b] = [new Float32Array(DIMS), new Float32Array(DIMS)];
  const row = say(1, 0, 907)[2] as Float32Array;
  normalise(row, lone, PARTS, a, 0);
  normalise(row, PLAIN, PARTS, b, 0);
  a.forEach((value, d) => {
    expect(value).toBeCloseTo(b[d] as number, 5);
  });
});

test('takes that drag the word out are laid side by side, moment by moment', () => {
  const slow = say(0, 0, 908).flatMap((row) => [row, row]);
  const drawn = fitWhitening(
    [
      { word: 'word 0', rooms: [say(0, 0, 908)] },
      { word: 'word 0', rooms: [slow] },
    ],
    PLAIN,
    PARTS,
  );
  const other = fitWhitening(
    [
      { word: 'word 0', rooms: [say(0, 0, 908)] },
      { word: 'word 0', rooms: [say(1, 0, 909)] },
    ],
    PLAIN,
    PARTS,
  );
  const size = (lower: readonly Float32Array[]): number => Math.max(...(lower[0] as Float32Array).map(Math.abs));
  expect(size(drawn)).toBeCloseTo(1, 3);
  expect(size(other)).toBeLessThan(3);
  expect(size(other)).not.toBeCloseTo(1, 3);
});
