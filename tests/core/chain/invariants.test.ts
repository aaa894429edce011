/** What must hold of any rule and any dog, tried on random ones; the seed is in the titles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALARM_ASK, ALARM_LOOK, meanTrialsToAlarm } from '../../../src/core/chain/alarm.ts';
import { chainOf } from '../../../src/core/chain/automaton.ts';
import type { Machine, Trials } from '../../../src/core/chain/machine.ts';
import { keptRunning, liftsRunning } from '../../../src/core/chain/patterns.ts';
import {
  blocksKOfM,
  cautious,
  eightInARow,
  firstSix,
  fourOfFive,
  STEADY_BACK,
  sequential,
  sliding,
  slidingKOfM,
  steadyDuration,
  steadyHandling,
  threeUpOneBack,
} from '../../../src/core/chain/rules.ts';
import { visit, within } from '../../../src/core/chain/visit.ts';
import { chainNamed, nineOfTenNoBack } from './named.ts';
import { reference } from './reference.ts';

const SEED = Number(process.env.SEED ?? 20260301);
const RUNS = { seed: SEED, numRuns: 200 };

/** Rules that decide only in the direction of the trial just held. */
const PROPOSED = [steadyHandling, steadyDuration, cautious, eightInARow, firstSix, threeUpOneBack, sequential];
const ALL = [...PROPOSED, fourOfFive, blocksKOfM(9, 10, { returnAt: 6 }), blocksKOfM(9, 10, { patterns: STEADY_BACK })];

const outcomes = fc.array(fc.boolean(), { maxLength: 40 });
const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const anyRule = fc.constantFrom(...ALL);

/** [trial]: verdicts, going on with whatever state the rule gives. */
function run(machine: Machine, trials: readonly boolean[], from: Trials = machine.start) {
  let state = from;
  const verdicts = trials.map((kept) => {
    const answer = machine.next(state, kept);
    state = answer.state;
    return answer.verdict;
  });
  return { state, verdicts };
}

const firstRaise = (machine: Machine, trials: readonly boolean[]) => {
  const at = run(machine, trials).verdicts.indexOf('raise');
  return at < 0 ? Number.POSITIVE_INFINITY : at + 1;
};

describe(`rules on random outcomes, seed ${SEED}`, () => {
  it('whatever was decided, the next step begins with an empty history', () => {
    fc.assert(
      fc.property(anyRule, outcomes, (machine, trials) => {
        let state = machine.start;
        for (const kept of trials) {
          const answer = machine.next(state, kept);
          if (answer.verdict !== 'stay') expect(answer.state).toEqual({ last: [], count: 0, kept: 0 });
          state = answer.state;
        }
      }),
      RUNS,
    );
  });

  it('a log cut at any place, stored as JSON and resumed, gives the same verdicts and the same state', () => {
    fc.assert(
      fc.property(anyRule, outcomes, fc.nat(40), (machine, trials, cut) => {
        const whole = run(machine, trials);
        const before = run(machine, trials.slice(0, cut));
        const after = run(machine, trials.slice(cut), JSON.parse(JSON.stringify(before.state)));
        expect([...before.verdicts, ...after.verdicts]).toEqual(whole.verdicts);
        expect(after.state).toEqual(whole.state);
      }),
      RUNS,
    );
  });

  it('two states with one key have the same future', () => {
    fc.assert(
      fc.property(anyRule, outcomes, outcomes, outcomes, (machine, a, b, future) => {
        const [one, two] = [run(machine, a).state, run(machine, b).state];
        fc.pre(machine.key(one) === machine.key(two));
        expect(run(machine, future, one).verdicts).toEqual(run(machine, future, two).verdicts);
      }),
      { seed: SEED, numRuns: 100, maxSkipsPerRun: 1000 },
    );
  });

  it('a stricter k never raises sooner on the same outcomes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 10 }), fc.nat(8), outcomes, (of, less, trials) => {
        const k = Math.max(1, of - 1 - less);
        expect(firstRaise(slidingKOfM(k, of), trials)).toBeLessThanOrEqual(firstRaise(slidingKOfM(k + 1, of), trials));
        expect(firstRaise(blocksKOfM(k, of), trials)).toBeLessThanOrEqual(firstRaise(blocksKOfM(k + 1, of), trials));
      }),
      RUNS,
    );
  });

  it('the order of trials inside a block changes nothing', () => {
    const shuffled = fc
      .array(fc.boolean(), { minLength: 10, maxLength: 10 })
      .chain((block) => fc.tuple(fc.constant(block), fc.shuffledSubarray(block, { minLength: 10 })));
    fc.assert(
      fc.property(shuffled, ([block, other]) => {
        const rule = blocksKOfM(9, 10, { returnAt: 6 });
        expect(run(rule, other)).toEqual(run(rule, block));
      }),
      RUNS,
    );
  });
});

