/** The second observer: hears a recording with the app's own ear. */
import { decodeForEar } from '../audio/decode.ts';
import { isRepWord, type Observed } from '../core/observe/observation.ts';
import type { Seconds } from '../core/units.ts';
import { hearRecording } from '../ears/recording-ear.ts';
import type { Rooms } from './rooms.ts';
import { teachingOf } from './teaching.ts';

export interface RecordingToHear {
  readonly bytes: ArrayBuffer;
  /** Whose words are in it. */
  readonly handler: string;
  /** How far it is, s of the recording; false stops it. */
  readonly onProgress: (untilS: Seconds, lengthS: Seconds) => boolean;
}

export type RecordingHeard =
  | { readonly kind: 'heard'; readonly words: readonly Observed[]; readonly unsure: number; readonly lengthS: Seconds }
  | { readonly kind: 'no-sound' | 'not-taught' | 'stopped' }
  | { readonly kind: 'failed'; readonly what: string };

export async function hearFile({ keeper }: Rooms, { bytes, handler, onProgress }: RecordingToHear): Promise<RecordingHeard> {
  const { words, talk, learned, takes } = teachingOf(keeper.library(), handler);
  if (takes === 0) return { kind: 'not-taught' };
  const recording = await decodeForEar(bytes);
  if (!recording) return { kind: 'no-sound' };
  const { samples, sampleRateHz } = recording;
  const lengthS = samples.length / sampleRateHz;
  const scored: Observed[] = [];
  let unsure = 0;
  const end = await hearRecording({
    ...{ teaching: { words, talk, learned }, samples, sampleRateHz },
    onHeard: (hearings, untilS) => {
      for (const hearing of hearings) {
        if (hearing.kind === 'unsure') unsure++;
        else if (isRepWord(hearing.word)) scored.push({ word: hearing.word, atS: Math.max(0, hearing.startedAtS) });
      }
      return onProgress(untilS, lengthS);
    },
  });
  return end.kind === 'heard' ? { kind: 'heard', words: scored, unsure, lengthS } : end;
}
