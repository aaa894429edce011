/**
 * A learning curve: one round of corrections on a first session, and what it does to a second one.
 *
 *   npm run bench:learn -- [--speakers jackson,nicolas,theo] [--seeds 1,2,3] [--snr 10] [--takes 3] [--minutes 6] [--digits rotate | 257] [--ear fused|cepstra]
 *
 * The two sessions share no recording: of each word the first takes are taught and said in the first session, the others are said in the
 * second; the same with other people's talk. What is corrected is told by the truth of the first session.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { loadWeights } from '../../src/command/ear-weights.ts';
import { readTeaching } from '../../src/command/teaching-in.ts';
import { readWav } from '../../src/command/wav-in.ts';
import { expectedOf } from '../../src/core/expected.ts';
import { enrol, type Model, type Teaching } from '../../src/hearing/enrol.ts';
import { type Change, compareModels, type Known, type Learned } from '../../src/hearing/learn.ts';
import { createListener, type Hearing } from '../../src/hearing/listen.ts';
import type { NetworkWeights } from '../../src/hearing/weights/shape.ts';
import { near, type Span } from './near.ts';

const { values: flags } = parseArgs({
  options: {
    speakers: { type: 'string', default: 'jackson,nicolas,theo' },
    seeds: { type: 'string', default: '1,2,3' },
    snr: { type: 'string', default: '10' },
    takes: { type: 'string', default: '3' },
    minutes: { type: 'string', default: '6' },
    digits: { type: 'string', default: 'rotate' },
    ear: { type: 'string', default: 'fused' },
  },
});

const speech = process.env.STILLBEAT_SPEECH ?? join(dirname(fileURLToPath(import.meta.url)), '../../../shared/speech');
const TRIPLES = ['257', '083', '194', '368', '916', '402', '519', '624', '785'];

interface Truth {
  readonly lengthS: number;
  readonly words: readonly (Span & { readonly word: string })[];
}

const root = mkdtempSync(join(tmpdir(), 'learn-'));
const byNumber = (a: string, b: string) => a.localeCompare(b, 'en', { numeric: true });

/** The recordings, the even or the odd half of each folder, where `compose.mjs` finds them. */
function half(speaker: string, which: 0 | 1): string {
  const out = join(root, `${speaker}-${which}`);
  if (existsSync(out)) return out;
  const link = (from: string, to: string, all: boolean) => {
    mkdirSync(to, { recursive: true });
    readdirSync(from)
      .filter((name) => name.endsWith('.wav'))
      .sort(byNumber)
      .filter((_, i) => all || i % 2 === which)
      .forEach((name) => {
        symlinkSync(join(from, name), join(to, name));
      });
  };
  for (const digit of readdirSync(join(speech, 'words', speaker)))
    link(join(speech, 'words', speaker, digit), join(out, 'words', speaker, digit), false);
  link(join(speech, 'talk'), join(out, 'talk'), false);
  link(join(speech, 'noise'), join(out, 'noise'), true);
  return out;
}

function compose(speaker: string, seed: number, digits: string, which: 0 | 1): string {
  const out = join(root, `${speaker}-${seed}-${which}`);
  const [hold, mark, lifted] = digits;
  const words = ['--hold', hold, '--mark', mark, '--lifted', lifted].map(String);
  const how = ['--speaker', speaker, '--seed', String(seed), `--snr=${flags.snr}`, '--beats=-10', '--root', half(speaker, which)];
  const size = ['--enrol', flags.takes, '--minutes', flags.minutes, '--out', out];
  execFileSync(process.execPath, [join(speech, 'compose.mjs'), ...words, ...how, ...size]);
  return out;
}

function hear(folder: string, model: Model, weights: NetworkWeights | undefined): readonly Hearing[] {
  const track = readWav(join(folder, 'track.wav'));
  if (!track.ok) throw new Error(`learn: ${folder} cannot be read`);
  const { samples, sampleRateHz } = track.recording;
  const listener = createListener(model, { sampleRateHz, weights, keep: { sound: false } });
  const words = model.words.map(({ word }) => word);
  listener.expect(expectedOf(words, false));
  const heard: Hearing[] = [];
  for (let at = 0; at < samples.length; at += 320) {
    for (const hearing of listener.push(samples.subarray(at, at + 320))) {
      heard.push(hearing);
      if (hearing.kind === 'word') listener.expect(expectedOf(words, hearing.word === 'hold'));
    }
  }
  return [...heard, ...listener.flush()];
}

const truthOf = (folder: string): Truth => JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8')) as Truth;
const wordAt = (truth: Truth, hearing: Span): string | null => truth.words.find((word) => near(word, hearing))?.word ?? null;

interface Figures {
  words: number;
  found: number;
  wrong: number;
  unsure: number;
  hours: number;
}
const NOUGHT: Figures = { words: 0, found: 0, wrong: 0, unsure: 0, hours: 0 };

function figures(truth: Truth, heard: readonly Hearing[]): Figures {
  const used = new Set<number>();
  let wrong = 0;
  for (const hearing of heard) {
    if (hearing.kind !== 'word') continue;
    const own = truth.words.findIndex((w, i) => !used.has(i) && w.word === hearing.word && near(w, hearing));
    if (own >= 0) used.add(own);
    else wrong++;
  }
  const unsure = heard.filter(({ kind }) => kind === 'unsure').length;
  return { words: truth.words.length, found: used.size, wrong, unsure, hours: truth.lengthS / 3600 };
}

