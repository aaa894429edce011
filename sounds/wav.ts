/** Writes samples as a WAV file: 16 bit, mono, little-endian, the plain 44-byte header and nothing else. */
import type { Hertz } from '../src/core/units.ts';

const HEADER_BYTES = 44;
const BYTES_A_SAMPLE = 2;
const FULL_SCALE = 32_767;

/** `samples`: mono, -1..1. */
export function wavBytes(samples: Float32Array | Float64Array, sampleRateHz: Hertz): Uint8Array {
  const dataBytes = samples.length * BYTES_A_SAMPLE;
  const bytes = new Uint8Array(HEADER_BYTES + dataBytes);
  const view = new DataView(bytes.buffer);
  writeHeader(view, dataBytes, sampleRateHz);
  for (const [i, sample] of samples.entries()) {
    view.setInt16(HEADER_BYTES + i * BYTES_A_SAMPLE, Math.round(sample * FULL_SCALE), true);
  }
  return bytes;
}

function writeHeader(view: DataView, dataBytes: number, sampleRateHz: Hertz): void {
  writeText(view, 0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + dataBytes, true);
  writeText(view, 8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, sampleRateHz, true);
  view.setUint32(28, sampleRateHz * BYTES_A_SAMPLE, true);
  view.setUint16(32, BYTES_A_SAMPLE, true);
  view.setUint16(34, BYTES_A_SAMPLE * 8, true);
  writeText(view, 36, 'data');
  view.setUint32(40, dataBytes, true);
}

function writeText(view: DataView, at: number, text: string): void {
  for (let i = 0; i < text.length; i++) view.setUint8(at + i, text.charCodeAt(i));
}
