/** Says what a comparison shows: counts first, then the difference with its range, never a bare verdict. */
import type { Comparison, Counts, Side, StepBeside } from '../../core/progress/compare.ts';
import type { ShareDifference } from '../../core/statistics/share.ts';
import type { Sheet, SheetCell } from '../progress/sheets.ts';
import { count, sayMedian } from '../progress/words.ts';

const ofHundred = (share: number): number => Math.round(100 * share);

export function sayBeside({ first, second, difference }: Pick<StepBeside, 'first' | 'second' | 'difference'>): string {
  const counts = `A ${sayShort(first)}, B ${sayShort(second)}.`;
  if (difference) return `${counts} ${sayDifference(difference)}`;
  return `${counts} Below 5 trials on one side there is nothing to hold against each other yet.`;
}

const sayShort = ({ kept, of }: Counts): string => `kept ${kept} of ${of}`;

/** "B keeps 20 of 100 more; such counts fit anything from 5 to 33 more." */
export function sayDifference({ difference, interval: { lower, upper } }: ShareDifference): string {
  const [d, low, high] = [ofHundred(difference), ofHundred(lower), ofHundred(upper)];
  const found = d === 0 ? 'Both keep the same' : `B keeps ${sayMore(d)}`;
  const range = `such counts fit anything from ${sayMore(low)} to ${sayMore(high)}`;
  const verdict = lower <= 0 && upper >= 0 ? ' So they do not tell which is better.' : '';
  return `${found}; ${range}.${verdict}`;
}

function sayMore(ofHundredMore: number): string {
  if (ofHundredMore === 0) return 'no more and no fewer';
  return `${Math.abs(ofHundredMore)} of 100 ${ofHundredMore > 0 ? 'more' : 'fewer'}`;
}

export function findDifference({ steps, shared }: Comparison): string {
  if (steps.length === 0) return 'They share no step with trials: there is nothing to hold against each other.';
  return `On ${steps.length === 1 ? 'the one step' : `the ${steps.length} steps`} that both practised: ${sayBeside(shared)}`;
}

/** What the sentence leaves out. */
export function sayAround({ first, second, onlyFirst, onlySecond }: Comparison): readonly string[] {
  return [
    saySide('A', first),
    saySide('B', second),
    ...(onlyFirst.length ? [`Only in A, so not weighed: ${sayList(onlyFirst)}.`] : []),
    ...(onlySecond.length ? [`Only in B, so not weighed: ${sayList(onlySecond)}.`] : []),
  ];
}

/** Three names, and how many more. */
function sayList(names: readonly string[]): string {
  const more = names.length - 3;
  return more > 1 ? `${names.slice(0, 3).join(', ')} and ${more} more steps` : names.join(', ');
}

function saySide(name: string, side: Side): string {
  const { sessions, all, holds, median } = side;
  const kept = `${name}: ${count(sessions, 'session')}, ${all.kept} of ${count(all.of, 'trial')} kept on all steps`;
  if (median.medianS === null) return `${kept}. More than half of its ${count(holds, 'hold')} would outlast what was asked for.`;
  return `${kept}. Half of its ${count(holds, 'hold')} would last longer than ${sayMedian(side)}.`;
}

/** The rows of the picture: each shared step, and last all of them together. */
export function rowsOf({ steps, shared }: Comparison): readonly StepBeside[] {
  return steps.length > 1 ? [...steps, { ...shared, stepId: 'all', title: 'All of these' }] : steps;
}

const rounded = (x: number): number => Math.round(100 * x) / 100;

export function compareSheet(rows: readonly StepBeside[]): Sheet {
  const head = ['step', 'A kept', 'A trials', 'B kept', 'B trials', 'B less A', 'from', 'to'];
  return {
    head,
    rows: rows.map(({ title, first, second, difference }): readonly SheetCell[] => [
      ...[title, first.kept, first.of, second.kept, second.of],
      ...(difference ? [difference.difference, difference.interval.lower, difference.interval.upper].map(rounded) : NOTHING),
    ]),
  };
}

const NOTHING: readonly null[] = [null, null, null];
