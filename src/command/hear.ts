/** Runs the ear over a recording as if it were spoken now, with the time it took. */

import type { Hearing } from '../hearing/decide.ts';
import { type Enrolment, enrol, type Teaching } from '../hearing/enrol.ts';
import type { Model } from '../hearing/model.ts';
import { createRecordingListener } from '../hearing/recording.ts';
import type { NetworkWeights } from '../hearing/weights/shape.ts';
import { type RecordedRep, repsOf } from './reps.ts';
import type { Recording } from './wav-in.ts';

type Word = Extract<Hearing, { kind: 'word' }>;
type Unsure = Extract<Hearing, { kind: 'unsure' }>;

export interface HeardSession {
  readonly sampleRateHz: number;
  readonly lengthS: number;
  readonly features: Model['features'];
  readonly words: readonly Omit<Word, 'kind'>[];
  readonly unsure: readonly Omit<Unsure, 'kind'>[];
  readonly reps: readonly RecordedRep[];
  readonly realTimeFactor: number;
}

export const teach = (teaching: Teaching, weights: NetworkWeights | undefined): Enrolment => enrol(teaching, { weights });

const rounded = (seconds: number): number => Math.round(seconds * 1e4) / 1e4;

function withoutKind<T extends Hearing>({ kind: _, ...rest }: T): Omit<T, 'kind'> {
  return {
    ...rest,
    startedAtS: rounded(rest.startedAtS),
    endedAtS: rounded(rest.endedAtS),
    decidedAtS: rounded(rest.decidedAtS),
  };
}

export function hearTrack(
  model: Model,
  track: Recording,
  weights: NetworkWeights | undefined,
  trace?: (line: unknown) => void,
): HeardSession {
  const { samples, sampleRateHz } = track;
  const listener = createRecordingListener(model, { sampleRateHz, weights, trace });
  const before = process.cpuUsage();
  const heard = [...listener.push(samples), ...listener.flush()];
  const spent = process.cpuUsage(before);
  const lengthS = samples.length / sampleRateHz;
  const words = heard.filter((h): h is Word => h.kind === 'word').map(withoutKind);
  const unsure = heard.filter((h): h is Unsure => h.kind === 'unsure').map(withoutKind);
  const realTimeFactor = (spent.user + spent.system) / 1e6 / lengthS;
  return { sampleRateHz, lengthS, features: model.features, words, unsure, reps: repsOf(words), realTimeFactor };
}
