/** Holds the criterion rules as values: which machine judges a step, the sentence that tells a trainer, and the evidence that goes with each. */
import { chainOf } from './chain/automaton.ts';
import type { Machine } from './chain/machine.ts';
import { blocksKOfM, cautious, STEADY_BACK, sequential, slidingKOfM, steadyDuration, steadyHandling } from './chain/rules.ts';
import { type Message, t } from './language.ts';
import type { Step } from './plan.ts';
import type { Hold } from './statistics/hold-time.ts';
import { type PercentileCriterion, percentileCriterion } from './statistics/percentile.ts';
import type { Share } from './units.ts';

/** So many kept of so many: judged at the end of each block, or wherever the window lies. */
export interface KOfMRule {
  readonly kind: 'k-of-m';
  readonly kept: number;
  readonly of: number;
  readonly window: 'blocks' | 'sliding';
}

/** Shapes hold times that nobody marks: the next hold is to beat the k-th lowest of the last `last`. */
export interface PercentileRule {
  readonly kind: 'percentile';
  readonly last: number;
  /** Share of holds that is paid as long as nothing changes. */
  readonly share: Share;
}

/** The usual rule. It halves a rise at the first return from a step; `ahead`: at every return, and ahead of need. */
export interface SteadyRule {
  readonly kind: 'steady';
  readonly halving?: 'ahead';
}

/** A rule that can judge a session: it answers to trials. */
export type SessionRule = SteadyRule | { readonly kind: 'cautious' } | { readonly kind: 'sequential' } | KOfMRule;

export type Rule = SessionRule | PercentileRule;

/** Sessions from before there was a choice say 'steady' in one word. */
export type StoredRule = 'steady' | SessionRule;

export const STEADY: SteadyRule = { kind: 'steady' };
/** Steady, halving more: better on the whole, but not on every measure for every kind of dog, so it is offered and not the default. */
export const STEADY_AHEAD: SteadyRule = { kind: 'steady', halving: 'ahead' };

/** The rule that a plan or a session names; none named: steady. */
export function ruleOf(stored: StoredRule | undefined): SessionRule {
  return stored === undefined || stored === 'steady' ? STEADY : stored;
}

/** The usual numbers of the percentile schedule: m 10, w .5, so that k = 5.5 and the lower integer 5 (CRITERION.md). */
export const USUAL_PERCENTILE: PercentileRule = { kind: 'percentile', last: 10, share: 0.5 };

