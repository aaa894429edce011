/** Estimates how long a head stays down when every mark cuts the hold short: Kaplan-Meier, its spread and its median. */
import type { Seconds, Share } from '../units.ts';
import { type Interval, Z_95 } from './interval.ts';

/** One hold. A marked hold is censored at the mark: it would have gone on for we do not know how long. */
export interface Hold {
  readonly heldForS: Seconds;
  readonly end: 'lifted' | 'marked';
}

/** The curve falls to `survival` at `atS` and stays there until the next drop. */
export interface Drop {
  readonly atS: Seconds;
  /** Holds that had lasted until just before `atS`; a mark at the same moment as a lift still counts here. */
  readonly atRisk: number;
  readonly lifts: number;
  readonly survival: Share;
  /** Greenwood's standard error (1926); null once survival is 0, where the formula has no value. */
  readonly standardError: number | null;
}

/** Drops in order of time; before the first the survival is 1. */
export interface HoldCurve {
  readonly drops: readonly Drop[];
  readonly holds: number;
  /** Beyond this the curve says nothing; null without holds. */
  readonly longestS: Seconds | null;
}

/**
 * Kaplan & Meier (1958). Input in any order.
 * @throws RangeError for a hold that is negative or not finite.
 */
export function holdCurve(holds: readonly Hold[]): HoldCurve {
  const bad = holds.find(({ heldForS }) => !(heldForS >= 0 && Number.isFinite(heldForS)));
  if (bad) throw new RangeError(`expected a hold of at least 0 s, got ${bad.heldForS}`);
  const drops: Drop[] = [];
  let survival = 1;
  let greenwood = 0;
  for (const { atS, atRisk, lifts } of riskTable(holds)) {
    survival = atRisk === lifts ? 0 : survival * (1 - lifts / atRisk);
    greenwood += lifts / (atRisk * (atRisk - lifts));
    drops.push({ atS, atRisk, lifts, survival, standardError: survival > 0 ? survival * Math.sqrt(greenwood) : null });
  }
  const longestS = holds.length === 0 ? null : holds.reduce((longest, { heldForS }) => Math.max(longest, heldForS), 0);
  return { drops, holds: holds.length, longestS };
}

/** [time of a lift, earliest first]: how many were at risk and how many lifted. */
export function riskTable(holds: readonly Hold[]): { atS: Seconds; atRisk: number; lifts: number }[] {
  const sorted = holds.toSorted((a, b) => a.heldForS - b.heldForS);
  const rows: { atS: Seconds; atRisk: number; lifts: number }[] = [];
  let first = 0;
  // One pass: a year of holds has thousands of lifts, and looking at all holds for each would take seconds.
  sorted.forEach(({ heldForS, end }, at) => {
    if (sorted[first]?.heldForS !== heldForS) first = at;
    if (end !== 'lifted') return;
    const row = rows.at(-1);
    if (row?.atS === heldForS) row.lifts += 1;
    else rows.push({ atS: heldForS, atRisk: sorted.length - first, lifts: 1 });
  });
  return rows;
}

/** Who was at risk, and who lifted, at one moment. */
export function riskAt(holds: readonly Hold[], atS: Seconds): { atRisk: number; lifts: number } {
  const atRisk = holds.filter(({ heldForS }) => heldForS >= atS).length;
  const lifts = holds.filter(({ heldForS, end }) => heldForS === atS && end === 'lifted').length;
  return { atRisk, lifts };
}

/** Share of holds that last longer than `atS`; null beyond the longest hold, unless the curve has reached 0 by then. */
export function survivalAt({ drops, longestS }: HoldCurve, atS: Seconds): Share | null {
  const survival = drops.findLast((drop) => drop.atS <= atS)?.survival ?? 1;
  return longestS === null || (atS > longestS && survival > 0) ? null : survival;
}

/** The median hold and its 95 % interval. A null end was not reached: it may lie anywhere beyond the curve. */
export interface MedianHold {
  readonly medianS: Seconds | null;
  readonly lowerS: Seconds | null;
  readonly upperS: Seconds | null;
}

/** Slack for a survival of one half that rounding left a hair above it. */
const HALF = 0.5 + 1e-12;

/**
 * Median: the first drop to one half or below. Interval: the times whose survival is not significantly different from one half,
 * by the plain statistic (S - 1/2) / s.e. (Brookmeyer & Crowley 1982, Biometrics 38:29-41).
 */
export function medianHold({ drops }: HoldCurve): MedianHold {
  const first = (reached: (drop: Drop) => boolean) => drops.find(reached)?.atS ?? null;
  const bound = (z: number) => (drop: Drop) => drop.standardError !== null && drop.survival + z * drop.standardError <= HALF;
  return {
    medianS: first(({ survival }) => survival <= HALF),
    // A fall to 0 in one go has no standard error, but one half lies certainly not above it.
    lowerS: first((drop) => bound(-Z_95)(drop) || drop.survival === 0),
    upperS: first(bound(Z_95)),
  };
}

/** The 95 % band of one drop, cut to 0..1 (plain Greenwood); null where survival is 0. */
export function dropBand({ survival, standardError }: Drop): Interval | null {
  if (standardError === null) return null;
  const half = Z_95 * standardError;
  return { lower: Math.max(0, survival - half), upper: Math.min(1, survival + half) };
}
