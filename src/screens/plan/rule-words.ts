/** Says in plain sentences what the figures of a rule show. Every number comes with its n. */
import type { SessionRule } from '../../core/rule.ts';
import type { Share } from '../../core/units.ts';
import { LADDER, type OwnTrials, ownInterval, type RuleFigures, type RuleRow, type Span } from './rule-figures.ts';

/** A chance as the words of the screen: "29 of 100". */
export const sayChance = (chance: Share): string => `${Math.round(100 * chance)} of 100`;

export const SPAN_WORDS: Readonly<Record<Span, string>> = {
  all: 'before it goes back',
  '10': 'within 10 trials',
  '20': 'within 20 trials',
};

/** At 7 of 10 this share of raises is too many to be patient. */
export const TOO_MANY: Share = 0.5;

const rowAt = ({ handling }: RuleFigures, p: Share): RuleRow | undefined => handling.rows.find((row) => row.p === p);

/** One sentence of finding: what the curve shows, and whether that is too fast. */
export function sayFinding(rule: SessionRule, figures: RuleFigures): string {
  const at = (p: Share) => rowAt(figures, p)?.raised.all ?? 0;
  const what = `A dog that truly keeps 7 of 10 is raised in ${sayChance(at(0.7))} visits before it goes back; one that keeps 9 of 10 in ${sayChance(at(0.9))}.`;
  if (at(0.7) >= TOO_MANY) return `Too fast: ${what.replace('A dog', 'a dog')}`;
  return rule.kind === 'steady' ? `Patient: ${what.replace('A dog', 'a dog')}` : what;
}

/** How long a visit takes, for a dog that is ready and for one that is not. */
export function sayTrials(figures: RuleFigures): string {
  const [ready, unready] = [rowAt(figures, 0.9), rowAt(figures, 0.7)];
  if (!ready || !unready) return '';
  return `At 9 of 10 the raise comes after ${mean(ready.trialsToRaise)} trials on average, within 10 trials in ${sayChance(ready.raised['10'])} visits and within 20 in ${sayChance(ready.raised['20'])}. At 7 of 10 the return comes after ${mean(unready.trialsToReturn)}.`;
}

/** "–": no visit ends so. */
export const mean = (trials: number | null): string => (trials === null ? '–' : trials.toFixed(1));

/** Where the rule settles when the dog learns nothing: what it would hold a dog at. */
export function sayLadder({ keptInLongRun, timeByStep }: RuleFigures): string {
  const most = timeByStep.indexOf(Math.max(...timeByStep));
  return `A dog that never learned anything more would keep ${sayChance(keptInLongRun)} trials in the long run on these ${LADDER.length} steps, and spend most time, ${sayChance(timeByStep[most] ?? 0)} trials, where it keeps ${sayChance(LADDER[most] ?? 0)}.`;
}

/** What is known of the dog on this step, with its n. */
export function sayOwn(own: OwnTrials): string {
  const counts = `${own.kept} of ${own.of} kept on the step that comes next`;
  const interval = ownInterval(own);
  if (!interval) return own.of === 0 ? 'No trial is counted on the step that comes next.' : `${counts}: too few to say more.`;
  return `${counts}: in the long run that can mean anything from ${ofTen(interval.lower)} to ${ofTen(interval.upper)} of 10.`;
}

const ofTen = (share: Share): string => (10 * share).toFixed(1);
