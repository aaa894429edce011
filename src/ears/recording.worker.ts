/** The thread that hears a recording: taught once, then given its samples piece by piece. It wires; the pure room computes. */
import { enrol } from '../hearing/enrol.ts';
import { createRecordingListener, type RecordingListener } from '../hearing/recording.ts';
import { readWeights } from '../hearing/weights/shape.ts';
import type { FromRecording, ToRecording } from './recording-messages.ts';

let listener: RecordingListener | null = null;

function answer(message: ToRecording): FromRecording {
  if (message.kind === 'begin') return begin(message);
  if (!listener) throw new Error('samples came before the words to listen for');
  const heard = listener.push(message.samples);
  return { kind: 'heard', hearings: message.last ? [...heard, ...listener.flush()] : heard };
}

function begin({ teaching, weights: file, sampleRateHz }: ToRecording & { kind: 'begin' }): FromRecording {
  const read = file && readWeights(new Uint8Array(file));
  const weights = read?.ok ? read.weights : undefined;
  const enrolled = enrol(teaching, { weights });
  if (!enrolled.ok) return { kind: 'not-taught', problems: enrolled.problems };
  listener = createRecordingListener(enrolled.model, { sampleRateHz, weights });
  return { kind: 'begun' };
}

function guarded(message: ToRecording): FromRecording {
  try {
    return answer(message);
  } catch (error) {
    return { kind: 'failed', what: error instanceof Error ? error.message : String(error) };
  }
}

self.onmessage = ({ data }: MessageEvent<ToRecording>) => postMessage(guarded(data));
