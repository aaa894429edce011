/** Says the agreement of two observers, every number with its n. */
import { type Comparison, type Disagreement, INTERVAL_S, type Measures, WINDOW_S } from '../../core/observe/compare.ts';
import { sayMoment } from '../../core/summary.ts';
import type { Seconds } from '../../core/units.ts';

/** The one sentence to read when only one is read. */
export function sayFinding({ all }: Comparison): string {
  if (!all) return 'Neither of you noted a word in this stretch.';
  const { agreed, onlyFirst, onlySecond } = all.window;
  const words = agreed + onlyFirst + onlySecond;
  return `${agreed} of ${words} words agree to within ${WINDOW_S} s.`;
}

export function sayOutcomes({ outcomes: { kappa, table, onlyFirst, onlySecond } }: Comparison): string {
  const alone = [
    onlyFirst && `${reps(onlyFirst)} noted in practice alone`,
    onlySecond && `${reps(onlySecond)} by the second observer alone`,
  ];
  const said = alone.filter((part) => part !== 0).join(', ');
  const rest = said ? ` Besides: ${said}.` : '';
  if (!kappa) return `No rep was noted by both.${rest}`;
  const same = table.reduce((sum, row, nth) => sum + (row[nth] ?? 0), 0);
  return `Of ${reps(kappa.n)} that both noted, ${same} ended alike: ${sayKappa(kappa.kappa)}.${rest}`;
}

function sayKappa(kappa: number | null): string {
  if (kappa === null) return 'every end was the same, so kappa has no value';
  return `kappa ${kappa.toFixed(2)}`;
}

const reps = (n: number): string => `${n} ${n === 1 ? 'rep' : 'reps'}`;

/** [name of the measure, what it says of one word]. */
export const MEASURES: readonly (readonly [string, (of: Measures) => string])[] = [
  ['noted in practice', ({ firstCount }) => String(firstCount)],
  ['noted by the second', ({ secondCount }) => String(secondCount)],
  ['total count: smaller over larger', ({ total }) => total.toFixed(2)],
  [`within ${WINDOW_S} s`, ({ window }) => `${window.agreed} of ${window.agreed + window.onlyFirst + window.onlySecond}`],
  ['exact count in an interval', ({ exactPerInterval, intervals }) => share(exactPerInterval, intervals)],
  ['both or neither in an interval', ({ intervalByInterval, intervals }) => share(intervalByInterval, intervals)],
  ['mean count per interval', ({ meanPerInterval }) => meanPerInterval.toFixed(2)],
];

/** A share of so many intervals is a whole number of them. */
const share = (part: number, of: number): string => `${Math.round(part * of)} of ${of}`;

export function sayIntervals({ all, span, byWord }: Comparison): string {
  const each = all && byWord[0] ? byWord[0].intervals : 0;
  return `From ${sayMoment(span.fromS)} to ${sayMoment(span.toS)} of the session, ${each} ${each === 1 ? 'interval' : 'intervals'} of ${INTERVAL_S} s for each word.`;
}

export function sayDifference(difference: Disagreement): string {
  switch (difference.kind) {
    case 'only-first':
      return `${difference.word} in practice, nothing by the second observer`;
    case 'only-second':
      return `${difference.word} by the second observer, nothing in practice`;
    case 'other-word':
      return `${difference.word} in practice, ${difference.second} by the second observer`;
  }
}

/** "1:05.3": finer than the session's own moments, to find a place in a film. */
export function sayPlace(atS: Seconds): string {
  const tenths = Math.floor(10 * Math.max(0, atS) + 1e-6);
  return `${sayMoment(tenths / 10)}.${tenths % 10}`;
}
