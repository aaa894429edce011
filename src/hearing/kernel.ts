/** The multiplications of the network: in WebAssembly where it runs, else in plain script. Both give the same numbers to rounding. */
import { kernelModule } from './kernel-code.ts';
import { type WasmMemory, webAssembly } from './wasm.ts';
import { type LayerWeights, LEAK, LOWEST } from './weights/shape.ts';

type WasmKernel = (
  input: number,
  stride: number,
  groups: number,
  weights: number,
  bias: number,
  depth: number,
  outputs: number,
  out: number,
) => void;

/** Weights of one convolution laid out for the kernels: row-major [block of 4 outputs][k][4]. */
export interface Kernel {
  readonly weights: Float32Array;
  readonly bias: Float32Array;
  readonly depth: number;
  readonly outputs: number;
}

/** What every convolution says: out[p][o] = act(bias[o] + sum over k of input[p * stride + k] * weights[o][k]). */
export interface Convolution {
  readonly kernel: Kernel;
  readonly input: Float32Array;
  readonly stride: number;
  readonly positions: number;
  readonly out: Float32Array;
  readonly rectified: boolean;
}

/** Where the network's numbers live and what multiplies them. */
export interface Engine {
  readonly runs: 'wasm' | 'script';
  floats(count: number): Float32Array;
  convolve(convolution: Convolution): void;
}

export function layOut(layer: LayerWeights, engine: Engine): Kernel {
  const outputs = layer.bias.length;
  const depth = layer.weights.length / outputs;
  const weights = engine.floats(outputs * depth);
  const bias = engine.floats(outputs);
  bias.set(layer.bias);
  for (let o = 0; o < outputs; o++) {
    for (let k = 0; k < depth; k++) weights[((o >> 2) * depth + k) * 4 + (o & 3)] = layer.weights[o * depth + k] as number;
  }
  return { weights, bias, depth, outputs };
}

function rectify(x: number): number {
  const leaky = x >= 0 ? x : LEAK * x;
  return Math.max(leaky, LOWEST);
}

/** Four outputs at a time, in float32 throughout (Math.fround keeps the compiler from widening). */
export function convolveInScript({ kernel, input, stride, positions, out, rectified }: Convolution): void {
  const { weights, bias, depth, outputs } = kernel;
  const f = Math.fround;
  for (let p = 0; p < positions; p++) {
    for (let o = 0; o < outputs; o += 4) {
      let a0 = f(bias[o] as number);
      let a1 = f(bias[o + 1] as number);
      let a2 = f(bias[o + 2] as number);
      let a3 = f(bias[o + 3] as number);
      for (let k = 0, x = p * stride, w = o * depth; k < depth; k++, x++, w += 4) {
        const sample = f(input[x] as number);
        a0 = f(a0 + f(sample * f(weights[w] as number)));
        a1 = f(a1 + f(sample * f(weights[w + 1] as number)));
        a2 = f(a2 + f(sample * f(weights[w + 2] as number)));
        a3 = f(a3 + f(sample * f(weights[w + 3] as number)));
      }
      const to = p * outputs + o;
      out[to] = rectified ? rectify(a0) : a0;
      out[to + 1] = rectified ? rectify(a1) : a1;
      out[to + 2] = rectified ? rectify(a2) : a2;
      out[to + 3] = rectified ? rectify(a3) : a3;
    }
  }
}

export function createScriptEngine(): Engine {
  return { runs: 'script', floats: (count) => new Float32Array(count), convolve: convolveInScript };
}

/** WebAssembly memory comes in pages of 64 KiB. */
const PAGE_BYTES = 65_536;

/** The fastest engine there is here, with room for so many numbers (a little more is kept for alignment). */
export const createEngine = (floats: number): Engine => createWasmEngine(floats) ?? createScriptEngine();

/** Undefined where WebAssembly or its vector instructions are missing or refused by policy. */
export function createWasmEngine(floats: number): Engine | undefined {
  const wasm = webAssembly<Record<string, WasmKernel>>();
  if (!wasm) return undefined;
  const pages = Math.ceil((4 * floats) / PAGE_BYTES) + 1;
  try {
    const memory = new wasm.Memory({ initial: pages });
    const { exports } = new wasm.Instance(new wasm.Module(kernelModule(pages)), { ear: { memory } });
    return engineOn(memory, exports);
  } catch {
    return undefined; // The script engine does the same work, slower; nothing is lost but time.
  }
}

function engineOn(memory: WasmMemory, kernels: Record<string, WasmKernel>): Engine {
  let used = 0;
  const { four, two, one, plain } = kernels as Record<'four' | 'two' | 'one' | 'plain', WasmKernel>;
  return {
    runs: 'wasm',
    floats(count) {
      const view = new Float32Array(memory.buffer, used, count);
      used += 16 * Math.ceil(count / 4);
      return view;
    },
    convolve({ kernel, input, stride, positions, out, rectified }) {
      const run = !rectified ? plain : positions % 4 === 0 ? four : positions % 2 === 0 ? two : one;
      const groups = !rectified
        ? positions
        : positions % 4 === 0
          ? positions / 4
          : positions % 2 === 0
            ? positions / 2
            : positions;
      const { weights, bias, depth, outputs } = kernel;
      run(input.byteOffset, 4 * stride, groups, weights.byteOffset, bias.byteOffset, depth, outputs, out.byteOffset);
    },
  };
}
