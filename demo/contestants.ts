/** Who competes in the comparison: the rules as they are, the ones of CRITERION.md that the app does not offer, and our attempts to beat it. */
import type { Call, Reason } from '../src/core/call.ts';
import { type Answer, type Machine, NO_TRIALS, type Trials } from '../src/core/chain/machine.ts';
import { firstKept, keptOfLast, keptRunning, liftsOfLast, liftsRunning } from '../src/core/chain/patterns.ts';
import { STEADY_BACK, sequentialRule, sliding, threeUpOneBack } from '../src/core/chain/rules.ts';
import { isTrial, type Standing, stepOf } from '../src/core/criterion.ts';
import { freshHalf } from '../src/core/halves.ts';
import { indexOfStep, type Plan } from '../src/core/plan.ts';
import { machineOf, type SessionRule, STEADY, STEADY_AHEAD } from '../src/core/rule.ts';
import { type Hold, holdCurve, survivalAt } from '../src/core/statistics/hold-time.ts';
import { chanceAtLeast } from '../src/core/statistics/posterior.ts';
import type { Trial } from './coach.ts';

export interface Contestant {
  readonly name: string;
  readonly rule: SessionRule;
  readonly trial?: (plan: Plan) => Trial;
}

/** A machine that takes the place of the rule on every step; half steps as steady puts them in, unless another rule is named. */
const judged = (name: string, machineFor: (standing: Standing) => Machine, rule: SessionRule = STEADY): Contestant => ({
  name,
  rule,
  trial: () => ({ judge: machineFor }),
});

const NINE = [keptRunning(9), keptOfLast(9, 10)];
const usual = (standing: Standing) => machineOf(STEADY, stepOf(standing).kind);

/** Halving is amended from the rule that halves most: what it does not call cannot be taken back. */
const amended = (name: string, amend: NonNullable<Trial['amend']>): Contestant => ({
  name,
  rule: STEADY_AHEAD,
  trial: () => ({ amend }),
});

/** A raise that goes by half goes the whole way. */
function unahead(call: Call): Call {
  const aboveId = call.kind === 'raise' ? call.inserted?.halfOf?.aboveId : undefined;
  return aboveId === undefined ? call : { ...call, toStepId: aboveId, inserted: null };
}

/** Splits are taken back: one step down instead. */
function unsplit(call: Call, { steps }: Standing): Call {
  const below = steps[indexOfStep(steps, call.fromStepId) - 1];
  return call.kind === 'split' && below ? { ...call, kind: 'return', toStepId: below.id, inserted: null } : call;
}

/** Splits are made at the n-th return from a step alone; 0 never. */
const splitAt =
  (nth: number): NonNullable<Trial['amend']> =>
  (calls, before) =>
    calls.map((call) => ((before.returns[call.fromStepId] ?? 0) + 1 === nth ? unahead(call) : unsplit(unahead(call), before)));

/** After a return three kept in a row are enough to go up again (the first comparison of CRITERION.md). */
function reEarnByThree(): Trial {
  const reEarn = sliding('three to re-earn', [keptRunning(3)], STEADY_BACK);
  let reEarning = false;
  return {
    judge: (standing) => (reEarning ? reEarn : usual(standing)),
    amend: (calls) => {
      if (calls.some(({ kind }) => kind === 'split' || kind === 'return')) reEarning = true;
      if (calls.some(({ kind }) => kind === 'raise')) reEarning = false;
      return calls;
    },
  };
}

