/** The shape of the embedding network and of the file that holds its weights. */

/** Spectrum window and bands of the network's own front, samples at 16 kHz and counts. */
export const MEL_WINDOW = 512;
export const MEL_BINS = 257;
export const MEL_BANDS = 32;

/** As published: slope of the leaky rectifier and the value below which nothing falls. */
export const LEAK = 0.2;
export const LOWEST = -0.4;

/** One convolution: over time (3 rows, the same band), over bands (3 bands, the same row), or over both (the first). */
export interface LayerShape {
  readonly over: 'both' | 'bands' | 'time';
  readonly inputs: number;
  readonly outputs: number;
}

const block = (inputs: number, outputs: number): LayerShape[] => [
  { over: 'bands', inputs, outputs },
  { over: 'time', inputs: outputs, outputs },
  { over: 'bands', inputs: outputs, outputs },
  { over: 'time', inputs: outputs, outputs },
];

/** Twenty convolutions, as published: one and two, four blocks of four, one to end. */
export const LAYERS: readonly LayerShape[] = [
  { over: 'both', inputs: 1, outputs: 24 },
  { over: 'bands', inputs: 24, outputs: 24 },
  { over: 'time', inputs: 24, outputs: 24 },
  ...block(24, 48),
  ...block(48, 72),
  ...block(72, 96),
  ...block(96, 96),
  { over: 'time', inputs: 96, outputs: 96 },
];

const taps = (layer: LayerShape): number => (layer.over === 'both' ? 9 : 3);

/** Weights of one layer, row-major [output][tap][input]; the published order is [output][input][tap]. */
export interface LayerWeights {
  readonly weights: Float32Array;
  readonly bias: Float32Array;
}

export interface NetworkWeights {
  readonly window: Float32Array;
  /** Row-major [bin][band]. */
  readonly mel: Float32Array;
  readonly layers: readonly LayerWeights[];
  /** RNNoise, a WebAssembly module; absent: sound is heard as it comes. */
  readonly cleaner?: Uint8Array<ArrayBuffer>;
}

export const WEIGHTS_MAGIC = 0x32726165; // "ear2"

export function weightCount(): number {
  const layers = LAYERS.reduce((sum, l) => sum + l.outputs * (l.inputs * taps(l) + 1), 0);
  return MEL_WINDOW + MEL_BINS * MEL_BANDS + layers;
}

/** Moves the taps before the inputs, so that one frame of the window lies in one piece. */
function tapsFirst(stored: Float32Array, layer: LayerShape): Float32Array {
  const n = taps(layer);
  const out = new Float32Array(stored.length);
  for (let o = 0; o < layer.outputs; o++) {
    for (let i = 0; i < layer.inputs; i++) {
      for (let t = 0; t < n; t++) out[(o * n + t) * layer.inputs + i] = stored[(o * layer.inputs + i) * n + t] as number;
    }
  }
  return out;
}

export type WeightsProblem = 'not-weights' | 'wrong-length' | 'not-finite';

/** Reads the packed file. What is wrong with it is a value: the ear then goes on with cepstra alone. */
export function readWeights(file: Uint8Array): { ok: true; weights: NetworkWeights } | { ok: false; problem: WeightsProblem } {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  if (file.byteLength < 4 || view.getUint32(0, true) !== WEIGHTS_MAGIC) return { ok: false, problem: 'not-weights' };
  const end = 4 * (1 + weightCount());
  if (file.byteLength < end + 4 || file.byteLength !== end + 4 + view.getUint32(end, true))
    return { ok: false, problem: 'wrong-length' };
  const numbers = Float32Array.from({ length: weightCount() }, (_, i) => view.getFloat32(4 * (i + 1), true));
  if (!numbers.every(Number.isFinite)) return { ok: false, problem: 'not-finite' };
  const cleaner = file.byteLength > end + 4 ? { cleaner: file.slice(end + 4) as Uint8Array<ArrayBuffer> } : {};
  return { ok: true, weights: { ...cut(numbers), ...cleaner } };
}

function cut(numbers: Float32Array): NetworkWeights {
  let at = 0;
  const next = (count: number): Float32Array => {
    at += count;
    return numbers.slice(at - count, at);
  };
  const window = next(MEL_WINDOW);
  const mel = next(MEL_BINS * MEL_BANDS);
  const layers = LAYERS.map((layer) => {
    const weights = tapsFirst(next(layer.outputs * layer.inputs * taps(layer)), layer);
    return { weights, bias: next(layer.outputs) };
  });
  return { window, mel, layers };
}
