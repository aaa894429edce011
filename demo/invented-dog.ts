/** An invented dog that learns, unlearns, tires, forgets between sessions and slips. It ranks rules; it says nothing about real dogs. */
import type { Step } from '../src/core/plan.ts';
import { between, type Chance, logNormal, normal } from './chance.ts';

/** What a dog is born with. Ease is in logits: 0 is even odds, 2.2 is 9 in 10. */
export interface Traits {
  /** Ease of a step that was mastered. */
  readonly mastered: number;
  /** [step of the plan]: how much harder it is than the mastered step below, logits; of the first: than mastered. */
  readonly rises: readonly number[];
  /** [step of the plan]: what share of its rise a half step in front of it takes; nobody halves exactly. */
  readonly halves: readonly number[];
  /** Share of what is missing to mastery that one kept rep teaches, at most of `MOST_MISSING`. */
  readonly learns: number;
  /** What one lift takes away, logits. */
  readonly unlearns: number;
  /** Share of a lesson that arrives at the steps next to it. */
  readonly spreads: number;
  /** Reps before it tires, and what each later rep costs, logits. */
  readonly freshReps: number;
  readonly tires: number;
  /** Rust of a day without practice, logits. */
  readonly rusts: number;
  /** Chance that it lifts for no reason of ours. */
  readonly slips: number;
}

/** What a whole population shares, as factors of the usual: a rule should not be best for one kind of dog alone. */
export interface Population {
  readonly name: string;
  readonly rises: number;
  readonly learns: number;
  readonly unlearns: number;
  readonly spreads: number;
  readonly tires: number;
}

const USUAL: Population = { name: 'usual', rises: 1, learns: 1, unlearns: 1, spreads: 1, tires: 1 };

export const POPULATIONS: readonly Population[] = [
  USUAL,
  { ...USUAL, name: 'sensitive: a lift costs half as much again', unlearns: 1.5 },
  { ...USUAL, name: 'slow: a kept rep teaches a third less', learns: 0.67 },
  { ...USUAL, name: 'steep: rises a fifth higher', rises: 1.2 },
  { ...USUAL, name: 'easy: rises a fifth lower', rises: 0.8 },
  { ...USUAL, name: 'narrow: nothing spreads to the next step', spreads: 0 },
  { ...USUAL, name: 'tiring: tires twice as fast', tires: 2 },
];

/** One dog of a population, from chance alone. */
export function bornBy(chance: Chance, steps: number, by: Population = USUAL): Traits {
  return {
    mastered: normal(chance, 3.5, 0.3),
    rises: Array.from({ length: steps }, (_, i) => by.rises * (i === 0 ? 0.5 : 1) * logNormal(chance, 1.2, 0.4)),
    learns: by.learns * Math.min(0.4, logNormal(chance, 0.055, 0.35)),
    unlearns: by.unlearns * Math.min(0.3, logNormal(chance, 0.095, 0.4)),
    spreads: by.spreads * between(chance, 0.1, 0.5),
    freshReps: between(chance, 8, 20),
    tires: by.tires * between(chance, 0, 0.06),
    rusts: between(chance, 0, 0.25),
    slips: between(chance, 0.005, 0.03),
    halves: Array.from({ length: steps }, () => between(chance, 0.3, 0.7)),
  };
}

/** What is not mastered below weighs so much on the step above. */
const LEANS = 0.8;
/** A hard step does not teach faster for being harder, logits. */
const MOST_MISSING = 1.5;
/** Rust is at most so much, and each rep leaves so much of it. */
const MOST_RUST = 1.5;
const RUST_LEFT = 0.75;
/** Share of all lessons that a day beyond a week takes away. */
const LOST_A_DAY = 0.01;

interface Known {
  readonly id: string;
  /** What is missing below weighs so much here. */
  leans: number;
  /** How much harder than the step below, logits. */
  rise: number;
  /** Share of the rise that a half step in front of it takes. */
  readonly half: number;
  /** What was learned here, logits. */
  learned: number;
}

export interface InventedDog {
  /** True chance to keep a rep on this step, rested and with no rust. */
  success(step: Step): number;
  /** The same after so many reps today. */
  successNow(step: Step, repsToday: number): number;
  /** A kept rep or a lift teaches. */
  learn(step: Step, kept: boolean): void;
  /** Days without practice. */
  wait(days: number): void;
  /** A half step was put in: the rise is shared between it and the step above. */
  meet(step: Step): void;
}

export function inventedDog(traits: Traits, steps: readonly Step[]): InventedDog {
  const known: Known[] = steps.map(({ id }, i) => ({
    id,
    leans: LEANS,
    rise: traits.rises[i] as number,
    half: traits.halves[i] as number,
    learned: 0,
  }));
  let rust = 0;
  const success = (step: Step, burden = 0) => (1 - traits.slips) / (1 + Math.exp(burden - easeOf(known, step.id, traits)));
  return {
    success: (step) => success(step),
    successNow: (step, reps) => success(step, traits.tires * Math.max(0, reps - traits.freshReps) + rust * RUST_LEFT ** reps),
    learn: (step, kept) => {
      const at = known.findIndex(({ id }) => id === step.id);
      const missing = Math.min(MOST_MISSING, traits.mastered - easeOf(known, step.id, traits));
      const lesson = kept ? traits.learns * Math.max(0, missing) : -traits.unlearns;
      teach(known[at], lesson);
      teach(known[at - 1], traits.spreads * lesson);
      teach(known[at + 1], traits.spreads * lesson);
    },
    wait: (days) => {
      rust = Math.min(MOST_RUST, traits.rusts * days);
      for (const each of known) each.learned *= (1 - LOST_A_DAY) ** Math.max(0, days - 7);
    },
    meet: (half) => {
      const at = known.findIndex(({ id }) => id === half.halfOf?.aboveId);
      const above = known[at];
      if (!above || known.some(({ id }) => id === half.id)) return;
      // Being put in teaches nothing: until the half is practised, the step above is as hard as it was.
      const leans = Math.sqrt(above.leans);
      const rise = above.rise * above.half;
      known.splice(at, 0, { id: half.id, leans, rise, half: above.half, learned: 0 });
      above.rise -= leans * rise;
      above.leans = leans;
    },
  };
}

/** Ease of a step: mastery, less its rise, less part of what is missing below, plus what was learned on it. */
function easeOf(known: readonly Known[], id: string, { mastered }: Traits): number {
  let missing = 0;
  for (const step of known) {
    missing = Math.max(0, step.leans * missing + step.rise - step.learned);
    if (step.id === id) return mastered - missing;
  }
  throw new Error(`invented dog: it never met step ${id}`);
}

/** A dog can be put off a step, but not without end. */
const WORST = -2;

function teach(step: Known | undefined, lesson: number): void {
  if (step) step.learned = Math.max(WORST, Math.min(step.rise + 1, step.learned + lesson));
}
