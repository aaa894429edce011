/** Reads the graph of an ONNX file: nodes, attributes and stored tensors. Only what the embedding network uses; anything else is skipped. */

/** One stored tensor: its shape and, when it is float32 or int64, its numbers. */
export interface OnnxTensor {
  readonly name: string;
  readonly dims: readonly number[];
  readonly values: Float32Array;
}

export interface OnnxAttribute {
  readonly name: string;
  readonly float: number;
  readonly int: number;
  readonly text: string;
  readonly ints: readonly number[];
  readonly tensor: OnnxTensor | undefined;
}

export interface OnnxNode {
  readonly op: string;
  readonly inputs: readonly string[];
  readonly outputs: readonly string[];
  readonly attributes: readonly OnnxAttribute[];
}

export interface OnnxGraph {
  readonly nodes: readonly OnnxNode[];
  readonly tensors: ReadonlyMap<string, OnnxTensor>;
}

/** One field of a protobuf message: its number and either its bytes or its number. */
interface Field {
  readonly tag: number;
  readonly bytes: Uint8Array;
  readonly number: number;
}

const NO_BYTES = new Uint8Array(0);
/** TensorProto.data_type (onnx.proto3): float32 and int64. */
const FLOAT32 = 1;
const INT64 = 7;

function readVarint(bytes: Uint8Array, at: number): { value: number; next: number } {
  let value = 0n;
  for (let shift = 0n; shift < 70n; shift += 7n) {
    const byte = bytes[at++];
    if (byte === undefined) throw new Error('onnx: the file ends inside a number');
    value |= BigInt(byte & 0x7f) << shift;
    if (byte < 0x80) return { value: Number(BigInt.asIntN(64, value)), next: at };
  }
  throw new Error('onnx: a number longer than 64 bits');
}

function* fields(bytes: Uint8Array): Generator<Field> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at < bytes.length) {
    const key = readVarint(bytes, at);
    const tag = Math.floor(key.value / 8);
    const wire = key.value & 7;
    at = key.next;
    if (wire === 0) {
      const read = readVarint(bytes, at);
      at = read.next;
      yield { tag, bytes: NO_BYTES, number: read.value };
    } else if (wire === 2) {
      const length = readVarint(bytes, at);
      at = length.next + length.value;
      if (at > bytes.length) throw new Error('onnx: the file ends inside a field');
      yield { tag, bytes: bytes.subarray(length.next, at), number: 0 };
    } else if (wire === 5) {
      yield { tag, bytes: bytes.subarray(at, at + 4), number: view.getFloat32(at, true) };
      at += 4;
    } else if (wire === 1) {
      yield { tag, bytes: bytes.subarray(at, at + 8), number: view.getFloat64(at, true) };
      at += 8;
    } else throw new Error(`onnx: unknown wire type ${wire}`);
  }
}

const text = (bytes: Uint8Array): string => String.fromCharCode(...bytes);

/** Repeated integers come packed in one field or one a field. */
function integers(field: Field): number[] {
  if (field.bytes === NO_BYTES) return [field.number];
  const out: number[] = [];
  for (let at = 0; at < field.bytes.length; ) {
    const read = readVarint(field.bytes, at);
    out.push(read.value);
    at = read.next;
  }
  return out;
}

function floats(raw: Uint8Array): number[] {
  const view = new DataView(raw.buffer, raw.byteOffset, raw.byteLength);
  return Array.from({ length: raw.byteLength >> 2 }, (_, i) => view.getFloat32(4 * i, true));
}

function longs(raw: Uint8Array): number[] {
  const view = new DataView(raw.buffer, raw.byteOffset, raw.byteLength);
  return Array.from({ length: raw.byteLength >> 3 }, (_, i) => Number(view.getBigInt64(8 * i, true)));
}

function readTensor(bytes: Uint8Array): OnnxTensor {
  const dims: number[] = [];
  const listed: number[] = [];
  let name = '';
  let type = 0;
  let raw: Uint8Array = NO_BYTES;
  for (const field of fields(bytes)) {
    if (field.tag === 1) dims.push(...integers(field));
    else if (field.tag === 2) type = field.number;
    else if (field.tag === 4) listed.push(...(field.bytes.length > 4 ? floats(field.bytes) : [field.number]));
    else if (field.tag === 7) listed.push(...integers(field));
    else if (field.tag === 8) name = text(field.bytes);
    else if (field.tag === 9) raw = field.bytes;
  }
  const stored = type === FLOAT32 ? floats(raw) : type === INT64 ? longs(raw) : [];
  return { name, dims, values: Float32Array.from(raw.length > 0 ? stored : listed) };
}

function readAttribute(bytes: Uint8Array): OnnxAttribute {
  let name = '';
  let float = 0;
  let int = 0;
  let words = '';
  let tensor: OnnxTensor | undefined;
  const ints: number[] = [];
  for (const field of fields(bytes)) {
    if (field.tag === 1) name = text(field.bytes);
    else if (field.tag === 2) float = field.number;
    else if (field.tag === 3) int = field.number;
    else if (field.tag === 4) words = text(field.bytes);
    else if (field.tag === 5) tensor = readTensor(field.bytes);
    else if (field.tag === 8) ints.push(...integers(field));
  }
  return { name, float, int, text: words, ints, tensor };
}

function readNode(bytes: Uint8Array): OnnxNode {
  const inputs: string[] = [];
  const outputs: string[] = [];
  const attributes: OnnxAttribute[] = [];
  let op = '';
  for (const field of fields(bytes)) {
    if (field.tag === 1) inputs.push(text(field.bytes));
    else if (field.tag === 2) outputs.push(text(field.bytes));
    else if (field.tag === 4) op = text(field.bytes);
    else if (field.tag === 5) attributes.push(readAttribute(field.bytes));
  }
  return { op, inputs, outputs, attributes };
}

function readGraph(bytes: Uint8Array): OnnxGraph {
  const nodes: OnnxNode[] = [];
  const tensors = new Map<string, OnnxTensor>();
  for (const field of fields(bytes)) {
    if (field.tag === 1) nodes.push(readNode(field.bytes));
    else if (field.tag === 5) {
      const tensor = readTensor(field.bytes);
      tensors.set(tensor.name, tensor);
    }
  }
  return { nodes, tensors };
}

/** The graph inside the bytes of a .onnx file. Throws when there is none. */
export function readOnnx(bytes: Uint8Array): OnnxGraph {
  for (const field of fields(bytes)) if (field.tag === 7) return readGraph(field.bytes);
  throw new Error('onnx: no graph in the file');
}
