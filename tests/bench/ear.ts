/**
 * Measures the ear on composed sessions: recall, false accepts by kind, reps, decision time, cost.
 *
 *   npm run bench:ear -- [--speakers jackson,nicolas,theo] [--seeds 1,2,3] [--snr 15] [--beats -10] [--takes 5] [--digits 257 | rotate]
 *                        [--no-talk] [--ear fused|cepstra] [--cli all|first|none] [--minutes 4] [--trace FILE] [--grid]
 *                        [--keep FILE] [--candidates] [--merge FILE,FILE]
 *
 * --keep writes every session to a file as it ends, one a line, and passes over those that stand there: a bench that was cut off goes on.
 * --candidates keeps with it what the ear thought about, for `npm run bench:evidence`.
 * --merge listens to nothing: it tells what the sessions in kept files gave together.
 * --seeds, --snr, --beats and --takes take lists; where any has more than one value a table has one line for each choice of the last three.
 * --grid stands for seeds 1 to 10, 20, 15, 10 and 5 dB and beats at -10 and 0 dB: 240 sessions, hours of work.
 */
import { execFileSync } from 'node:child_process';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { loadWeights } from '../../src/command/ear-weights.ts';
import { type HeardSession, hearTrack, teach } from '../../src/command/hear.ts';
import { readTeaching } from '../../src/command/teaching-in.ts';
import { readWav } from '../../src/command/wav-in.ts';
import { near } from './near.ts';

const { values: flags } = parseArgs({
  options: {
    speakers: { type: 'string', default: 'jackson,nicolas,theo' },
    seeds: { type: 'string', default: '1,2,3' },
    snr: { type: 'string', default: '15' },
    beats: { type: 'string', default: '-10' },
    takes: { type: 'string', default: '5' },
    digits: { type: 'string', default: '257' },
    minutes: { type: 'string', default: '4' },
    'no-talk': { type: 'boolean', default: false },
    ear: { type: 'string', default: 'fused' },
    cli: { type: 'string', default: 'first' },
    trace: { type: 'string' },
    grid: { type: 'boolean', default: false },
    keep: { type: 'string' },
    candidates: { type: 'boolean', default: false },
    merge: { type: 'string' },
  },
});
if (flags.grid) Object.assign(flags, { seeds: '1,2,3,4,5,6,7,8,9,10', snr: '20,15,10,5', beats: '-10,0' });

const here = dirname(fileURLToPath(import.meta.url));
const repo = join(here, '../..');
const speech = process.env.STILLBEAT_SPEECH ?? join(repo, '../shared/speech');

/** Triples of words for `--digits rotate`: chosen by seed, so that no figure hangs on one choice of words. */
const TRIPLES = ['257', '083', '194', '368', '916', '402', '519', '624', '785', '073', '841', '239', '650', '127', '498'];

interface Setting {
  readonly speaker: string;
  readonly seed: number;
  readonly snrDb: string;
  readonly beatsDb: string;
  readonly takes: string;
  readonly digits: string;
}

interface Truth {
  readonly lengthS: number;
  readonly words: readonly { word: string; startedAtS: number; endedAtS: number }[];
  readonly others: readonly { kind: string; startedAtS: number; endedAtS: number }[];
}

function settings(): Setting[] {
  const list = (text: string): string[] => text.split(',');
  const speakers = list(flags.speakers);
  const conditions = list(flags.takes).flatMap((takes) =>
    list(flags.beats).flatMap((beatsDb) => list(flags.snr).map((snrDb) => ({ takes, beatsDb, snrDb }))),
  );
  return conditions.flatMap((condition) =>
    speakers.flatMap((speaker, i) =>
      list(flags.seeds).map((seed) => {
        const digits =
          flags.digits === 'rotate' ? (TRIPLES[(Number(seed) * speakers.length + i) % TRIPLES.length] as string) : flags.digits;
        return { ...condition, speaker, seed: Number(seed), digits };
      }),
    ),
  );
}

function compose(setting: Setting, out: string): void {
  const [hold, mark, lifted] = setting.digits;
  const words = ['--hold', hold, '--mark', mark, '--lifted', lifted].map(String);
  const how = [
    '--speaker',
    setting.speaker,
    '--seed',
    String(setting.seed),
    `--snr=${setting.snrDb}`,
    `--beats=${setting.beatsDb}`,
  ];
  const size = ['--enrol', setting.takes, '--minutes', flags.minutes, '--out', out];
  execFileSync(process.execPath, [join(speech, 'compose.mjs'), ...words, ...how, ...size]);
}

