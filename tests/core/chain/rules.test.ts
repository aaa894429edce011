/** The rules as a trainer meets them: which trials raise, which return, and the reason each names. */
import { describe, expect, it } from 'vitest';
import { LONGEST_BLOCK, LONGEST_SLIDING } from '../../../src/core/chain/longest.ts';
import { type Machine, NO_TRIALS, type Trials } from '../../../src/core/chain/machine.ts';
import {
  blocksKOfM,
  cautious,
  eightInARow,
  firstSix,
  fourOfFive,
  inARow,
  STEADY_BACK,
  sequential,
  slidingKOfM,
  steadyDuration,
  steadyHandling,
  threeUpOneBack,
  WALD_SCORES,
} from '../../../src/core/chain/rules.ts';

/** Feeds K and L; tells the first decision, at which trial, and why. */
function decide(machine: Machine, outcomes: string) {
  let state: Trials = machine.start;
  for (let i = 0; i < outcomes.length; i++) {
    const answer = machine.next(state, outcomes[i] === 'K');
    if (answer.verdict !== 'stay') return { verdict: answer.verdict, at: i + 1, because: answer.because };
    state = answer.state;
  }
  return { verdict: 'stay' };
}

const raise = (at: number, because: object) => ({ verdict: 'raise', at, because });
const back = (at: number, because: object) => ({ verdict: 'return', at, because });

describe('steady', () => {
  it('raises a handling step after nine straight, not after eight', () => {
    expect(decide(steadyHandling, 'KKKKKKKK')).toEqual({ verdict: 'stay' });
    expect(decide(steadyHandling, 'KKKKKKKKK')).toEqual(raise(9, { kind: 'nine-straight', kept: 9 }));
  });
  it('raises after nine of ten wherever the one lift was', () => {
    for (let lift = 1; lift < 9; lift++) {
      const outcomes = `${'K'.repeat(lift)}L${'K'.repeat(9 - lift)}`;
      expect(decide(steadyHandling, outcomes)).toEqual(raise(10, { kind: 'nine-of-ten', kept: 9, of: 10 }));
    }
  });
  it('lets an old lift slide out of the last ten', () => {
    expect(decide(steadyHandling, 'LKKKKLKKKKK')).toEqual(raise(11, { kind: 'nine-of-ten', kept: 9, of: 10 }));
  });
  it('goes back on two lifts running', () => {
    expect(decide(steadyHandling, 'KKKKKKKLL')).toEqual(back(9, { kind: 'two-lifts-running' }));
  });
  it('goes back on three lifts in the last five, not in the last six', () => {
    expect(decide(steadyHandling, 'LKLKL')).toEqual(back(5, { kind: 'three-lifts-in-five', lifts: 3, of: 5 }));
    expect(decide(steadyHandling, 'LKLKKL')).toEqual({ verdict: 'stay' });
  });
  it('raises a duration step when the first five since arrival were kept, but not after five in a row later', () => {
    expect(decide(steadyDuration, 'KKKKK')).toEqual(raise(5, { kind: 'first-five-kept', kept: 5 }));
    expect(decide(steadyDuration, 'LKKKKK')).toEqual({ verdict: 'stay' });
  });
  it('gives handling steps no short cut', () => {
    expect(decide(steadyHandling, 'KKKKK')).toEqual({ verdict: 'stay' });
  });
  it('counts for the screen while it stays', () => {
    const first = steadyHandling.next(NO_TRIALS, true);
    expect(steadyHandling.next(first.state, false).because).toEqual({ kind: 'counting', kept: 1, lifts: 1, of: 2 });
  });
  it('remembers ten trials at most, oldest first, and the count since arrival', () => {
    let state = NO_TRIALS;
    for (const outcome of 'LKKLKKLKKLKK') state = steadyHandling.next(state, outcome === 'K').state;
    expect(state.last.map((kept) => (kept ? 'K' : 'L')).join('')).toBe('KLKKLKKLKK');
    expect({ count: state.count, kept: state.kept }).toEqual({ count: 12, kept: 8 });
    expect(JSON.parse(JSON.stringify(state))).toEqual(state);
  });
});