/** Visits every undecided history of up to 14 trials once. */
function everyHistory(machine: Machine, look: (history: readonly boolean[], verdict: string) => void): void {
  const walk = (history: readonly boolean[], state: Trials) => {
    if (history.length === 14) return;
    for (const kept of [true, false]) {
      const answer = machine.next(state, kept);
      look([...history, kept], answer.verdict);
      if (answer.verdict === 'stay') walk([...history, kept], answer.state);
    }
  };
  walk([], machine.start);
}

describe('rules on every undecided history up to 14 trials', () => {
  it.each(PROPOSED)('$name raises only directly after a kept trial and goes back only directly after a lift', (machine) => {
    let decided = 0;
    everyHistory(machine, (history, verdict) => {
      if (verdict === 'stay') return;
      decided++;
      expect(history.at(-1)).toBe(verdict === 'raise');
    });
    expect(decided).toBeGreaterThan(3);
  });

  it('no handling step is raised on fewer than nine trials, and no duration step on fewer than five', () => {
    const soonest = (machine: Machine) => {
      let least = Number.POSITIVE_INFINITY;
      everyHistory(machine, (history, verdict) => {
        if (verdict === 'raise') least = Math.min(least, history.length);
      });
      return least;
    };
    expect(soonest(steadyHandling)).toBe(9);
    expect(soonest(cautious)).toBe(9);
    expect(soonest(steadyDuration)).toBe(5);
  });
});

describe(`chains on random dogs, seed ${SEED}`, () => {
  const chains = ALL.map((machine) => chainOf(machine));
  const anyChain = fc.constantFrom(...chains);

  it('the chance to raise before going back grows with p, as does the chance to raise within n, which grows with n', () => {
    fc.assert(
      fc.property(anyChain, share, share, fc.integer({ min: 1, max: 60 }), (chain, a, b, n) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(visit(chain, low).chanceToRaise).toBeLessThanOrEqual(visit(chain, high).chanceToRaise + 1e-12);
        const [slow, fast] = [within(chain, low, n).raised, within(chain, high, n).raised];
        slow.forEach((chance, i) => {
          expect(chance).toBeLessThanOrEqual((fast[i] as number) + 1e-12);
          if (i > 0) expect(chance).toBeGreaterThanOrEqual(slow[i - 1] as number);
        });
      }),
      RUNS,
    );
  });

  it('every visit ends one way or the other, and its two means make up the whole', () => {
    fc.assert(
      fc.property(anyChain, share, (chain, p) => {
        const { chanceToRaise: up, chanceToReturn: down, meanTrials, meanTrialsIfRaised, meanTrialsIfReturned } = visit(chain, p);
        expect(up + down).toBeCloseTo(1, 12);
        const whole = up * (meanTrialsIfRaised ?? 0) + down * (meanTrialsIfReturned ?? 0);
        expect(whole / meanTrials).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  it('solving the chain and walking it trial by trial give the same chance and the same mean', () => {
    fc.assert(
      fc.property(fc.constantFrom(...['D', 'F5', 'CV', 'Q', 'C', 'U3', 'S4of5'].map(chainNamed)), share, (chain, p) => {
        const { raised, returned } = within(chain, p, 3000);
        const exact = visit(chain, p);
        expect(raised[3000]).toBeCloseTo(exact.chanceToRaise, 10);
        const mean = raised.reduce((sum, up, n) => sum + 1 - up - (returned[n] as number), 0);
        expect(mean / exact.meanTrials).toBeCloseTo(1, 9);
      }),
      { seed: SEED, numRuns: 50 },
    );
  });

  it('the kept trials of a visit are p times its trials (Wald)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(steadyHandling, steadyDuration, cautious, fourOfFive),
        fc.double({ min: 0.05, max: 0.99, noNaN: true }),
        (machine, p) => {
          expect(meanKept(machine, p) / (p * visit(chainOf(machine), p).meanTrials)).toBeCloseTo(1, 9);
        },
      ),
      { seed: SEED, numRuns: 20 },
    );
  });

  it('duration steps raise at least as often as handling steps, and these as cautious ones, at every p', () => {
    fc.assert(
      fc.property(share, (p) => {
        const chance = (letter: string) => visit(chainNamed(letter), p).chanceToRaise;
        expect(chance('F5')).toBeGreaterThanOrEqual(chance('D') - 1e-14);
        expect(chance('D')).toBeGreaterThanOrEqual(chance('CV') - 1e-14);
      }),
      RUNS,
    );
  });

  it('steady and eight in a row are not ordered: at p = .9 steady raises more often, at .98 eight in a row does', () => {
    const chance = (letter: string, p: number) => visit(chainNamed(letter), p).chanceToRaise;
    expect(chance('D', 0.9)).toBeGreaterThan(chance('C', 0.9));
    expect(chance('C', 0.98)).toBeGreaterThan(chance('D', 0.98));
  });

  it('nine straight is enough: against a sliding nine of ten it is ahead by p^9 at the ninth trial and level from the tenth on', () => {
    const [ours, window] = [chainOf(nineOfTenNoBack), chainOf(slidingKOfM(9, 10))];
    fc.assert(
      fc.property(share, (p) => {
        const [a, b] = [within(ours, p, 50).raised, within(window, p, 50).raised];
        expect((a[9] as number) - (b[9] as number)).toBeCloseTo(p ** 9, 14);
        for (let n = 10; n <= 50; n++) expect(a[n]).toBeCloseTo(b[n] as number, 12);
      }),
      RUNS,
    );
  });

  it('exchanging kept and lifted turns runs of kept at p into runs of lifts at 1 - p', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 60 }), share, (r, n, p) => {
        const keptRuns = within(chainOf(sliding('kept', [keptRunning(r)], [])), p, n).raised;
        const liftRuns = within(chainOf(sliding('lifts', [], [liftsRunning(r)])), 1 - p, n).returned;
        expect(liftRuns[n]).toBeCloseTo(keptRuns[n] as number, 13);
      }),
      RUNS,
    );
  });

  it('the area alarm comes sooner the more lifts there are, later the higher its threshold, sooner on passed steps', () => {
    const lift = fc.double({ min: 0.05, max: 0.95, noNaN: true });
    fc.assert(
      fc.property(lift, lift, fc.constantFrom('passed' as const, 'new' as const), (a, b, age) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [few, many] = [Math.min(a, b), Math.max(a, b)];
        expect(meanTrialsToAlarm(ALARM_LOOK, age, many)).toBeLessThan(meanTrialsToAlarm(ALARM_LOOK, age, few));
        expect(meanTrialsToAlarm(ALARM_ASK, age, a)).toBeGreaterThan(meanTrialsToAlarm(ALARM_LOOK, age, a));
        expect(meanTrialsToAlarm(ALARM_LOOK, 'passed', a)).toBeLessThan(meanTrialsToAlarm(ALARM_LOOK, 'new', a));
      }),
      RUNS,
    );
  });
});

