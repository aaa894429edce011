/** What is shown of a rule at choosing time: the exact figures, in words and with their n. */
import { expect, test } from 'vitest';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import { longRun } from '../../../src/core/chain/ladder.ts';
import { CHOICES, machineOf, type SessionRule, STEADY } from '../../../src/core/rule.ts';
import { computeFigures, figuresOf, LADDER, speedOf } from '../../../src/screens/plan/rule-figures.ts';
import { sayFinding, sayLadder, sayTrials, TOO_MANY } from '../../../src/screens/plan/rule-words.ts';

const FOUR_OF_FIVE: SessionRule = { kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' };
const rowAt = (rule: SessionRule, p: number) => figuresOf(rule).handling.rows.find((row) => row.p === p);

// CRITERION.md and criterion.json (C): D is steady on a handling step, S4of5 is four of five.
test('the row of steady holds the printed chances: within ten trials, and before going back', () => {
  expect(rowAt(STEADY, 0.7)?.raised['10']).toBeCloseTo(0.1493083459, 9);
  expect(rowAt(STEADY, 0.9)?.raised['10']).toBeCloseTo(0.7360989291, 9);
  expect(rowAt(STEADY, 0.9)?.raised.all).toBeCloseTo(0.902023998, 9);
  expect(rowAt(FOUR_OF_FIVE, 0.7)?.raised.all).toBeCloseTo(0.6523922043, 9);
});

test('without learning steady keeps .770 in the long run, four of five .634 (C)', () => {
  expect(figuresOf(STEADY).keptInLongRun).toBeCloseTo(0.7702276287, 9);
  expect(figuresOf(FOUR_OF_FIVE).keptInLongRun).toBeCloseTo(0.6344532066, 9);
});

test('time on the ladder is that of the solved chain, and sums to all of it', () => {
  for (const rule of CHOICES) {
    const { timeByStep } = computeFigures(rule);
    const solved = longRun(chainOf(machineOf(rule, 'handling')), LADDER).timeByStep;
    timeByStep.forEach((share, step) => {
      expect(share).toBeCloseTo(solved[step] as number, 9);
    });
    expect(timeByStep.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  }
});

test('of the rules on offer four of five alone is told to be too fast', () => {
  const fast = CHOICES.filter((rule) => sayFinding(rule, figuresOf(rule)).startsWith('Too fast'));
  expect(fast).toEqual([FOUR_OF_FIVE]);
  expect(CHOICES.filter((rule) => speedOf(rule).at7 >= TOO_MANY)).toEqual([FOUR_OF_FIVE]);
});

test('how long it takes is said with its n', () => {
  expect(sayTrials(figuresOf(STEADY))).toMatch(
    /^At 9 of 10 the raise comes after \d+\.\d trials on average, within 10 trials in 74 of 100 visits and within 20 in \d\d of 100\. At 7 of 10 the return comes after \d+\.\d\.$/,
  );
  expect(sayLadder(figuresOf(STEADY))).toContain('would keep 77 of 100 trials in the long run');
});

test('holding still has figures of its own only where the rule judges it apart', () => {
  expect(figuresOf(STEADY).holding?.rows.find(({ p }) => p === 0.7)?.raised.all).toBeCloseTo(0.361, 3);
  expect(CHOICES.filter((rule) => figuresOf(rule).holding !== null).map(({ kind }) => kind)).toEqual(['steady', 'steady']);
});
