/** Hears the taught clicks in a stream, and sees to it that no click is taken for a spoken word as well. */
import { type Click, type ClickWord, createClickFinder, matchClick, UNSURE_FACTOR } from './click.ts';
import type { Hearing } from './decide.ts';

export interface ClickEar {
  /** @param samples 16 kHz. */
  push(samples: Float32Array): readonly Hearing[];
  /** Clicks and spoken words of the same moment: the click stands. */
  join(clicked: readonly Hearing[], spoken: readonly Hearing[]): readonly Hearing[];
  expectOwnSound(fromS: number, toS: number): void;
}

/** Under one of the app's own sounds a click must be nearer to the taught ones: in thresholds. */
const OVER_OWN_SOUND = 0.7;
/** A spoken word that begins this close to a click is the click, s. */
const SAME_S = 0.12;
const REMEMBERED_S = 3;
/** How fast certainty falls around the threshold, in thresholds. */
const WIDTH = 0.12;

const certainty = (ratio: number): number => 1 / (1 + Math.exp((ratio - 1) / WIDTH));
const overlaps = (click: Click, fromS: number, toS: number): boolean => click.atS < toS && click.endedAtS > fromS;

export function createClickEar(words: readonly ClickWord[]): ClickEar {
  if (words.length === 0) return { push: () => [], join: (_, spoken) => spoken, expectOwnSound: () => {} };
  const finder = createClickFinder();
  let own: { fromS: number; toS: number }[] = [];
  let latest: Hearing[] = [];

  function heard(click: Click): Hearing[] {
    const ranked = matchClick(click, words);
    const [first] = ranked;
    if (!first) return [];
    const limit = own.some(({ fromS, toS }) => overlaps(click, fromS, toS)) ? OVER_OWN_SOUND : 1;
    // The caller fills in the moment of the decision.
    const when = { startedAtS: click.atS, endedAtS: click.endedAtS, decidedAtS: click.endedAtS };
    if (first.ratio <= limit) return [{ kind: 'word', word: first.word, confidence: certainty(first.ratio), ...when }];
    if (first.ratio > UNSURE_FACTOR * limit) return [];
    const nearest = ranked.slice(0, 2).map(({ word, ratio }) => ({ word, confidence: certainty(ratio) }));
    return [{ kind: 'unsure', nearest, ...when }];
  }

  return {
    push: (samples) => finder.push(samples).flatMap(heard),
    join(clicked, spoken) {
      if (clicked.length + spoken.length === 0) return spoken;
      latest = [...latest, ...clicked.filter(({ kind }) => kind === 'word')].slice(-4);
      const free = spoken.filter((word) => !latest.some((click) => Math.abs(click.startedAtS - word.startedAtS) < SAME_S));
      return [...clicked, ...free].sort((a, b) => a.startedAtS - b.startedAtS);
    },
    expectOwnSound(fromS, toS) {
      own = [...own.filter((each) => each.toS > fromS - REMEMBERED_S), { fromS, toS }];
    },
  };
}
