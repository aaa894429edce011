/** Learns from corrections: what was heard becomes a take or ordinary talk, and a model is held against the stretches that were heard. */
import type { Stretch } from '../core/stretch.ts';
import { createBank } from './bank.ts';
import { normalise } from './feature.ts';
import { createMatcher } from './match.ts';
import type { Model } from './model.ts';
import { unpack } from './stretch.ts';

/** A heard stretch that a correction made a take of. */
export interface Learned {
  /** The event that was corrected. */
  readonly of: string;
  /** undefined: it was no word. */
  readonly word: string | undefined;
  readonly stretch: Stretch;
}

/** A take that is years old says less of the voice of today; and each one costs time. The newest of each word stand, and of talk. */
const MOST_A_WORD = 6;
const MOST_TALK = 20;

/** @param learned oldest first. */
export function newestOf<L extends Pick<Learned, 'word'>>(learned: readonly L[]): readonly L[] {
  const seen = new Map<string | undefined, number>();
  return learned
    .toReversed()
    .filter(({ word }) => {
      const count = (seen.get(word) ?? 0) + 1;
      seen.set(word, count);
      return count <= (word === undefined ? MOST_TALK : MOST_A_WORD);
    })
    .toReversed();
}

/** What a model makes of a stretch: a word, nearly one, or nothing. */
export type Verdict =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'unsure' }
  | { readonly kind: 'nothing' };

/** Within so many widths of doubt under the threshold a stretch is unsure, as in the live ear. */
const UNSURE_WIDTHS = 1;

/** Rows around the one on which it was decided in which another model may have its peak. */
const PEAK_ROWS = 2;

/** @param of an event whose own take must not count: what was learnt by heart proves nothing. */
export type Judge = (stretch: Stretch, of: string | null) => Verdict;

/**
 * Judges kept stretches as the live ear would in a quiet room, but for pauses and what is expected: those were judged when it was heard.
 * What was heard in a loud room alone comes out otherwise, and is left out of what is said of a change.
 */
export function createJudge(model: Model): Judge {
  const dims = model.parts.reduce((sum, part) => sum + part.dims, 0);
  const bank = createBank(model.templates, dims, model.parts);
  const words = model.words.map(({ word }) => word);
  const vector = new Float32Array(dims);

  function bestMargins(stretch: Stretch, of: string | null): readonly number[] {
    const counted = model.templates.flatMap((template, i) =>
      template.loud || (of !== null && template.learnedOf === of) ? [] : [i],
    );
    const matcher = createMatcher(words, model.templates, bank, counted);
    const best = words.map(() => Number.NEGATIVE_INFINITY);
    unpack(stretch).forEach((row, step) => {
      normalise(row, model.normaliser, model.parts, vector, 0);
      bank.compare(vector);
      matcher.slide();
      if (Math.abs(step - (stretch.to - 1)) > PEAK_ROWS) return;
      matcher.score();
      model.words.forEach(({ threshold, width }, w) => {
        best[w] = Math.max(best[w] as number, ((matcher.scores[w] as number) - threshold) / width);
      });
    });
    return best;
  }

  return (stretch, of) => {
    if (stretch.features !== model.features || stretch.dims !== dims || words.length === 0) return { kind: 'nothing' };
    const margins = bestMargins(stretch, of);
    const best = margins.reduce((a, b, i) => (b > (margins[a] as number) ? i : a), 0);
    const margin = margins[best] as number;
    if (margin > 0) return { kind: 'word', word: words[best] as string };
    return { kind: margin > -UNSURE_WIDTHS ? 'unsure' : 'nothing' };
  };
}

/** A stretch of a session: what it was heard as, and what it was, as far as anybody knows. */
export interface Known {
  /** The event under which it stands in the log. */
  readonly of: string;
  readonly stretch: Stretch;
  /** null: unsure. */
  readonly heard: string | null;
  /** null: no word. */
  readonly truth: string | null;
}

/** What became of the stretches of a session: as they were heard, and with another model. */
export interface Change {
  /** Stretches that could be compared: of words, and of what was none. */
  readonly words: number;
  readonly others: number;
  /** Judged anew alone, these come out otherwise than they were heard: nothing is said of them. */
  readonly leftOut: number;
  /** Words heard rightly then and not now; and the other way round. */
  readonly lost: number;
  readonly won: number;
  /** Stretches taken for a word that they are not. */
  readonly falseBefore: number;
  readonly falseAfter: number;
}

/** Every stretch is held out while it is judged: what was learnt by heart proves nothing. */
export function compareModels(then: Model, now: Model, known: readonly Known[]): Change {
  const [was, is] = [createJudge(then), createJudge(now)];
  // Of what another kind of ear heard, neither can say anything.
  const comparable = known.filter(({ stretch: { features } }) => features === then.features && features === now.features);
  const judged = comparable.map(({ of, stretch, heard, truth }) => ({
    ...{ heard, truth },
    before: wordOf(was(stretch, of)),
    after: wordOf(is(stretch, of)),
  }));
  const fair = judged.filter((one) => one.heard === one.before);
  const count = (holds: (one: (typeof fair)[number]) => boolean) => fair.filter(holds).length;
  return {
    words: count(({ truth }) => truth !== null),
    others: count(({ truth }) => truth === null),
    leftOut: known.length - fair.length,
    lost: count((one) => one.truth !== null && one.before === one.truth && one.after !== one.truth),
    won: count((one) => one.truth !== null && one.before !== one.truth && one.after === one.truth),
    falseBefore: count((one) => one.before !== null && one.before !== one.truth),
    falseAfter: count((one) => one.after !== null && one.after !== one.truth),
  };
}

const wordOf = (verdict: Verdict): string | null => (verdict.kind === 'word' ? verdict.word : null);
