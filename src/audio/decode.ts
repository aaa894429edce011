/** Turns a sound file into samples. The browser decodes: whatever it can play, it can read. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';

/** One channel. The rate is the context's: decoding resamples. */
export interface Recording {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

/** Null when the bytes are no sound the browser knows. */
export async function decodeSound(context: BaseAudioContext, bytes: ArrayBuffer): Promise<Recording | null> {
  const buffer = await context.decodeAudioData(bytes).catch(() => null);
  return buffer && { samples: mixed(buffer), sampleRateHz: buffer.sampleRate };
}

/** Decodes without a sound to be heard, straight to the ear's rate: a film's sound at 48 kHz would take three times the room. */
export function decodeForEar(bytes: ArrayBuffer): Promise<Recording | null> {
  return decodeSound(new OfflineAudioContext(1, 1, EAR_RATE_HZ), bytes);
}

/** Mixed into the first channel where it lies: a long recording is not held twice. */
function mixed(buffer: AudioBuffer): Float32Array {
  const [first, ...others] = Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i));
  if (!first) return new Float32Array();
  for (const other of others) for (let i = 0; i < first.length; i++) first[i] = (first[i] as number) + (other[i] as number);
  if (others.length > 0) for (let i = 0; i < first.length; i++) first[i] = (first[i] as number) / (1 + others.length);
  return first;
}
