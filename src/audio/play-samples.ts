/** Plays a recording of ours once, as it is. The sound room must have been woken by a tap. */
export function playSamples(context: AudioContext, samples: Int16Array, sampleRateHz: number): void {
  const buffer = context.createBuffer(1, samples.length, sampleRateHz);
  buffer.copyToChannel(
    Float32Array.from(samples, (x) => x / 32_768),
    0,
  );
  const source = new AudioBufferSourceNode(context, { buffer });
  source.connect(context.destination);
  source.start();
}
