/** Looks at one recording of a word: where the speech lies, how loud it is, and what is wrong with it. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { createResampler, HIGHEST_RATE_HZ, LOWEST_RATE_HZ } from './resample.ts';

export interface Take {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

export type TakeFault =
  | 'not-finite'
  | 'bad-rate'
  | 'too-short'
  | 'too-long'
  | 'too-quiet'
  | 'too-noisy'
  | 'clipped'
  | 'cut-off-start'
  | 'cut-off-end';

/** What can be told of one take alone; for live feedback while teaching. */
export interface TakeReport {
  /** Level of the speech, dB below full scale. */
  readonly levelDb: number;
  /** Level of what lies around the speech, dB; -Infinity when the recording is cut tight. */
  readonly noiseDb: number;
  /** Share of samples at full scale. */
  readonly clippedShare: number;
  readonly speechStartsAtS: number;
  readonly speechEndsAtS: number;
  readonly speechLengthS: number;
  readonly faults: readonly TakeFault[];
}

/** The speech of a take at 16 kHz, cut out, with its report. */
export interface CutTake {
  readonly report: TakeReport;
  /** From the first to the last sample of speech, at 16 kHz, as loud as it was. */
  readonly speech: Float32Array;
}

/** Levels are looked at every 5 ms. */
const CELL = 80;
const CELL_S = CELL / EAR_RATE_HZ;
/** What lies this far under the loudest cell is no longer the word, dB (weak final consonants lie some 25 dB down). */
const DROP_DB = 30;
/** With less than this before and after the word together, a take was cut tight and tells nothing of its room, s (tests/bench/ear.md, *Takes that are cut tight*). */
const SHORTEST_AROUND_S = 0.25;
/** Speech must stand this far out of what is around it, dB, to be found at all. */
const ABOVE_NOISE_DB = 8;
/** Pieces of a word may lie this far apart (a stop's closure lasts up to some 150 ms; Byrd 1993 gives means of 50 to 80). */
const LONGEST_CLOSURE_S = 0.2;
/** A piece shorter than this beside the word is a click or a breath. */
const SHORTEST_PIECE_S = 0.03;
/** Bounds of a word, s. Below, nothing can be told apart; above, it is a sentence. */
export const SHORTEST_WORD_S = 0.08;
export const LONGEST_WORD_S = 2.5;
/** Quieter than this is the microphone's own noise, dB. */
const QUIETEST_DB = -60;
const NOISY_DB = 10;
/** A room this loud drowns a word said at arm's length, dB (tried on made sounds, no source). */
export const DROWNING_DB = -40;
/** 600 tightly cut words of three speakers range over 8 dB and more, hiss over 1 to 2, a word 10 dB out of it over 6 (C). */
const FLAT_DB = 7;
/** So short it may be a whistle, cut tight; longer it is the room. */
const LONGEST_FLAT_S = 0.7;
const CLIPPED_SHARE = 0.01;
const FULL_SCALE = 0.99;

const toDb = (power: number): number => 10 * Math.log10(power + 1e-12);

/** The whole take at 16 kHz. */
export function at16kHz(take: Take): Float32Array {
  const resampler = createResampler(take.sampleRateHz);
  const body = resampler.push(take.samples).slice();
  const tail = resampler.flush();
  const whole = new Float32Array(body.length + tail.length);
  whole.set(body);
  whole.set(tail, body.length);
  return whole;
}

function cellLevels(samples: Float32Array): Float32Array {
  return Float32Array.from({ length: Math.floor(samples.length / CELL) }, (_, cell) => {
    let sum = 0;
    for (let i = cell * CELL; i < (cell + 1) * CELL; i++) sum += (samples[i] as number) ** 2;
    return toDb(sum / CELL);
  });
}

function percentile(values: Float32Array, share: number): number {
  const sorted = Float32Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NEGATIVE_INFINITY;
}

/**
 * The level under which a cell is not speech: out of what lies around the word, where anything does. In a tight cut the quiet tenth is the word's own
 * hiss and breath, and would cut it short.
 */
function speechBar(levels: Float32Array): number {
  const peak = levels.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const outOfRoom = Math.max(peak - DROP_DB, Math.min(percentile(levels, 0.1) + ABOVE_NOISE_DB, peak - 15));
  const first = levels.findIndex((level) => level >= outOfRoom);
  const last = levels.findLastIndex((level) => level >= outOfRoom);
  const aroundS = (levels.length - (last - first + 1)) * CELL_S;
  return aroundS < SHORTEST_AROUND_S ? peak - DROP_DB : outOfRoom;
}

interface Run {
  from: number;
  to: number;
}

function runsAbove(levels: Float32Array, bar: number): Run[] {
  const runs: Run[] = [];
  let open: Run | undefined;
  levels.forEach((level, cell) => {
    if (level < bar) open = undefined;
    else if (open) open.to = cell + 1;
    else {
      open = { from: cell, to: cell + 1 };
      runs.push(open);
    }
  });
  return runs;
}

function energyOf(levels: Float32Array, run: Run): number {
  let sum = 0;
  for (let cell = run.from; cell < run.to; cell++) sum += 10 ** ((levels[cell] as number) / 10);
  return sum;
}

