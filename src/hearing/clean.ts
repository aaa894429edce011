/**
 * Takes the noise out of a 16 kHz stream with RNNoise, a small recurrent network (Valin 2018, "A hybrid DSP/deep learning approach to real-time
 * full-band speech enhancement"), and leaves a share of the sound as it came.
 */
import { type Convolution, createEngine, type Engine, layOut } from './kernel.ts';
import { lowPass } from './low-pass.ts';
import { type WasmMemory, webAssembly } from './wasm.ts';

/** What is used of a WebAssembly build of RNNoise. */
interface Rnnoise {
  readonly memory: WasmMemory;
  readonly __wasm_call_ctors: () => void;
  readonly malloc: (bytes: number) => number;
  /** Zero stands for the weights it was built with. */
  readonly rnnoise_create: (model: number) => number;
  readonly rnnoise_destroy: (state: number) => void;
  /** Cleans `FRAME` floats on the scale of 16-bit samples. */
  readonly rnnoise_process_frame: (state: number, out: number, input: number) => number;
}
/** RNNoise works at 48 kHz, on frames of 10 ms. */
const TIMES = 3;
const FRAME = 480;
const SLOW_FRAME = FRAME / TIMES;
const FULL_SCALE = 32_768;
/** It hands back each frame one frame later (windows of two frames, half over half). */
const NETWORK_LAG = SLOW_FRAME;
/** Share of the sound as it came that is left in: what the network takes for noise is not lost altogether (tests/bench/ear.md, *Sound cleaned*). */
const LEFT_IN = 0.15;
/** Taps of the filters between 16 and 48 kHz on each side of their middle, at 48 kHz; a multiple of `TIMES`. */
const HALF = 48;
const FILTERS_LAG = (2 * HALF) / TIMES;
/** What a cleaned sample is later than its frame is full, samples at 16 kHz: with the rest of the frame 22 ms at most. */
const BEHIND = NETWORK_LAG + FILTERS_LAG;

const TAPS = lowPass(HALF, 1 / TIMES);
/** Samples before a frame at 16 kHz that the filter up still meets. */
const BEFORE = (2 * HALF) / TIMES;
/** Both filters make so many samples at 16 kHz at a time: what the kernels take. */
const AT_ONCE = 8;

/** `weight(output, input)` as a convolution over a frame. */
function filterOf(
  engine: Engine,
  outputs: number,
  depth: number,
  stride: number,
  weight: (o: number, i: number) => number,
): Convolution {
  const weights = Float32Array.from({ length: outputs * depth }, (_, at) => weight(Math.floor(at / depth), at % depth));
  const kernel = layOut({ weights, bias: new Float32Array(outputs) }, engine);
  const positions = SLOW_FRAME / AT_ONCE;
  const input = engine.floats((positions - 1) * stride + depth);
  return { kernel, input, stride, positions, out: engine.floats(positions * outputs), rectified: false };
}

/** Three samples at 48 kHz of one at 16 kHz: each third tap, from the newest sample back. */
const createUp = (engine: Engine): Convolution =>
  filterOf(engine, TIMES * AT_ONCE, AT_ONCE + BEFORE, AT_ONCE, (o, i) => {
    const back = BEFORE + Math.floor(o / TIMES) - i;
    return back < 0 ? 0 : TIMES * FULL_SCALE * (TAPS[TIMES * back + (o % TIMES)] ?? 0);
  });

/** One sample at 16 kHz of three at 48 kHz. */
const createDown = (engine: Engine): Convolution =>
  filterOf(
    engine,
    AT_ONCE,
    TAPS.length + TIMES * (AT_ONCE - 1),
    TIMES * AT_ONCE,
    (o, i) => (TAPS[i - TIMES * o] ?? 0) / FULL_SCALE,
  );
/** More numbers than both filters take. */
const FILTER_NUMBERS = 8_192;

/** Called with every sample in its two parts, of which the noise is taken away but for `LEFT_IN`. */
export type TakeParts = (voice: number, noise: number) => void;

export interface CleanStream {
  /**
   * Takes 16 kHz samples and hands back what is ready, in its place: the first sample out belongs to the first sample in.
   * The answer is a view that the next call overwrites.
   */
  push(samples: Float32Array, takeParts?: TakeParts): Float32Array;
  close(): void;
}

export interface Cleaner {
  open(): CleanStream;
  /** A whole recording at 16 kHz; the answer is as long and in the same place. */
  whole(samples: Float32Array): Float32Array;
}

