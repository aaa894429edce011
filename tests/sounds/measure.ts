/** Measures a short sound the way an ear would: its level, its spectrum, and when its strokes begin and end. */
import FFT from 'fft.js';

export interface Sound {
  readonly sampleRateHz: number;
  /** Mono, -1..1. */
  readonly samples: Float64Array;
}

/** Where one stroke is audible, s from the start of the file. */
export interface StrokeSpan {
  readonly fromS: number;
  readonly toS: number;
}

/** Reads the plain 44-byte WAV that `sounds/make.ts` writes, and refuses anything else. */
export function readPlainWav(bytes: Uint8Array): Sound {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const format = { kind: view.getUint16(20, true), channels: view.getUint16(22, true), bits: view.getUint16(34, true) };
  if (format.kind !== 1 || format.channels !== 1 || format.bits !== 16) throw new Error(`not plain: ${JSON.stringify(format)}`);
  if (view.getUint32(40, true) !== bytes.length - 44) throw new Error('the data chunk does not fill the file');
  const samples = Float64Array.from({ length: (bytes.length - 44) / 2 }, (_, i) => view.getInt16(44 + 2 * i, true) / 32_768);
  return { sampleRateHz: view.getUint32(24, true), samples };
}

export function toDb(ratio: number): number {
  return 20 * Math.log10(ratio);
}

export function peakDb({ samples }: Sound): number {
  return toDb(samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0));
}

export function rmsDb({ samples }: Sound): number {
  return toDb(Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length));
}

/** Power per bin, of the whole sound under zero padding: no window, since every sound begins and ends at zero. */
export function powerSpectrum({ samples, sampleRateHz }: Sound): { readonly binHz: number; readonly power: readonly number[] } {
  const size = 65_536;
  const fft = new FFT(size);
  const out = fft.createComplexArray();
  fft.realTransform(out, [...samples, ...new Array<number>(size - samples.length).fill(0)]);
  const power = Array.from({ length: size / 2 }, (_, bin) => out[2 * bin] ** 2 + out[2 * bin + 1] ** 2);
  return { binHz: sampleRateHz / size, power };
}

export function strongestHz(sound: Sound): number {
  const { binHz, power } = powerSpectrum(sound);
  return power.indexOf(Math.max(...power)) * binHz;
}

/** Energy between two frequencies relative to all of it, dB. */
export function shareDb(sound: Sound, fromHz: number, toHz: number): number {
  const { binHz, power } = powerSpectrum(sound);
  const energy = (low: number, high: number) =>
    power.reduce((sum, value, bin) => (bin * binHz >= low && bin * binHz < high ? sum + value : sum), 0);
  return 10 * Math.log10(energy(fromHz, toHz) / energy(0, sound.sampleRateHz / 2));
}

/** Cuts out a part of a sound. */
export function part({ samples, sampleRateHz }: Sound, { fromS, toS }: StrokeSpan): Sound {
  return { sampleRateHz, samples: samples.slice(Math.round(fromS * sampleRateHz), Math.round(toS * sampleRateHz)) };
}

/** Loudest |sample| within 3 ms around each sample: longer than one half-wave of 400 Hz, so it does not fall between waves. */
export function envelope({ samples, sampleRateHz }: Sound): Float64Array {
  const half = Math.round(0.0015 * sampleRateHz);
  return samples.map((_, i) => {
    let most = 0;
    for (let k = Math.max(0, i - half); k <= Math.min(samples.length - 1, i + half); k++)
      most = Math.max(most, Math.abs(samples[k] ?? 0));
    return most;
  });
}

/** The spans where the envelope stands above a fifth of the peak: what one would count as strokes. */
export function strokes(sound: Sound): readonly StrokeSpan[] {
  const level = envelope(sound);
  const floor = Math.max(...level) / 5;
  const spans: { fromS: number; toS: number }[] = [];
  level.forEach((value, i) => {
    const timeS = i / sound.sampleRateHz;
    if (value >= floor && (level[i - 1] ?? 0) < floor) spans.push({ fromS: timeS, toS: timeS });
    const last = spans.at(-1);
    if (value >= floor && last) last.toS = timeS;
  });
  return spans;
}

/** Time from 10 % to 90 % of the first stroke's top, s. */
export function attackS(sound: Sound): number {
  const { samples, sampleRateHz } = sound;
  const first = strokes(sound)[0];
  if (!first) return 0;
  const until = Math.round(first.toS * sampleRateHz);
  const size = samples.slice(0, until).map(Math.abs);
  const top = Math.max(...size);
  return (size.findIndex((value) => value >= 0.9 * top) - size.findIndex((value) => value >= 0.1 * top)) / sampleRateHz;
}
