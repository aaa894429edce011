/** A second observer's scoring of a session, from a recording: what is kept of it, and the words of both observers on one clock. */
import type { RepWord } from '../correction.ts';
import { REP_WORDS } from '../correction.ts';
import type { SessionState } from '../fold.ts';
import { standingEvents } from '../standing.ts';
import type { Seconds } from '../units.ts';

/** One word as an observer places it, s on the clock that the holder names. */
export interface Observed {
  readonly word: RepWord;
  readonly atS: Seconds;
}

/** Kept beside the session, never in it: neither progress nor the next start knows of it. Saved again under its id, the latest stands. */
export interface Observation {
  readonly id: string;
  readonly sessionId: string;
  readonly observer: string;
  readonly by: 'keys' | 'ear';
  readonly fileName: string;
  /** How long the recording is. */
  readonly lengthS: Seconds;
  /** On the recording's clock, in order. */
  readonly words: readonly Observed[];
  /** Session clock less recording clock. */
  readonly offsetS: Seconds;
}

export function isRepWord(word: string): word is RepWord {
  return (REP_WORDS as readonly string[]).includes(word);
}

/** The words of a session that stand, in the order of their onsets, on the session clock. */
export function sessionWords(state: SessionState): readonly Observed[] {
  return standingEvents(state.log)
    .flatMap((event) =>
      event.type === 'word-heard' && isRepWord(event.body.word) ? [{ word: event.body.word, atS: event.body.startedAtS }] : [],
    )
    .toSorted((a, b) => a.atS - b.atS);
}

/** The same words on a clock that reads so much more. */
export function shifted(words: readonly Observed[], byS: Seconds): readonly Observed[] {
  return words.map(({ word, atS }) => ({ word, atS: atS + byS }));
}
