/** Says what a criterion rule is: a small machine that is fed one trial at a time and answers stay, raise or return. */

/**
 * What a rule remembers of the trials on one step. JSON-able: it may be stored and resumed.
 * A trial is a rep that was kept or lifted; void, short and warm-up reps are never fed to a rule.
 */
export interface Trials {
  /** Outcomes of the latest trials, true = kept, oldest first, at most as many as the rule looks back on (10 for steady). */
  readonly last: readonly boolean[];
  /** Trials since the step was reached (in a block rule: since the block began). */
  readonly count: number;
  /** How many of `count` were kept; the rest were lifts. */
  readonly kept: number;
}

/** The empty history that every step, and every new visit to a step, begins with. */
export const NO_TRIALS: Trials = { last: [], count: 0, kept: 0 };

/** Why a rule answered as it did; counts are whole trials. Sentences are made from these, never parsed back. */
export type Reason =
  | { readonly kind: 'counting'; readonly kept: number; readonly lifts: number; readonly of: number }
  | { readonly kind: 'nine-straight'; readonly kept: number }
  | { readonly kind: 'nine-of-ten'; readonly kept: number; readonly of: number }
  | { readonly kind: 'first-five-kept'; readonly kept: number }
  | { readonly kind: 'first-kept'; readonly kept: number }
  | { readonly kind: 'straight'; readonly kept: number }
  | { readonly kind: 'kept-of-last'; readonly kept: number; readonly of: number }
  | { readonly kind: 'kept-of-block'; readonly kept: number; readonly of: number }
  | { readonly kind: 'block-undecided'; readonly kept: number; readonly of: number }
  | {
      readonly kind: 'evidence-for';
      readonly kept: number;
      readonly lifts: number;
      readonly score: number;
      readonly needed: number;
    }
  | {
      readonly kind: 'evidence-against';
      readonly kept: number;
      readonly lifts: number;
      readonly score: number;
      readonly needed: number;
    }
  | { readonly kind: 'one-lift' }
  | { readonly kind: 'two-lifts-running' }
  | { readonly kind: 'three-lifts-in-five'; readonly lifts: number; readonly of: number }
  | { readonly kind: 'two-lifts-in-four'; readonly lifts: number; readonly of: number }
  | { readonly kind: 'lifts-running'; readonly lifts: number }
  | { readonly kind: 'lifts-of-last'; readonly lifts: number; readonly of: number }
  | { readonly kind: 'lifts-of-block'; readonly lifts: number; readonly of: number };

/** The answer to one trial. After a raise or a return `state` is the machine's start: counting begins afresh. */
export interface Answer<S> {
  readonly verdict: 'stay' | 'raise' | 'return';
  readonly because: Reason;
  readonly state: S;
}

/**
 * A rule. `next` is pure and deterministic, so that the live engine and the exact chain run the very same rule.
 * `key` names a state: two states with one key must have the same future, whatever comes.
 */
export interface Machine<S = Trials> {
  readonly name: string;
  readonly start: S;
  next(state: S, kept: boolean): Answer<S>;
  key(state: S): string;
}
