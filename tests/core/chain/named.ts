/** Gives the rules the letters that criterion.json uses for them. */
import { type Chain, chainOf } from '../../../src/core/chain/automaton.ts';
import type { Machine } from '../../../src/core/chain/machine.ts';
import { keptOfLast, keptRunning } from '../../../src/core/chain/patterns.ts';
import {
  cautious,
  eightInARow,
  firstSix,
  fourOfFive,
  sliding,
  steadyDuration,
  steadyHandling,
  threeUpOneBack,
} from '../../../src/core/chain/rules.ts';

/** Nine of ten, or nine straight, with no way back. */
export const nineOfTenNoBack: Machine = sliding('nine of ten, no way back', [keptRunning(9), keptOfLast(9, 10)], []);

/** r kept in a row, with no way back. */
export const runOf = (r: number): Machine => sliding(`${r} in a row, no way back`, [keptRunning(r)], []);

const LETTERS: Readonly<Record<string, Machine>> = {
  D: steadyHandling,
  F5: steadyDuration,
  CV: cautious,
  Q: firstSix,
  C: eightInARow,
  U3: threeUpOneBack,
  S4of5: fourOfFive,
};

const chains = new Map<string, Chain>();

/** The chain of a lettered rule; built once. */
export function chainNamed(letter: string): Chain {
  const machine = LETTERS[letter];
  if (!machine) throw new Error(`no rule is lettered ${letter}`);
  const chain = chains.get(letter) ?? chainOf(machine);
  chains.set(letter, chain);
  return chain;
}
