/** The embedding network, run by our own convolution, against the published network and against itself. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadWeights, packageFolder, packInstalledWeights } from '../../src/command/ear-weights.ts';
import { createFusedFeature } from '../../src/hearing/feature-fused.ts';
import { createScriptEngine, createWasmEngine } from '../../src/hearing/kernel.ts';
import { createNetwork, EMBEDDING_DIMS, MIDDLE_DIMS } from '../../src/hearing/network.ts';
import { LAYERS, type NetworkWeights, readWeights, weightCount } from '../../src/hearing/weights/shape.ts';
import { noise } from './sounds.ts';

/** Weights of the right shape made by code, for where the published ones are not installed. */
function madeUpWeights(): NetworkWeights {
  const layers = LAYERS.map((layer, i) => {
    const depth = layer.inputs * (layer.over === 'both' ? 9 : 3);
    return { weights: noise(layer.outputs * depth, 10 + i, 1.5 / Math.sqrt(depth)), bias: noise(layer.outputs, 50 + i, 0.1) };
  });
  return { window: new Float32Array(512).fill(1), mel: noise(257 * 32, 5).map(Math.abs), layers };
}

const installed = loadWeights();
const folder = packageFolder();
const oracle = (() => {
  try {
    return createRequire(import.meta.url).resolve('onnxruntime-web');
  } catch {
    return undefined;
  }
})();

test('both engines compute the same network', () => {
  const wasm = createWasmEngine(450_000);
  if (!wasm) throw new Error('this Node has no WebAssembly vectors');
  const weights = madeUpWeights();
  const fast = createNetwork(weights, wasm);
  const plain = createNetwork(weights, createScriptEngine());
  for (let step = 0; step < 25; step++) {
    const rows = noise(128, 200 + step, 3);
    fast.step(rows);
    plain.step(rows);
    for (let d = 0; d < MIDDLE_DIMS; d++) expect(fast.middle[d]).toBeCloseTo(plain.middle[d] as number, 4);
    for (let d = 0; d < EMBEDDING_DIMS; d++) expect(fast.embedding[d]).toBeCloseTo(plain.embedding[d] as number, 4);
  }
});

test('after a reset the network hears as if it had just begun', () => {
  const network = createNetwork(madeUpWeights());
  const rows = Array.from({ length: 20 }, (_, i) => noise(128, i, 2));
  const run = (): number[] => {
    for (const four of rows) network.step(four);
    return [...network.embedding];
  };
  const first = run();
  network.reset();
  expect(run()).toEqual(first);
});

test('vectors do not depend on how the microphone cuts its blocks', () => {
  const samples = noise(16_000, 4, 0.1);
  const vectors = (block: number): number[] => {
    const all: number[] = [];
    const feature = createFusedFeature(madeUpWeights(), 'fused');
    for (let at = 0; at < samples.length; at += block) feature.push(samples.subarray(at, at + block), (v) => all.push(...v));
    return all;
  };
  const whole = vectors(16_000);
  expect(vectors(37)).toEqual(whole);
  expect(vectors(320)).toEqual(whole);
});

test.each([
  ['too short', new Uint8Array(3), 'not-weights'],
  ['something else', new Uint8Array(4 * (1 + weightCount())), 'not-weights'],
  ['cut off', Uint8Array.of(0x65, 0x61, 0x72, 0x32, 0, 0), 'wrong-length'],
])('a weights file that is %s is refused by kind', (_, file, problem) => {
  expect(readWeights(file)).toEqual({ ok: false, problem });
});

test.skipIf(!installed.ok)('a weights file whose cleaner is cut off is refused too', () => {
  const packed = packInstalledWeights();
  if (!packed.ok) throw new Error(packed.wrong);
  expect(readWeights(packed.file)).toMatchObject({ ok: true });
  expect(readWeights(packed.file.slice(0, -1))).toEqual({ ok: false, problem: 'wrong-length' });
});

test('a package whose file was changed is refused, not used', () => {
  expect(packInstalledWeights('/nowhere')).toMatchObject({ ok: false });
});

test.skipIf(!installed.ok || !folder || !oracle)('the network agrees with the published one to 1e-4', async () => {
  if (!installed.ok || !folder || !oracle) return;
  const ort = await import(oracle);
  const file = join(folder, 'models/embedding_model.onnx');
  expect(existsSync(file)).toBe(true);
  const session = await ort.InferenceSession.create(readFileSync(file));
  const network = createNetwork(installed.weights);
  const rows = noise(76 * 32, 8, 3).map((x) => x + 3);
  for (let step = 0; step < 19; step++) network.step(rows.subarray(128 * step, 128 * (step + 1)));
  const result = await session.run({ [session.inputNames[0]]: new ort.Tensor('float32', rows, [1, 76, 32, 1]) });
  const published = result[session.outputNames[0]].data as Float32Array;
  expect(published.length).toBe(EMBEDDING_DIMS);
  published.forEach((value, d) => {
    expect(Math.abs(value - (network.embedding[d] as number))).toBeLessThan(1e-4);
  });
});
