/** Turns distances to all templates into one score a word: near to its takes, far from everything else that the handler says. */

/** Which take a template belongs to; `word` is undefined for ordinary talk. */
export interface Owner {
  readonly word: string | undefined;
  readonly take: number;
}

/** How many of the nearest takes count most; of the cohort as well (recipe of the ear). */
const NEAREST_TAKES = 2;
/**
 * Share of the mean over all takes of a word beside that of the nearest: what is no word may come near to two takes, a word is near to all
 * (tried from 0 to 1 on composed sessions; flat from .7, see tests/bench/ear.md).
 */
const ALL_TAKES_SHARE = 0.7;
const NEAREST_COHORT = 3;
/** Weight of the cohort's distance against the word's own (tried from .3 to .8 on composed sessions; flat between .3 and .5). */
const COHORT_WEIGHT = 0.4;

export interface Scorer {
  /** Score of each word, in the order of `words`; distances come in the order of the owners. */
  readonly scores: Float64Array;
  score(costs: Float64Array): void;
}

/** Mean of the `count` smallest among `values[0...length)`; partial selection, nothing allocated. */
function meanOfSmallest(values: Float64Array, length: number, count: number): number {
  const n = Math.min(count, length);
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let least = i;
    for (let j = i + 1; j < length; j++) if ((values[j] as number) < (values[least] as number)) least = j;
    const value = values[least] as number;
    values[least] = values[i] as number;
    values[i] = value;
    sum += value;
  }
  return n === 0 ? 0 : sum / n;
}

/** Templates of one take (the same recording in several noises) count once, by the best of them. */
function groupByTake(owners: readonly Owner[]): { word: string | undefined; templates: number[] }[] {
  const groups = new Map<string, { word: string | undefined; templates: number[] }>();
  owners.forEach((owner, template) => {
    const key = `${owner.word === undefined ? '-' : `+${owner.word}`}/${owner.take}`;
    const group = groups.get(key) ?? { word: owner.word, templates: [] };
    group.templates.push(template);
    groups.set(key, group);
  });
  return [...groups.values()];
}

export function createScorer(words: readonly string[], owners: readonly Owner[]): Scorer {
  const groups = groupByTake(owners);
  const best = new Float64Array(groups.length);
  const picked = new Float64Array(groups.length);
  const scores = new Float64Array(words.length);

  function pick(wanted: (word: string | undefined) => boolean): number {
    let count = 0;
    for (let g = 0; g < groups.length; g++)
      if (wanted((groups[g] as { word: string | undefined }).word)) picked[count++] = best[g] as number;
    return count;
  }

  return {
    scores,
    score(costs) {
      for (let g = 0; g < groups.length; g++) {
        let least = Infinity;
        for (const template of (groups[g] as { templates: number[] }).templates)
          least = Math.min(least, costs[template] as number);
        best[g] = least;
      }
      words.forEach((word, w) => {
        const takes = pick((owner) => owner === word);
        const nearest = meanOfSmallest(picked, takes, NEAREST_TAKES);
        const own = nearest + ALL_TAKES_SHARE * (meanOfSmallest(picked, takes, takes) - nearest);
        const others = meanOfSmallest(
          picked,
          pick((owner) => owner !== word),
          NEAREST_COHORT,
        );
        scores[w] = COHORT_WEIGHT * others - own;
      });
    },
  };
}
