/**
 * Writes the WebAssembly module that multiplies inside the network: four numbers at a time, which plain JavaScript cannot.
 * The plain form of the same arithmetic is `convolveInScript` in kernel.ts; a test holds the two against each other.
 */
import { LEAK, LOWEST } from './weights/shape.ts';

/** Opcodes and types used (WebAssembly core specification 2.0, section 5). */
const I32 = 0x7f;
const V128 = 0x7b;
const LOOP = 0x03;
const NO_RESULT = 0x40;
const END = 0x0b;
const BR_IF = 0x0d;
const SIMD = 0xfd;
const V128_LOAD = 0;
const V128_LOAD_SPLAT_32 = 9;
const V128_STORE = 11;
const F32X4_SPLAT = 19;
const F32X4_ADD = 228;
const F32X4_MUL = 230;
const F32X4_MAX = 233;

/** Unsigned and signed LEB128. */
function unsigned(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; ; rest >>>= 7) {
    if (rest < 0x80) return [...bytes, rest];
    bytes.push((rest & 0x7f) | 0x80);
  }
}
function signed(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; ; rest >>= 7) {
    const low = rest & 0x7f;
    if ((rest >> 6 === 0 || rest >> 6 === -1) && rest >> 7 === (rest < 0 ? -1 : 0)) return [...bytes, low];
    bytes.push(low | 0x80);
  }
}

const get = (local: number): number[] => [0x20, ...unsigned(local)];
const set = (local: number): number[] => [0x21, ...unsigned(local)];
const constant = (value: number): number[] => [0x41, ...signed(value)];
const float = (value: number): number[] => [0x43, ...new Uint8Array(Float32Array.of(value).buffer)];
const simd = (op: number, ...rest: number[]): number[] => [SIMD, ...unsigned(op), ...rest];
const PLUS = [0x6a];
const TIMES = [0x6c];
const LESS_UNSIGNED = [0x49];
/** Alignment 4 bytes (2^2), offset given. */
const load = (offset: number): number[] => simd(V128_LOAD, 2, ...unsigned(offset));
const store = (offset: number): number[] => simd(V128_STORE, 2, ...unsigned(offset));
const loop = (body: number[], again: number[]): number[] => [LOOP, NO_RESULT, ...body, ...again, BR_IF, 0, END];
const add = (local: number, amount: number[]): number[] => [...get(local), ...amount, ...PLUS, ...set(local)];

/** Parameters, in order. Addresses and strides in bytes. */
const P = { input: 0, stride: 1, groups: 2, weights: 3, bias: 4, depth: 5, outputs: 6, out: 7 } as const;
const O = 8;
const K = 9;
const W0 = 10;
const W1 = 11;
const X = 12;

