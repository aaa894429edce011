/** Runs the ear over a recording as if it were spoken now: in blocks of 20 ms, with the time it took. */

import { expectedOf } from '../core/expected.ts';
import type { Hearing } from '../hearing/decide.ts';
import { type Enrolment, enrol, type Teaching } from '../hearing/enrol.ts';
import { createListener, type Listener } from '../hearing/listen.ts';
import type { Model } from '../hearing/model.ts';
import type { NetworkWeights } from '../hearing/weights/shape.ts';
import { type RecordedRep, repsOf } from './reps.ts';
import type { Recording } from './wav-in.ts';

/** Length of a block, s. */
const BLOCK_S = 0.02;

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

/** As in a session: after a hold its end is expected, after its end the next hold. */
function listenInOrder(model: Model, listener: Listener): (heard: readonly Hearing[]) => void {
  const words = model.words.map(({ word }) => word);
  const expectNext = (holding: boolean): void => listener.expect(expectedOf(words, holding));
  expectNext(false);
  return (heard) => {
    for (const h of heard)
      if (h.kind === 'word' && ['hold', 'mark', 'lifted', 'void'].includes(h.word)) expectNext(h.word === 'hold');
  };
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
  const listener = createListener(model, { sampleRateHz, weights, trace });
  const block = Math.floor(BLOCK_S * sampleRateHz);
  const heard: Hearing[] = [];
  const before = process.cpuUsage();
  const followed = listenInOrder(model, listener);
  for (let at = 0; at < samples.length; at += block) {
    const found = listener.push(samples.subarray(at, at + block));
    followed(found);
    heard.push(...found);
  }
  heard.push(...listener.flush());
  const spent = process.cpuUsage(before);
  const lengthS = samples.length / sampleRateHz;
  const words = heard.filter((h): h is Word => h.kind === 'word').map(withoutKind);
  const unsure = heard.filter((h): h is Unsure => h.kind === 'unsure').map(withoutKind);
  const realTimeFactor = (spent.user + spent.system) / 1e6 / lengthS;
  return { sampleRateHz, lengthS, features: model.features, words, unsure, reps: repsOf(words), realTimeFactor };
}
