/** Says in plain sentences what the figures of a rule show. Every number comes with its n. */
import { fixed, type PlainMessage, t } from '../../core/language.ts';
import type { SessionRule } from '../../core/rule.ts';
import type { Share } from '../../core/units.ts';
import { LADDER, type OwnTrials, ownInterval, type RuleFigures, type RuleRow, type Span } from './rule-figures.ts';

/** A chance as the words of the screen: "29 of 100". */
export const sayChance = (chance: Share): string => t('{n} of 100', { n: Math.round(100 * chance) });

const SPANS = {
  all: 'before it goes back',
  '10': 'within 10 trials',
  '20': 'within 20 trials',
} as const satisfies Record<Span, PlainMessage>;

export const spanWords = (span: Span): string => t(SPANS[span]);

/** At 7 of 10 this share of raises is too many to be patient. */
export const TOO_MANY: Share = 0.5;

const rowAt = ({ handling }: RuleFigures, p: Share): RuleRow | undefined => handling.rows.find((row) => row.p === p);

/** One sentence of finding: what the curve shows, and whether that is too fast. */
export function sayFinding(rule: SessionRule, figures: RuleFigures): string {
  const at = (p: Share) => rowAt(figures, p)?.raised.all ?? 0;
  const chances = { at7: sayChance(at(0.7)), at9: sayChance(at(0.9)) };
  if (at(0.7) >= TOO_MANY) return t(FINDINGS.fast, chances);
  return t(rule.kind === 'steady' ? FINDINGS.patient : FINDINGS.plain, chances);
}

const FINDINGS = {
  fast: 'Too fast: a dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.',
  patient:
    'Patient: a dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.',
  plain: 'A dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.',
} as const;

/** How long a visit takes, for a dog that is ready and for one that is not. */
export function sayTrials(figures: RuleFigures): string {
  const [ready, unready] = [rowAt(figures, 0.9), rowAt(figures, 0.7)];
  if (!ready || !unready) return '';
  return t(
    'At 9 of 10 the raise comes after {raise} trials on average, within 10 trials in {in10} visits and within 20 in {in20}. At 7 of 10 the return comes after {back}.',
    {
      ...{ raise: mean(ready.trialsToRaise), in10: sayChance(ready.raised['10']) },
      ...{ in20: sayChance(ready.raised['20']), back: mean(unready.trialsToReturn) },
    },
  );
}

/** "–": no visit ends so. */
export const mean = (trials: number | null): string => (trials === null ? '–' : fixed(trials, 1));

/** Where the rule settles when the dog learns nothing: what it would hold a dog at. */
export function sayLadder({ keptInLongRun, timeByStep }: RuleFigures): string {
  const most = timeByStep.indexOf(Math.max(...timeByStep));
  return t(
    'A dog that never learned anything more would keep {kept} trials in the long run on these {n} steps, and spend most time, {time} trials, where it keeps {there}.',
    {
      ...{ kept: sayChance(keptInLongRun), n: LADDER.length },
      ...{ time: sayChance(timeByStep[most] ?? 0), there: sayChance(LADDER[most] ?? 0) },
    },
  );
}

/** What is known of the dog on this step, with its n. */
export function sayOwn(own: OwnTrials): string {
  const { kept, of } = own;
  const interval = ownInterval(own);
  if (of === 0) return t('No rep on the step that comes next counts yet, so nothing is known of it.');
  if (!interval) return t('{kept} of {of} kept on the step that comes next: too few to say more.', { kept, of });
  return t(
    '{kept} of {of} kept on the step that comes next: in the long run that can mean anything from {lower} to {upper} of 10.',
    { kept, of, lower: ofTen(interval.lower), upper: ofTen(interval.upper) },
  );
}

const ofTen = (share: Share): string => fixed(10 * share, 1);
