/** Asks one question of the trials so far: has a given pattern of kept and lifted just come about? */
import type { Reason, Trials } from './machine.ts';

/** Answers with its reason when the pattern is there, else null. Looks at most `window` trials back. */
export interface Pattern {
  readonly window: number;
  readonly found: (trials: Trials) => Reason | null;
}

/** How many of the latest `of` outcomes equal `outcome`; trials not yet held count as neither. */
export function countLast(last: readonly boolean[], of: number, outcome: boolean): number {
  return last.slice(-of).filter((kept) => kept === outcome).length;
}

/** Are the latest `n` trials all `outcome`? False while fewer than n were held. */
function running(last: readonly boolean[], n: number, outcome: boolean): boolean {
  return last.length >= n && countLast(last, n, outcome) === n;
}

function pattern(window: number, is: (trials: Trials) => boolean, reason: (trials: Trials) => Reason): Pattern {
  return { window, found: (trials) => (is(trials) ? reason(trials) : null) };
}

/** `n` kept in a row, by default named as that. */
export function keptRunning(n: number, reason: Reason = { kind: 'straight', kept: n }): Pattern {
  return pattern(
    n,
    ({ last }) => running(last, n, true),
    () => reason,
  );
}

/** The first `n` trials since arrival all kept. */
export function firstKept(n: number, reason: Reason = { kind: 'first-kept', kept: n }): Pattern {
  return pattern(
    n,
    ({ count, kept }) => count === n && kept === n,
    () => reason,
  );
}

/** At least `kept` kept among the latest `of` trials; waits until `of` were held. */
export function keptOfLast(kept: number, of: number, kind: 'kept-of-last' | 'nine-of-ten' = 'kept-of-last'): Pattern {
  return pattern(
    of,
    ({ last }) => last.length >= of && countLast(last, of, true) >= kept,
    ({ last }) => ({ kind, kept: countLast(last, of, true), of }),
  );
}

/** `n` lifts in a row, by default named as that. */
export function liftsRunning(n: number, reason: Reason = { kind: 'lifts-running', lifts: n }): Pattern {
  return pattern(
    n,
    ({ last }) => running(last, n, false),
    () => reason,
  );
}

type LiftsKind = 'lifts-of-last' | 'three-lifts-in-five' | 'two-lifts-in-four';

/** At least `lifts` lifts among the latest `of` trials, or among all of them while fewer were held. */
export function liftsOfLast(lifts: number, of: number, kind: LiftsKind = 'lifts-of-last'): Pattern {
  return pattern(
    of,
    ({ last }) => countLast(last, of, false) >= lifts,
    ({ last }) => ({ kind, lifts: countLast(last, of, false), of: Math.min(of, last.length) }),
  );
}
