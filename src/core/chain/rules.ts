/** Holds the criterion rules as values; the live engine and the exact chain both run these. */
import { LONGEST_BLOCK, LONGEST_SLIDING } from './longest.ts';
import { type Answer, type Machine, NO_TRIALS, type Reason, type Trials } from './machine.ts';
import { firstKept, keptOfLast, keptRunning, liftsOfLast, liftsRunning, type Pattern } from './patterns.ts';

const stay = <S>(because: Reason, state: S): Answer<S> => ({ verdict: 'stay', because, state });

/** One more trial, remembering at most `window` outcomes. */
function push(trials: Trials, kept: boolean, window: number): Trials {
  return {
    last: [...trials.last, kept].slice(-window),
    count: trials.count + 1,
    kept: trials.kept + (kept ? 1 : 0),
  };
}

function firstFound(patterns: readonly Pattern[], trials: Trials): Reason | null {
  for (const { found } of patterns) {
    const reason = found(trials);
    if (reason) return reason;
  }
  return null;
}

function counting(last: readonly boolean[]): Reason {
  const kept = last.filter(Boolean).length;
  return { kind: 'counting', kept, lifts: last.length - kept, of: last.length };
}

/** The outcomes as K and L, oldest first. Enough for any rule of patterns: while fewer than the window were held, its length is the count. */
function outcomesKey(last: readonly boolean[]): string {
  return last.map((kept) => (kept ? 'K' : 'L')).join('');
}

/**
 * A rule that raises on the first `raise` pattern found and returns on the first `back` pattern found; raise is tested first.
 * The trials slide: nothing is forgotten until the step changes, save what no pattern looks back on.
 */
export function sliding(name: string, raise: readonly Pattern[], back: readonly Pattern[]): Machine {
  const window = Math.max(...[...raise, ...back].map((pattern) => pattern.window));
  return {
    name,
    start: NO_TRIALS,
    key: ({ last }) => outcomesKey(last),
    next: (state, kept) => {
      const trials = push(state, kept, window);
      const up = firstFound(raise, trials);
      if (up) return { verdict: 'raise', because: up, state: NO_TRIALS };
      const down = firstFound(back, trials);
      if (down) return { verdict: 'return', because: down, state: NO_TRIALS };
      return stay(counting(trials.last), trials);
    },
  };
}

const NINE: readonly Pattern[] = [keptRunning(9, { kind: 'nine-straight', kept: 9 }), keptOfLast(9, 10, 'nine-of-ten')];

/** The way back of the default: two lifts running, or three in the last five (CRITERION, confirmed). */
export const STEADY_BACK: readonly Pattern[] = [
  liftsRunning(2, { kind: 'two-lifts-running' }),
  liftsOfLast(3, 5, 'three-lifts-in-five'),
];

/** Default for handling steps: nine kept and at most one lift in the last ten, nine straight is enough. */
export const steadyHandling: Machine = sliding('steady, handling', NINE, STEADY_BACK);

/** Default for duration steps: as for handling, and the first five trials since arrival all kept also raise. */
export const steadyDuration: Machine = sliding(
  'steady, duration',
  [firstKept(5, { kind: 'first-five-kept', kept: 5 }), ...NINE],
  STEADY_BACK,
);

/** Nine of ten with no short cut; two lifts in the last four return. */
export const cautious: Machine = sliding('cautious', NINE, [liftsOfLast(2, 4, 'two-lifts-in-four')]);

/** Eight in a row, with the way back of steady. */
export const eightInARow: Machine = sliding('eight in a row', [keptRunning(8)], STEADY_BACK);

/** The first six all kept, else as steady. */
export const firstSix: Machine = sliding('first six, else nine of ten', [firstKept(6), ...NINE], STEADY_BACK);

/** Three kept in a row up, one lift back. */
export const threeUpOneBack: Machine = inARow(3);

/**
 * The popular four of five, sliding, with the way back of steady. Shown so that one sees how fast it is.
 * It waits for five trials, so four kept and then a lift raise as well: directly after a lift, unlike every rule that we propose.
 */
export const fourOfFive: Machine = sliding('four of five, sliding', [keptOfLast(4, 5)], STEADY_BACK);

/** `n` kept in a row raise; one lift returns. @throws RangeError unless n is a whole number from 1 to LONGEST_SLIDING. */
export function inARow(n: number): Machine {
  refuseBadWindow(n, n, LONGEST_SLIDING);
  return sliding(`${n} in a row, one lift back`, [keptRunning(n)], [liftsRunning(1, { kind: 'one-lift' })]);
}

/**
 * At least `kept` of the last `of` trials raise, wherever the window lies, once `of` trials were held.
 * @param back the way back; none by default, so that only raising ends a visit.
 * @throws RangeError unless 1 <= kept <= of <= LONGEST_SLIDING, whole numbers.
 */
export function slidingKOfM(kept: number, of: number, back: readonly Pattern[] = []): Machine {
  refuseBadWindow(kept, of, LONGEST_SLIDING);
  return sliding(`${kept} of ${of}, sliding`, [keptOfLast(kept, of)], back);
}

