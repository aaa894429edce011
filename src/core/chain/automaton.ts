/** Turns a rule into the smallest numbered table of states that behaves as the rule does. */
import type { Answer, Machine } from './machine.ts';

/** Stands in a transition table where a trial ends the visit upward. */
export const RAISED = -1;
/** Stands in a transition table where a trial ends the visit downward. */
export const RETURNED = -2;

/** A rule as a table, independent of any success p. State 0 is the start; entries are states, RAISED or RETURNED. */
export interface Chain {
  readonly name: string;
  /** [state]: where a kept trial leads. */
  readonly kept: Int32Array;
  /** [state]: where a lift leads. */
  readonly lifted: Int32Array;
}

/** Most distinct keys that are explored; ten outcomes make 2046. A rule beyond this has no finite chain that we can draw. */
const MOST_STATES = 20_000;

/**
 * Explores every state that the rule can reach and merges those with the same future.
 * @throws RangeError when the rule has more than `mostStates` keys, so that an endless rule is refused and not awaited.
 */
export function chainOf<S>(machine: Machine<S>, mostStates: number = MOST_STATES): Chain {
  return merge(explore(machine, mostStates));
}

function explore<S>(machine: Machine<S>, mostStates: number): Chain {
  const numbers = new Map<string, number>([[machine.key(machine.start), 0]]);
  const states: S[] = [machine.start];
  const numberOf = ({ verdict, state }: Answer<S>): number => {
    if (verdict !== 'stay') return verdict === 'raise' ? RAISED : RETURNED;
    const key = machine.key(state);
    const known = numbers.get(key);
    if (known !== undefined) return known;
    if (states.length >= mostStates) throw new RangeError(`${machine.name}: more than ${mostStates} states`);
    numbers.set(key, states.length);
    return states.push(state) - 1;
  };
  const kept: number[] = [];
  const lifted: number[] = [];
  // A for-of over a growing array visits what was added on the way.
  for (const state of states) {
    kept.push(numberOf(machine.next(state, true)));
    lifted.push(numberOf(machine.next(state, false)));
  }
  return { name: machine.name, kept: Int32Array.from(kept), lifted: Int32Array.from(lifted) };
}

/** Merges states with the same future (Moore 1956): splits classes until no trial can tell two members apart. */
function merge(chain: Chain): Chain {
  const { kept, lifted } = chain;
  let classes = new Int32Array(kept.length);
  for (let count = 1; ; ) {
    const seen = new Map<number, number>();
    const classAt = (state: number) => (state < 0 ? state : (classes[state] as number));
    // Three numbers in one: endings are -1 and -2, and 20,000 states cubed are far below 2^53.
    const digit = kept.length + 2;
    const finer = classes.map((own, state) => {
      const look = (own * digit + classAt(kept[state] as number) + 2) * digit + classAt(lifted[state] as number) + 2;
      if (!seen.has(look)) seen.set(look, seen.size);
      return seen.get(look) as number;
    });
    classes = finer;
    if (seen.size === count) return quotient(chain, classes, count);
    count = seen.size;
  }
}

/** One state a class. Classes are numbered by first appearance, so the start's class is 0. */
function quotient({ name, kept, lifted }: Chain, classes: Int32Array, count: number): Chain {
  const small = { name, kept: new Int32Array(count), lifted: new Int32Array(count) };
  const classAt = (state: number) => (state < 0 ? state : (classes[state] as number));
  for (let state = kept.length - 1; state >= 0; state--) {
    const own = classes[state] as number;
    small.kept[own] = classAt(kept[state] as number);
    small.lifted[own] = classAt(lifted[state] as number);
  }
  return small;
}
