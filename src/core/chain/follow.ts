/** Follows a visit trial by trial until nothing that could be printed is left: all that is shown of a rule at one p, in one pass. */
import type { Share } from '../units.ts';
import { type Chain, RAISED } from './automaton.ts';
import type { Visit } from './visit.ts';

/** The visit, and how far it had come after each of the first trials. */
export interface Followed extends Visit {
  /** [n]: chance to have raised within n trials, n = 0 included. */
  readonly raisedWithin: readonly Share[];
}

/** Chance still under way at which following stops: far below the digits that are printed, far above what rounding adds up to. */
const LEFT: Share = 1e-13;
/** A rule that takes longer than this has no visit that could be drawn. */
const MOST_TRIALS = 20_000;

/**
 * The same as `visit` and `within` to 1e-9 (a test says so), faster for many p: no equations are solved.
 * @param upTo how many entries of `raisedWithin` are wanted after the first.
 * @throws RangeError when the visit does not end, or unless 0 <= p <= 1.
 */
export function follow(chain: Chain, p: Share, upTo: number): Followed {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`expected a share between 0 and 1, got ${p}`);
  const sums = { up: 0, down: 0, upTrials: 0, downTrials: 0 };
  const raisedWithin = [0];
  let [here, next] = [new Float64Array(chain.kept.length), new Float64Array(chain.kept.length)];
  here[0] = 1;
  for (let n = 1; 1 - sums.up - sums.down > LEFT || n <= upTo; n++) {
    if (n > MOST_TRIALS) throw new RangeError(`${chain.name}: a visit at ${p} does not end`);
    const [up, down] = oneTrial(chain, p, here, next);
    sums.up += up;
    sums.down += down;
    sums.upTrials += n * up;
    sums.downTrials += n * down;
    if (n <= upTo) raisedWithin.push(sums.up);
    [here, next] = [next, here];
  }
  return { ...asVisit(sums), raisedWithin };
}

/** Moves what is under way from `here` to `next`, and returns what ended upward and downward. `here` is left empty. */
function oneTrial({ kept, lifted }: Chain, p: Share, here: Float64Array, next: Float64Array): readonly [number, number] {
  let [up, down] = [0, 0];
  for (let state = 0; state < here.length; state++) {
    const chance = here[state] as number;
    if (chance === 0) continue;
    here[state] = 0;
    const [a, b] = [kept[state] as number, lifted[state] as number];
    const [ifKept, ifLifted] = [chance * p, chance * (1 - p)];
    if (a >= 0) next[a] = (next[a] as number) + ifKept;
    else if (a === RAISED) up += ifKept;
    else down += ifKept;
    if (b >= 0) next[b] = (next[b] as number) + ifLifted;
    else if (b === RAISED) up += ifLifted;
    else down += ifLifted;
  }
  return [up, down];
}

function asVisit({ up, down, upTrials, downTrials }: Record<'up' | 'down' | 'upTrials' | 'downTrials', number>): Visit {
  const meanTrials = upTrials + downTrials;
  return {
    chanceToRaise: up,
    chanceToReturn: down,
    meanTrials,
    meanTrialsIfRaised: up > 0 ? upTrials / up : null,
    meanTrialsIfReturned: down > 0 ? downTrials / down : null,
    meanTrialsToRaise: up > 0 ? meanTrials / up : Number.POSITIVE_INFINITY,
  };
}
