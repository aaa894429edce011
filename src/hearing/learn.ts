/** Learns from corrections: what was heard becomes a take or ordinary talk, and a model is held against the stretches that were heard. */
import type { Stretch } from '../core/stretch.ts';
import { createBank } from './bank.ts';
import { weighScores } from './evidence.ts';
import { normalise } from './feature.ts';
import { createMatcher } from './match.ts';
import { mean } from './mean.ts';
import type { Model } from './model.ts';
import { LOUD, unpack } from './stretch.ts';

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

/** Rows around the one on which it was decided in which another model may have its peak; and rows about a peak that count with it, as in the live ear. */
const PEAK_ROWS = 2;
const AROUND_ROWS = 1;

/** What a model's scores speak for each of its words in a stretch, in what the live ear weighs (log odds); null: it can make nothing of it. */
export type Judge = (stretch: Stretch, of: string | null) => ReadonlyMap<string, number> | null;

/** Which kind of ear heard it; of what loud rooms' templates alone told, the kind without that. */
const kindOf = ({ features }: Stretch): string => features.replace(LOUD, '');

/** What a word scores at a step: widths of doubt over its threshold, by the templates of quiet rooms and by all; null: there are none of loud rooms. */
interface Near {
  readonly word: string;
  /** Steps after the one on which it was decided. */
  readonly fromPeak: number;
  readonly inQuiet: number;
  readonly inLoud: number | null;
}

const isPeak = ({ fromPeak }: Near): boolean => Math.abs(fromPeak) <= PEAK_ROWS;

/**
 * By the scores alone: of what else the live ear knew (room, pitch, pause, what was expected) a stretch keeps nothing. The judge's `of` names an event whose
 * own take must not count.
 */
export function createJudge(model: Model): Judge {
  const dims = model.parts.reduce((sum, part) => sum + part.dims, 0);
  const bank = createBank(model.templates, dims, model.parts);
  const words = model.words.map(({ word }) => word);
  const vector = new Float32Array(dims);
  const takesNoiseOut = model.features === 'cleaned';

  /** Of each step near the peak, and there of each word: widths of doubt over the threshold. */
  function scoresOf(stretch: Stretch, of: string | null): readonly Near[] {
    const members = model.templates.flatMap((template, i) => (of !== null && template.learnedOf === of ? [] : [i]));
    const quiet = members.filter((i) => !model.templates[i]?.loud);
    const inQuiet = createMatcher(words, model.templates, bank, quiet);
    const inLoud = takesNoiseOut ? createMatcher(words, model.templates, bank, members) : null;
    return unpack(stretch).flatMap((row, step) => {
      normalise(row, model.normaliser, model.parts, vector, 0);
      bank.compare(vector);
      inQuiet.slide();
      inLoud?.slide();
      const fromPeak = step - (stretch.to - 1);
      if (Math.abs(fromPeak) > PEAK_ROWS + AROUND_ROWS) return [];
      inQuiet.score();
      inLoud?.score();
      return model.words.map((word, w) => ({
        ...{ word: word.word, fromPeak, inQuiet: ((inQuiet.scores[w] as number) - word.threshold) / word.width },
        inLoud: inLoud && word.loud ? ((inLoud.scores[w] as number) - word.loud.threshold) / word.loud.width : null,
      }));
    });
  }

  function worth(near: readonly Near[], byLoud: boolean): number {
    const told = ({ inQuiet, inLoud }: Near): number => (byLoud ? (inLoud ?? inQuiet) : inQuiet);
    const peak = near.filter(({ fromPeak }) => Math.abs(fromPeak) <= PEAK_ROWS).reduce((a, b) => (told(b) > told(a) ? b : a));
    const around = near.filter(({ fromPeak }) => Math.abs(fromPeak - peak.fromPeak) <= AROUND_ROWS);
    const inQuiet = Math.max(...around.map((step) => step.inQuiet));
    if (!takesNoiseOut) return inQuiet;
    const inLoud = around.flatMap((step) => step.inLoud ?? []);
    return weighScores({ inQuiet, inLoud: inLoud.length > 0 ? Math.max(...inLoud) : null, mean: mean(around.map(told)) });
  }

  return (stretch, of) => {
    if (kindOf(stretch) !== model.features || stretch.dims !== dims || words.length === 0) return null;
    const near = scoresOf(stretch, of);
    if (!near.some(isPeak)) return null;
    const byLoud = stretch.features.endsWith(LOUD);
    return new Map(
      words.map((word) => [
        word,
        worth(
          near.filter((each) => each.word === word),
          byLoud,
        ),
      ]),
    );
  };
}