function instantiate(bytes: Uint8Array<ArrayBuffer>): Rnnoise | undefined {
  const wasm = webAssembly<Rnnoise>();
  if (!wasm) return undefined;
  const copy = (to: number, from: number, count: number): void => {
    new Uint8Array(rnnoise.memory.buffer).copyWithin(to, from, from + count);
  };
  const fail = (): never => {
    throw new Error('clean: RNNoise gave up');
  };
  // Its memory is large enough from the beginning: asked for more, the answer is no.
  const env = { emscripten_memcpy_big: copy, emscripten_resize_heap: () => 0, __assert_fail: fail };
  const rnnoise: Rnnoise = new wasm.Instance(new wasm.Module(bytes), { env }).exports;
  rnnoise.__wasm_call_ctors();
  return rnnoise;
}

/** @param bytes `rnnoise_simd.wasm`. Undefined where WebAssembly or its vector instructions are missing: the ear then does without. */
export function createCleaner(bytes: Uint8Array<ArrayBuffer>): Cleaner | undefined {
  try {
    const rnnoise = instantiate(bytes);
    return rnnoise && cleanerOn(rnnoise);
  } catch {
    return undefined; // In quiet the ear hears as well without; in noise it hears less.
  }
}

const known = new WeakMap<Uint8Array, Cleaner>();

/** The one cleaner of a module: it holds 16 MB, and each stream in it 27 kB. */
export function cleanerOf(bytes: Uint8Array<ArrayBuffer>): Cleaner | undefined {
  const cleaner = known.get(bytes) ?? createCleaner(bytes);
  if (cleaner) known.set(bytes, cleaner);
  return cleaner;
}

function cleanerOn(rnnoise: Rnnoise): Cleaner {
  const input = rnnoise.malloc(4 * FRAME);
  const output = rnnoise.malloc(4 * FRAME);
  // Its memory never grows, so that these stay where they are.
  const fastIn = new Float32Array(rnnoise.memory.buffer, input, FRAME);
  const fastOut = new Float32Array(rnnoise.memory.buffer, output, FRAME);

  const engine = createEngine(FILTER_NUMBERS);
  const up = createUp(engine);
  const down = createDown(engine);

  function open(): CleanStream {
    const state = rnnoise.rnnoise_create(0);
    if (state === 0) throw new Error('clean: RNNoise has no room for another stream');
    /** The last samples at 16 kHz, then the frame that is being filled. */
    const raw = new Float32Array(BEFORE + SLOW_FRAME);
    /** The last cleaned samples at 48 kHz, then the frame that was cleaned last. */
    const fast = new Float32Array(2 * HALF + FRAME);
    /** The sound as it came, as late as the cleaned one. */
    const late = new Float32Array(BEHIND);
    let filled = 0;
    let dropped = 0;
    let out = new Float32Array(0);

    /** Leaves the voice of the full frame in what the filter down gives. */
    function cleanFrame(): void {
      up.input.set(raw);
      engine.convolve(up);
      fastIn.set(up.out);
      rnnoise.rnnoise_process_frame(state, output, input);
      fast.copyWithin(0, FRAME);
      fast.set(fastOut, 2 * HALF);
      down.input.set(fast.subarray(0, down.input.length));
      engine.convolve(down);
    }

    /** Cleans the full frame and writes what comes of it from `at` on; answers where it ends. */
    function hand(at: number, takeParts: TakeParts | undefined): number {
      cleanFrame();
      let to = at;
      for (let n = 0; n < SLOW_FRAME; n++) {
        if (dropped < BEHIND) dropped++;
        else {
          const voice = down.out[n] as number;
          const asItCame = late[n] as number;
          takeParts?.(voice, asItCame - voice);
          out[to++] = voice + LEFT_IN * (asItCame - voice);
        }
      }
      late.copyWithin(0, SLOW_FRAME);
      late.set(raw.subarray(BEFORE), BEHIND - SLOW_FRAME);
      raw.copyWithin(0, SLOW_FRAME);
      return to;
    }

    return {
      push(samples, takeParts) {
        if (out.length < filled + samples.length) out = new Float32Array(filled + samples.length);
        let made = 0;
        for (let at = 0; at < samples.length; ) {
          const piece = samples.subarray(at, at + SLOW_FRAME - filled);
          raw.set(piece, BEFORE + filled);
          filled += piece.length;
          at += piece.length;
          if (filled < SLOW_FRAME) break;
          made = hand(made, takeParts);
          filled = 0;
        }
        return out.subarray(0, made);
      },
      close: () => rnnoise.rnnoise_destroy(state),
    };
  }

  return {
    open,
    whole(samples) {
      const stream = open();
      const longer = new Float32Array(samples.length + SLOW_FRAME + BEHIND);
      longer.set(samples);
      try {
        return stream.push(longer).slice(0, samples.length);
      } finally {
        stream.close();
      }
    },
  };
}
