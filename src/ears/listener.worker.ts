/** The listener's thread: takes blocks from the tap, lets hearing work, and reports. It wires; the pure room computes. */
import { createTakeCatcher, type TakeCatcher } from '../hearing/catch-take.ts';
import { enrol, inspectTake, type Teaching } from '../hearing/enrol.ts';
import { compareModels } from '../hearing/learn.ts';
import { createListener, type Listener } from '../hearing/listen.ts';
import { type NetworkWeights, readWeights } from '../hearing/weights/shape.ts';
import type { Change, Enrolled } from './enrolled.ts';
import type { Comparison, FromListener, Job, TapBlock, ToListener } from './messages.ts';

interface Stream {
  readonly sampleRateHz: number;
  /** Audio time of the first sample after the job began, s; null: none came yet. */
  startedAtS: number | null;
}

/** Levels reported a second: enough for a meter and for noticing silence. */
const LEVELS_EVERY_S = 0.1;

/** Samples in what the tap counts as one lost block. */
const QUANTUM = 128;
/** A longer hole is a new stream, s. */
const LONGEST_HOLE_S = 1;

let stream: Stream = { sampleRateHz: 48_000, startedAtS: null };
let job: Job = { kind: 'idle' };
let weights: NetworkWeights | undefined;
let listener: Listener | null = null;
let catcher: TakeCatcher | null = null;
/** Kept beside the listener: one that begins afresh expects the same. */
let expected: readonly string[] | null = null;
let levelDueS = 0;
let lost = 0;

function tell(message: FromListener): void {
  postMessage(message);
}

/** A new job, a new stream or a long hole in it: begin afresh, with times that fit the audio clock. */
function begin(atS: number): void {
  stream.startedAtS = atS;
  // It measures the level in every job.
  catcher = createTakeCatcher(stream.sampleRateHz, job.kind === 'teach' ? job.longestS : undefined);
  listener?.close();
  // Should the next one not come about, none hears: never the closed one.
  listener = null;
  listener = job.kind === 'listen' ? listenFrom(atS, job) : null;
  listener?.expect(expected);
}

function listenFrom(atS: number, { model, keepSound }: Job & { kind: 'listen' }): Listener {
  const { sampleRateHz } = stream;
  return createListener(model, { sampleRateHz, startsAtS: atS, weights, keep: { sound: keepSound } });
}

function takeBlock(block: TapBlock): void {
  const lostS = (block.lost * QUANTUM) / stream.sampleRateHz;
  lost += block.lost;
  if (stream.startedAtS === null || lostS > LONGEST_HOLE_S) begin(block.contextS);
  // A busy device drops a few: silence in their place keeps the times right and what was half heard.
  else if (block.lost > 0) hear(new Float32Array(block.lost * QUANTUM));
  hear(block.samples);
  if (block.contextS < levelDueS && block.contextS > levelDueS - 1) return;
  levelDueS = block.contextS + LEVELS_EVERY_S;
  if (catcher)
    tell({
      kind: 'level',
      level: { ...catcher.level(), atS: block.contextS + block.samples.length / stream.sampleRateHz, lost },
    });
}

function hear(samples: Float32Array): void {
  const startedAtS = stream.startedAtS ?? 0;
  for (const hearing of listener?.push(samples) ?? []) tell({ kind: 'hearing', hearing });
  for (const caught of catcher?.push(samples) ?? [])
    if (job.kind === 'teach')
      tell({ kind: 'caught', take: { caught: shifted(caught, startedAtS), report: inspectTake(caught) } });
}

function shifted<T extends { startedAtS: number; endedAtS: number }>(caught: T, byS: number): T {
  return { ...caught, startedAtS: caught.startedAtS + byS, endedAtS: caught.endedAtS + byS };
}

function take(message: ToListener): void {
  switch (message.kind) {
    case 'stream':
      stream = { sampleRateHz: message.sampleRateHz, startedAtS: null };
      message.port.onmessage = ({ data }: MessageEvent<TapBlock>) => guarded(() => takeBlock(data));
      return;
    case 'job':
      job = message.job;
      stream.startedAtS = null;
      return;
    case 'own-sound':
      listener?.expectOwnSound(message.fromS, message.toS);
      return;
    case 'expect':
      expected = message.words;
      listener?.expect(expected);
      return;
    case 'enrol':
      tell({ kind: 'enrolled', request: message.request, enrolled: enrolled(message.teaching) });
      return;
    case 'compare':
      tell({ kind: 'compared', request: message.request, change: compared(message.compare) });
      return;
    case 'weights':
      weights = message.file ? unpacked(message.file) : undefined;
  }
}

/** A file that is not the network is told; the ear goes on with cepstra. */
function unpacked(file: ArrayBuffer): NetworkWeights | undefined {
  const read = readWeights(new Uint8Array(file));
  return read.ok ? read.weights : undefined;
}

/** An answer always comes: somebody waits for it. */
function enrolled(teaching: Teaching): Enrolled {
  try {
    return enrol(teaching, { weights });
  } catch (error) {
    tell({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
    return { ok: false, problems: [] };
  }
}

function compared({ before, after, known }: Comparison): Change | null {
  try {
    return compareModels(before, after, known);
  } catch (error) {
    tell({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
    return null;
  }
}

function guarded(work: () => void): void {
  try {
    work();
  } catch (error) {
    tell({ kind: 'failed', what: error instanceof Error ? error.message : String(error) });
  }
}

self.onmessage = ({ data }: MessageEvent<ToListener>) => guarded(() => take(data));
