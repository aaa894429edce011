/** Sets each word's threshold from the handler's own recordings: every take is heard as if it were new, against all the others. */
import { createBank } from './bank.ts';
import { type FeatureKind, type Normaliser, normalise, type Part } from './feature.ts';
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
  const sliders = others.map((template) => createSlider(template.steps));
  const bank = createBank(others, ground.dims, ground.parts);
  const scorer = createScorer(ground.words, others);
  const costs = new Float64Array(others.length);
  const vector = new Float32Array(ground.dims);
  const best = ground.words.map(() => Number.NEGATIVE_INFINITY);
  for (const row of rehearsal.rows) {
    normalise(row, ground.normaliser, ground.parts, vector, 0);
    bank.compare(vector);
    sliders.forEach((slider, i) => {
      slider.step(bank.distances, bank.offsets[i] as number);
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

/**
 * Where between the mean of what is wrong (0) and the mean of what is right (1) a word begins. Set on composed sessions, the average of three
 * speakers and fifteen choices of words, between missed words and some four false accepts an hour of dense talk (see tests/bench/ear.md).
 */
const ACCEPT_AT: Readonly<Record<FeatureKind, number>> = { fused: 0.52, cepstra: 0.6 };
/** Width of doubt on the same scale. */
const DOUBT = 0.06;
/** Distance of right from wrong when a handler has taught one word and no talk, so that nothing wrong is known. */
const USUAL_DISTANCE = 1;

/** Scores are placed between this handler's own wrong and right ones, word by word: fixed thresholds fail across speakers. */
export function calibrate(rehearsed: readonly Rehearsed[], words: readonly string[], features: FeatureKind): TaughtWord[] {
  const ownMeans = words.map((word, w) => rehearsed.filter((r) => r.word === word).map((r) => r.best[w] as number));
  return words.map((word, w) => {
    const right = mean(ownMeans[w] as number[]);
    const wrong = rehearsed.filter((r) => r.word !== word).map((r) => r.best[w] as number);
    const base = wrong.length > 0 ? Math.min(mean(wrong), right - 0.2) : right - USUAL_DISTANCE;
    return { word, threshold: base + ACCEPT_AT[features] * (right - base), width: DOUBT * (right - base) };
  });
}