/** Mean kept trials of a visit, by walking the machine itself (not its chain) until next to nothing is undecided. */
function meanKept(machine: Machine, p: number): number {
  let here = new Map([[machine.key(machine.start), { state: machine.start, chance: 1 }]]);
  let sum = 0;
  for (let n = 0; n < 3000 && here.size > 0; n++) {
    const next: typeof here = new Map();
    for (const { state, chance } of here.values()) {
      sum += chance * p;
      for (const kept of [true, false]) {
        const answer = machine.next(state, kept);
        const more = chance * (kept ? p : 1 - p);
        if (answer.verdict !== 'stay' || more < 1e-18) continue;
        const key = machine.key(answer.state);
        next.set(key, { state: answer.state, chance: (next.get(key)?.chance ?? 0) + more });
      }
    }
    here = next;
  }
  return sum;
}

/** Where each of the invariants that criterion.json lists is tested, in its order. */
const WHERE = [
  'engine: void and warm-up reps',
  'here: raise after kept, back after lift',
  'here: nine on handling, five on duration',
  'here: non-decreasing in p; F5 >= D >= CV; D and C not ordered',
  'here: Wald',
  'here for rules, engine for sessions: resuming a cut log',
  'here: empty history after a decision',
  'engine: index and inserted steps',
  'here: nine of ten without a way back',
  'here: alarm',
  'engine: undo',
  'engine: renaming, order of areas',
  'here: exchanging kept and lifted',
  'statistics/invariants.test.ts: hold curve',
  'statistics/invariants.test.ts: kappa and Wilson',
];

const file = reference<{ invariants_for_property_tests: readonly string[] }>('criterion.json');

describe.skipIf(file === null)('invariants of criterion.json', () => {
  it('every invariant listed there is placed: eleven here or in the statistics, the others in the engine’s tests', () => {
    expect(WHERE).toHaveLength(file?.invariants_for_property_tests.length ?? 0);
    expect(WHERE.filter((place) => !place.startsWith('engine'))).toHaveLength(11);
  });
});
