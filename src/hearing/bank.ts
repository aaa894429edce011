/** Compares one vector of the stream with every row of every template at once: chord lengths of all parts, weighted and added. */
import type { Part } from './feature.ts';
import { type Convolution, createEngine, type Engine, layOut } from './kernel.ts';
import type { Template } from './slide.ts';

/** The kernels take outputs eight at a time. */
const EIGHT = 8;

export interface Bank {
  /** Distance of the last vector to each row, template after template. */
  readonly distances: Float32Array;
  /** Where each template's rows begin in `distances`. */
  readonly offsets: readonly number[];
  compare(vector: Float32Array): void;
}

interface PartBank {
  readonly part: Part;
  readonly from: number;
  readonly work: Convolution;
}

/** One part of every row, as the weights of a convolution with a single position. */
function partBank(
  templates: readonly Template[],
  rows: number,
  dims: number,
  from: number,
  part: Part,
  engine: Engine,
): PartBank {
  const padded = EIGHT * Math.ceil(rows / EIGHT);
  const weights = new Float32Array(padded * part.dims);
  let row = 0;
  for (const template of templates) {
    for (let r = 0; r < template.steps; r++, row++)
      weights.set(template.values.subarray(r * dims + from, r * dims + from + part.dims), row * part.dims);
  }
  const kernel = layOut({ weights, bias: new Float32Array(padded) }, engine);
  const work = {
    kernel,
    input: engine.floats(part.dims),
    stride: part.dims,
    positions: 1,
    out: engine.floats(padded),
    rectified: false,
  };
  return { part, from, work };
}

export function createBank(templates: readonly Template[], dims: number, parts: readonly Part[]): Bank {
  const rows = templates.reduce((sum, t) => sum + t.steps, 0);
  const engine = createEngine((rows + 2 * EIGHT) * (dims + 4 * parts.length) + 4 * dims);
  let from = 0;
  const banks = parts.map((part) => {
    const bank = partBank(templates, rows, dims, from, part, engine);
    from += part.dims;
    return bank;
  });
  let offset = 0;
  const offsets = templates.map((t) => {
    const at = offset;
    offset += t.steps;
    return at;
  });
  const distances = new Float32Array(rows);

  function addPart({ part, from: first, work }: PartBank, vector: Float32Array): void {
    for (let d = 0; d < part.dims; d++) work.input[d] = vector[first + d] as number;
    engine.convolve(work);
    for (let r = 0; r < rows; r++) {
      const dot = work.out[r] as number;
      distances[r] = (distances[r] as number) + part.weight * Math.sqrt(dot < 1 ? 2 - 2 * dot : 0);
    }
  }

  return {
    distances,
    offsets,
    compare(vector) {
      if (rows === 0) return;
      distances.fill(0);
      for (const bank of banks) addPart(bank, vector);
    },
  };
}
