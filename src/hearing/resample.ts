/** Turns a stream of any rate into 16 kHz, band-limited, in blocks of any length. The delay is known and taken out of the times. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { lowPassAt } from './low-pass.ts';

/** Zero crossings of the sinc on each side: about 80 dB of stop band under its window. */
const LOBES = 16;
/** Share of the narrower band that is kept: leaves the filter room to fall. */
const PASS_SHARE = 0.94;
/** Fractional positions of the filter that are tabulated; the nearest two are blended. */
const PHASES = 512;

/** Lowest and highest rates taken, Hz. */
export const LOWEST_RATE_HZ = 8_000;
export const HIGHEST_RATE_HZ = 192_000;

export interface Resampler {
  /** Takes a block and hands back what is ready at 16 kHz. The answer is a view that the next call overwrites. */
  push(block: Float32Array): Float32Array;
  /** Pushes silence through until the last sample given has come out. */
  flush(): Float32Array;
}

/** Filter taps, row-major [phase][tap], one row for each fraction of an input sample; one row more, so that rows can be blended. */
function tapTable(halfWidth: number, cutoff: number): Float32Array {
  const width = 2 * halfWidth;
  const table = new Float32Array((PHASES + 1) * width);
  for (let phase = 0; phase <= PHASES; phase++) {
    for (let tap = 0; tap < width; tap++) {
      const x = tap - halfWidth + 1 - phase / PHASES;
      table[phase * width + tap] = lowPassAt(x, cutoff, halfWidth);
    }
  }
  return table;
}

/** A sample that is not a finite number becomes silence; what is far beyond full scale is cut. */
function tame(sample: number): number {
  return sample >= -8 && sample <= 8 ? sample : sample > 8 && sample < Infinity ? 8 : sample < -8 && sample > -Infinity ? -8 : 0;
}

export function createResampler(fromHz: number): Resampler {
  if (!(fromHz >= LOWEST_RATE_HZ && fromHz <= HIGHEST_RATE_HZ)) {
    throw new RangeError(`sampleRateHz: expected ${LOWEST_RATE_HZ} to ${HIGHEST_RATE_HZ}, got ${fromHz}`);
  }
  return fromHz === EAR_RATE_HZ ? createPassThrough() : createSincResampler(fromHz);
}

function createPassThrough(): Resampler {
  let out = new Float32Array(0);
  return {
    push(block) {
      if (out.length < block.length) out = new Float32Array(block.length);
      for (let i = 0; i < block.length; i++) out[i] = tame(block[i] as number);
      return out.subarray(0, block.length);
    },
    flush: () => out.subarray(0, 0),
  };
}

function createSincResampler(fromHz: number): Resampler {
  const step = fromHz / EAR_RATE_HZ;
  const cutoff = PASS_SHARE * Math.min(1, 1 / step);
  const halfWidth = Math.ceil(LOBES / cutoff);
  const width = 2 * halfWidth;
  const taps = tapTable(halfWidth, cutoff);
  // The kept input begins with silence, so that the first sample out is aligned with the first sample in.
  let kept = new Float32Array(width + 8192);
  let keptLength = halfWidth - 1;
  let pushed = 0;
  let made = 0;
  let dropped = -(halfWidth - 1);
  let out = new Float32Array(0);

  function sampleAt(position: number): number {
    const whole = Math.floor(position);
    const phase = (position - whole) * PHASES;
    const row = Math.floor(phase);
    const blend = phase - row;
    const base = whole - halfWidth + 1 - dropped;
    let low = 0;
    let high = 0;
    for (let tap = 0, a = row * width, b = a + width; tap < width; tap++, a++, b++) {
      const sample = kept[base + tap] as number;
      low += (taps[a] as number) * sample;
      high += (taps[b] as number) * sample;
    }
    return low + blend * (high - low);
  }

  function keep(block: Float32Array): void {
    if (keptLength + block.length > kept.length) {
      const wider = new Float32Array(2 * (keptLength + block.length));
      wider.set(kept.subarray(0, keptLength));
      kept = wider;
    }
    for (let i = 0; i < block.length; i++) kept[keptLength + i] = tame(block[i] as number);
    keptLength += block.length;
  }

  /** Forgets input that no later output can reach. */
  function forget(): void {
    const first = Math.floor(made * step) - halfWidth + 1;
    const surplus = first - dropped;
    if (surplus <= 0) return;
    kept.copyWithin(0, surplus, keptLength);
    keptLength -= surplus;
    dropped += surplus;
  }

  function produce(until: number): Float32Array {
    const count = Math.max(0, until - made);
    if (out.length < count) out = new Float32Array(count);
    for (let i = 0; i < count; i++) out[i] = sampleAt(made++ * step);
    forget();
    return out.subarray(0, count);
  }

  return {
    push(block) {
      pushed += block.length;
      keep(block);
      // Sample n is ready when the last tap it reaches, floor(n step) + halfWidth, has been pushed.
      return produce(Math.max(0, Math.ceil((pushed - halfWidth) / step)));
    },
    flush() {
      keep(new Float32Array(width));
      return produce(Math.ceil(pushed / step));
    },
  };
}
