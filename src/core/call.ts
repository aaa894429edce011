/** What the criterion engine can call out after a rep, and why. Reasons are data; `sentences.ts` words them. */
import type { Reason as RuleReason } from './chain/machine.ts';
import type { BodyArea, Step } from './plan.ts';

export type RestReason =
  | { readonly kind: 'goal-reached' }
  | { readonly kind: 'second-return' }
  | { readonly kind: 'lifts-of-last'; readonly lifts: number; readonly of: number }
  | { readonly kind: 'never-offered'; readonly running: number }
  | { readonly kind: 'reps-done'; readonly reps: number }
  | { readonly kind: 'time-up'; readonly minutes: number }
  | { readonly kind: 'treats-spent'; readonly treats: number }
  | { readonly kind: 'ahead'; readonly repsLeft: number }
  /** A question about pain, never a diagnosis: it also fires for healthy dogs (CRITERION.md). */
  | { readonly kind: 'area-alarm'; readonly area: BodyArea; readonly level: 'look' | 'veterinarian' };

export type Reason =
  | RuleReason
  | RestReason
  | { readonly kind: 'half-step-prepared' }
  /** So many of the last steps were returned from: the next new one is met through its half at once. */
  | { readonly kind: 'half-ahead'; readonly returned: number; readonly of: number }
  | { readonly kind: 'no-half-step' }
  | { readonly kind: 'lowest-step' }
  | { readonly kind: 'warm-up-over' }
  | { readonly kind: 'warm-ups-lifted' }
  | { readonly kind: 'handler-says' }
  /** The call that the handler does not follow. */
  | { readonly kind: 'not-followed'; readonly call: Move };

/** The calls that move to another step. */
export type Move = 'raise' | 'return' | 'split';

/**
 * One call. `raise`, `return`, `split` move; `rest` advises to stop; `stay` says that there is nothing easier;
 * `begin` ends the warm-up, silently; `remain` is the handler's answer to a move: it is not followed.
 */
export interface Call {
  readonly kind: Move | 'rest' | 'stay' | 'begin' | 'remain';
  readonly fromStepId: string;
  readonly toStepId: string;
  /** On a split, and on a raise that goes ahead by half: the half step that is put in. */
  readonly inserted: Step | null;
  readonly reasons: readonly Reason[];
}
