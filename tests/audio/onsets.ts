/** Finds when sounds begin in rendered audio, and records what a live context really puts out. */

/** A sample louder than this share of the peak begins a sound: far under the tap, far above the tone that wakes a loudspeaker. */
const AUDIBLE = 0.01;

/** A sound begins after this much quiet; the doubled tap of `enough` has no such gap in it, so it counts once, s. */
const QUIET_BEFORE_S = 0.1;

/** Begins of the sounds in mono samples, s from the first sample. */
export function onsetsS(samples: Float32Array, sampleRateHz: number): readonly number[] {
  const floor = AUDIBLE * samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const onsets: number[] = [];
  let lastLoudS = Number.NEGATIVE_INFINITY;
  samples.forEach((value, i) => {
    if (Math.abs(value) <= floor) return;
    const atS = i / sampleRateHz;
    if (atS - lastLoudS > QUIET_BEFORE_S) onsets.push(atS);
    lastLoudS = atS;
  });
  return onsets;
}

/** Runs on the audio thread, so a page that is busy cannot disturb it. */
const RECORDER = `registerProcessor('recorder', class extends AudioWorkletProcessor {
  process([input]) {
    if (input[0]) this.port.postMessage({ frame: currentFrame, samples: input[0].slice() });
    return true;
  }
});`;

interface Block {
  readonly frame: number;
  readonly samples: Float32Array;
}

export interface Recording {
  /** Begins of the sounds so far, in the time of the context. */
  onsetsS(): readonly number[];
  stop(): void;
}

/** Records what passes through `node`. */
export async function record(context: AudioContext, node: AudioNode): Promise<Recording> {
  const url = URL.createObjectURL(new Blob([RECORDER], { type: 'text/javascript' }));
  await context.audioWorklet.addModule(url);
  URL.revokeObjectURL(url);
  const recorder = new AudioWorkletNode(context, 'recorder', { numberOfOutputs: 0 });
  const blocks: Block[] = [];
  recorder.port.onmessage = ({ data }: MessageEvent<Block>) => blocks.push(data);
  node.connect(recorder);
  return {
    onsetsS: () => blockOnsets(blocks, context.sampleRate),
    stop: () => node.disconnect(recorder),
  };
}

function blockOnsets(blocks: readonly Block[], sampleRateHz: number): readonly number[] {
  const [first, last] = [blocks[0], blocks.at(-1)];
  if (!first || !last) return [];
  const samples = new Float32Array(last.frame + last.samples.length - first.frame);
  for (const block of blocks) samples.set(block.samples, block.frame - first.frame);
  return onsetsS(samples, sampleRateHz).map((atS) => atS + first.frame / sampleRateHz);
}

export function wait(forS: number): Promise<void> {
  return new Promise((done) => setTimeout(done, forS * 1000));
}

/** Keeps the page so busy that nothing else runs. */
export function blockPage(forS: number): void {
  const untilMs = performance.now() + forS * 1000;
  while (performance.now() < untilMs);
}
