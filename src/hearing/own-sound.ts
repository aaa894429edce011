/** Knows when the app itself sounds, so that its beats and calls are neither words nor mistaken for the end of a pause. */

/** Intervals remembered; a session sounds a few times a second at most, and only the last seconds matter. */
const KEPT = 64;

export interface OwnSound {
  expect(fromS: number, toS: number): void;
  at(seconds: number): boolean;
  /** Share of a stretch during which the app was sounding. */
  share(fromS: number, toS: number): number;
  /** Does the stretch lie within one sound of the app that is long enough to be taken for a word? */
  within(fromS: number, toS: number): boolean;
}

/** A tap, a doubled tap and what the output adds are shorter than this, calls for a step are longer, s (sounds/recipes.ts: 0.29, and 0.46 and more). */
const LONGER_THAN_TAPS_S = 0.4;

export function createOwnSound(): OwnSound {
  let intervals: { fromS: number; toS: number }[] = [];
  return {
    expect(fromS, toS) {
      if (!(toS > fromS)) return;
      intervals = [...intervals.slice(1 - KEPT), { fromS, toS }];
    },
    at: (seconds) => intervals.some(({ fromS, toS }) => seconds >= fromS && seconds <= toS),
    within: (fromS, toS) => intervals.some((i) => i.toS - i.fromS > LONGER_THAN_TAPS_S && fromS >= i.fromS && toS <= i.toS),
    share(fromS, toS) {
      // In the order of their beginnings, so that what two of them cover is counted once.
      let covered = 0;
      let doneS = fromS;
      for (const i of intervals.toSorted((a, b) => a.fromS - b.fromS)) {
        const beginS = Math.max(doneS, i.fromS);
        covered += Math.max(0, Math.min(toS, i.toS) - beginS);
        doneS = Math.max(doneS, Math.min(toS, i.toS));
      }
      return toS > fromS ? covered / (toS - fromS) : 0;
    },
  };
}
