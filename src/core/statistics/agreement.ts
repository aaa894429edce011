/** Measures how well two observers of one session agree, each measure named as the trade names it (Reed & Azulay 2011, BAP). */
import type { Seconds, Share } from '../units.ts';
import { requireCount, requireFinite, requirePaired } from './counts.ts';
import { matchWithin } from './match.ts';

/** [interval, in order of time]: events that one observer counted in it. */
export type IntervalCounts = readonly number[];

const sum = (numbers: readonly number[]) => numbers.reduce((total, x) => total + x, 0);

/** Smaller over larger; two zeros agree fully. */
function ratio(a: number, b: number): Share {
  const larger = Math.max(a, b);
  return larger === 0 ? 1 : Math.min(a, b) / larger;
}

/** @throws RangeError unless both hold counts for the same intervals, at least one. */
function requireIntervals(a: IntervalCounts, b: IntervalCounts): void {
  requirePaired(a, b);
  if (a.length === 0) throw new RangeError('expected at least one interval');
  for (const count of [...a, ...b]) requireCount(count);
}

function meanOver(a: IntervalCounts, b: IntervalCounts, agree: (x: number, y: number) => number): Share {
  requireIntervals(a, b);
  return sum(a.map((x, i) => agree(x, b[i] as number))) / a.length;
}

/** Smaller total over larger: says nothing about whether the same events were seen. @throws RangeError as all interval measures. */
export function totalCount(a: IntervalCounts, b: IntervalCounts): Share {
  requireIntervals(a, b);
  return ratio(sum(a), sum(b));
}

/** Mean over intervals of smaller over larger. */
export function meanCountPerInterval(a: IntervalCounts, b: IntervalCounts): Share {
  return meanOver(a, b, ratio);
}

/** Share of intervals with the same count. */
export function exactCount(a: IntervalCounts, b: IntervalCounts): Share {
  return meanOver(a, b, (x, y) => (x === y ? 1 : 0));
}

/** Share of intervals in which both saw something or both saw nothing. */
export function intervalByInterval(a: IntervalCounts, b: IntervalCounts): Share {
  return meanOver(a, b, (x, y) => (x > 0 === y > 0 ? 1 : 0));
}

/** Events of two observers, matched one to one. */
export interface WindowAgreement {
  readonly agreed: number;
  readonly onlyFirst: number;
  readonly onlySecond: number;
  /** agreed / (agreed + onlyFirst + onlySecond); null when neither saw anything. */
  readonly share: Share | null;
}

/**
 * Time-window agreement: events within ± `windowS` of each other agree, one to one, as many as can (after Mudford et al. 2009, JABA 42:165-169).
 * @param first, second moments on one clock, s, in any order.
 * @throws RangeError for a time that is not finite or a window below 0.
 */
export function timeWindow(first: readonly Seconds[], second: readonly Seconds[], windowS: Seconds): WindowAgreement {
  requireFinite([...first, ...second, windowS]);
  if (windowS < 0) throw new RangeError(`expected a window of at least 0 s, got ${windowS}`);
  const [a, b] = [first, second].map((times) => times.toSorted((x, y) => x - y)) as [Seconds[], Seconds[]];
  const agreed = matchWithin(a, b, windowS).filter(({ first: i, second: j }) => i !== null && j !== null).length;
  const all = a.length + b.length - agreed;
  return { agreed, onlyFirst: a.length - agreed, onlySecond: b.length - agreed, share: all === 0 ? null : agreed / all };
}

/** [what the first observer said][what the second said]: number of reps; square, one label order for both. */
export type LabelTable = readonly (readonly number[])[];

/** Agreement on labels. */
export interface Kappa {
  readonly n: number;
  /** Share of reps with the same label. */
  readonly observed: Share;
  /** Share that observers with these habits would agree on by chance. */
  readonly byChance: Share;
  /** Cohen's kappa (1960); null when chance alone gives full agreement (both used one label only): then it has no value. */
  readonly kappa: number | null;
  /** Prevalence-adjusted, bias-adjusted: (k · observed - 1) / (k - 1) for k labels (Byrt, Bishop & Carlin 1993). */
  readonly pabak: number;
}

/** Cohen's kappa and PABAK. @throws RangeError unless the table is square, 2 × 2 or larger, of counts, not all 0. */
export function kappa(table: LabelTable): Kappa {
  const k = table.length;
  if (k < 2 || table.some((row) => row.length !== k)) throw new RangeError('expected a square table of at least 2 labels');
  for (const count of table.flat()) requireCount(count);
  const n = sum(table.flat());
  if (n === 0) throw new RangeError('expected at least one rep');
  const rows = table.map(sum);
  const columns = table.map((_, j) => sum(table.map((row) => row[j] as number)));
  const same = sum(table.map((row, i) => row[i] as number));
  const chancePairs = sum(rows.map((row, i) => row * (columns[i] as number)));
  return {
    n,
    observed: same / n,
    byChance: chancePairs / (n * n),
    kappa: chancePairs === n * n ? null : (n * same - chancePairs) / (n * n - chancePairs),
    pabak: ((k * same) / n - 1) / (k - 1),
  };
}