describe('the other rules', () => {
  it('cautious goes back on two lifts in the last four', () => {
    expect(decide(cautious, 'LKKL')).toEqual(back(4, { kind: 'two-lifts-in-four', lifts: 2, of: 4 }));
    expect(decide(cautious, 'LKKKL')).toEqual({ verdict: 'stay' });
  });
  it('eight in a row begins again after a lift', () => {
    expect(decide(eightInARow, 'KKKKKKKLKKKKKKKK')).toEqual(raise(16, { kind: 'straight', kept: 8 }));
  });
  it('first six raises at the sixth kept and else waits for nine of ten', () => {
    expect(decide(firstSix, 'KKKKKK')).toEqual(raise(6, { kind: 'first-kept', kept: 6 }));
    expect(decide(firstSix, 'LKKKKKK')).toEqual({ verdict: 'stay' });
  });
  it('three up, one back does what it says', () => {
    expect(decide(threeUpOneBack, 'KKK')).toEqual(raise(3, { kind: 'straight', kept: 3 }));
    expect(decide(threeUpOneBack, 'KKL')).toEqual(back(3, { kind: 'one-lift' }));
  });
  it('four of five waits for the fifth trial, and then raises even after a lift', () => {
    expect(decide(fourOfFive, 'KKKK')).toEqual({ verdict: 'stay' });
    expect(decide(fourOfFive, 'KKKKL')).toEqual(raise(5, { kind: 'kept-of-last', kept: 4, of: 5 }));
  });
  it('a sliding window finds the good stretch that a block misses', () => {
    expect(decide(slidingKOfM(4, 5), 'LLKKLKK')).toEqual(raise(7, { kind: 'kept-of-last', kept: 4, of: 5 }));
    expect(decide(blocksKOfM(4, 5), 'LLKKLKK')).toEqual({ verdict: 'stay' });
  });
  it('a block judges at its end, up, down or afresh', () => {
    expect(decide(blocksKOfM(4, 5, { returnAt: 2 }), 'LKKKK')).toEqual(raise(5, { kind: 'kept-of-block', kept: 4, of: 5 }));
    expect(decide(blocksKOfM(4, 5, { returnAt: 2 }), 'LLLKK')).toEqual(back(5, { kind: 'lifts-of-block', lifts: 3, of: 5 }));
    expect(decide(blocksKOfM(4, 5, { returnAt: 2 }), 'LLKKKKKKKK')).toEqual(raise(10, { kind: 'kept-of-block', kept: 5, of: 5 }));
  });
  it('a block can go back in its midst, looking across its beginning', () => {
    const rule = blocksKOfM(4, 5, { patterns: STEADY_BACK });
    expect(decide(rule, 'KLKKLL')).toEqual(back(6, { kind: 'two-lifts-running' }));
    expect(decide(rule, 'KLKKLKKKKK')).toEqual(raise(10, { kind: 'kept-of-block', kept: 5, of: 5 }));
  });
  it('the sequential test raises after six straight and goes back on two lifts at once', () => {
    expect(decide(sequential, 'KKKKKK')).toEqual(raise(6, { kind: 'evidence-for', kept: 6, lifts: 0, score: 48, needed: 45 }));
    expect(decide(sequential, 'LL')).toEqual(back(2, { kind: 'evidence-against', kept: 0, lifts: 2, score: -70, needed: -45 }));
  });
  it('the whole-number scores of the sequential test decide as the logarithms do for the first 69 trials', () => {
    expect(firstDifferenceFromLogarithms(400)).toBe(70);
  });
  it('windows that cannot be are refused with their numbers', () => {
    expect(() => slidingKOfM(6, 5)).toThrow('got 6 of 5');
    expect(() => slidingKOfM(0, 5)).toThrow(RangeError);
    expect(() => slidingKOfM(8, LONGEST_SLIDING + 1)).toThrow(RangeError);
    expect(() => blocksKOfM(8, LONGEST_BLOCK + 1)).toThrow(RangeError);
    expect(() => blocksKOfM(4, 5, { returnAt: 4 })).toThrow('raises at 4 cannot return at 4');
    expect(() => inARow(1.5)).toThrow('got 1.5 of 1.5');
  });
});

/** Trial at which some undecided history is judged differently by whole numbers and by logarithms; null when none is within `trials`. */
function firstDifferenceFromLogarithms(trials: number): number | null {
  const exact = (kept: number, lifts: number) => {
    const evidence = kept * Math.log(0.9 / 0.7) + lifts * Math.log(0.1 / 0.3);
    return Math.abs(evidence) < Math.log(4) ? 0 : Math.sign(evidence);
  };
  const whole = (kept: number, lifts: number) => {
    const score = WALD_SCORES.kept * kept - WALD_SCORES.lift * lifts;
    return score >= WALD_SCORES.raiseAt ? 1 : score <= WALD_SCORES.returnAt ? -1 : 0;
  };
  let undecided = new Set([0]);
  for (let n = 1; n <= trials; n++) {
    const reached = new Set([...undecided].flatMap((kept) => [kept, kept + 1]));
    for (const kept of reached) if (exact(kept, n - kept) !== whole(kept, n - kept)) return n;
    undecided = new Set([...reached].filter((kept) => whole(kept, n - kept) === 0));
  }
  return null;
}
