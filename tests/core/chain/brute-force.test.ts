/** The exact chain against trying all outcomes, for the rules in use. */
import { describe, expect, it } from 'vitest';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { cautious, steadyDuration, steadyHandling } from '../../../src/core/chain/rules.ts';
import { within } from '../../../src/core/chain/visit.ts';
import { enumerate, naiveCautious, naiveSteady, naiveSteadyDuration } from './naive.ts';

const RULES = [
  { machine: steadyHandling, naive: naiveSteady },
  { machine: steadyDuration, naive: naiveSteadyDuration },
  { machine: cautious, naive: naiveCautious },
];

describe.each(RULES)('$machine.name', ({ machine, naive }) => {
  const chain = chainOf(machine);
  it.each([0.3, 0.5, 0.7, 0.83, 0.9, 0.97])(
    'agrees with all outcomes up to 14 trials at p = %d to 1e-12',
    (p) => {
      const exact = within(chain, p, 14);
      for (let n = 1; n <= 14; n++) {
        const tried = enumerate(naive, p, n);
        expect(Math.abs((exact.raised[n] as number) - tried.raised), `raised within ${n}`).toBeLessThan(1e-12);
        expect(Math.abs((exact.returned[n] as number) - tried.returned), `returned within ${n}`).toBeLessThan(1e-12);
      }
    },
    30_000,
  );
});
