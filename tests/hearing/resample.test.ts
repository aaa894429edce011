/** Any microphone's rate becomes 16 kHz without moving or colouring the sound. */
import { expect, test } from 'vitest';
import { createResampler } from '../../src/hearing/resample.ts';

const tone = (hertz: number, rateHz: number, length: number): Float32Array =>
  Float32Array.from({ length }, (_, i) => 0.5 * Math.sin((2 * Math.PI * hertz * i) / rateHz));

function resampled(samples: Float32Array, rateHz: number, blocks: readonly number[]): Float32Array {
  const resampler = createResampler(rateHz);
  const out: number[] = [];
  for (let at = 0, b = 0; at < samples.length; b++) {
    const size = blocks[b % blocks.length] as number;
    out.push(...resampler.push(samples.subarray(at, at + size)));
    at += size;
  }
  out.push(...resampler.flush());
  return Float32Array.from(out);
}

test.each([8_000, 11_025, 22_050, 32_000, 44_100, 48_000, 96_000, 192_000])(
  'a 700 Hz tone at %i Hz comes out in place and whole',
  (rate) => {
    const out = resampled(tone(700, rate, rate / 4), rate, [128]);
    expect(Math.abs(out.length - 4_000)).toBeLessThanOrEqual(1);
    for (let i = 400; i < 3_600; i++) {
      expect(Math.abs((out[i] as number) - 0.5 * Math.sin((2 * Math.PI * 700 * i) / 16_000))).toBeLessThan(1e-3);
    }
  },
);

test('what lies above half the new rate is gone, not folded down into the voice', () => {
  const out = resampled(tone(11_000, 48_000, 24_000), 48_000, [960]);
  expect(Math.max(...out.subarray(400, 7_600).map(Math.abs))).toBeLessThan(5e-4);
});

test('odd blocks give the same samples as one long block', () => {
  const samples = tone(1_234, 44_100, 20_000);
  expect(resampled(samples, 44_100, [1, 127, 3, 441, 4_096])).toEqual(resampled(samples, 44_100, [20_000]));
});

test('a sample that is not a number is taken for silence, and an absurd one is cut', () => {
  const out = createResampler(16_000).push(Float32Array.of(Number.NaN, Number.POSITIVE_INFINITY, 1e30, -1e30, 0.25));
  expect([...out]).toEqual([0, 0, 8, -8, 0.25]);
});

test.each([0, 4_000, 400_000, Number.NaN])('a rate of %s Hz is refused by name', (rate) => {
  expect(() => createResampler(rate)).toThrow(/sampleRateHz: expected 8000 to 192000/);
});
