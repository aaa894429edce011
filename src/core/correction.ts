/** What a handler can put right in a review. Each is one more event; what was heard in the session is never changed. */
import type { Seconds } from './units.ts';

/** The words of which reps are made. */
export const REP_WORDS = ['hold', 'mark', 'lifted', 'void'] as const;
export type RepWord = (typeof REP_WORDS)[number];

/** `of` names the event of a heard word, of an unsure stretch, or of an insertion. */
export type Correction =
  /** The ear was right. */
  | { readonly do: 'confirm'; readonly of: string }
  /** It was another word; null: it was no word. An unsure stretch becomes a word by this. */
  | { readonly do: 'relabel'; readonly of: string; readonly as: RepWord | null }
  /** The onset, s on the session clock. */
  | { readonly do: 'move'; readonly of: string; readonly startedAtS: Seconds }
  /** A word that was said and not heard. */
  | { readonly do: 'insert'; readonly word: RepWord; readonly startedAtS: Seconds }
  /** The rep that this word ended was no trial, for a reason the handler gives. The ear was not wrong. */
  | { readonly do: 'void'; readonly of: string; readonly reason: string }
  /** In words, for the rep that this word ended; null: for the whole session. The latest one stands. */
  | { readonly do: 'note'; readonly of: string | null; readonly text: string };
