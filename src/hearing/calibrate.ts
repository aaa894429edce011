/** Sets each word's threshold from the handler's own recordings: every take is heard as if it were new, against all the others. */
import { type Normaliser, normalise, type Part } from './feature.ts';
import type { OwnedTemplate, TaughtWord } from './model.ts';
import { createScorer, type Owner } from './score.ts';
import { createSlider } from './slide.ts';

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

export function rehearse(rehearsal: Rehearsal, ground: Ground): Rehearsed {
  const others = ground.templates.filter((t) => t.word !== rehearsal.word || t.take !== rehearsal.take);
  const sliders = others.map((template) => createSlider(template, ground.dims, ground.parts));
  const scorer = createScorer(ground.words, others);
  const costs = new Float64Array(others.length);
  const vector = new Float32Array(ground.dims);
  const best = ground.words.map(() => Number.NEGATIVE_INFINITY);
  for (const row of rehearsal.rows) {
    normalise(row, ground.normaliser, ground.parts, vector, 0);
    sliders.forEach((slider, i) => {
      slider.step(vector);
      costs[i] = slider.cost;
    });
    scorer.score(costs);
    scorer.scores.forEach((score, w) => {
      best[w] = Math.max(best[w] as number, score);
    });
  }
  return { word: rehearsal.word, take: rehearsal.take, best };
}

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

function spread(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / Math.max(1, values.length - 1));
}

export function calibrate(rehearsed: readonly Rehearsed[], words: readonly string[]): TaughtWord[] {
  const ownOf = (word: string, w: number): number[] => rehearsed.filter((r) => r.word === word).map((r) => r.best[w] as number);
  const deviations = words.flatMap((word, w) => {
    const own = ownOf(word, w);
    return own.map((score) => score - mean(own));
  });
  const pooled = Math.max(0.02, spread(deviations));
  return words.map((word, w) => {
    const own = mean(ownOf(word, w));
    const wrong = rehearsed.filter((r) => r.word !== word).map((r) => r.best[w] as number);
    const worst = wrong.length > 0 ? Math.max(...wrong) : own - 0.4;
    return { word, threshold: worst + 0.25 * (own - worst), width: pooled / 2 };
  });
}