function hearInProcess(folder: string): HeardSession & { readonly candidates?: readonly unknown[] } {
  const taught = readTeaching(join(folder, 'words'), flags['no-talk'] ? undefined : join(folder, 'talk'));
  const track = readWav(join(folder, 'track.wav'));
  if (!taught.ok || !track.ok) throw new Error(`bench: ${folder} cannot be read`);
  const loaded = flags.ear === 'cepstra' ? undefined : loadWeights();
  if (loaded && !loaded.ok) throw new Error(`bench: no network weights: ${loaded.wrong} (try --ear cepstra)`);
  const weights = loaded?.ok ? loaded.weights : undefined;
  const enrolled = teach(taught.teaching, weights);
  if (!enrolled.ok) throw new Error(`bench: ${folder}: ${JSON.stringify(enrolled.problems)}`);
  const lines: object[] = [];
  const heard = hearTrack(enrolled.model, track.recording, weights, (line) => lines.push(line as object));
  if (flags.trace !== undefined)
    for (const line of lines) appendFileSync(flags.trace, `${JSON.stringify({ folder, ...line })}\n`);
  const words = enrolled.model.words.map(({ word }) => word);
  const candidates = lines.map((line) => ({ ...line, word: words[(line as { word: number }).word] }));
  return flags.candidates ? { ...heard, candidates } : heard;
}

function hearByCommand(folder: string): HeardSession {
  const words = ['--words', join(folder, 'words')];
  const talk = flags['no-talk'] ? [] : ['--talk', join(folder, 'talk')];
  const args = ['run', '-s', 'listen', '--', ...words, ...talk, '--ear', flags.ear, '--json', join(folder, 'track.wav')];
  return JSON.parse(execFileSync('npm', args, { cwd: repo, encoding: 'utf8', maxBuffer: 64e6 })) as HeardSession;
}

type Kinds = Record<string, number>;

/** Heard words that no spoken word explains, by what was going on; the same rule as the scorer's. */
function falseAccepts(truth: Truth, heard: HeardSession): Kinds {
  const kinds: Kinds = {};
  const used = new Set<number>();
  for (const h of [...heard.words].sort((a, b) => a.decidedAtS - b.decidedAtS)) {
    const own = truth.words.findIndex((w, k) => !used.has(k) && w.word === h.word && near(w, h));
    if (own >= 0) {
      used.add(own);
      continue;
    }
    const swapped = truth.words.some((w) => w.word !== h.word && near(w, h));
    const kind = swapped ? 'swapped words' : (truth.others.find((o) => near(o, h))?.kind ?? 'noise');
    kinds[kind] = (kinds[kind] ?? 0) + 1;
  }
  return kinds;
}

function add(sum: Kinds, more: Kinds): void {
  for (const [kind, n] of Object.entries(more)) sum[kind] = (sum[kind] ?? 0) + n;
}

const said = (kinds: Kinds): string =>
  Object.entries(kinds)
    .map(([kind, n]) => `${n} ${kind}`)
    .join(', ') || 'none';

function score(pairs: readonly string[]): string[] {
  return execFileSync(process.execPath, [join(speech, 'score.mjs'), ...pairs], { encoding: 'utf8' })
    .trim()
    .split('\n');
}

/** What one choice of takes, noise and beats gave, all its sessions together. */
interface Group {
  readonly pairs: string[];
  readonly kinds: Kinds;
  hours: number;
  unsure: number;
}

const nameOf = ({ takes, snrDb, beatsDb }: Setting): string => `${takes} | ${snrDb} | ${beatsDb}`;

/** The scorer's sum in columns; never-heard words of the same speaker apart. */
function tableLine(name: string, { pairs, kinds, hours, unsure }: Group): string {
  const sum = score(pairs).at(-1) ?? '';
  const found = (pattern: RegExp): string => pattern.exec(sum)?.[1] ?? '?';
  const never = kinds['same speaker, never heard'] ?? 0;
  const columns = [
    name,
    `${pairs.length / 2}`,
    found(/recall ([\d.]+)/),
    `${found(/\((\d+) of/)} of ${found(/\(\d+ of (\d+)/)}`,
    found(/false accepts \d+ \(([\d.]+)/),
    (never / hours).toFixed(1),
    `${kinds['swapped words'] ?? 0}`,
    found(/reps right (\d+ of \d+)/),
    (unsure / hours).toFixed(0),
    `${found(/median (-?\d+)/)} / ${found(/p95 (-?\d+)/)}`,
    found(/real-time factor ([\d.]+)/),
  ];
  return `| ${columns.join(' | ')} |`;
}

const TABLE_HEAD = `
| takes | speech over noise, dB | beats, dB | sessions | recall | words | false accepts an hour | of them never-heard words | swapped | reps right | unsure an hour | decision median / p95, ms | real-time factor |
|---|---|---|---|---|---|---|---|---|---|---|---|---|`;

/** One session with its truth and what was heard of it: all that a table needs. */
interface Session {
  readonly setting: Setting;
  readonly truth: Truth;
  readonly heard: HeardSession;
}

const keptIn = (path: string): Session[] =>
  existsSync(path)
    ? readFileSync(path, 'utf8')
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => JSON.parse(line) as Session)
    : [];

