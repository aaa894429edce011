/** Sets each word's threshold from the handler's own recordings: every take is heard as if it were new, against all the others. */
import { type Bank, createBank } from './bank.ts';
import { type FeatureKind, type Normaliser, normalise, type Part } from './feature.ts';
import { createMatcher } from './match.ts';
import { mean } from './mean.ts';
import type { OwnedTemplate, TaughtWord } from './model.ts';
import type { Owner } from './score.ts';

/** A take as the listener would hear it: all its rows, noise around it included. */
export interface Rehearsal extends Owner {
  readonly rows: readonly Float32Array[];
}

/** The best score that each word reached while the rehearsal passed, its own take left out. */
export interface Rehearsed extends Owner {
  readonly best: readonly number[];
}

export interface Ground {
  readonly words: readonly string[];
  readonly templates: readonly OwnedTemplate[];
  readonly normaliser: Normaliser;
  readonly parts: readonly Part[];
  readonly dims: number;
}

/** Each against all templates but those of its own take. */
export function rehearse(rehearsals: readonly Rehearsal[], ground: Ground): Rehearsed[] {
  const bank = createBank(ground.templates, ground.dims, ground.parts);
  return rehearsals.map((rehearsal) => rehearseOne(rehearsal, ground, bank));
}

function rehearseOne(
  { word, take, rows }: Rehearsal,
  { words, templates, normaliser, parts, dims }: Ground,
  bank: Bank,
): Rehearsed {
  const others = templates.flatMap((t, i) => (t.word !== word || t.take !== take ? [i] : []));
  const matcher = createMatcher(words, templates, bank, others);
  const vector = new Float32Array(dims);
  const best = words.map(() => Number.NEGATIVE_INFINITY);
  for (const row of rows) {
    normalise(row, normaliser, parts, vector, 0);
    bank.compare(vector);
    matcher.slide();
    matcher.score();
    matcher.scores.forEach((score, w) => {
      best[w] = Math.max(best[w] as number, score);
    });
  }
  return { word, take, best };
}

/**
 * Where between the mean of what is wrong (0) and the mean of what is right (1) a word begins. Set on composed sessions, the average of three
 * speakers and fifteen choices of words, between missed words and some four false accepts an hour of dense talk (see tests/bench/ear.md).
 */
const ACCEPT_AT: Readonly<Record<FeatureKind, number>> = { cleaned: 0.52, fused: 0.52, cepstra: 0.6 };
/** The same for the templates of all rooms, rehearsed in the loudest. */
const ACCEPT_LOUD_AT = 0.64;
/** Width of doubt on the same scale. */
const DOUBT = 0.06;
/** Distance of right from wrong when a handler has taught one word and no talk, so that nothing wrong is known. */
const USUAL_DISTANCE = 1;

/** Scores are placed between this handler's own wrong and right ones, word by word: fixed thresholds fail across speakers. */
export function calibrate(
  rehearsed: readonly Rehearsed[],
  words: readonly string[],
  features: FeatureKind,
  inLoud: readonly Rehearsed[] | null,
): TaughtWord[] {
  const quiet = place(rehearsed, words, ACCEPT_AT[features]);
  // In a loud room right and wrong lie close: where nothing wrong is known, nothing could be told apart.
  const loud = inLoud?.some((r) => r.word !== words[0]) ? place(inLoud, words, ACCEPT_LOUD_AT) : null;
  return words.map((word, w) => ({ word, ...(quiet[w] as Place), ...(loud && { loud: loud[w] as Place }) }));
}

type Place = Omit<TaughtWord, 'word' | 'loud'>;

function place(rehearsed: readonly Rehearsed[], words: readonly string[], acceptAt: number): Place[] {
  const ownMeans = words.map((word, w) => rehearsed.filter((r) => r.word === word).map((r) => r.best[w] as number));
  return words.map((word, w) => {
    const right = mean(ownMeans[w] as number[]);
    const wrong = rehearsed.filter((r) => r.word !== word).map((r) => r.best[w] as number);
    const base = wrong.length > 0 ? Math.min(mean(wrong), right - 0.2) : right - USUAL_DISTANCE;
    return { threshold: base + acceptAt * (right - base), width: DOUBT * (right - base) };
  });
}
