/** Slides some of a bank's templates along what the bank compared last, and scores the words by them alone. */
import type { Bank } from './bank.ts';
import { createScorer, type Owner } from './score.ts';
import { createSlider, type Template } from './slide.ts';

export interface Matcher {
  readonly scores: Float64Array;
  /** After each comparison of the bank. */
  slide(): void;
  /** Fills in the scores as they stand after the last slide. */
  score(): void;
}

/** @param chosen which of the templates, as the bank numbers them. */
export function createMatcher(
  words: readonly string[],
  templates: readonly (Template & Owner)[],
  bank: Bank,
  chosen: readonly number[],
): Matcher {
  const members = chosen.map((i) => templates[i] as Template & Owner);
  const offsets = chosen.map((i) => bank.offsets[i] as number);
  const sliders = members.map(({ steps }) => createSlider(steps));
  const scorer = createScorer(words, members);
  const costs = new Float64Array(members.length);
  return {
    scores: scorer.scores,
    slide() {
      sliders.forEach((slider, k) => {
        slider.step(bank.distances, offsets[k] as number);
        costs[k] = slider.cost;
      });
    },
    score: () => scorer.score(costs),
  };
}
