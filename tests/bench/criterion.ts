/**
 * Prints how the criterion rules fare on invented dogs, driven by the real engine, beside the figures of the specification.
 * node --import tsx tests/bench/criterion.ts [--dogs 2000] [--seed 1] [--challengers] [--populations]
 */
import { parseArgs } from 'node:util';
import { CHALLENGERS, type Contestant, KNOWN, OFFERED } from '../../demo/contestants.ts';
import { POPULATIONS, type Population } from '../../demo/invented-dog.ts';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import { type Outcome, simulate } from '../../demo/simulate.ts';

const { values } = parseArgs({
  options: {
    dogs: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '1' },
    challengers: { type: 'boolean', default: false },
    populations: { type: 'boolean', default: false },
    only: { type: 'string', default: '' },
  },
});
const dogs = wholeNumber('--dogs', values.dogs);
const seed = wholeNumber('--seed', values.seed);

/** Rows of CRITERION.md: the confirmed table where it has one, else the first. */
const PUBLISHED: Readonly<Record<string, string>> = {
  'steady (default)': '.973 548 78.6 .876 2.3% .88',
  cautious: '.964 641 75.0 .899 .8% .89',
  'sequential .7 against .9': '.941 578 82 .872 1.8% (first table)',
  'block 9 of 10': '.969 613 75.7 .893 .8% .89',
  'slide 5 of 5': '.958 539 102 .835 7.1% .81',
  'slide 4 of 5': '.883 625 162 .780 21.9% .68',
  '3 up, 1 back': '.969 539 80.7 .868 6.8% .80',
  'steady, split at 2nd return': '.965 557 88 .861 3.0% .86',
  'steady, never split': '.854 710 134 .844 2.5% .75',
  'steady, 3 in a row re-earn': '    –   –  102 (lifts alone)',
};

/** Measures on which a challenger must be no worse, and which way is better. */
const MEASURES: readonly (readonly [keyof Outcome, 1 | -1])[] = [
  ['reachTop', 1],
  ['reps', -1],
  ['lifts', -1],
  ['kept', 1],
  ['earlyRaises', -1],
  ['weakestStep', 1],
  ['fourLiftsRunning', -1],
];

const share = (value: number) => value.toFixed(3).replace(/^0/, '');
const percent = (value: number) => `${(100 * value).toFixed(1)}%`;

const COLUMNS: readonly (readonly [string, (outcome: Outcome) => string])[] = [
  ['top', ({ reachTop }) => share(reachTop)],
  ['reps', ({ reps }) => reps.toFixed(0)],
  ['lifts', ({ lifts }) => lifts.toFixed(1)],
  ['kept', ({ kept }) => share(kept)],
  ['early', ({ earlyRaises }) => percent(earlyRaises)],
  ['weakest', ({ weakestStep }) => share(weakestStep)],
  ['4+lifts', ({ fourLiftsRunning }) => share(fourLiftsRunning)],
  ['p<.7', ({ hardReps }) => hardReps.toFixed(0)],
  ['sessions', ({ sessions }) => sessions.toFixed(0)],
  ['splits', ({ splits }) => splits.toFixed(1)],
  ['alarm', ({ alarmed }) => share(alarmed)],
];

const began = performance.now();
const contestants = [...OFFERED, ...KNOWN, ...(values.challengers ? CHALLENGERS : [])].filter(
  ({ name }, i) => i === 0 || name.includes(values.only),
);
for (const population of values.populations ? POPULATIONS : POPULATIONS.slice(0, 1)) contest(population);
console.log(`\n${((performance.now() - began) / 1000).toFixed(0)} s.`);

function contest(population: Population): void {
  console.log(
    `\n${dogs} invented dogs, ${population.name}; ${LONG_LADDER.steps.length} steps; seeds ${seed} to ${seed + dogs - 1}.\n`,
  );
  console.log(
    row(
      'rule',
      COLUMNS.map(([head]) => head),
      'CRITERION.md: top reps lifts kept early weakest',
    ),
  );
  const first = run(OFFERED[0] as Contestant, population);
  print('steady (default)', first, first);
  for (const contestant of contestants.slice(1)) print(contestant.name, run(contestant, population), first);
}

function run({ name: _, ...contestant }: Contestant, population: Population): Outcome {
  return simulate({ plan: LONG_LADDER, population, ...contestant }, dogs, seed);
}

function print(name: string, outcome: Outcome, first: Outcome): void {
  const better = MEASURES.filter(([key, sign]) => sign * (outcome[key] - first[key]) > 0).length;
  const note = PUBLISHED[name] ?? `better than the default on ${better} of ${MEASURES.length}`;
  console.log(
    row(
      name,
      COLUMNS.map(([, of]) => of(outcome)),
      note,
    ),
  );
}

function row(name: string, cells: readonly string[], note: string): string {
  return `${name.padEnd(52)}${cells.map((cell) => cell.padStart(8)).join('')}   ${note}`;
}

function wholeNumber(name: string, text: string): number {
  const number = Number(text);
  if (!Number.isSafeInteger(number) || number < 1)
    throw new RangeError(`${name}: expected a whole number of at least 1, got ${text}`);
  return number;
}