/** One kernel: `positions` positions and eight outputs at a time. */
function kernel(positions: number, rectified: boolean): number[] {
  const acc = (p: number, half: number): number => X + positions + 2 * p + half;
  const w0 = X + 3 * positions;
  const w1 = w0 + 1;
  const x = w0 + 2;
  const each = (make: (p: number) => number[]): number[] => Array.from({ length: positions }, (_, p) => make(p)).flat();

  const begin = each((p) => [
    ...[...get(P.bias), ...get(O), ...constant(4), ...TIMES, ...PLUS],
    ...[...load(0), ...set(acc(p, 0))],
    ...[...get(P.bias), ...get(O), ...constant(4), ...TIMES, ...PLUS],
    ...[...load(16), ...set(acc(p, 1))],
    ...[...get(P.input), ...get(P.stride), ...constant(p), ...TIMES, ...PLUS, ...set(X + p)],
  ]);
  const point = [
    ...[...get(P.weights), ...get(O), ...get(P.depth), ...TIMES, ...constant(4), ...TIMES, ...PLUS, ...set(W0)],
    ...[...get(W0), ...get(P.depth), ...constant(16), ...TIMES, ...PLUS, ...set(W1)],
    ...[...get(P.depth), ...set(K)],
  ];
  const multiply = (p: number, half: number): number[] => [
    ...get(acc(p, half)),
    ...get(x),
    ...get(half === 0 ? w0 : w1),
    ...simd(F32X4_MUL),
    ...simd(F32X4_ADD),
    ...set(acc(p, half)),
  ];
  const inner = loop(
    [
      ...[...get(W0), ...load(0), ...set(w0), ...get(W1), ...load(0), ...set(w1)],
      ...each((p) => [
        ...get(X + p),
        ...simd(V128_LOAD_SPLAT_32, 2, 0),
        ...set(x),
        ...multiply(p, 0),
        ...multiply(p, 1),
        ...add(X + p, constant(4)),
      ]),
      ...[...add(W0, constant(16)), ...add(W1, constant(16)), ...add(K, constant(-1))],
    ],
    get(K),
  );
  const activate = (half: number, p: number): number[] =>
    rectified
      ? [
          ...[
            ...get(acc(p, half)),
            ...get(acc(p, half)),
            ...float(LEAK),
            ...simd(F32X4_SPLAT),
            ...simd(F32X4_MUL),
            ...simd(F32X4_MAX),
          ],
          ...[...float(LOWEST), ...simd(F32X4_SPLAT), ...simd(F32X4_MAX)],
        ]
      : get(acc(p, half));
  const address = (p: number): number[] => [
    ...[...get(P.out), ...get(P.outputs), ...constant(4 * p), ...TIMES, ...PLUS],
    ...[...get(O), ...constant(4), ...TIMES, ...PLUS],
  ];
  const finish = each((p) => [...address(p), ...activate(0, p), ...store(0), ...address(p), ...activate(1, p), ...store(16)]);
  const outputs = loop(
    [...begin, ...point, ...inner, ...finish, ...add(O, constant(8))],
    [...get(O), ...get(P.outputs), ...LESS_UNSIGNED],
  );
  const groups = loop(
    [
      ...[...constant(0), ...set(O), ...outputs],
      ...add(P.input, [...get(P.stride), ...constant(positions), ...TIMES]),
      ...add(P.out, [...get(P.outputs), ...constant(4 * positions), ...TIMES]),
      ...add(P.groups, constant(-1)),
    ],
    get(P.groups),
  );
  const locals = [2, ...unsigned(4 + positions), I32, ...unsigned(2 * positions + 3), V128];
  const body = [...locals, ...groups, END];
  return [...unsigned(body.length), ...body];
}

const section = (id: number, body: number[]): number[] => [id, ...unsigned(body.length), ...body];
const name = (text: string): number[] => [text.length, ...Array.from(text, (c) => c.charCodeAt(0))];

/** The kernels by name: how many positions a group has, and whether the rectifier follows. */
const KERNELS = [
  { name: 'four', positions: 4, rectified: true },
  { name: 'two', positions: 2, rectified: true },
  { name: 'one', positions: 1, rectified: true },
  { name: 'plain', positions: 1, rectified: false },
] as const;

/** The module's bytes. It imports one memory, `ear.memory`. */
export function kernelModule(pages: number): Uint8Array<ArrayBuffer> {
  const type = section(1, [1, 0x60, 8, ...new Array<number>(8).fill(I32), 0]);
  const imports = section(2, [1, ...name('ear'), ...name('memory'), 2, 0, ...unsigned(pages)]);
  const functions = section(3, [KERNELS.length, ...KERNELS.map(() => 0)]);
  const exports = section(7, [KERNELS.length, ...KERNELS.flatMap((k, i) => [...name(k.name), 0, i])]);
  const code = section(10, [KERNELS.length, ...KERNELS.flatMap((k) => kernel(k.positions, k.rectified))]);
  return Uint8Array.from([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0, ...type, ...imports, ...functions, ...exports, ...code]);
}
