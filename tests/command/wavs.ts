/** Writes WAV files of every kind for the tests of the command line. */
export interface WavKind {
  readonly bits: 8 | 16 | 24 | 32 | 64;
  readonly code?: number;
  readonly channels?: number;
  readonly sampleRateHz?: number;
  readonly extensible?: boolean;
  readonly note?: boolean;
  readonly openLength?: boolean;
  readonly noFormat?: boolean;
}

function putSample(view: DataView, at: number, x: number, bits: number, float: boolean): void {
  if (bits === 8) view.setUint8(at, Math.round(x * 127) + 128);
  else if (bits === 16) view.setInt16(at, Math.round(x * 32_767), true);
  else if (bits === 24) {
    const whole = Math.round(x * 8_388_607);
    view.setUint16(at, whole & 0xffff, true);
    view.setInt8(at + 2, whole >> 16);
  } else if (bits === 64) view.setFloat64(at, x, true);
  else if (float) view.setFloat32(at, x, true);
  else view.setInt32(at, Math.round(x * 2_147_483_647), true);
}

function chunk(id: string, body: Uint8Array, said = body.length): Uint8Array {
  const out = new Uint8Array(8 + body.length + (body.length & 1));
  out.set(Array.from(id, (c) => c.charCodeAt(0)));
  new DataView(out.buffer).setUint32(4, said, true);
  out.set(body, 8);
  return out;
}

function formatOf(kind: WavKind): Uint8Array {
  const { bits, channels = 1, sampleRateHz = 16_000, code = 1, extensible = false } = kind;
  const body = new Uint8Array(extensible ? 40 : 16);
  const view = new DataView(body.buffer);
  view.setUint16(0, extensible ? 0xfffe : code, true);
  view.setUint16(2, channels, true);
  view.setUint32(4, sampleRateHz, true);
  view.setUint32(8, (sampleRateHz * channels * bits) / 8, true);
  view.setUint16(12, (channels * bits) / 8, true);
  view.setUint16(14, bits, true);
  if (extensible) {
    view.setUint16(16, 22, true);
    view.setUint16(18, bits, true);
    view.setUint16(24, code, true);
  }
  return body;
}

/** The same samples in every channel. */
export function wavOf(samples: Float32Array, kind: WavKind): Uint8Array {
  const { bits, channels = 1, code = 1 } = kind;
  const data = new Uint8Array((samples.length * channels * bits) / 8);
  const view = new DataView(data.buffer);
  samples.forEach((x, i) => {
    for (let c = 0; c < channels; c++) putSample(view, ((i * channels + c) * bits) / 8, x, bits, code === 3);
  });
  const chunks = [
    ...(kind.noFormat ? [] : [chunk('fmt ', formatOf(kind))]),
    ...(kind.note ? [chunk('LIST', new Uint8Array(7))] : []),
    chunk('data', data, kind.openLength ? 0 : data.length),
  ];
  const body = Uint8Array.from([...Array.from('WAVE', (c) => c.charCodeAt(0)), ...chunks.flatMap((c) => [...c])]);
  return chunk('RIFF', body);
}
