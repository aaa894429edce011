/** Names what a handler can say, press or tap, and the shape in which every ear reports it. */
import type { Seconds, Share } from './units.ts';

/** The three words the job needs: the chin is down, the rep is paid, the head came up. */
export const SPOKEN_WORDS = ['hold', 'mark', 'lifted'] as const;

/** Everything a handler can command; the optional ones come by key, button or (once taught) by voice. */
export const WORDS = [...SPOKEN_WORDS, 'void', 'undo', 'pause', 'resume', 'finish', 'easier', 'harder', 'stay'] as const;

export type SpokenWord = (typeof SPOKEN_WORDS)[number];
export type Word = (typeof WORDS)[number];
/** May be taught besides; without a take of theirs no ear listens for them. */
export type OptionalWord = Exclude<Word, SpokenWord>;

/** Which ear reported a word; `review`: nobody heard it, it was put in afterwards. */
export type EarName = 'own-words' | 'platform' | 'key' | 'button' | 'recording' | 'review';

/** One word, heard. Times are seconds on the session clock; `startedAtS` is the onset and is what counts. */
export interface Heard {
  readonly word: Word;
  readonly startedAtS: Seconds;
  readonly endedAtS: Seconds;
  /** When the decision was out; never used for judging a rep. */
  readonly decidedAtS: Seconds;
  readonly confidence: Share;
  readonly by: EarName;
  /** Only in a session that was put right: the rep that this word ends is no trial, whatever the word. Never stored. */
  readonly voids?: true;
}

/** A stretch that was nearly a word. Shown and sounded, never guessed. */
export interface Unsure {
  readonly startedAtS: Seconds;
  readonly endedAtS: Seconds;
  readonly decidedAtS: Seconds;
  /** The two nearest words, nearest first. */
  readonly nearest: readonly { readonly word: string; readonly confidence: Share }[];
  readonly by: EarName;
}

/** The name under which a handler's ordinary talk is kept beside the words: no word of theirs. */
export const TALK = 'talk';

export function isWord(name: string): name is Word {
  return (WORDS as readonly string[]).includes(name);
}