function plus(a: Figures, b: Figures): Figures {
  return Object.fromEntries(
    Object.keys(NOUGHT).map((key) => [key, a[key as keyof Figures] + b[key as keyof Figures]]),
  ) as unknown as Figures;
}

/** What a handler who corrects everything would leave behind. */
function correctionsOf(truth: Truth, heard: readonly Hearing[], session = ''): (Known & { readonly wasRight: boolean })[] {
  return heard.flatMap((hearing, i) => {
    if (!hearing.kept) return [];
    const is = wordAt(truth, hearing);
    const wasRight = hearing.kind === 'word' && hearing.word === is;
    const heardAs = hearing.kind === 'word' ? hearing.word : null;
    const { word: nearest, confidence } = hearing.kind === 'word' ? hearing : (hearing.nearest[0] ?? { word: '', confidence: 0 });
    const kept = { of: `${session}${i}`, stretch: hearing.kept.stretch };
    return [{ ...kept, heard: heardAs, nearest, confidence, truth: is, wasRight }];
  });
}

const learnedFrom = (corrections: readonly Known[]): readonly Learned[] =>
  corrections.map(({ of, stretch, truth }) => ({ of, stretch, word: truth ?? undefined }));

function modelOf(teaching: Teaching, weights: NetworkWeights | undefined): Model {
  const enrolled = enrol(teaching, { weights });
  if (!enrolled.ok) throw new Error(`learn: ${JSON.stringify(enrolled.problems)}`);
  return enrolled.model;
}

type Sums = { -readonly [key in keyof Change]: number };
const UNCHANGED: Sums = { falseBefore: 0, falseAfter: 0, lost: 0, won: 0, words: 0, others: 0, leftOut: 0 };
function add(to: Sums, change: Change): void {
  for (const key of Object.keys(to) as (keyof Sums)[]) to[key] += change[key];
}
const say = (c: Sums): string =>
  `false triggers ${c.falseBefore} → ${c.falseAfter}, words lost ${c.lost}, won ${c.won} (${c.words} words, ${c.others} others, ${c.leftOut} left out)`;

const ROWS = ['as taught', 'wrong ones corrected', 'right ones confirmed too'] as const;

function bench(): void {
  if (!existsSync(join(speech, 'compose.mjs'))) {
    console.log(`skipped: the recordings are not at ${speech} (set STILLBEAT_SPEECH)`);
    return;
  }
  const loaded = flags.ear === 'cepstra' ? undefined : loadWeights();
  if (loaded && !loaded.ok) throw new Error(`learn: ${loaded.wrong}`);
  const weights = loaded?.ok ? loaded.weights : undefined;
  const sums: Figures[] = ROWS.map(() => NOUGHT);
  const [changes, foretold] = [{ ...UNCHANGED }, { ...UNCHANGED }];
  const speakers = flags.speakers.split(',');
  for (const [s, speaker] of speakers.entries())
    for (const seed of flags.seeds.split(',').map(Number)) {
      const digits =
        flags.digits === 'rotate' ? (TRIPLES[(seed * speakers.length + s) % TRIPLES.length] as string) : flags.digits;
      const [first, second] = [compose(speaker, seed, digits, 0), compose(speaker, seed, digits, 1)];
      const taught = readTeaching(join(first, 'words'), join(first, 'talk'));
      if (!taught.ok) throw new Error(`learn: ${first} cannot be read`);
      const before = modelOf(taught.teaching, weights);
      const corrected = correctionsOf(truthOf(first), hear(first, before, weights));
      const wrongOnly = learnedFrom(corrected.filter(({ wasRight }) => !wasRight));
      const after = [wrongOnly, learnedFrom(corrected)].map((learned) => modelOf({ ...taught.teaching, learned }, weights));
      const again = [before, ...after].map((model) => hear(second, model, weights));
      const lines = again.map((heard, row) => {
        const of = figures(truthOf(second), heard);
        sums[row] = plus(sums[row] as Figures, of);
        return `${of.found}/${of.words} found, ${of.wrong} wrong, ${of.unsure} unsure`;
      });
      add(changes, compareModels(before, after[1] as Model, corrected));
      const keptOfSecond = correctionsOf(truthOf(second), again[0] as readonly Hearing[], 'second:');
      add(foretold, compareModels(before, after[1] as Model, keptOfSecond));
      console.log(`${speaker} ${seed} (words ${digits}, ${corrected.length} corrections): ${lines.join(' → ')}`);
    }
  console.log(`\nsecond session, ${flags.snr} dB, ${flags.takes} takes, ${flags.ear}:`);
  console.log('| corrections of the first session | recall | false accepts an hour | unsure an hour |\n|---|---|---|---|');
  ROWS.forEach((name, row) => {
    const { words, found, wrong, unsure, hours } = sums[row] as Figures;
    console.log(
      `| ${name} | ${(found / words).toFixed(3)} (${found} of ${words}) | ${(wrong / hours).toFixed(1)} (${wrong}) | ${(unsure / hours).toFixed(0)} |`,
    );
  });
  console.log(`first session, each stretch held out: ${say(changes)}`);
  console.log(`second session, foretold from what the ear as taught kept of it, to hold against the table: ${say(foretold)}`);
}

bench();
