/**
 * From what the platform's recogniser writes down to the handler's words. Pure.
 *
 * A phrase counts from its head for as far as it is made of the handler's words: "yes", "steady yes" and "yes good dog" are
 * heard, "say yes to her" is not. The price of deciding at once: "yes" is heard before "yesterday" is written out.
 */
import type { Seconds, Share } from '../core/units.ts';
import { type Heard, isWord, type Word } from '../core/word.ts';

/** Which spoken text means which word, as the handler typed it. */
export type Sayings = Readonly<Partial<Record<Word, readonly string[]>>>;

export interface Alternative {
  readonly text: string;
  readonly confidence: number;
}

/** What the onset was taken from: the recogniser gives no times of words, so that it is always an estimate. */
export type OnsetFrom =
  /** The recogniser noticed speech just before. */
  | 'speech-start'
  /** The first writing of the utterance: late by the time that the recogniser took. */
  | 'first-writing'
  /** A later word of the utterance: when it was first written. */
  | 'own-writing';

export interface HeardByPlatform {
  readonly heard: Heard;
  readonly onsetFrom: OnsetFrom;
}

/** One stretch of speech, as far as it was written down. */
interface Utterance {
  readonly firstAtS: Seconds;
  /** When speech was noticed just before; null: it was not. */
  readonly speechAtS: Seconds | null;
  /** Occurrences that are decided, whatever is written later. */
  readonly decided: number;
  /** The latest writing that was not empty. */
  readonly tokens: readonly string[];
  /** Called final without a confidence: some phones say so of what they go on writing as the next result. */
  readonly doubtfulAtS: Seconds | null;
}

/** One run of the recogniser: its utterances by the number of their result. */
export interface Listening {
  readonly generation: number;
  readonly utterances: Readonly<Record<number, Utterance>>;
  readonly speechAtS: Seconds | null;
}

export type Spoken =
  | { readonly kind: 'speech-started'; readonly generation: number; readonly atS: Seconds }
  | {
      readonly kind: 'written';
      readonly generation: number;
      /** The number of the result within the run. */
      readonly index: number;
      readonly alternatives: readonly Alternative[];
      readonly isFinal: boolean;
      readonly atS: Seconds;
    };

export const NOTHING_SPOKEN: Listening = { generation: 0, utterances: {}, speechAtS: null };

/** What stands in for a confidence that the recogniser does not give (0 on most phones). No source. */
export const UNTOLD: Share = 0.5;
/** Speech noticed longer than this before the first interim was something else, s. No source. */
const LONGEST_LEAD_S: Seconds = 1.5;
/** The same for what comes as a final alone: those are 2-3 s late (PITFALLS). */
const LONGEST_FINAL_LEAD_S: Seconds = 4;
/** A phone goes on writing the same utterance as a new result within this, s. No source. */
const SAME_UTTERANCE_S: Seconds = 2;

