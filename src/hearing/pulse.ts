/** Finds hard, short sounds in a stream at 16 kHz: a pulse rises within two milliseconds out of quiet and is gone soon after. */
import { EAR_RATE_HZ } from '../core/ear-rate.ts';
import { createFourier } from './fourier.ts';

export interface Pulse {
  /** Seconds of the stream from its first sample. */
  readonly atS: number;
  /** Strongest millisecond, dB. */
  readonly peakDb: number;
  /** Loudest millisecond of the 150 ms before, without the last 4, dB. */
  readonly beforeDb: number;
  /** Time until it has fallen by 15 dB, ms. */
  readonly decayMs: number;
  /** Its colour: level of each band against their mean, dB. */
  readonly bandsDb: Float32Array;
}

export interface PulseFinder {
  /** @param samples 16 kHz, finite. */
  push(samples: Float32Array): readonly Pulse[];
  /** Loudest millisecond from `fromS` to `toS` of the stream, dB; looks back a second. */
  loudest(fromS: number, toS: number): number;
  /** Seconds of stream taken so far. */
  nowS(): number;
}

/** One cell is 1 ms: a click rises faster than that, speech does not (suggestion of the recipe: 1-2 ms). */
const CELL = EAR_RATE_HZ / 1000;
/** Cells that are remembered. */
const MEMORY = 1024;
/** Cells needed after the rise before a pulse can be described. */
const AHEAD = 30;
/** A rise in two cells, and over the mean of the 9 ms before, dB (tried on made and real sounds, no source). */
const RISE_DB = 9;
const OUT_DB = 14;
/** The pulse is over when it has fallen by this, dB. */
const FALLEN_DB = 15;
const BEFORE = 150;
/** The sound's own rise may take so many cells. */
const SKIP = 4;
/** After a pulse began nothing is a new one for so many cells. */
const DEAD = 8;
/** Quieter than this is the microphone's own noise, dB. */
const LOWEST_DB = -70;
const PRE_EMPHASIS = 0.97;
/** Edges of the bands, Hz: some two thirds of an octave. */
const EDGES_HZ = [300, 600, 1_000, 1_600, 2_300, 3_200, 4_300, 5_800, 7_600];
const FRAME = 128;
const BIN_HZ = EAR_RATE_HZ / FRAME;
/** A band this far under the mean tells no more, dB. */
const BAND_FLOOR_DB = -24;

const toDb = (power: number): number => 10 * Math.log10(power + 1e-12);

/** Falls from 1 to 0: the beginning of a pulse counts most. */
const WINDOW = Float32Array.from({ length: FRAME }, (_, i) => 0.5 + 0.5 * Math.cos((Math.PI * i) / FRAME));

export function createPulseFinder(): PulseFinder {
  const fourier = createFourier(FRAME);
  const power = new Float32Array(FRAME / 2 + 1);
  const frame = new Float32Array(FRAME);
  const cells = new Float32Array(MEMORY).fill(toDb(0));
  const sound = new Float32Array(MEMORY * CELL);
  let previous = 0;
  let samples = 0;
  let energy = 0;
  let lastPulse = Number.NEGATIVE_INFINITY;

  const cell = (at: number): number => cells[((at % MEMORY) + MEMORY) % MEMORY] as number;

  function loudestCell(from: number, to: number): number {
    let loudest = toDb(0);
    for (let at = Math.max(from, 0); at < to; at++) loudest = Math.max(loudest, cell(at));
    return loudest;
  }

  function meanDb(from: number, to: number): number {
    let sum = 0;
    for (let at = from; at < to; at++) sum += 10 ** ((at < 0 ? toDb(0) : cell(at)) / 10);
    return toDb(sum / (to - from));
  }

  function isRise(at: number): boolean {
    if (at < lastPulse + DEAD) return false;
    const level = Math.max(cell(at), cell(at + 1));
    return level > LOWEST_DB && cell(at) - loudestCell(at - 3, at) > RISE_DB && level - meanDb(at - 10, at - 1) > OUT_DB;
  }

  function bandsOf(at: number): Float32Array {
    for (let i = 0; i < FRAME; i++) frame[i] = sound[(at * CELL + i) % sound.length] as number;
    fourier.power(frame, 0, WINDOW, power);
    const bands = Float32Array.from({ length: EDGES_HZ.length - 1 }, (_, b) => {
      let sum = 0;
      const to = Math.round((EDGES_HZ[b + 1] as number) / BIN_HZ);
      for (let bin = Math.round((EDGES_HZ[b] as number) / BIN_HZ); bin < to; bin++) sum += power[bin] as number;
      return toDb(sum);
    });
    const loudest = bands.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    const floored = bands.map((db) => Math.max(db - loudest, BAND_FLOOR_DB));
    const mean = floored.reduce((a, b) => a + b, 0) / floored.length;
    return floored.map((db) => db - mean);
  }

  function describe(at: number): Pulse {
    const peakDb = loudestCell(at, at + SKIP);
    let fallen = 1;
    while (fallen < AHEAD - 2 && loudestCell(at + fallen, at + fallen + 2) > peakDb - FALLEN_DB) fallen++;
    lastPulse = at;
    return {
      atS: (at * CELL) / EAR_RATE_HZ,
      peakDb,
      beforeDb: loudestCell(at - BEFORE, at - SKIP),
      decayMs: fallen,
      bandsDb: bandsOf(Math.max(0, at - 1)),
    };
  }

  return {
    push(block) {
      const found: Pulse[] = [];
      for (const sample of block) {
        const high = sample - PRE_EMPHASIS * previous;
        previous = sample;
        sound[samples % sound.length] = high;
        energy += high * high;
        samples++;
        if (samples % CELL > 0) continue;
        const now = samples / CELL - 1;
        cells[now % MEMORY] = toDb(energy / CELL);
        energy = 0;
        if (now >= AHEAD && isRise(now - AHEAD)) found.push(describe(now - AHEAD));
      }
      return found;
    },
    loudest: (fromS, toS) => loudestCell(Math.round(fromS * 1000), Math.min(Math.round(toS * 1000), Math.floor(samples / CELL))),
    nowS: () => samples / EAR_RATE_HZ,
  };
}
