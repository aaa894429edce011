/** Recordings come in many kinds; those that cannot be used say why and what to do. */
import { expect, test } from 'vitest';
import { parseWav } from '../../src/command/wav-in.ts';
import { wavOf } from './wavs.ts';

const ramp = Float32Array.from({ length: 480 }, (_, i) => Math.sin(i / 7) * 0.5);

test.each([
  ['8-bit', { bits: 8 }, 1 / 100],
  ['16-bit', { bits: 16 }, 1 / 30_000],
  ['24-bit', { bits: 24 }, 1 / 8e6],
  ['32-bit', { bits: 32 }, 1 / 1e7],
  ['32-bit float', { bits: 32, code: 3 }, 1e-7],
  ['64-bit float', { bits: 64, code: 3 }, 1e-7],
  ['24-bit in the extensible form', { bits: 24, extensible: true }, 1 / 8e6],
  ['stereo at 48 kHz', { bits: 16, channels: 2, sampleRateHz: 48_000 }, 1 / 30_000],
  ['with a note before the sound', { bits: 16, note: true }, 1 / 30_000],
  ['from a recorder that never wrote the length', { bits: 16, openLength: true }, 1 / 30_000],
] as const)('a %s file works', (_, kind, tolerance) => {
  const read = parseWav('x.wav', wavOf(ramp, kind));
  if (!read.ok) throw new Error(read.problem.wrong);
  expect(read.recording.samples.length).toBe(ramp.length);
  read.recording.samples.forEach((sample, i) => {
    expect(Math.abs(sample - (ramp[i] as number))).toBeLessThan(tolerance);
  });
});

test.each([
  ['is not a WAV file', Uint8Array.from({ length: 100 }, (_, i) => i)],
  ['is empty: 0 bytes', new Uint8Array(0)],
  ['is empty: not one sample of sound', wavOf(new Float32Array(0), { bits: 16 })],
  ['is cut off: it promises more sound than it holds', wavOf(ramp, { bits: 16 }).subarray(0, 300)],
  ['no format chunk', wavOf(ramp, { bits: 16, noFormat: true })],
  ['holds A-law at 8 bits', wavOf(ramp, { bits: 8, code: 6 })],
  ['sample rate 4000 Hz: expected 8000 to 192000', wavOf(ramp, { bits: 16, sampleRateHz: 4_000 })],
])('a file that %s is refused with its path and a remedy', (wrong, bytes) => {
  const read = parseWav('takes/hold/1.wav', bytes);
  expect(read).toMatchObject({ ok: false, problem: { path: 'takes/hold/1.wav' } });
  if (read.ok) return;
  expect(read.problem.wrong).toContain(wrong);
  expect(read.problem.help).not.toBe('');
});
