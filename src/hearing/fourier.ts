/** Turns one windowed frame of samples into a power spectrum. */
import FFT from 'fft.js';

export interface Fourier {
  /** Power in bins 0 to size/2 of `frame` times `window`, which may be shorter than the transform. */
  power(samples: Float32Array, from: number, window: Float32Array, into: Float32Array): void;
}

export function createFourier(size: number): Fourier {
  const fft = new FFT(size);
  const input = new Float64Array(size);
  const output = new Float64Array(2 * size);
  return {
    power(samples, from, window, into) {
      for (let i = 0; i < window.length; i++) input[i] = (samples[from + i] as number) * (window[i] as number);
      fft.realTransform(output, input);
      for (let bin = 0; bin <= size / 2; bin++) {
        const re = output[2 * bin] as number;
        const im = output[2 * bin + 1] as number;
        into[bin] = re * re + im * im;
      }
    },
  };
}

/** Hamming window (Hamming 1977: .54 - .46 cos). */
export function hamming(length: number): Float32Array {
  return Float32Array.from({ length }, (_, i) => 0.54 - 0.46 * Math.cos((2 * Math.PI * i) / (length - 1)));
}