function listenTo(setting: Setting, byCommand: boolean): Session {
  const folder = mkdtempSync(join(tmpdir(), 'ear-'));
  compose(setting, folder);
  const heard = byCommand ? hearByCommand(folder) : hearInProcess(folder);
  const truth = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8')) as Truth;
  rmSync(folder, { recursive: true });
  return { setting, truth, heard };
}

/** The scorer reads files. */
function written({ truth, heard }: Session, root: string, name: string): readonly [string, string] {
  const paths = [join(root, `${name}-truth.json`), join(root, `${name}-heard.json`)] as const;
  writeFileSync(paths[0], JSON.stringify(truth));
  writeFileSync(paths[1], JSON.stringify(heard));
  return paths;
}

function tellSession({ setting, heard }: Session, paths: readonly string[], kinds: Kinds): void {
  console.log(
    `${score(paths)[0]} · words ${setting.digits}, beats ${setting.beatsDb} dB, takes ${setting.takes} · false: ${said(kinds)} · unsure ${heard.unsure.length}`,
  );
}

function tellAll(sessions: readonly Session[], tellEach: boolean): void {
  const root = mkdtempSync(join(tmpdir(), 'ear-'));
  const all: Group = { pairs: [], kinds: {}, hours: 0, unsure: 0 };
  const offered: Kinds = {};
  const groups = new Map<string, Group>();
  sessions.forEach((session, i) => {
    const { setting, truth, heard } = session;
    const paths = written(session, root, String(i));
    const kinds = falseAccepts(truth, heard);
    for (const other of truth.others) add(offered, { [other.kind]: 1 });
    const group = groups.get(nameOf(setting)) ?? { pairs: [], kinds: {}, hours: 0, unsure: 0 };
    groups.set(nameOf(setting), group);
    for (const sum of [all, group]) {
      sum.pairs.push(...paths);
      add(sum.kinds, kinds);
      sum.hours += truth.lengthS / 3600;
      sum.unsure += heard.unsure.length;
    }
    if (tellEach) tellSession(session, paths, kinds);
  });
  const { pairs, kinds, hours, unsure } = all;
  console.log(`\nfalse accepts by kind in ${hours.toFixed(2)} h: ${said(kinds)}`);
  console.log(`unsure: ${unsure} (${(unsure / hours).toFixed(0)} an hour)`);
  console.log(`stretches of other talk: ${said(offered)}`);
  console.log(score(pairs).at(-1));
  if (groups.size > 1) console.log([TABLE_HEAD, ...[...groups].map(([name, group]) => tableLine(name, group))].join('\n'));
  rmSync(root, { recursive: true });
}

/** Every session that was wished for, told as it ends. */
function listenToAll(): Session[] {
  const { keep } = flags;
  const known = new Map(keptIn(keep ?? '').map((session) => [JSON.stringify(session.setting), session]));
  const root = mkdtempSync(join(tmpdir(), 'ear-'));
  const sessions = settings().map((setting, i) => {
    const before = known.get(JSON.stringify(setting));
    if (before) return before;
    const session = listenTo(setting, flags.cli === 'all' || (flags.cli === 'first' && i === 0));
    if (keep !== undefined) appendFileSync(keep, `${JSON.stringify(session)}\n`);
    tellSession(session, written(session, root, 'now'), falseAccepts(session.truth, session.heard));
    return session;
  });
  rmSync(root, { recursive: true });
  return sessions;
}

function bench(): void {
  if (!existsSync(join(speech, 'compose.mjs'))) {
    console.log(`skipped: the recordings are not at ${speech} (set STILLBEAT_SPEECH)`);
    return;
  }
  if (flags.merge === undefined) tellAll(listenToAll(), false);
  else tellAll(flags.merge.split(',').flatMap(keptIn), true);
}

bench();
