/**
 * Fits what the ear weighs besides a word's score, and tells what each speaker gets from a fit to the others.
 *
 *   npm run bench:ear -- --seeds 1,2,3 --digits rotate --snr 15 --cli none --keep FILE --candidates
 *   npm run bench:evidence -- FILE [FILE ...]
 *
 * Logistic regression with a ridge, by Newton's method (Hastie, Tibshirani & Friedman, Elements of Statistical Learning, 4.4.1 and 18.3.2).
 */
import { readFileSync } from 'node:fs';
import { TERMS, type Terms } from '../../src/hearing/evidence.ts';
import { mean } from '../../src/hearing/mean.ts';
import { near, type Span } from './near.ts';

interface Candidate extends Span {
  readonly word: string;
  readonly margin: number;
  readonly stranger: number;
  readonly apart: boolean;
  readonly buried: boolean;
  readonly mine: boolean;
  readonly terms: Terms | null;
}
interface Session {
  readonly setting: { readonly speaker: string; readonly snrDb: string };
  readonly truth: { readonly words: readonly (Span & { readonly word: string })[] };
  readonly heard: { readonly candidates?: readonly Candidate[] };
}
interface Row {
  readonly speaker: string;
  readonly snrDb: string;
  readonly values: readonly number[];
  readonly isWord: boolean;
}

const RIDGE = 3;
const ROUNDS = 30;
/** What is less like a word than this, widths of doubt, is not learnt from. */
const LEAST_MARGIN = -1.5;
const ODDS = [0, 0.75, 1.25, 1.75];

function rowsOf({ setting, truth, heard }: Session): Row[] {
  if (!heard.candidates)
    throw new Error('bench: a kept session has no candidates; run bench:ear with --candidates into another file');
  return heard.candidates.flatMap((one) => {
    if (!one.terms || !one.apart || one.buried || one.mine || one.margin - one.stranger <= LEAST_MARGIN) return [];
    const { terms } = one;
    const isWord = truth.words.some((said) => said.word === one.word && near(said, one));
    return [{ speaker: setting.speaker, snrDb: setting.snrDb, values: TERMS.map((term) => terms[term]), isWord }];
  });
}

/** Solves a symmetric positive definite system by elimination. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] as number]);
  const n = right.length;
  for (let k = 0; k < n; k++) {
    const pivot = rows[k] as number[];
    for (let i = k + 1; i < n; i++) {
      const row = rows[i] as number[];
      const factor = (row[k] as number) / (pivot[k] as number);
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - factor * (pivot[j] as number);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i] as number[];
    const known = x.reduce((sum, value, j) => (j > i ? sum + value * (row[j] as number) : sum), 0);
    x[i] = ((row[n] as number) - known) / (row[i] as number);
  }
  return x;
}

interface Fit {
  readonly constant: number;
  readonly weights: readonly number[];
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);

function fitTo(rows: readonly Row[]): Fit {
  const means = TERMS.map((_, k) => mean(rows.map(({ values }) => values[k] as number)));
  const spreads = TERMS.map(
    (_, k) => Math.sqrt(mean(rows.map(({ values }) => ((values[k] as number) - (means[k] as number)) ** 2))) + 1e-9,
  );
  const inputs = rows.map(({ values }) => [1, ...values.map((x, k) => (x - (means[k] as number)) / (spreads[k] as number))]);
  let w = new Array<number>(TERMS.length + 1).fill(0);
  for (let round = 0; round < ROUNDS; round++) {
    const shares = inputs.map((x) => 1 / (1 + Math.exp(-dot(w, x))));
    const ridge = (k: number): number => (k === 0 ? 0 : RIDGE);
    const slope = w.map(
      (value, k) =>
        rows.reduce((sum, { isWord }, i) => sum + ((shares[i] as number) - Number(isWord)) * (inputs[i]?.[k] as number), 0) +
        ridge(k) * value,
    );
    const curve = w.map((_, k) =>
      w.map((__, j) => {
        const sum = inputs.reduce(
          (s, x, i) => s + (shares[i] as number) * (1 - (shares[i] as number)) * (x[k] as number) * (x[j] as number),
          0,
        );
        return sum + (k === j ? ridge(k) : 0);
      }),
    );
    const step = solve(curve, slope);
    w = w.map((value, k) => value - (step[k] as number));
  }
  const weights = TERMS.map((_, k) => (w[k + 1] as number) / (spreads[k] as number));
  return { constant: (w[0] as number) - dot(weights, means), weights };
}

const tell = ({ constant, weights }: Fit): string =>
  [`constant ${constant.toFixed(3)}`, ...TERMS.map((term, k) => `${term} ${(weights[k] as number).toFixed(3)}`)].join(' · ');

const files = process.argv.slice(2);
if (files.length === 0) throw new Error('usage: npm run bench:evidence -- FILE [FILE ...], kept by bench:ear with --candidates');
const rows = files.flatMap((file) =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .flatMap((line) => rowsOf(JSON.parse(line) as Session)),
);
const speakers = [...new Set(rows.map(({ speaker }) => speaker))];
console.log(`${rows.length} stretches, ${rows.filter(({ isWord }) => isWord).length} of them words`);
console.log(`all: ${tell(fitTo(rows))}`);
const judged = speakers.flatMap((speaker) => {
  const others = fitTo(rows.filter((row) => row.speaker !== speaker));
  console.log(`without ${speaker}: ${tell(others)}`);
  return rows
    .filter((row) => row.speaker === speaker)
    .map((row) => ({ ...row, odds: others.constant + dot(others.weights, row.values) }));
});
console.log('\nstretches of words and others taken for words, each speaker by the fit to the others, at log odds over:');
console.log(`| speech over noise, dB | of words’ stretches | ${ODDS.join(' | ')} |\n|---|---|${ODDS.map(() => '---|').join('')}`);
for (const snrDb of [...new Set(judged.map((row) => row.snrDb))]) {
  const here = judged.filter((row) => row.snrDb === snrDb);
  const cells = ODDS.map((least) => {
    const over = here.filter(({ odds }) => odds > least);
    const words = over.filter(({ isWord }) => isWord).length;
    return `${words} + ${over.length - words}`;
  });
  console.log(`| ${snrDb} | ${here.filter(({ isWord }) => isWord).length} | ${cells.join(' | ')} |`);
}