/** The strongest run, and its neighbours as long as the gaps are no longer than a closure. */
function wordRun(levels: Float32Array, bar: number): Run | undefined {
  const runs = runsAbove(levels, bar).filter((run) => (run.to - run.from) * CELL_S >= SHORTEST_PIECE_S);
  const strongest = runs.reduce<Run | undefined>(
    (best, run) => (!best || energyOf(levels, run) > energyOf(levels, best) ? run : best),
    undefined,
  );
  if (!strongest) return undefined;
  const word = { ...strongest };
  const start = runs.indexOf(strongest);
  for (let i = start - 1; i >= 0 && (word.from - (runs[i] as Run).to) * CELL_S <= LONGEST_CLOSURE_S; i--)
    word.from = (runs[i] as Run).from;
  for (let i = start + 1; i < runs.length && ((runs[i] as Run).from - word.to) * CELL_S <= LONGEST_CLOSURE_S; i++)
    word.to = (runs[i] as Run).to;
  return word;
}

/** Mean power, dB below full scale. */
export function meanDb(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return samples.length === 0 ? Number.NEGATIVE_INFINITY : toDb(sum / samples.length);
}

const clippedShareOf = (samples: Float32Array): number =>
  samples.reduce((n, s) => n + (Math.abs(s) >= FULL_SCALE ? 1 : 0), 0) / Math.max(1, samples.length);

function faultsOf(report: Omit<TakeReport, 'faults'>): TakeFault[] {
  const faults: TakeFault[] = [];
  if (report.levelDb < QUIETEST_DB) faults.push('too-quiet');
  if (report.speechLengthS < SHORTEST_WORD_S) faults.push('too-short');
  if (report.speechLengthS > LONGEST_WORD_S) faults.push('too-long');
  if (report.clippedShare > CLIPPED_SHARE) faults.push('clipped');
  if (report.levelDb - report.noiseDb < NOISY_DB) faults.push('too-noisy');
  return faults;
}

/** Speech that touches the edge of a recording which has quiet at its other edge was begun too late or stopped too early. */
function cutOffFaults(word: Run, cells: number): TakeFault[] {
  const quietBefore = word.from * CELL_S;
  const quietAfter = (cells - word.to) * CELL_S;
  const faults: TakeFault[] = [];
  if (word.from === 0 && quietAfter > LONGEST_CLOSURE_S) faults.push('cut-off-start');
  if (word.to === cells && quietBefore > LONGEST_CLOSURE_S) faults.push('cut-off-end');
  return faults;
}

const NOTHING = {
  levelDb: Number.NEGATIVE_INFINITY,
  noiseDb: Number.NEGATIVE_INFINITY,
  clippedShare: 0,
  speechStartsAtS: 0,
  speechEndsAtS: 0,
  speechLengthS: 0,
};
const useless = (...faults: TakeFault[]): CutTake => ({ report: { ...NOTHING, faults }, speech: new Float32Array(0) });

/** Finds the word in a take. Faults are values; a take with `not-finite`, `bad-rate`, `too-short` or `too-quiet` cannot be used. */
export function cutTake(take: Take): CutTake {
  if (!take.samples.every(Number.isFinite)) return useless('not-finite');
  if (!(take.sampleRateHz >= LOWEST_RATE_HZ && take.sampleRateHz <= HIGHEST_RATE_HZ)) return useless('bad-rate');
  const samples = withoutOffset(at16kHz(take));
  const levels = cellLevels(samples);
  const word = wordRun(levels, speechBar(levels));
  const isFlat = word !== undefined && word.from === 0 && word.to === levels.length && !moves(levels);
  if (!word || (isFlat && levels.length * CELL_S > LONGEST_FLAT_S)) return useless(...nothingStandsOut(levels));
  const speech = samples.slice(word.from * CELL, word.to * CELL);
  const around = new Float32Array([...levels.subarray(0, word.from), ...levels.subarray(word.to)]);
  const report = {
    levelDb: meanDb(speech),
    noiseDb: around.length * CELL_S < 0.1 ? Number.NEGATIVE_INFINITY : percentile(around, 0.5),
    clippedShare: clippedShareOf(take.samples),
    speechStartsAtS: word.from * CELL_S,
    speechEndsAtS: word.to * CELL_S,
    speechLengthS: (word.to - word.from) * CELL_S,
  };
  const faults = isFlat && !faultsOf(report).includes('too-quiet') ? (['too-noisy'] as const) : [];
  return { report: { ...report, faults: [...faults, ...faultsOf(report), ...cutOffFaults(word, levels.length)] }, speech };
}

/** Speech rises and falls; a room that drowns it does not. */
function moves(levels: Float32Array): boolean {
  return percentile(levels, 0.95) - percentile(levels, 0.1) > FLAT_DB;
}

/** Of a quiet room, or of one too loud for a word to stand out of it. */
function nothingStandsOut(levels: Float32Array): TakeFault[] {
  const roomDb = percentile(levels, 0.5);
  if (roomDb > DROWNING_DB) return ['too-noisy', 'too-short'];
  return roomDb < QUIETEST_DB ? ['too-quiet'] : ['too-short'];
}

function withoutOffset(samples: Float32Array): Float32Array {
  let sum = 0;
  for (const sample of samples) sum += sample;
  const offset = samples.length === 0 ? 0 : sum / samples.length;
  return samples.map((sample) => sample - offset);
}
