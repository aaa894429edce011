/** Reads a WAV file of any common kind into one channel of samples. What is wrong with a file is a value that says what to do. */
import { readFileSync } from 'node:fs';

export interface Recording {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

export interface FileProblem {
  readonly path: string;
  readonly wrong: string;
  readonly help: string;
}

export type ReadWav =
  | { readonly ok: true; readonly recording: Recording }
  | { readonly ok: false; readonly problem: FileProblem };

/** Format codes (Microsoft multimedia standards update, 1994; extensible form 2001). */
const PCM = 1;
const FLOAT = 3;
const EXTENSIBLE = 0xfffe;
/** Rates the ear takes, Hz. */
const LOWEST_RATE_HZ = 8_000;
const HIGHEST_RATE_HZ = 192_000;

interface Format {
  readonly code: number;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bits: number;
}

const EXPORT_HELP = 'record it again or export it as a WAV file (PCM, 16 bits)';

const problem = (path: string, wrong: string, help = EXPORT_HELP): ReadWav => ({ ok: false, problem: { path, wrong, help } });

function readFormat(chunk: DataView): Format | undefined {
  if (chunk.byteLength < 16) return undefined;
  const code = chunk.getUint16(0, true);
  // The extensible form keeps the true code at the head of its subformat.
  const inner = code === EXTENSIBLE && chunk.byteLength >= 26 ? chunk.getUint16(24, true) : code;
  return {
    code: inner,
    channels: chunk.getUint16(2, true),
    sampleRateHz: chunk.getUint32(4, true),
    bits: chunk.getUint16(14, true),
  };
}

type ReadSample = (view: DataView, at: number) => number;

const READERS: Readonly<Record<string, ReadSample>> = {
  '1/8': (view, at) => (view.getUint8(at) - 128) / 128,
  '1/16': (view, at) => view.getInt16(at, true) / 32_768,
  '1/24': (view, at) => (view.getInt8(at + 2) * 65_536 + view.getUint16(at, true)) / 8_388_608,
  '1/32': (view, at) => view.getInt32(at, true) / 2_147_483_648,
  '3/32': (view, at) => view.getFloat32(at, true),
  '3/64': (view, at) => view.getFloat64(at, true),
};

/** Mean of the channels. */
function mixDown(data: DataView, format: Format, read: ReadSample): Float32Array {
  const width = format.bits / 8;
  const frames = Math.floor(data.byteLength / (width * format.channels));
  return Float32Array.from({ length: frames }, (_, frame) => {
    let sum = 0;
    for (let c = 0; c < format.channels; c++) sum += read(data, (frame * format.channels + c) * width);
    return sum / format.channels;
  });
}

const NAMES: Readonly<Record<number, string>> = { 2: 'ADPCM', 6: 'A-law', 7: 'mu-law', 17: 'IMA ADPCM', 85: 'MP3' };

function decode(path: string, format: Format | undefined, data: DataView | undefined, cut: boolean): ReadWav {
  if (!format) return problem(path, 'no format chunk: the head of the WAV file is damaged');
  const read = READERS[`${format.code}/${format.bits}`];
  if (!read || (format.code !== PCM && format.code !== FLOAT)) {
    return problem(path, `holds ${NAMES[format.code] ?? `format ${format.code}`} at ${format.bits} bits, which is not read here`);
  }
  if (format.channels === 0) return problem(path, 'says that it has no channel');
  if (format.sampleRateHz < LOWEST_RATE_HZ || format.sampleRateHz > HIGHEST_RATE_HZ) {
    return problem(path, `sample rate ${format.sampleRateHz} Hz: expected ${LOWEST_RATE_HZ} to ${HIGHEST_RATE_HZ}`);
  }
  if (!data) return problem(path, cut ? 'is cut off before its sound begins' : 'no data chunk: there is no sound in it');
  if (cut) return problem(path, 'is cut off: it promises more sound than it holds', 'copy it again, whole');
  const samples = mixDown(data, format, read);
  if (samples.length === 0) return problem(path, 'is empty: not one sample of sound');
  return { ok: true, recording: { samples, sampleRateHz: format.sampleRateHz } };
}

/** A streaming recorder that could not go back leaves these lengths: the data then lasts to the end of the file. */
const OPEN_LENGTHS = [0, 0xffffffff, 0x7fffffff];

export function readWav(path: string): ReadWav {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return problem(path, `cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`, 'check the path');
  }
  return parseWav(path, bytes);
}

export function parseWav(path: string, bytes: Uint8Array): ReadWav {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = (at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));
  if (bytes.length === 0) return problem(path, 'is empty: 0 bytes');
  if (bytes.length < 12 || tag(0) !== 'RIFF' || tag(8) !== 'WAVE') return problem(path, 'is not a WAV file');
  let format: Format | undefined;
  let data: DataView | undefined;
  let cut = false;
  for (let at = 12; at + 8 <= bytes.length && !data; ) {
    const said = view.getUint32(at + 4, true);
    const left = bytes.length - at - 8;
    const open = tag(at) === 'data' && OPEN_LENGTHS.includes(said) && left > 0;
    const length = open ? left : Math.min(said, left);
    const chunk = new DataView(bytes.buffer, bytes.byteOffset + at + 8, length);
    if (said > left && !open) cut = true;
    if (tag(at) === 'fmt ') format = readFormat(chunk);
    else if (tag(at) === 'data') data = chunk;
    at += 8 + length + (length & 1);
  }
  return decode(path, format, data, cut);
}