/** What the plan screen lets a trainer choose from; four of five is there so that one sees how fast it is. */
export const CHOICES: readonly SessionRule[] = [
  STEADY,
  STEADY_AHEAD,
  { kind: 'cautious' },
  { kind: 'sequential' },
  { kind: 'k-of-m', kept: 9, of: 10, window: 'blocks' },
  { kind: 'k-of-m', kept: 5, of: 5, window: 'sliding' },
  { kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' },
];

export function sameRule(a: Rule, b: Rule): boolean {
  return ruleKey(a) === ruleKey(b);
}

/** A short name for lists and for telling rules apart: `k-of-m 9/10 blocks`. */
export function ruleKey(rule: Rule): string {
  if (rule.kind === 'k-of-m') return `k-of-m ${rule.kept}/${rule.of} ${rule.window}`;
  if (rule.kind === 'percentile') return `percentile ${rule.last} ${rule.share}`;
  return halvesAhead(rule) ? 'steady ahead' : rule.kind;
}

/** Does it halve at every return and ahead of need, instead of at the first return from a step? */
export function halvesAhead(rule: Rule): boolean {
  return rule.kind === 'steady' && rule.halving === 'ahead';
}

/**
 * The machine that judges trials on a step of this kind. Only steady tells them apart: durations get a short cut.
 * @throws RangeError for a k-of-m rule that `refuseKOfM` refuses.
 */
export function machineOf(rule: SessionRule, kind: Step['kind']): Machine {
  switch (rule.kind) {
    case 'steady':
      return kind === 'duration' ? steadyDuration : steadyHandling;
    case 'cautious':
      return cautious;
    case 'sequential':
      return sequential;
    case 'k-of-m':
      return kOfM(rule);
  }
}

function kOfM({ kept, of, window }: KOfMRule): Machine {
  return window === 'sliding' ? slidingKOfM(kept, of, STEADY_BACK) : blocksKOfM(kept, of, { patterns: STEADY_BACK });
}

/** Fewest trials after which the rule can raise: counted on the machine, so that it cannot drift from it. */
export function fewestToRaise(rule: SessionRule, kind: Step['kind']): number {
  const { kept } = chainOf(machineOf(rule, kind));
  let trials = 0;
  for (let state = 0; state >= 0; trials++) state = kept[state] as number;
  return trials;
}

/** What a percentile rule makes of holds; it answers only for holds that nobody marked. */
export type NextHold = PercentileCriterion | { readonly kind: 'marked'; readonly marked: number; readonly of: number };

/**
 * The hold to beat next, latest hold last. Refused when one of the holds it would rank was marked: the marker ended that hold,
 * so its length is what the handler chose and not what the dog would have given.
 */
export function nextHold({ last, share }: PercentileRule, holds: readonly Hold[]): NextHold {
  const ranked = holds.slice(-last);
  const marked = ranked.filter(({ end }) => end === 'marked').length;
  if (marked > 0) return { kind: 'marked', marked, of: ranked.length };
  return percentileCriterion(
    ranked.map(({ heldForS }) => heldForS),
    last,
    share,
  );
}

/** One row of a comparison on invented dogs, which rank rules and say nothing about real ones. */
export interface Evidence {
  /** `own`: this engine (tests/bench/criterion.md). `confirmed`: CRITERION.md. `first`: its first comparison, where a step was re-earned by three in a row. */
  readonly from: 'own' | 'confirmed' | 'first';
  /** How many dogs: for `first` at least so many, since it names 1,000 to 2,000 a row. */
  readonly dogs: number;
  readonly reachTop: Share;
  readonly reps: number;
  readonly lifts: number;
  readonly kept: Share;
  /** Share of raises that came while the true success was below .8. */
  readonly earlyRaises: Share;
  /** Success on the weakest step in the end; null where the comparison did not give it. */
  readonly weakestStep: Share | null;
}

const DOGS: Readonly<Record<Evidence['from'], number>> = { own: 2000, confirmed: 4000, first: 1000 };

type Row = readonly [reachTop: Share, reps: number, lifts: number, kept: Share, earlyRaises: Share, weakestStep: Share | null];

const row = (from: Evidence['from'], [reachTop, reps, lifts, kept, earlyRaises, weakestStep]: Row): Evidence => ({
  ...{ from, dogs: DOGS[from], reachTop, reps, lifts, kept, earlyRaises, weakestStep },
});

const EVIDENCE: Readonly<Record<string, readonly Evidence[]>> = {
  steady: [row('own', [0.891, 558, 85.6, 0.836, 0.043, 0.782]), row('confirmed', [0.973, 548, 78.6, 0.876, 0.023, 0.88])],
  'steady ahead': [row('own', [0.913, 549, 80.1, 0.844, 0.036, 0.801])],
  cautious: [row('own', [0.913, 620, 74.4, 0.872, 0.014, 0.821]), row('confirmed', [0.964, 641, 75, 0.899, 0.008, 0.89])],
  sequential: [row('own', [0.913, 568, 75.1, 0.859, 0.02, 0.811]), row('first', [0.941, 578, 82, 0.872, 0.018, null])],
  'k-of-m 9/10 blocks': [
    row('own', [0.911, 616, 74.9, 0.87, 0.012, 0.823]),
    row('confirmed', [0.969, 613, 75.7, 0.893, 0.008, 0.89]),
  ],
  'k-of-m 5/5 sliding': [
    row('own', [0.861, 546, 99, 0.806, 0.09, 0.723]),
    row('confirmed', [0.958, 539, 102, 0.835, 0.071, 0.81]),
  ],
  'k-of-m 4/5 sliding': [
    row('own', [0.797, 610, 130.7, 0.77, 0.223, 0.622]),
    row('confirmed', [0.883, 625, 162, 0.78, 0.219, 0.68]),
  ],
};

/** The rows of evidence for a rule, our own first; none where nobody has compared it. */
export function evidenceFor(rule: Rule): readonly Evidence[] {
  return EVIDENCE[ruleKey(rule)] ?? [];
}

/** One sentence that can be spoken. */
export function sayRule(rule: Rule): string {
  switch (rule.kind) {
    case 'steady':
      return halvesAhead(rule)
        ? t(
            'Nine of ten held: next step; two lifts running, or three in five: back, every time by half a rise; and where two of three steps needed it, the next is halved ahead.',
          )
        : t('Nine of ten held: next step; two lifts running, or three in five: back, and the first time the rise is halved.');
    case 'cautious':
      return t('Nine of ten held: next step; two lifts in four: back, and the first time the rise is halved.');
    case 'sequential':
      return t(
        'Kept reps add up and lifts weigh four times as much: next step when the sum is sure, back when it is sure of the opposite.',
      );
    case 'percentile':
      return t("The next hold is to beat the middle of your dog's last {n} holds.", { n: rule.last });
    case 'k-of-m':
      return sayKOfM(rule);
  }
}

function sayKOfM({ kept, of, window }: KOfMRule): string {
  return window === 'blocks'
    ? t(
        '{kept} of a block of {of} held: next step; two lifts running, or three in five: back, and the first time the rise is halved.',
        { kept, of },
      )
    : t(
        '{kept} of the last {of} held: next step; two lifts running, or three in five: back, and the first time the rise is halved.',
        { kept, of },
      );
}

/** One paragraph with its counts: what raises, what returns, and what it is good for. */
export function explainRule(rule: Rule): string {
  switch (rule.kind) {
    case 'steady':
      return t(
        'It raises when at most 1 of the last 10 trials on the step was a lift and 9 were kept, so after 9 straight at the earliest. Holding still alone may also rise when the first 5 of 5 trials on a step are kept; handling gets no such short cut. It goes back on 2 lifts running or 3 in the last 5. {halving} Every step is earned again in full. Nine of ten does not promise nine of ten for ever: how sure your dog is, is counted over all trials on the step.',
        { halving: explainHalving(rule) },
      );
    case 'cautious':
      return t(
        'It raises as steady does, on 9 kept of the last 10, but with no short cut for holding still: 9 trials at the least on every step. It goes back on 2 lifts in the last 4. It takes more reps and asks for fewer lifts: for a dog with a history, or a place that was sore.',
      );
    case 'sequential':
      return t(
        'A sequential test of 7 in 10 against 9 in 10. Each kept trial adds 8, each lift takes 35 away; at 45 it raises, at -45 it goes back. So 6 of 6 raise, 1 lift asks for 4 or 5 kept to make up for it, and 2 lifts at the start return.',
      );
    case 'percentile':
      return t(
        'It ranks the last {n} holds and asks for one longer than the middle, so that about half of all holds are paid while nothing changes. It is not offered for marked holds: the marker ends a hold, so its length is what you chose and not what your dog would have given. Use it only where you let your dog end every hold.',
        { n: rule.last },
      );
    case 'k-of-m':
      return explainKOfM(rule);
  }
}

function explainHalving(rule: SteadyRule): string {
  return halvesAhead(rule)
    ? t(
        'It halves the rise at every return for as long as a half can be had, and where 2 of the last 3 steps had to be returned from it meets the next new one through its half at once.',
      )
    : t('The first time it goes back from a step it puts half a step in before it, where a half can be had.');
}

function explainKOfM(rule: KOfMRule): string {
  const { kept, of, window } = rule;
  const when =
    window === 'blocks'
      ? t('It counts in blocks of {of}: with {kept} kept or more at the end of a block it raises, else a fresh block begins.', {
          kept,
          of,
        })
      : t(
          'It raises as soon as {kept} of the last {of} trials were kept, wherever those {of} lie, so a lucky stretch is enough.',
          { kept, of },
        );
  return `${when} ${t('It goes back on 2 lifts running or 3 in the last 5, and halves the rise as steady does.')}`;
}

const RULE_NAMES = {
  steady: 'Steady',
  cautious: 'Cautious',
  sequential: 'Sequential test',
  percentile: 'Percentile',
} as const satisfies Record<Exclude<Rule['kind'], 'k-of-m'>, Message>;

export function nameRule(rule: Rule): string {
  if (halvesAhead(rule)) return t('Steady, halving ahead');
  if (rule.kind !== 'k-of-m') return t(RULE_NAMES[rule.kind]);
  const { kept, of, window } = rule;
  return window === 'blocks' ? t('{kept} of {of}, in blocks', { kept, of }) : t('{kept} of {of}, sliding', { kept, of });
}
