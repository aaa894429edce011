/** Following a visit trial by trial gives what solving its equations gives, for every rule that a plan can choose. */
import { expect, test } from 'vitest';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { follow } from '../../../src/core/chain/follow.ts';
import { inARow, slidingKOfM } from '../../../src/core/chain/rules.ts';
import { visit, within } from '../../../src/core/chain/visit.ts';
import { CHOICES, machineOf, ruleKey, type SessionRule } from '../../../src/core/rule.ts';

const RULES: readonly SessionRule[] = [...CHOICES, { kind: 'k-of-m', kept: 15, of: 20, window: 'blocks' }];

test.each(RULES.map((rule) => [ruleKey(rule), rule] as const))('%s: the same chances and the same means', (_, rule) => {
  for (const kind of ['duration', 'handling'] as const) {
    const chain = chainOf(machineOf(rule, kind));
    for (const p of [0, 0.3, 0.5, 0.65, 0.7, 0.8, 0.9, 0.95, 0.98, 1]) {
      const { raisedWithin, ...followed } = follow(chain, p, 20);
      const solved = visit(chain, p);
      for (const key of Object.keys(solved) as (keyof typeof solved)[]) {
        const [a, b] = [followed[key], solved[key]];
        // Where nothing ends so, both say null or endless.
        if (a === null || b === null || !Number.isFinite(b)) expect(a).toBe(b);
        else expect(Math.abs(a - b), `${key} at ${p}`).toBeLessThanOrEqual(1e-9 * Math.max(1, b));
      }
      within(chain, p, 20).raised.forEach((chance, n) => {
        expect(Math.abs((raisedWithin[n] as number) - chance)).toBeLessThanOrEqual(1e-12);
      });
    }
  }
});

test('a visit that never ends is refused, and so is a share that is none', () => {
  expect(() => follow(chainOf(slidingKOfM(9, 10)), 0, 10)).toThrow(/does not end/);
  expect(() => follow(chainOf(inARow(3)), 1.1, 10)).toThrow(RangeError);
});