/** Case, accents' spelling and punctuation do not matter: "Oh, well!" and "oh well" are the same two tokens. */
export function foldText(text: string): readonly string[] {
  const plain = text.normalize('NFC').toLowerCase().normalize('NFC');
  return plain
    .replace(/['’ʼ]/gu, '')
    .replace(/[\p{P}\p{S}]/gu, ' ')
    .split(/\s+/u)
    .filter((token) => token !== '');
}

/** What a handler types into one field: "yes, yeah". */
export function readSayings(typed: string): readonly string[] {
  return typed
    .normalize('NFC')
    .split(/[,;\n]/u)
    .map((saying) => saying.trim())
    .filter((saying) => foldText(saying).length > 0);
}

/** One saying for two words, or one that begins another: the shorter would always be heard first. */
export interface SayingProblem {
  readonly kind: 'same' | 'begins-another';
  readonly said: string;
  readonly word: Word;
  readonly other: Word;
}

export function sayingProblems(sayings: Sayings): readonly SayingProblem[] {
  const known = knownOf(sayings);
  return known.flatMap((one, i) =>
    known.flatMap((other, j) => {
      if (one.word === other.word || !beginsWith(other.tokens, one.tokens)) return [];
      const isSame = one.tokens.length === other.tokens.length;
      // Told once, not from both sides.
      if (isSame && j < i) return [];
      return [{ kind: isSame ? 'same' : 'begins-another', said: one.said, word: one.word, other: other.word } as const];
    }),
  );
}

export function nextSpoken(
  before: Listening,
  spoken: Spoken,
  sayings: Sayings,
): { readonly listening: Listening; readonly heard: readonly HeardByPlatform[] } {
  const { generation, atS } = spoken;
  const listening = before.generation === generation ? before : { ...NOTHING_SPOKEN, generation };
  if (spoken.kind === 'speech-started') return { listening: { ...listening, speechAtS: atS }, heard: [] };
  const texts = spoken.alternatives.map(({ text }) => foldText(text));
  const tokens = texts[0] ?? [];
  const seen = listening.utterances[spoken.index] ?? carriedOver(listening, spoken, tokens);
  // The final is often empty after an interim that was right: what is decided stands, what is not stays unsaid.
  if (!seen && texts.every(({ length }) => length === 0)) return { listening, heard: [] };
  const utterance = seen ?? begun(listening, spoken);
  const { words, confidence } = wordsIn(spoken.alternatives, texts, knownOf(sayings));
  const fresh = words.slice(utterance.decided);
  const heard = fresh.map((word, i) => reported(word, utterance, utterance.decided + i, confidence, atS));
  const next: Utterance = {
    ...utterance,
    decided: Math.max(utterance.decided, words.length),
    tokens: tokens.length > 0 ? tokens : utterance.tokens,
    doubtfulAtS: spoken.isFinal && !(spoken.alternatives[0] && spoken.alternatives[0].confidence > 0) ? atS : null,
  };
  // Speech that was noticed belongs to one utterance.
  const speechAtS = seen ? listening.speechAtS : null;
  return { listening: { ...listening, speechAtS, utterances: { ...listening.utterances, [spoken.index]: next } }, heard };
}

function begun({ speechAtS }: Listening, { atS, isFinal }: Spoken & { kind: 'written' }): Utterance {
  const longestS = isFinal ? LONGEST_FINAL_LEAD_S : LONGEST_LEAD_S;
  const isNear = speechAtS !== null && atS - speechAtS <= longestS && speechAtS <= atS;
  return { firstAtS: atS, speechAtS: isNear ? speechAtS : null, decided: 0, tokens: [], doubtfulAtS: null };
}

/** The utterance before this result, when a phone goes on writing it under a new number. */
function carriedOver(listening: Listening, { index, atS }: Spoken & { kind: 'written' }, tokens: readonly string[]) {
  const last = listening.utterances[index - 1];
  if (!last || last.doubtfulAtS === null || last.tokens.length === 0) return null;
  return atS - last.doubtfulAtS <= SAME_UTTERANCE_S && beginsWith(tokens, last.tokens) ? last : null;
}

function reported(word: Word, utterance: Utterance, ordinal: number, confidence: Share, atS: Seconds): HeardByPlatform {
  const { startedAtS, onsetFrom } = onset(utterance, ordinal, atS);
  // Where it ended is not known; by now it has.
  return { heard: { word, startedAtS, endedAtS: atS, decidedAtS: atS, confidence, by: 'platform' }, onsetFrom };
}

function onset(
  { speechAtS, firstAtS }: Utterance,
  ordinal: number,
  atS: Seconds,
): { readonly startedAtS: Seconds; readonly onsetFrom: OnsetFrom } {
  // Written first long ago and revised into a word only now: then it was said now.
  if (ordinal > 0 || atS - firstAtS > LONGEST_LEAD_S) return { startedAtS: atS, onsetFrom: 'own-writing' };
  if (speechAtS !== null) return { startedAtS: speechAtS, onsetFrom: 'speech-start' };
  return { startedAtS: firstAtS, onsetFrom: 'first-writing' };
}

interface Known {
  readonly word: Word;
  readonly said: string;
  readonly tokens: readonly string[];
}

/** Longest first: "oh well" before "oh". */
function knownOf(sayings: Sayings): readonly Known[] {
  return Object.entries(sayings)
    .flatMap(([word, said]) =>
      isWord(word) ? (said ?? []).map((each): Known => ({ word, said: each, tokens: foldText(each) })) : [],
    )
    .filter(({ tokens }) => tokens.length > 0)
    .sort((a, b) => b.tokens.length - a.tokens.length);
}

/** The first writing counts from its head; the second best ones only when they are a word and nothing else. */
function wordsIn(
  alternatives: readonly Alternative[],
  texts: readonly (readonly string[])[],
  known: readonly Known[],
): { readonly words: readonly Word[]; readonly confidence: Share } {
  const best = wordsAtHead(texts[0] ?? [], known);
  if (best.length > 0) return { words: best, confidence: shareOf(alternatives[0]) };
  for (const [i, tokens] of texts.entries()) {
    const alone = known.find((each) => each.tokens.length === tokens.length && beginsWith(tokens, each.tokens));
    if (alone) return { words: [alone.word], confidence: Math.min(UNTOLD, shareOf(alternatives[i])) };
  }
  return { words: [], confidence: 0 };
}

function wordsAtHead(tokens: readonly string[], known: readonly Known[]): readonly Word[] {
  const words: Word[] = [];
  let at = 0;
  const here = () => known.find((each) => each.tokens.every((token, i) => token === tokens[at + i]));
  for (let found = here(); found; found = here()) {
    words.push(found.word);
    at += found.tokens.length;
  }
  return words;
}

function beginsWith(tokens: readonly string[], head: readonly string[]): boolean {
  return head.length <= tokens.length && head.every((token, i) => token === tokens[i]);
}

function shareOf(alternative: Alternative | undefined): Share {
  const told = alternative?.confidence ?? 0;
  return told > 0 ? Math.min(1, told) : UNTOLD;
}
