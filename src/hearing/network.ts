/** Runs the speech embedding network over a stream: four spectrum rows (40 ms) in, one middle map and one embedding out, nothing allocated. */
import { type Convolution, createEngine, type Engine, type Kernel, layOut } from './kernel.ts';
import { LAYERS, MEL_BANDS, type NetworkWeights } from './weights/shape.ts';

/** Spectrum rows taken at a time: the stride of the network's inner maps. */
export const ROWS_A_STEP = 4;
/** The map before the fourth pool: 4 bands of 96 channels. */
export const MIDDLE_DIMS = 384;
export const EMBEDDING_DIMS = 96;
/** Numbers the network keeps: 331,000 weights and some 60,000 of its rows and windows. */
const NUMBERS = 450_000;

/** A stage takes one row [band][channel] and writes one row; it keeps what it needs of the rows before. */
interface Stage {
  readonly out: Float32Array;
  run(row: Float32Array): void;
  reset(): void;
}

/** Three neighbouring bands; outside the edges is zero. */
function overBands(engine: Engine, kernel: Kernel, bands: number): Stage {
  const channels = kernel.depth / 3;
  const padded = engine.floats((bands + 2) * channels);
  const out = engine.floats(bands * kernel.outputs);
  const work: Convolution = { kernel, input: padded, stride: channels, positions: bands, out, rectified: true };
  return {
    out,
    run(row) {
      padded.set(row, channels);
      engine.convolve(work);
    },
    reset: () => undefined,
  };
}

/** Three rows of the same band, `apart` rows from one another. The rows lie band by band, oldest tap first, so that a window is one piece. */
function overTime(engine: Engine, kernel: Kernel, bands: number, apart: number, rectified: boolean): Stage {
  const channels = kernel.depth / 3;
  const kept = Array.from({ length: 2 * apart }, () => new Float32Array(bands * channels));
  const windows = engine.floats(bands * kernel.depth);
  const out = engine.floats(bands * kernel.outputs);
  const work: Convolution = { kernel, input: windows, stride: kernel.depth, positions: bands, out, rectified };
  let next = 0;
  const fill = (row: Float32Array, tap: number): void => {
    for (let b = 0; b < bands; b++) {
      const to = b * kernel.depth + tap * channels;
      for (let c = 0; c < channels; c++) windows[to + c] = row[b * channels + c] as number;
    }
  };
  return {
    out,
    run(row) {
      const oldest = kept[next] as Float32Array;
      fill(oldest, 0);
      fill(kept[(next + apart) % kept.length] as Float32Array, 1);
      fill(row, 2);
      oldest.set(row);
      next = (next + 1) % kept.length;
      engine.convolve(work);
    },
    reset() {
      for (const row of kept) row.fill(0);
    },
  };
}

/** The first convolution: 3 rows x 3 bands of the spectrum. */
function overBoth(engine: Engine, kernel: Kernel): Stage {
  const width = MEL_BANDS + 2;
  const rows = new Float32Array(3 * width);
  const windows = engine.floats(MEL_BANDS * 9);
  const out = engine.floats(MEL_BANDS * kernel.outputs);
  const work: Convolution = { kernel, input: windows, stride: 9, positions: MEL_BANDS, out, rectified: true };
  return {
    out,
    run(row) {
      rows.copyWithin(0, width);
      rows.set(row, 2 * width + 1);
      for (let b = 0; b < MEL_BANDS; b++) {
        for (let t = 0; t < 9; t++) windows[b * 9 + t] = rows[Math.floor(t / 3) * width + b + (t % 3)] as number;
      }
      engine.convolve(work);
    },
    reset: () => void rows.fill(0),
  };
}

/** Larger of two neighbouring bands, channel by channel, into `out`; `keep` takes the larger of what is there already too. */
function poolBands(row: Float32Array, channels: number, out: Float32Array, keep: boolean): void {
  const bands = out.length / channels;
  for (let b = 0; b < bands; b++) {
    for (let c = 0; c < channels; c++) {
      const low = row[2 * b * channels + c] as number;
      const high = row[(2 * b + 1) * channels + c] as number;
      const larger = Math.max(low, high);
      const to = b * channels + c;
      out[to] = keep && (out[to] as number) > larger ? (out[to] as number) : larger;
    }
  }
}

function runAll(stages: readonly Stage[], row: Float32Array): Float32Array {
  let at = row;
  for (const stage of stages) {
    stage.run(at);
    at = stage.out;
  }
  return at;
}

export interface Network {
  /** The map before the fourth pool, row-major [band][channel]; overwritten by the next step. */
  readonly middle: Float32Array;
  readonly embedding: Float32Array;
  /** Takes four spectrum rows, row-major [row][band]. Both outputs then belong to the window that ends with them. */
  step(rows: Float32Array): void;
  /** Forgets the stream, as if only zeros had been heard. */
  reset(): void;
}

export function createNetwork(weights: NetworkWeights, engine: Engine = createEngine(NUMBERS)): Network {
  const kernels = weights.layers.map((layer) => layOut(layer, engine));
  const stage = (i: number, bands: number): Stage => {
    const kernel = kernels[i] as Kernel;
    const over = LAYERS[i]?.over;
    return over === 'both'
      ? overBoth(engine, kernel)
      : over === 'bands'
        ? overBands(engine, kernel, bands)
        : overTime(engine, kernel, bands, 1, true);
  };
  const stages = (from: number, to: number, bands: number): Stage[] =>
    Array.from({ length: to - from }, (_, i) => stage(from + i, bands));
  const entry = stages(0, 3, 32);
  const second = stages(3, 7, 16);
  const third = stages(7, 11, 8);
  const fourth = stages(11, 15, 4);
  const fifth = stages(15, 19, 2);
  const last = overTime(engine, kernels[19] as Kernel, 1, 2, false);
  const afterEntry = new Float32Array(16 * 24);
  const afterSecond = new Float32Array(8 * 48);
  const afterThird = new Float32Array(4 * 72);
  const afterFourth = new Float32Array(2 * 96);
  const afterFifth = new Float32Array(96);
  const before = new Float32Array(96);
  const row = new Float32Array(MEL_BANDS);
  const middle = (fourth[3] as Stage).out;

  function stepPair(rows: Float32Array, from: number, keep: boolean): void {
    for (let r = 0; r < 2; r++) {
      for (let b = 0; b < MEL_BANDS; b++) row[b] = rows[(from + r) * MEL_BANDS + b] as number;
      poolBands(runAll(entry, row), 24, afterEntry, r === 1);
    }
    poolBands(runAll(second, afterEntry), 48, afterSecond, false);
    poolBands(runAll(third, afterSecond), 72, afterThird, keep);
  }

  return {
    middle,
    embedding: last.out,
    step(rows) {
      stepPair(rows, 0, false);
      stepPair(rows, 2, true);
      poolBands(runAll(fourth, afterThird), 96, afterFourth, false);
      poolBands(runAll(fifth, afterFourth), 96, afterFifth, false);
      // The last pool spans two rows without stride: the larger of this row and the one before.
      for (let c = 0; c < 96; c++) {
        const now = afterFifth[c] as number;
        const then = before[c] as number;
        before[c] = now;
        afterFifth[c] = Math.max(now, then);
      }
      last.run(afterFifth);
    },
    reset() {
      for (const s of [...entry, ...second, ...third, ...fourth, ...fifth, last]) s.reset();
      before.fill(0);
    },
  };
}