/** A stretch of a session: what it was heard as, and what it was, as far as anybody knows. */
export interface Known {
  /** The event under which it stands in the log. */
  readonly of: string;
  readonly stretch: Stretch;
  /** null: unsure. */
  readonly heard: string | null;
  /** The word that was heard, or, unsure, the nearest one. */
  readonly nearest: string;
  /** The live ear's of that word, 0 to 1. */
  readonly confidence: number;
  /** null: no word. */
  readonly truth: string | null;
}

/** What became of the stretches of a session: as they were heard, and with another model. */
export interface Change {
  /** Stretches that could be compared: of words, and of what was none. */
  readonly words: number;
  readonly others: number;
  /** Of an ear of another kind, or of a word that is no longer taught: nothing is said of them. */
  readonly leftOut: number;
  /** Words heard rightly then and not now; and the other way round. */
  readonly lost: number;
  readonly won: number;
  /** Stretches taken for a word that they are not. */
  readonly falseBefore: number;
  readonly falseAfter: number;
}

/**
 * The live ear's own decision is where each stretch starts; what the other model's scores speak for more or less is added to it. So with no change of model
 * nothing changes. Every stretch is held out while it is judged: what was learnt by heart proves nothing.
 */
export function compareModels(then: Model, now: Model, known: readonly Known[]): Change {
  const [was, is] = [createJudge(then), createJudge(now)];
  const judged = known.flatMap((one) => {
    const [before, after] = [was(one.stretch, one.of), is(one.stretch, one.of)];
    if (!before?.has(one.nearest) || !after) return [];
    return [{ truth: one.truth, before: one.heard, after: heardNow(one, before, after) }];
  });
  const count = (holds: (one: (typeof judged)[number]) => boolean) => judged.filter(holds).length;
  return {
    words: count(({ truth }) => truth !== null),
    others: count(({ truth }) => truth === null),
    leftOut: known.length - judged.length,
    lost: count((one) => one.truth !== null && one.before === one.truth && one.after !== one.truth),
    won: count((one) => one.truth !== null && one.before !== one.truth && one.after === one.truth),
    falseBefore: count((one) => one.before !== null && one.before !== one.truth),
    falseAfter: count((one) => one.after !== null && one.after !== one.truth),
  };
}

type Worths = ReadonlyMap<string, number>;

/** A word that spoke for itself more than the one that was told, and did not win, starts level with it: it wins by what it gains. */
function heardNow({ nearest: told, confidence }: Known, before: Worths, after: Worths): string | null {
  const base = before.get(told) as number;
  const besides = logOdds(confidence) - base;
  const level = (word: string, worth: number): number => {
    const then = before.get(word) ?? base;
    return then > base ? base + (worth - then) : worth;
  };
  const start: readonly [string | null, number] = [told, after.get(told) ?? Number.NEGATIVE_INFINITY];
  const [word, worth] = [...after].reduce((best, [other, its]) => {
    const fair = level(other, its);
    return fair > best[1] ? ([other, fair] as const) : best;
  }, start);
  return worth + besides > 0 ? word : null;
}

/** A share that was rounded to a whole one says no more than that it was very sure. */
const SUREST = 20;
const logOdds = (share: number): number => Math.max(-SUREST, Math.min(SUREST, Math.log(share / (1 - share))));
