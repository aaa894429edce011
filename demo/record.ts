/**
 * Makes the demo's recordings with a synthetic voice (espeak-ng): takes of three words, ordinary talk, and one short session
 * with its truth. Run it by hand (`npm run demo:record`) on a machine with espeak-ng; the results are committed.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { wavBytes } from '../sounds/wav.ts';

const RATE_HZ = 16_000;
const HERE = join(dirname(fileURLToPath(import.meta.url)), 'recordings');

/** What the invented handler says for each word: other vowels, other lengths. */
const SAYINGS: Readonly<Record<string, string>> = { hold: 'settle', mark: 'yes', lifted: 'oh up' };
const TALK = ['Pixel', 'good girl', 'over', 'where is your mat', 'wait a moment', 'what a nice day'];

/** A voice never says a word twice alike: speed in words a minute and pitch (espeak-ng, 0 to 99). */
const VOICES = [
  [150, 45],
  [165, 52],
  [140, 40],
  [158, 48],
  [172, 55],
  [146, 43],
] as const;

interface Said {
  readonly text: string;
  readonly atS: number;
  readonly voice: number;
}

/** Reps of the session: when the hold is said, how long until the end, how it ends. */
const REPS: readonly (readonly [number, number, 'mark' | 'lifted'])[] = [
  [1, 0.9, 'mark'],
  [4.2, 0.8, 'mark'],
  [7.4, 0.9, 'mark'],
  [12.2, 0.8, 'mark'],
  [15.4, 0.9, 'mark'],
  // The first step is earned; from here on a second is wanted.
  [19.6, 1.3, 'mark'],
  [23.2, 1.2, 'mark'],
  [28.4, 0.9, 'lifted'],
  [32, 0.9, 'lifted'],
  // Two lifts running: half a second now.
  [36.6, 0.9, 'mark'],
  [40, 0.9, 'mark'],
];
const CHATTER: readonly Said[] = [
  { text: 'good girl', atS: 9.6, voice: 3 },
  { text: 'Pixel', atS: 11, voice: 4 },
  { text: 'what a nice day', atS: 25.6, voice: 5 },
  { text: 'over', atS: 34.6, voice: 3 },
];
const LENGTH_S = 43;
/** Faint steady hiss, so that the room is a room; rms re full scale. */
const HISS = 0.0015;

function speak(text: string, voice: number): Float32Array {
  const [speed, pitch] = VOICES[voice % VOICES.length] as (typeof VOICES)[number];
  const bytes = execFileSync('espeak-ng', ['-v', 'en', '-s', String(speed), '-p', String(pitch), '--stdout', text]);
  return toEarRate(samplesOf(bytes), bytes.readUInt32LE(24));
}

function samplesOf(bytes: Buffer): Float32Array {
  const data = bytes.subarray(44);
  return Float32Array.from({ length: data.length >> 1 }, (_, i) => data.readInt16LE(2 * i) / 32768);
}

/** Linear interpolation: the synthetic voice has nothing above 8 kHz worth keeping. */
function toEarRate(samples: Float32Array, fromHz: number): Float32Array {
  const ratio = fromHz / RATE_HZ;
  return Float32Array.from({ length: Math.floor(samples.length / ratio) }, (_, i) => {
    const at = Math.floor(i * ratio);
    const part = i * ratio - at;
    return 0.4 * ((samples[at] ?? 0) * (1 - part) + (samples[at + 1] ?? 0) * part);
  });
}

function save(path: string, samples: Float32Array): void {
  mkdirSync(dirname(join(HERE, path)), { recursive: true });
  writeFileSync(join(HERE, path), wavBytes(withHiss(samples), RATE_HZ));
}

function withHiss(samples: Float32Array): Float32Array {
  let seed = 1;
  return samples.map((x) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return x + (seed / 2 ** 31 - 1) * HISS * Math.sqrt(3);
  });
}

function padded(samples: Float32Array, padS = 0.25): Float32Array {
  const pad = Math.round(padS * RATE_HZ);
  const whole = new Float32Array(samples.length + 2 * pad);
  whole.set(samples, pad);
  return whole;
}

function trimmed(samples: Float32Array): Float32Array {
  const loud = (x: number) => Math.abs(x) > 0.01;
  const from = samples.findIndex(loud);
  const to = samples.findLastIndex(loud);
  return from < 0 ? samples : samples.slice(from, to + 1);
}

function recordTakes(): void {
  for (const [word, text] of Object.entries(SAYINGS))
    for (const voice of [0, 1, 2]) save(join('words', word, `${voice + 1}.wav`), padded(trimmed(speak(text, voice))));
  for (const [i, text] of TALK.entries())
    for (const voice of [0, 1]) save(join('talk', `${2 * i + voice + 1}.wav`), padded(trimmed(speak(text, voice))));
}

function recordSession(): void {
  const track = new Float32Array(LENGTH_S * RATE_HZ);
  const put = (text: string, atS: number, voice: number): number => {
    const said = trimmed(speak(text, voice));
    track.set(said, Math.round(atS * RATE_HZ));
    return atS + said.length / RATE_HZ;
  };
  const words = [];
  const reps = [];
  for (const [i, [holdAtS, heldS, outcome]] of REPS.entries()) {
    const endAtS = holdAtS + heldS;
    words.push({ word: 'hold', startedAtS: holdAtS, endedAtS: put(SAYINGS.hold ?? '', holdAtS, 3 + (i % 3)) });
    words.push({ word: outcome, startedAtS: endAtS, endedAtS: put(SAYINGS[outcome] ?? '', endAtS, 4 + (i % 2)) });
    reps.push({ holdAtS, endAtS, heldS, outcome });
  }
  for (const { text, atS, voice } of CHATTER) put(text, atS, voice);
  save('session.wav', track);
  const truth = { sampleRateHz: RATE_HZ, lengthS: LENGTH_S, speaker: 'synthetic', seed: 0, snrDb: 99, words, reps, others: [] };
  writeFileSync(join(HERE, 'truth.json'), `${JSON.stringify(truth, null, 1)}\n`);
}

rmSync(HERE, { recursive: true, force: true });
recordTakes();
recordSession();
console.log(`demo: recordings written to ${HERE}`);
