/** Says where a rule settles on a ladder of steps when nothing is learned: the share kept, and the time spent on each step. */
import type { Share } from '../units.ts';
import type { Chain } from './automaton.ts';
import { type Visit, visit } from './visit.ts';

/** The long run on a ladder. */
export interface LongRun {
  /** Share of all trials that are kept. */
  readonly kept: Share;
  /** [step, easiest first]: share of all trials spent there; sums to 1. */
  readonly timeByStep: readonly Share[];
  /** [step]: one visit to it. */
  readonly visits: readonly Visit[];
}

/**
 * A raise goes one step up, a return one step down, held at both ends; every visit begins with an empty history.
 * @param successByStep true success of each step, easiest first; constant, so no learning and no fatigue.
 * @throws RangeError when there is no step, a success is no share, or a visit never ends.
 */
export function longRun(chain: Chain, successByStep: readonly Share[]): LongRun {
  return settle(
    successByStep.map((p) => visit(chain, p)),
    successByStep,
  );
}

/** The same from visits that were computed before: one a step. @throws RangeError as `longRun`. */
export function settle(visits: readonly Visit[], successByStep: readonly Share[]): LongRun {
  if (visits.length === 0) throw new RangeError('a ladder needs at least one step');
  if (visits.some(({ meanTrials }) => meanTrials === Number.POSITIVE_INFINITY))
    throw new RangeError('the rule never leaves some step of this ladder');
  const trials = visitShares(visits).map((share, step) => share * (visits[step] as Visit).meanTrials);
  const all = trials.reduce((sum, n) => sum + n, 0);
  const timeByStep = trials.map((n) => n / all);
  return { kept: timeByStep.reduce((sum, time, step) => sum + time * (successByStep[step] as number), 0), timeByStep, visits };
}

/** Share of visits that each step gets. Steps form a line, so ups over a gap equal downs over it in the long run. */
function visitShares(visits: readonly Visit[]): number[] {
  let shares = [1];
  visits.slice(1).forEach((above, i) => {
    const up = (shares[i] as number) * (visits[i] as Visit).chanceToRaise;
    // Never returned from: whatever lies below is left for good once it is passed.
    shares =
      above.chanceToReturn > 0 ? normalised([...shares, up / above.chanceToReturn]) : [...shares.map(() => 0), up > 0 ? 1 : 0];
  });
  return shares;
}

function normalised(weights: readonly number[]): number[] {
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return weights.map((weight) => weight / sum);
}
