/** Says what a comparison shows: counts first, then the difference with its range, never a bare verdict. */
import { t } from '../../core/language.ts';
import type { Comparison, Counts, Side, StepBeside } from '../../core/progress/compare.ts';
import type { ShareDifference } from '../../core/statistics/share.ts';
import { saySessions } from '../progress/counts.ts';
import type { Sheet, SheetCell } from '../progress/sheets.ts';
import { sayMedian } from '../progress/words.ts';

const ofHundred = (share: number): number => Math.round(100 * share);

export function sayBeside({ first, second, difference }: Pick<StepBeside, 'first' | 'second' | 'difference'>): string {
  const counts = t('A {a}, B {b}.', { a: sayShort(first), b: sayShort(second) });
  if (difference) return `${counts} ${sayDifference(difference)}`;
  return `${counts} ${t('Below 5 trials on one side there is nothing to hold against each other yet.')}`;
}

const sayShort = ({ kept, of }: Counts): string => t('kept {kept} of {of}', { kept, of });

/** "B keeps 20 of 100 more; such counts fit anything from 5 to 33 more." */
export function sayDifference({ difference, interval: { lower, upper } }: ShareDifference): string {
  const [d, low, high] = [ofHundred(difference), ofHundred(lower), ofHundred(upper)];
  const found = d === 0 ? t('Both keep the same') : t('B keeps {more}', { more: sayMore(d) });
  const range = { found, low: sayMore(low), high: sayMore(high) };
  const said = t('{found}; such counts fit anything from {low} to {high}.', range);
  return lower <= 0 && upper >= 0 ? `${said} ${t('So they do not tell which is better.')}` : said;
}

function sayMore(ofHundredMore: number): string {
  if (ofHundredMore === 0) return t('no more and no fewer');
  const n = Math.abs(ofHundredMore);
  return ofHundredMore > 0 ? t('{n} of 100 more', { n }) : t('{n} of 100 fewer', { n });
}

export function findDifference({ steps, shared }: Comparison): string {
  if (steps.length === 0) return t('They share no step with trials: there is nothing to hold against each other.');
  const said = sayBeside(shared);
  return steps.length === 1
    ? t('On the one step that both practised: {said}', { said })
    : t('On the {n} steps that both practised: {said}', { n: steps.length, said });
}

/** What the sentence leaves out. */
export function sayAround({ first, second, onlyFirst, onlySecond }: Comparison): readonly string[] {
  return [
    saySide('A', first),
    saySide('B', second),
    ...(onlyFirst.length ? [t('Only in A, so not weighed: {steps}.', { steps: sayList(onlyFirst) })] : []),
    ...(onlySecond.length ? [t('Only in B, so not weighed: {steps}.', { steps: sayList(onlySecond) })] : []),
  ];
}

/** Three names, and how many more. */
function sayList(names: readonly string[]): string {
  const more = names.length - 3;
  return more > 1 ? t('{names} and {n} more steps', { names: names.slice(0, 3).join(', '), n: more }) : names.join(', ');
}

function saySide(name: string, side: Side): string {
  const { sessions, all, holds, median } = side;
  const counts = { name, sessions: saySessions(sessions), kept: all.kept };
  const kept =
    all.of === 1
      ? t('{name}: {sessions}, {kept} of 1 trial kept on all steps.', counts)
      : t('{name}: {sessions}, {kept} of {n} trials kept on all steps.', { ...counts, n: all.of });
  return `${kept} ${median.medianS === null ? sayOutlast(holds) : sayHalf(holds, sayMedian(side))}`;
}

function sayOutlast(n: number): string {
  return n === 1
    ? t('More than half of its 1 hold would outlast what was asked for.')
    : t('More than half of its {n} holds would outlast what was asked for.', { n });
}

function sayHalf(n: number, median: string): string {
  return n === 1
    ? t('Half of its 1 hold would last longer than {median}.', { median })
    : t('Half of its {n} holds would last longer than {median}.', { n, median });
}

/** The rows of the picture: each shared step, and last all of them together. */
export function rowsOf({ steps, shared }: Comparison): readonly StepBeside[] {
  return steps.length > 1 ? [...steps, { ...shared, stepId: 'all', title: t('All of these') }] : steps;
}

const rounded = (x: number): number => Math.round(100 * x) / 100;

export function compareSheet(rows: readonly StepBeside[]): Sheet {
  const head = [...[t('step'), t('A kept'), t('A trials'), t('B kept'), t('B trials')], ...[t('B less A'), t('from'), t('to')]];
  return {
    head,
    rows: rows.map(({ title, first, second, difference }): readonly SheetCell[] => [
      ...[title, first.kept, first.of, second.kept, second.of],
      ...(difference ? [difference.difference, difference.interval.lower, difference.interval.upper].map(rounded) : NOTHING),
    ]),
  };
}

const NOTHING: readonly null[] = [null, null, null];