/** How a block rule goes back; without either it never does. */
export interface BlockBack {
  /** At a block's end: so many kept or fewer return. */
  readonly returnAt?: number;
  /** After any trial, looking back across the ends of blocks but not of visits. */
  readonly patterns?: readonly Pattern[];
}

/**
 * Raises only when `of` trials are complete and `raiseAt` or more of them kept; else, if nothing returns, a fresh block begins.
 * @throws RangeError unless returnAt < raiseAt <= of <= LONGEST_BLOCK, whole numbers.
 */
export function blocksKOfM(raiseAt: number, of: number, back: BlockBack = {}): Machine {
  refuseBadWindow(raiseAt, of, LONGEST_BLOCK);
  const { returnAt = -1, patterns = [] } = back;
  if (!(Number.isInteger(returnAt) && returnAt < raiseAt))
    throw new RangeError(`a block that raises at ${raiseAt} cannot return at ${returnAt}`);
  const window = Math.max(0, ...patterns.map((pattern) => pattern.window));
  // What no pattern looks back on is forgotten, so that without patterns the order inside a block leaves no trace.
  const tail = (last: readonly boolean[]) => (window > 0 ? last.slice(-window) : []);
  return {
    name: `${raiseAt} of ${of}, blocks`,
    start: NO_TRIALS,
    key: ({ last, count, kept }) => `${kept}/${count} ${outcomesKey(tail(last))}`,
    next: (state, kept) => {
      const block = push(state, kept, Math.max(window, of));
      return judgeBlockEnd(block, raiseAt, of, returnAt) ?? judgeInBlock(block, of, patterns, tail(block.last));
    },
  };
}

function judgeBlockEnd({ count, kept }: Trials, raiseAt: number, of: number, returnAt: number): Answer<Trials> | null {
  if (count < of) return null;
  if (kept >= raiseAt) return { verdict: 'raise', because: { kind: 'kept-of-block', kept, of }, state: NO_TRIALS };
  if (kept > returnAt) return null;
  return { verdict: 'return', because: { kind: 'lifts-of-block', lifts: of - kept, of }, state: NO_TRIALS };
}

function judgeInBlock(block: Trials, of: number, patterns: readonly Pattern[], tail: readonly boolean[]): Answer<Trials> {
  const down = firstFound(patterns, block);
  if (down) return { verdict: 'return', because: down, state: NO_TRIALS };
  if (block.count < of) return stay(counting(block.last.slice(-block.count)), block);
  return stay({ kind: 'block-undecided', kept: block.kept, of }, { last: tail, count: 0, kept: 0 });
}

function refuseBadWindow(kept: number, of: number, longest: number): void {
  const whole = Number.isInteger(kept) && Number.isInteger(of);
  if (!whole || kept < 1 || kept > of || of > longest)
    throw new RangeError(`expected 1 <= kept <= of <= ${longest} as whole numbers, got ${kept} of ${of}`);
}

/** Scores of a sequential rule, whole numbers, so that sums are exact and ties cannot depend on rounding. */
export interface SequentialScores {
  /** Added by a kept trial (> 0). */
  readonly kept: number;
  /** Taken away by a lift (> 0). */
  readonly lift: number;
  /** Reached: raise. */
  readonly raiseAt: number;
  /** Reached or passed below: return (< 0). */
  readonly returnAt: number;
}

/**
 * Wald's sequential test of .7 against .9 with both errors .2 (Wald 1947), on whole numbers: log(.9/.7) : log(.3/.1) = 1 : 4.371, here 8 : 35,
 * and log(.8/.2) is 44.13 of the same units, so 45. A test says that for 69 trials
 * this decides as the logarithms do; few visits last that long.
 */
export const WALD_SCORES: SequentialScores = { kept: 8, lift: 35, raiseAt: 45, returnAt: -45 };

/** A sequential rule: adds up scores since arrival, raises or returns at a bound. */
export function sequentialRule(scores: SequentialScores, name = 'sequential'): Machine {
  const score = ({ count, kept }: Trials) => scores.kept * kept - scores.lift * (count - kept);
  return {
    name,
    start: NO_TRIALS,
    key: (trials) => String(score(trials)),
    next: (state, kept) => judgeScore(push(state, kept, LONGEST_SLIDING), score, scores),
  };
}

function judgeScore(
  trials: Trials,
  scoreOf: (trials: Trials) => number,
  { raiseAt, returnAt }: SequentialScores,
): Answer<Trials> {
  const score = scoreOf(trials);
  const counts = { kept: trials.kept, lifts: trials.count - trials.kept, score };
  if (score >= raiseAt)
    return { verdict: 'raise', because: { kind: 'evidence-for', ...counts, needed: raiseAt }, state: NO_TRIALS };
  if (score <= returnAt)
    return { verdict: 'return', because: { kind: 'evidence-against', ...counts, needed: returnAt }, state: NO_TRIALS };
  return stay(counting(trials.last), trials);
}

/** Wald's test of .7 against .9. */
export const sequential: Machine = sequentialRule(WALD_SCORES);
