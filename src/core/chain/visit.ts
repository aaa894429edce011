/** Says, for a rule and a constant true success p, how a visit to one step goes: exactly, by Markov chain, without simulation. */
import type { Share } from '../units.ts';
import { absorb, type Edge } from './absorb.ts';
import { type Chain, RAISED, RETURNED } from './automaton.ts';

/** One visit: from arrival with an empty history until the rule raises or returns. All means are in trials. */
export interface Visit {
  /** Chance to raise before returning. */
  readonly chanceToRaise: Share;
  readonly chanceToReturn: Share;
  /** Mean trials until either; Infinity when the visit may never end (as at p = 0 for a rule that never returns). */
  readonly meanTrials: number;
  /** Mean trials of the visits that raise; null when none does. */
  readonly meanTrialsIfRaised: number | null;
  /** Mean trials of the visits that return; null when none does. */
  readonly meanTrialsIfReturned: number | null;
  /** Mean trials to the first raise when every return begins afresh on the same step; Infinity when it cannot raise. */
  readonly meanTrialsToRaise: number;
}

/** @throws RangeError unless 0 <= p <= 1. */
export function visit(chain: Chain, p: Share): Visit {
  refuseBadShare(p);
  const { chance, steps, never } = absorb(edgesOf(chain, p), 2);
  const [up, down] = chance as [number, number];
  const [upSteps, downSteps] = steps as [number, number];
  const meanTrials = never > 0 ? Number.POSITIVE_INFINITY : upSteps + downSteps;
  return {
    chanceToRaise: up,
    chanceToReturn: down,
    meanTrials,
    meanTrialsIfRaised: up > 0 ? upSteps / up : null,
    meanTrialsIfReturned: down > 0 ? downSteps / down : null,
    meanTrialsToRaise: up > 0 ? meanTrials / up : Number.POSITIVE_INFINITY,
  };
}

/** RAISED is ending 0 and RETURNED is ending 1, which is how `absorb` numbers them. */
function edgesOf({ kept, lifted }: Chain, p: Share): Edge[][] {
  return Array.from(kept, (to, state) => [
    { to, chance: p },
    { to: lifted[state] as number, chance: 1 - p },
  ]);
}

/** How far a visit has come after each trial. Index n: within the first n trials, n = 0 included. */
export interface Within {
  readonly raised: readonly Share[];
  /** A visit that returned has ended: it cannot raise any more. */
  readonly returned: readonly Share[];
}

/**
 * Chance that a visit has raised, and that it has returned, within 0, 1, ... `trials` trials.
 * @throws RangeError unless 0 <= p <= 1 and `trials` is a whole number of at least 0.
 */
export function within(chain: Chain, p: Share, trials: number): Within {
  refuseBadShare(p);
  if (!Number.isInteger(trials) || trials < 0) throw new RangeError(`expected a whole number of trials, got ${trials}`);
  const raised = [0];
  const returned = [0];
  let here = new Float64Array(chain.kept.length);
  here[0] = 1;
  for (let n = 1; n <= trials; n++) {
    const step = advance(chain, p, here);
    raised.push((raised[n - 1] as number) + step.raised);
    returned.push((returned[n - 1] as number) + step.returned);
    here = step.here;
  }
  return { raised, returned };
}

function advance({ kept, lifted }: Chain, p: Share, here: Float64Array) {
  const step = { here: new Float64Array(here.length), raised: 0, returned: 0 };
  const send = (to: number, chance: number) => {
    if (to === RAISED) step.raised += chance;
    else if (to === RETURNED) step.returned += chance;
    else step.here[to] = (step.here[to] as number) + chance;
  };
  here.forEach((chance, state) => {
    if (chance === 0) return;
    send(kept[state] as number, chance * p);
    send(lifted[state] as number, chance * (1 - p));
  });
  return step;
}

function refuseBadShare(p: number): void {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`expected a share between 0 and 1, got ${p}`);
}