/** The rules that the app offers. */
export const OFFERED: readonly Contestant[] = [
  { name: 'steady (default)', rule: STEADY },
  { name: 'steady, halving ahead', rule: STEADY_AHEAD },
  { name: 'cautious', rule: { kind: 'cautious' } },
  { name: 'sequential .7 against .9', rule: { kind: 'sequential' } },
  { name: 'block 9 of 10', rule: { kind: 'k-of-m', kept: 9, of: 10, window: 'blocks' } },
  { name: 'slide 5 of 5', rule: { kind: 'k-of-m', kept: 5, of: 5, window: 'sliding' } },
  { name: 'slide 4 of 5', rule: { kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' } },
];

/** Others of CRITERION.md, for comparison. */
export const KNOWN: readonly Contestant[] = [
  judged('3 up, 1 back', () => threeUpOneBack),
  amended('steady, split at 2nd return', splitAt(2)),
  amended('steady, never split', splitAt(0)),
  { name: 'steady, 3 in a row re-earn', rule: STEADY, trial: reEarnByThree },
];

// Attempts to beat steady that halves ahead, which was found this way itself: all of them halve as it does.

/** Neighbouring evidence: after a step that was passed without a lift, the first `n` kept are enough on the next, handling or not. */
function cleanArrival(n: number): () => Trial {
  const short = sliding(`first ${n} after a clean step`, [firstKept(n), ...NINE], STEADY_BACK);
  return () => {
    let clean = false;
    return {
      judge: (standing) => (clean ? short : usual(standing)),
      amend: (calls, before, rep) => {
        const { count, kept } = before.trials;
        for (const { kind } of calls) if (kind !== 'rest') clean = kind === 'raise' && count === kept && rep.outcome === 'kept';
        return calls;
      },
    };
  };
}

/** Neighbouring evidence by Bayes: the step below counts as a quarter of its trials; raise when the chance that p is at least .8 is `sure`. */
function neighbourPrior(sure: number): () => Trial {
  return () => {
    let prior = { kept: 0, of: 0 };
    const machine = (): Machine => ({
      name: 'posterior with the step below',
      start: NO_TRIALS,
      key: ({ last, count, kept }) => `${last.join()} ${kept}/${count}`,
      next: (state, kept) => posteriorAnswer(state, kept, prior, sure),
    });
    return {
      judge: machine,
      amend: (calls, before, rep) => {
        const raised = calls.some(({ kind }) => kind === 'raise');
        const moved = calls.some(({ kind }) => kind === 'split' || kind === 'return');
        const { count, kept } = before.trials;
        const all = { kept: kept + Number(rep.outcome === 'kept'), of: count + 1 };
        if (raised) prior = { kept: Math.floor(all.kept / 4), of: Math.floor(all.of / 4) };
        if (moved) prior = { kept: 0, of: 0 };
        return calls;
      },
    };
  };
}

function posteriorAnswer(state: Trials, kept: boolean, prior: { kept: number; of: number }, sure: number): Answer<Trials> {
  const trials = { last: [...state.last, kept].slice(-10), count: state.count + 1, kept: state.kept + Number(kept) };
  const because: Reason = { kind: 'kept-of-last', kept: trials.kept, of: trials.count };
  const chance = chanceAtLeast(0.8, trials.kept + prior.kept, trials.count + prior.of);
  if (kept && chance >= sure) return { verdict: 'raise', because, state: NO_TRIALS };
  if (STEADY_BACK.some(({ found }) => found(trials))) return { verdict: 'return', because, state: NO_TRIALS };
  return { verdict: 'stay', because, state: trials };
}

/** Holds that are looked back on for the next duration. */
const LATEST_HOLDS = 40;

/** Hold times choose the next duration: the longest step that the survival curve (Kaplan-Meier) still gives a share of `atLeast`. */
function bySurvival(atLeast: number): () => Trial {
  return () => {
    const holds: Hold[] = [];
    return {
      amend: (calls, before, rep) => {
        const step = stepOf(before);
        if (isTrial(rep) && step.kind === 'duration')
          holds.push({ heldForS: rep.heldForS, end: rep.outcome === 'lifted' ? 'lifted' : 'marked' });
        const curve = holdCurve(holds.slice(-LATEST_HOLDS));
        return calls.map((call) =>
          call.kind === 'raise' ? farther(call, before, (s) => (survivalAt(curve, s) ?? 0) >= atLeast) : call,
        );
      },
    };
  };
}

/** The next duration step that was not shown to last already. */
function farther(call: Call, { steps }: Standing, lasts: (holdForS: number) => boolean): Call {
  // A raise by half is careful for a reason of its own.
  if (call.inserted) return call;
  const from = indexOfStep(steps, call.toStepId);
  const next = steps.findIndex((step, i) => i >= from && !(step.kind === 'duration' && lasts(step.holdForS)));
  const to = steps[Math.max(from, next)];
  return to ? { ...call, toStepId: to.id } : call;
}

/** A Weibull curve of the shape found in the holds, fitted by likelihood on a grid, chooses the next duration. */
function byWeibull(atLeast: number): () => Trial {
  return () => {
    const holds: Hold[] = [];
    return {
      amend: (calls, before, rep) => {
        const step = stepOf(before);
        if (isTrial(rep) && step.kind === 'duration')
          holds.push({ heldForS: rep.heldForS, end: rep.outcome === 'lifted' ? 'lifted' : 'marked' });
        if (!calls.some(({ kind }) => kind === 'raise')) return calls;
        const survival = weibull(holds.slice(-LATEST_HOLDS));
        return calls.map((call) => (call.kind === 'raise' ? farther(call, before, (s) => survival(s) >= atLeast) : call));
      },
    };
  };
}

/** Survival by the likeliest Weibull curve; one lift is added at the longest hold, so that no lifts do not mean for ever. */
function weibull(holds: readonly Hold[]): (s: number) => number {
  const longest = Math.max(0.5, ...holds.map(({ heldForS }) => heldForS));
  const lifts = [...holds.filter(({ end }) => end === 'lifted').map(({ heldForS }) => Math.max(0.1, heldForS)), longest];
  const times = [...holds.map(({ heldForS }) => Math.max(0.1, heldForS)), longest];
  let best = { score: Number.NEGATIVE_INFINITY, shape: 1, rate: 1 };
  for (const shape of [0.7, 1, 1.5, 2, 3]) {
    const rate = lifts.length / times.reduce((sum, t) => sum + t ** shape, 0);
    const score = lifts.length * Math.log(shape * rate) + (shape - 1) * lifts.reduce((sum, t) => sum + Math.log(t), 0);
    if (score > best.score) best = { score, shape, rate };
  }
  return (s) => Math.exp(-best.rate * s ** best.shape);
}

/** Smarter splits: where `needed` of the last `of` steps had to be returned from, the next new step is met through its half at once. */
const splitAhead =
  (needed: number, of: number): NonNullable<Trial['amend']> =>
  (calls, before) =>
    calls
      .map(unahead)
      .map((call) => (call.kind === 'raise' && returnedFrom(before, of) >= needed ? throughHalf(call, before) : call));

/** How many of the `of` whole steps up to this one were ever returned from. */
function returnedFrom({ steps, stepId, returns }: Standing, of: number): number {
  const whole = steps.slice(0, indexOfStep(steps, stepId) + 1).filter(({ halfOf }) => !halfOf);
  return whole.slice(-of).filter(({ id }) => returns[id]).length;
}

function throughHalf(call: Call, before: Standing): Call {
  const { steps, passed, returns } = before;
  const above = steps[indexOfStep(steps, call.toStepId)];
  if (!above || stepOf(before).halfOf || above.halfOf || passed.includes(above.id) || returns[above.id]) return call;
  const half = freshHalf(steps, above);
  return half ? { ...call, toStepId: half.id, inserted: half } : call;
}

const warmUps = (left: number): Contestant => ({
  name: left === 0 ? 'no warm-ups' : `${left} warm-up${left === 1 ? '' : 's'}`,
  rule: STEADY_AHEAD,
  trial: () => ({
    begin: (standing) => {
      if (!standing.warmUp) return standing;
      return left > 0
        ? { ...standing, warmUp: { ...standing.warmUp, left } }
        : { ...standing, stepId: standing.warmUp.toStepId, warmUp: null };
    },
  }),
});

/** The way back is also open when the very first trial on a step lifts, and with two lifts in three. */
const EARLY_BACK = [liftsRunning(2), liftsOfLast(2, 3), liftsOfLast(3, 5)];

const isDuration = (standing: Standing) => stepOf(standing).kind === 'duration';
const isHalf = (standing: Standing) => stepOf(standing).halfOf !== undefined;

const machines = {
  early5: sliding('first 5, early back', [firstKept(5), ...NINE], EARLY_BACK),
  early: sliding('nine, early back', NINE, EARLY_BACK),
  first4: sliding('first 4', [firstKept(4), ...NINE], STEADY_BACK),
  first5: sliding('first 5', [firstKept(5), ...NINE], STEADY_BACK),
  first6: sliding('first 6', [firstKept(6), ...NINE], STEADY_BACK),
  first7: sliding('first 7', [firstKept(7), ...NINE], STEADY_BACK),
  eight: sliding('eight straight or nine of ten', [keptRunning(8), ...NINE], STEADY_BACK),
  strict: sequentialRule({ kept: 8, lift: 35, raiseAt: 53, returnAt: -45 }),
};

const tried = (name: string, machineFor: (standing: Standing) => Machine) => judged(name, machineFor, STEADY_AHEAD);

export const CHALLENGERS: readonly Contestant[] = [
  { name: 'clean step below: first 5 anywhere', rule: STEADY_AHEAD, trial: cleanArrival(5) },
  { name: 'clean step below: first 7 anywhere', rule: STEADY_AHEAD, trial: cleanArrival(7) },
  { name: 'posterior .80 with a quarter of the step below', rule: STEADY_AHEAD, trial: neighbourPrior(0.8) },
  { name: 'posterior .85 with a quarter of the step below', rule: STEADY_AHEAD, trial: neighbourPrior(0.85) },
  { name: 'next duration by survival, .90', rule: STEADY_AHEAD, trial: bySurvival(0.9) },
  { name: 'next duration by Weibull, .90', rule: STEADY_AHEAD, trial: byWeibull(0.9) },
  { name: 'next duration by Weibull, .95', rule: STEADY_AHEAD, trial: byWeibull(0.95) },
  warmUps(0),
  warmUps(1),
  warmUps(3),
  amended('split at every return, nothing ahead', (calls) => calls.map(unahead)),
  amended('half ahead after 1 of the last 2', splitAhead(1, 2)),
  amended('half ahead after 2 of the last 4', splitAhead(2, 4)),
  amended('half ahead after 3 of the last 5', splitAhead(3, 5)),
  amended('half ahead always', splitAhead(0, 0)),
  tried('back on 2 lifts in 3', (standing) => (isDuration(standing) ? machines.early5 : machines.early)),
  tried('halves rise on the first 5', (standing) => (isHalf(standing) ? machines.first5 : usual(standing))),
  tried('halves get no short cut', (standing) => (isHalf(standing) ? machineOf(STEADY, 'handling') : usual(standing))),
  tried('durations on the first 4', (standing) => (isDuration(standing) ? machines.first4 : usual(standing))),
  tried('durations on the first 6', (standing) => (isDuration(standing) ? machines.first6 : usual(standing))),
  tried('durations on the first 7', (standing) => (isDuration(standing) ? machines.first7 : usual(standing))),
  tried('eight straight', (standing) => (isDuration(standing) ? usual(standing) : machines.eight)),
  tried('sequential, one kept more', () => machines.strict),
];
