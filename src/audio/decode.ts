/** Turns a sound file into samples. The browser decodes: whatever it can play, it can read. */

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

function mixed(buffer: AudioBuffer): Float32Array {
  const channels = Array.from({ length: buffer.numberOfChannels }, (_, i) => buffer.getChannelData(i));
  return Float32Array.from(
    { length: buffer.length },
    (_, i) => channels.reduce((sum, channel) => sum + (channel[i] ?? 0), 0) / channels.length,
  );
}
