/** Decides when a rising score is a word: at its peak, when a pause follows, once. What is nearly a word is unsure. */
import type { Loudness } from './loudness.ts';
import type { Kept } from './memory.ts';
import type { Model } from './model.ts';
import { createOwnSound } from './own-sound.ts';
import { pauseAround } from './pause.ts';
import { type PitchMemory, strangeness } from './pitch.ts';
import { END_LAG_S, START_LAG_S } from './template.ts';

export type Hearing =
  | {
      readonly kind: 'word';
      readonly word: string;
      readonly startedAtS: number;
      readonly endedAtS: number;
      readonly decidedAtS: number;
      /** 0 to 1. */
      readonly confidence: number;
      /** Enough to learn from; only where the listener was asked to keep it. */
      readonly kept?: Kept;
    }
  | {
      readonly kind: 'unsure';
      readonly startedAtS: number;
      readonly endedAtS: number;
      readonly decidedAtS: number;
      /** The two nearest words, nearest first. */
      readonly nearest: readonly { readonly word: string; readonly confidence: number }[];
      readonly kept?: Kept;
    };

/** A peak stands when the score has not risen for this long. */
const PEAK_STANDS_S = 0.075;
/** A word is waited for no longer than this after its peak; running talk has then gone on. */
const LONGEST_WAIT_S = 0.2;
/** How far the sound must fall before and after, dB. */
const BEFORE_DB = 3;
const AFTER_DB = 4;
/** A word this clear (in widths of doubt) needs no quiet before it: a clatter may have fallen there. After it quiet is always needed, or a long word is heard twice. */
const CLEAR_WIDTHS = 3;
/** Nothing else begins this soon after a word (suggestion of the recipe). */
const REFRACTORY_S = 0.25;
/** Two onsets this close are one word heard twice: by its head, then (past a stop's closure) whole. */
const SAME_ONSET_S = 0.2;
/** The next word cannot begin inside the last one; onsets are known to some frames. */
const OVERLAP_S = 0.08;
/** Width of doubt within which a stretch is unsure, in widths of the word's own spread. */
const UNSURE_WIDTHS = 1;

/**
 * How much clearer a word must be that nobody expects now, in widths of doubt: a soft prior, no mute. Easing what is expected brought more
 * false accepts than words (see tests/bench/ear.md).
 */
const SURPRISE_WIDTHS = 1.5;

/** A stretch of which the app itself sounded more than this is the app's, not the handler's, unless it is very like a word. */
const MOSTLY = 0.6;

interface Candidate {
  readonly word: number;
  readonly margin: number;
  readonly peakAtS: number;
  readonly startedAtS: number;
  readonly endedAtS: number;
  readonly scores: readonly number[];
}

export interface Decider {
  step(scores: Float64Array, nowS: number, startOf: (word: number) => number): void;
  expectOwnSound(fromS: number, toS: number): void;
  /** The taught words that may well come next; null: all alike. */
  expect(words: readonly string[] | null): void;
  /** What was decided since the last call; `decidedAtS` is filled in by the caller. */
  collect(): Hearing[];
}

const certainty = (margin: number): number => 1 / (1 + Math.exp(-margin));

export function createDecider(
  model: Model,
  loudness: Loudness,
  pitch: PitchMemory,
  trace: ((line: unknown) => void) | undefined,
): Decider {
  const own = createOwnSound();
  const surprise = model.words.map(() => 0);
  let pending: Candidate | undefined;
  let takenFromS = Number.NEGATIVE_INFINITY;
  let takenUntilS = Number.NEGATIVE_INFINITY;
  let out: Hearing[] = [];

  const marginOf = (scores: ArrayLike<number>, w: number): number => {
    const word = model.words[w] as Model['words'][number];
    return ((scores[w] as number) - word.threshold) / word.width - (surprise[w] as number);
  };

  function bestWord(scores: Float64Array): number {
    let best = 0;
    for (let w = 1; w < scores.length; w++) if (marginOf(scores, w) > marginOf(scores, best)) best = w;
    return best;
  }

  /** A tap or a call is never so like a word: what is this clear was said over it, by a handler who marks on the beat. */
  function isOwnSound({ startedAtS, endedAtS, margin }: Candidate): boolean {
    return own.within(startedAtS, endedAtS) || (margin <= CLEAR_WIDTHS && own.share(startedAtS, endedAtS) > MOSTLY);
  }

  function close(candidate: Candidate, nowS: number): void {
    pending = undefined;
    const pause = pauseAround(loudness, own, candidate.startedAtS, candidate.endedAtS, nowS);
    const apart = pause.afterDb >= AFTER_DB && (pause.beforeDb >= BEFORE_DB || candidate.margin > CLEAR_WIDTHS);
    const { startedAtS, endedAtS } = candidate;
    const word = (model.words[candidate.word] as Model['words'][number]).word;
    const octaves = apart ? pitch.between(startedAtS, endedAtS) : null;
    const stranger = strangeness(model.voice, word, octaves);
    trace?.({ ...candidate, ...pause, noiseDb: loudness.noiseDb(), nowS, apart, stranger });
    const margin = candidate.margin - stranger;
    if (!apart || margin < -UNSURE_WIDTHS || isOwnSound(candidate)) return;
    if (margin > 0) {
      out.push({
        kind: 'word',
        word,
        startedAtS,
        endedAtS,
        decidedAtS: nowS,
        confidence: certainty(margin),
      });
      takenFromS = startedAtS;
      takenUntilS = endedAtS;
    } else out.push({ kind: 'unsure', startedAtS, endedAtS, decidedAtS: nowS, nearest: nearest(candidate.scores, octaves) });
  }

  function nearest(scores: readonly number[], octaves: number | null): { word: string; confidence: number }[] {
    return model.words
      .map(({ word }, w) => ({ word, confidence: certainty(marginOf(scores, w) - strangeness(model.voice, word, octaves)) }))
      .sort((a, b) => b.confidence - a.confidence)
      .slice(0, 2);
  }

  function consider(scores: Float64Array, nowS: number, startOf: (word: number) => number): void {
    const word = bestWord(scores);
    const margin = marginOf(scores, word);
    if (margin < -UNSURE_WIDTHS || (pending && pending.margin >= margin)) return;
    const startedAtS = startOf(word) - START_LAG_S;
    const endedAtS = nowS - END_LAG_S;
    if (startedAtS < Math.max(takenFromS + SAME_ONSET_S, takenUntilS - OVERLAP_S)) return;
    if ((startedAtS + endedAtS) / 2 < takenUntilS + REFRACTORY_S) return;
    pending = { word, margin, peakAtS: nowS, startedAtS, endedAtS, scores: Array.from(scores) };
  }

  function mayClose(candidate: Candidate, nowS: number): boolean {
    if (nowS - candidate.peakAtS < PEAK_STANDS_S) return false;
    return (
      nowS - candidate.peakAtS >= LONGEST_WAIT_S ||
      pauseAround(loudness, own, candidate.startedAtS, candidate.endedAtS, nowS).afterDb >= AFTER_DB
    );
  }

  return {
    step(scores, nowS, startOf) {
      consider(scores, nowS, startOf);
      if (pending && mayClose(pending, nowS)) close(pending, nowS);
    },
    expectOwnSound: own.expect,
    expect(words) {
      model.words.forEach(({ word }, w) => {
        surprise[w] = words === null || words.includes(word) ? 0 : SURPRISE_WIDTHS;
      });
    },
    collect() {
      const found = out;
      if (found.length > 0) out = [];
      return found;
    },
  };
}
