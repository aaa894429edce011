/** Says the agreement of two observers, every number with its n. */
import { fixed, t } from '../../core/language.ts';
import { type Comparison, type Disagreement, INTERVAL_S, type Measures, WINDOW_S } from '../../core/observe/compare.ts';
import { sayMoment } from '../../core/summary.ts';
import type { Seconds } from '../../core/units.ts';
import { wordName } from '../parts/word-names.ts';

/** The one sentence to read when only one is read. */
export function sayFinding({ all }: Comparison): string {
  if (!all) return t('Neither of you noted a word in this stretch.');
  const { agreed, onlyFirst, onlySecond } = all.window;
  const words = agreed + onlyFirst + onlySecond;
  return t('{agreed} of {of} words agree to within {s} s.', { agreed, of: words, s: WINDOW_S });
}

export function sayOutcomes({ outcomes: { kappa, table, onlyFirst, onlySecond } }: Comparison): string {
  const alone = [
    onlyFirst && t('{reps} noted in practice alone', { reps: reps(onlyFirst) }),
    onlySecond && t('{reps} by the second observer alone', { reps: reps(onlySecond) }),
  ];
  const said = alone.filter((part) => part !== 0).join(', ');
  const rest = said && t('Besides: {said}.', { said });
  const same = table.reduce((sum, row, nth) => sum + (row[nth] ?? 0), 0);
  return [kappa ? sayBoth(kappa, same) : t('No rep was noted by both.'), rest].filter(Boolean).join(' ');
}

function sayBoth({ n, kappa }: { readonly n: number; readonly kappa: number | null }, same: number): string {
  const said = { same, kappa: sayKappa(kappa) };
  return n === 1
    ? t('Of 1 rep that both noted, {same} ended alike: {kappa}.', said)
    : t('Of {n} reps that both noted, {same} ended alike: {kappa}.', { n, ...said });
}

function sayKappa(kappa: number | null): string {
  if (kappa === null) return t('every end was the same, so kappa has no value');
  return t('kappa {value}', { value: fixed(kappa, 2) });
}

const reps = (n: number): string => (n === 1 ? t('1 rep') : t('{n} reps', { n }));

/** [name of the measure, what it says of one word]. */
export const measures = (): readonly (readonly [string, (of: Measures) => string])[] => [
  [t('noted in practice'), ({ firstCount }) => String(firstCount)],
  [t('noted by the second'), ({ secondCount }) => String(secondCount)],
  [t('total count: smaller over larger'), ({ total }) => fixed(total, 2)],
  [
    t('within {s} s', { s: WINDOW_S }),
    ({ window }) => ofAll(window.agreed, window.agreed + window.onlyFirst + window.onlySecond),
  ],
  [t('exact count in an interval'), ({ exactPerInterval, intervals }) => share(exactPerInterval, intervals)],
  [t('both or neither in an interval'), ({ intervalByInterval, intervals }) => share(intervalByInterval, intervals)],
  [t('mean count per interval'), ({ meanPerInterval }) => fixed(meanPerInterval, 2)],
];

const ofAll = (n: number, of: number): string => t('{n} of {of}', { n, of });

/** A share of so many intervals is a whole number of them. */
const share = (part: number, of: number): string => ofAll(Math.round(part * of), of);

export function sayIntervals({ all, span, byWord }: Comparison): string {
  const each = all && byWord[0] ? byWord[0].intervals : 0;
  const said = { from: sayMoment(span.fromS), to: sayMoment(span.toS), s: INTERVAL_S };
  return each === 1
    ? t('From {from} to {to} of the session, 1 interval of {s} s for each word.', said)
    : t('From {from} to {to} of the session, {n} intervals of {s} s for each word.', { n: each, ...said });
}

export function sayDifference(difference: Disagreement): string {
  const word = wordName(difference.word);
  switch (difference.kind) {
    case 'only-first':
      return t('{word} in practice, nothing by the second observer', { word });
    case 'only-second':
      return t('{word} by the second observer, nothing in practice', { word });
    case 'other-word':
      return t('{word} in practice, {other} by the second observer', { word, other: wordName(difference.second) });
  }
}

/** "1:05.3": finer than the session's own moments, to find a place in a film. */
export function sayPlace(atS: Seconds): string {
  const tenths = Math.floor(10 * Math.max(0, atS) + 1e-6);
  return `${sayMoment(tenths / 10)}.${tenths % 10}`;
}
