/** The spectrum behind every feature, held against the plain formulas. */
import { expect, test } from 'vitest';
import { CEPSTRA, cepstrumInto } from '../../src/hearing/cepstra.ts';
import { createFourier, hamming } from '../../src/hearing/fourier.ts';
import { BANDS, createFront, HOP, SPAN } from '../../src/hearing/front.ts';
import { gather, hertzToMel, melBands, melToHertz } from '../../src/hearing/mel.ts';
import { noise } from './sounds.ts';

/** The definition of the transform, nothing saved. */
function naivePower(samples: Float32Array, window: Float32Array, size: number): number[] {
  return Array.from({ length: size / 2 + 1 }, (_, bin) => {
    let re = 0;
    let im = 0;
    for (let i = 0; i < window.length; i++) {
      const x = (samples[i] as number) * (window[i] as number);
      re += x * Math.cos((2 * Math.PI * bin * i) / size);
      im -= x * Math.sin((2 * Math.PI * bin * i) / size);
    }
    return re * re + im * im;
  });
}

test('the spectrum of a frame is what the definition of the Fourier transform gives', () => {
  const samples = noise(400, 3);
  const window = hamming(400);
  const power = new Float32Array(257);
  createFourier(512).power(samples, 0, window, power);
  const expected = naivePower(samples, window, 512);
  const scale = Math.max(...expected);
  power.forEach((p, bin) => {
    expect(Math.abs(p - (expected[bin] as number)) / scale).toBeLessThan(1e-6);
  });
});

test('mel bands are triangles that meet: every frequency between the outer middles is counted once in all', () => {
  const bands = melBands(26, 80, 4_000, 512, 16_000);
  const flat = new Float32Array(257).fill(0);
  const firstMiddle = melToHertz(hertzToMel(80) + (hertzToMel(4_000) - hertzToMel(80)) / 27);
  for (let bin = Math.ceil(firstMiddle / 31.25) + 1; bin < 118; bin++) {
    flat.fill(0);
    flat[bin] = 1;
    const out = new Float32Array(26);
    gather(flat, bands, out, 0);
    expect(out.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 5);
  }
});

test('1000 Hz is 1000 mel, as the scale was defined', () => {
  expect(hertzToMel(1_000)).toBeCloseTo(1_000, 0);
  expect(melToHertz(hertzToMel(440))).toBeCloseTo(440, 9);
});

test('cepstra are the liftered cosine transform of the log bands, and do not know how loud one speaks', () => {
  const bands = noise(BANDS, 5).map((x) => 1 + x * x);
  const out = new Float32Array(CEPSTRA);
  cepstrumInto(bands, out);
  for (let k = 1; k <= CEPSTRA; k++) {
    let sum = 0;
    bands.forEach((p, b) => {
      sum += Math.log(p) * Math.cos((Math.PI * k * (2 * b + 1)) / (2 * BANDS));
    });
    expect(out[k - 1]).toBeCloseTo((1 + 11 * Math.sin((Math.PI * k) / 22)) * Math.sqrt(2 / BANDS) * sum, 4);
  }
  const louder = new Float32Array(CEPSTRA);
  cepstrumInto(
    bands.map((p) => 100 * p),
    louder,
  );
  louder.forEach((c, k) => {
    expect(c).toBeCloseTo(out[k] as number, 3);
  });
});

test('a frame comes every 10 ms however the microphone cuts its blocks', () => {
  const samples = noise(16_000, 9);
  const frames = (block: number): number[] => {
    const all: number[] = [];
    const front = createFront();
    for (let at = 0; at < samples.length; at += block) front.push(samples.subarray(at, at + block), (p) => all.push(...p));
    return all;
  };
  const whole = frames(16_000);
  expect(whole.length / BANDS).toBe(Math.floor((16_000 - SPAN) / HOP) + 1);
  expect(frames(1)).toEqual(whole);
  expect(frames(777)).toEqual(whole);
});
