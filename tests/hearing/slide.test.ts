/** The sliding comparison against a recursion written straight from its definition. */
import { expect, test } from 'vitest';
import { createBank } from '../../src/hearing/bank.ts';
import { createSlider } from '../../src/hearing/slide.ts';
import { noise } from './sounds.ts';

interface Path {
  readonly sum: number;
  readonly weight: number;
  readonly start: number;
}

/** The best path that ends at stream step i and template row j: of the three ways in, the one of least mean cost. */
function bestPath(distance: (i: number, j: number) => number, i: number, j: number, memo: Map<string, Path>): Path {
  const nothing: Path = { sum: 1e9, weight: 1, start: 0 };
  if (i < 0) return nothing;
  const known = memo.get(`${i}/${j}`);
  if (known) return known;
  const d = distance(i, j);
  const from = (path: Path, weight: number): Path => ({
    sum: path.sum + weight * d,
    weight: path.weight + weight,
    start: path.start,
  });
  const ways: Path[] =
    j === 0
      ? [{ sum: 2 * d, weight: 2, start: i }, from(bestPath(distance, i - 1, 0, memo), 1)]
      : [
          from(bestPath(distance, i - 1, j - 1, memo), 2),
          from(bestPath(distance, i - 1, j, memo), 1),
          from(bestPath(distance, i, j - 1, memo), 1),
        ];
  const best = ways.reduce((a, b) => (b.sum / b.weight < a.sum / a.weight ? b : a));
  memo.set(`${i}/${j}`, best);
  return best;
}

test('the alignment that slides along the stream is the one that the recursion finds', () => {
  const rows = 6;
  const steps = 30;
  const grid = noise(rows * steps, 11).map((x) => 1 + x);
  const slider = createSlider(rows);
  const memo = new Map<string, Path>();
  for (let i = 0; i < steps; i++) {
    slider.step(grid, i * rows);
    const path = bestPath((a, b) => grid[a * rows + b] as number, i, rows - 1, memo);
    const taken = i - path.start + 1;
    const misfit = taken < 0.5 * rows || taken > 2 * rows + 1 ? 0.15 : 0;
    expect(slider.cost).toBeCloseTo(path.sum / path.weight + misfit, 6);
    if (i > rows) expect(slider.startedAtStep).toBe(path.start);
  }
});

test('a word inside a stream is found at its end, with its beginning', () => {
  const slider = createSlider(4);
  const ends: number[] = [];
  for (let i = 0; i < 20; i++) {
    // Row j fits step 8 + j and nothing else.
    slider.step(
      Float32Array.from({ length: 4 }, (_, j) => (i === 8 + j ? 0 : 1)),
      0,
    );
    ends.push(slider.cost);
    if (i === 11) expect(slider.startedAtStep).toBe(8);
  }
  expect(ends.indexOf(Math.min(...ends))).toBe(11);
});

test('the bank gives the weighted chord lengths that the formula gives', () => {
  const parts = [
    { dims: 5, weight: 1 },
    { dims: 3, weight: 2 },
  ];
  const unit = (seed: number): Float32Array => {
    const raw = noise(8, seed);
    const scale = (from: number, to: number): number => Math.sqrt(raw.subarray(from, to).reduce((s, x) => s + x * x, 0));
    const a = scale(0, 5);
    const b = scale(5, 8);
    return raw.map((x, i) => x / (i < 5 ? a : b));
  };
  const rows = [unit(1), unit(2), unit(3)];
  const values = new Float32Array(24);
  rows.forEach((row, r) => {
    values.set(row, 8 * r);
  });
  const bank = createBank(
    [
      { steps: 2, values: values.subarray(0, 16) },
      { steps: 1, values: values.subarray(16) },
    ],
    8,
    parts,
  );
  const vector = unit(9);
  bank.compare(vector);
  const chord = (row: Float32Array, from: number, to: number): number =>
    Math.sqrt(row.subarray(from, to).reduce((s, x, i) => s + (x - (vector[from + i] as number)) ** 2, 0));
  expect(bank.offsets).toEqual([0, 2]);
  rows.forEach((row, r) => {
    expect(bank.distances[r]).toBeCloseTo(chord(row, 0, 5) + 2 * chord(row, 5, 8), 4);
  });
});
