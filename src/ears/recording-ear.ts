/** The ear for a recording: owns a thread for as long as one is heard, and hands it the samples piece by piece. */
import type { Seconds } from '../core/units.ts';
import type { Teaching } from '../hearing/enrol.ts';
import type { Hearing } from '../hearing/listen.ts';
import { fetchWeights } from './own-words.ts';
import type { FromRecording, ToRecording } from './recording-messages.ts';

export interface RecordingJob {
  readonly teaching: Teaching;
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  /** Called after every piece; false stops. */
  readonly onHeard: (hearings: readonly Hearing[], untilS: Seconds) => boolean;
}

export type RecordingEnd =
  | { readonly kind: 'heard' }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'not-taught' }
  | { readonly kind: 'failed'; readonly what: string };

/** Only one piece is on its way at a time, so that an hour costs no more memory than a minute does, s. */
const PIECE_S: Seconds = 5;

export async function hearRecording(job: RecordingJob): Promise<RecordingEnd> {
  const worker = new Worker(new URL('./recording.worker.ts', import.meta.url), { type: 'module' });
  try {
    const weights = await fetchWeights();
    const { teaching, sampleRateHz } = job;
    const begun = await ask(worker, { kind: 'begin', teaching, weights, sampleRateHz }, weights ? [weights] : []);
    if (begun.kind !== 'begun') return ended(begun);
    return await hearPieces(worker, job);
  } finally {
    worker.terminate();
  }
}

async function hearPieces(worker: Worker, { samples, sampleRateHz, onHeard }: RecordingJob): Promise<RecordingEnd> {
  const piece = Math.floor(PIECE_S * sampleRateHz);
  for (let at = 0; at < samples.length; at += piece) {
    const next = samples.slice(at, at + piece);
    const heard = await ask(worker, { kind: 'samples', samples: next, last: at + piece >= samples.length }, [next.buffer]);
    if (heard.kind !== 'heard') return ended(heard);
    if (!onHeard(heard.hearings, Math.min(samples.length, at + piece) / sampleRateHz)) return { kind: 'stopped' };
  }
  return { kind: 'heard' };
}

function ended(answer: FromRecording): RecordingEnd {
  if (answer.kind === 'not-taught') return { kind: 'not-taught' };
  return { kind: 'failed', what: answer.kind === 'failed' ? answer.what : `it answered ${answer.kind}` };
}

function ask(worker: Worker, message: ToRecording, transfer: Transferable[]): Promise<FromRecording> {
  return new Promise((resolve) => {
    worker.onmessage = ({ data }: MessageEvent<FromRecording>) => resolve(data);
    worker.onerror = ({ message: what }) => resolve({ kind: 'failed', what });
    worker.postMessage(message, transfer);
  });
}
