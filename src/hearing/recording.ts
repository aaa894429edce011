/** Listens to a recording as if it were spoken now: in short blocks, with the words expected that make sense next. */
import { expectedOf } from '../core/expected.ts';
import { createListener, type Hearing, type ListenOptions } from './listen.ts';
import type { Model } from './model.ts';

/** Length of a block, s: what a microphone hands over. */
const BLOCK_S = 0.02;

export interface RecordingListener {
  /** The next samples, however many. */
  push(samples: Float32Array): readonly Hearing[];
  /** The recording is at its end. */
  flush(): readonly Hearing[];
}

export function createRecordingListener(model: Model, options: ListenOptions): RecordingListener {
  const listener = createListener(model, options);
  const words = model.words.map(({ word }) => word);
  const block = Math.floor(BLOCK_S * options.sampleRateHz);
  const expectNext = (holding: boolean): void => listener.expect(expectedOf(words, holding));
  expectNext(false);

  /** As in a session: after a hold its end is expected, after its end the next hold. */
  function follow(heard: readonly Hearing[]): readonly Hearing[] {
    for (const h of heard) if (h.kind === 'word' && ENDING.includes(h.word)) expectNext(h.word === 'hold');
    return heard;
  }

  return {
    push: (samples) => {
      const heard: Hearing[] = [];
      for (let at = 0; at < samples.length; at += block) heard.push(...follow(listener.push(samples.subarray(at, at + block))));
      return heard;
    },
    flush: () => listener.flush(),
  };
}

const ENDING: readonly string[] = ['hold', 'mark', 'lifted', 'void'];
