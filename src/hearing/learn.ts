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

  /** Per row near the peak and word: widths of doubt over the threshold. */
  function marginsOf(stretch: Stretch, of: string | null): { inQuiet: number[][]; inLoud: number[][] } {
    const members = model.templates.flatMap((template, i) => (of !== null && template.learnedOf === of ? [] : [i]));
    const quiet = members.filter((i) => !model.templates[i]?.loud);
    const inQuiet = createMatcher(words, model.templates, bank, quiet);
    const inLoud = takesNoiseOut ? createMatcher(words, model.templates, bank, members) : null;
    const rows: { inQuiet: number[][]; inLoud: number[][] } = { inQuiet: [], inLoud: [] };
    unpack(stretch).forEach((row, step) => {
      normalise(row, model.normaliser, model.parts, vector, 0);
      bank.compare(vector);
      inQuiet.slide();
      inLoud?.slide();
      if (Math.abs(step - (stretch.to - 1)) > PEAK_ROWS + AROUND_ROWS) return;
      inQuiet.score();
      inLoud?.score();
      rows.inQuiet.push(model.words.map((word, w) => ((inQuiet.scores[w] as number) - word.threshold) / word.width));
      rows.inLoud.push(
        model.words.map(({ loud }, w) =>
          inLoud && loud ? ((inLoud.scores[w] as number) - loud.threshold) / loud.width : Number.NEGATIVE_INFINITY,
        ),
      );
    });
    return rows;
  }

  function worth(inQuiet: readonly number[], inLoud: readonly number[], byLoud: boolean): number {
    const scores = byLoud ? inLoud : inQuiet;
    const peak = scores.indexOf(Math.max(...scores));
    const around = (of: readonly number[]) => of.slice(Math.max(0, peak - AROUND_ROWS), peak + AROUND_ROWS + 1);
    const best = Math.max(...around(inQuiet));
    if (!takesNoiseOut) return best;
    const loud = Math.max(...around(inLoud));
    return weighScores({ inQuiet: best, inLoud: Number.isFinite(loud) ? loud : null, mean: mean(around(scores)) });
  }

  return (stretch, of) => {
    if (kindOf(stretch) !== model.features || stretch.dims !== dims || words.length === 0) return null;
    const { inQuiet, inLoud } = marginsOf(stretch, of);
    if (inQuiet.length === 0) return null;
    const byLoud = stretch.features.endsWith(LOUD) && model.words.every(({ loud }) => loud);
    const column = (rows: readonly number[][], w: number) => rows.map((row) => row[w] as number);
    return new Map(words.map((word, w) => [word, worth(column(inQuiet, w), column(inLoud, w), byLoud)]));
  };
}

/** A stretch of a session: what it was heard as, and what it was, as far as anybody knows. */
export interface Known {
  /** The event under which it stands in the log. */
  readonly of: string;
  readonly stretch: Stretch;
  /** null: unsure. */
  readonly heard: string | null;
  /** The live ear's, 0 to 1; of an unsure one its nearest word's. */
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
    const told = before && (one.heard ?? bestOf(before));
    const worth = told ? before.get(told) : undefined;
    if (!before || !after || !told || worth === undefined) return [];
    return [{ truth: one.truth, before: one.heard, after: heardNow(one.confidence, told, before, after) }];
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

function bestOf(worths: Worths): string | null {
  return [...worths].reduce<readonly [string | null, number]>(
    (a, b) => (b[1] > a[1] ? b : a),
    [null, Number.NEGATIVE_INFINITY],
  )[0];
}

/** @param told the word that was heard, or nearly. A word that did not win then wins now only by what it gained. */
function heardNow(confidence: number, told: string, before: Worths, after: Worths): string | null {
  const base = before.get(told) as number;
  const besides = logOdds(confidence) - base;
  const fair = new Map([...after].map(([word, worth]) => [word, worth - Math.max(0, (before.get(word) ?? base) - base)]));
  const best = bestOf(fair);
  const word = best !== null && (fair.get(best) as number) > (fair.get(told) ?? Number.NEGATIVE_INFINITY) ? best : told;
  return (fair.get(word) ?? Number.NEGATIVE_INFINITY) + besides > 0 ? word : null;
}

/** A share that was rounded to a whole one says no more than that it was very sure. */
const SUREST = 20;
const logOdds = (share: number): number => Math.max(-SUREST, Math.min(SUREST, Math.log(share / (1 - share))));
