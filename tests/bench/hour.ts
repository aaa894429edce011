/**
 * An hour in one go: the ear listens to an hour of made-up room noise with a word at its beginning and at its end, then is handed an hour as a take
 * and an hour as a file.
 *
 *   npm run bench:hour -- [--minutes 60]
 *
 * It fails when a word comes out of noise, when a word is missed or is out of its time, when memory grows with the hour, or when the take is not
 * refused. Everything is made by code; the ear is the fused one.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { loadWeights } from '../../src/command/ear-weights.ts';
import { readWav } from '../../src/command/wav-in.ts';
import { enrol, inspectTake, type Model } from '../../src/hearing/enrol.ts';
import { createRecordingListener } from '../../src/hearing/recording.ts';
import { pinkNoise } from '../../src/hearing/room-noise.ts';
import { type GlideName, say } from '../hearing/sounds.ts';

const { values: flags } = parseArgs({ options: { minutes: { type: 'string', default: '60' } } });

const RATE_HZ = 16_000;
const LENGTH_S = 60 * Number(flags.minutes);
/** Noise is made ten seconds at a time, loud and soft by turns. */
const PIECE_S = 10;
const NOISE_GAINS = [0.002, 0.01, 0.03, 0.1] as const;
const WORDS_AT_S = [5, LENGTH_S - 5] as const;
/** Once the first minutes have warmed it up, memory may grow by no more than this, MB. */
const MOST_GROWTH_MB = 20;

const failures: string[] = [];
const check = (holds: boolean, what: string): void => {
  console.log(`${holds ? 'ok  ' : 'FAIL'} ${what}`);
  if (!holds) failures.push(what);
};

function modelWith(weights: Parameters<typeof enrol>[1]): Model {
  const takes = (name: GlideName) => [1, 2, 3, 4].map((seed) => ({ samples: say(name, seed), sampleRateHz: RATE_HZ }));
  const enrolled = enrol(
    { words: { hold: takes('hold'), mark: takes('mark'), lifted: takes('lifted') }, talk: [...takes('good'), ...takes('come')] },
    weights,
  );
  if (!enrolled.ok) throw new Error(`hour: ${JSON.stringify(enrolled.problems)}`);
  return enrolled.model;
}

/** Ten seconds of the hour. The quietest noise lies around the words. */
function piece(index: number): Float32Array {
  const fromS = index * PIECE_S;
  const wordAtS = WORDS_AT_S.find((atS) => atS >= fromS && atS < fromS + PIECE_S);
  const gain = wordAtS === undefined ? (NOISE_GAINS[index % NOISE_GAINS.length] as number) : NOISE_GAINS[0];
  const samples = pinkNoise(PIECE_S * RATE_HZ, 1 + index).map((x) => gain * x);
  if (wordAtS === undefined) return samples;
  const word = say('hold', 31);
  const at = Math.round((wordAtS - fromS) * RATE_HZ);
  for (let i = 0; i < word.length && at + i < samples.length; i++)
    samples[at + i] = (samples[at + i] as number) + (word[i] as number);
  return samples;
}

/** What is still held. Freed buffers are given back beside the program, so it is looked twice with a pause between. `external` counts buffers already. */
async function megabytes(): Promise<number> {
  for (let n = 0; n < 2; n++) {
    globalThis.gc?.();
    await setTimeout(200);
  }
  const { heapUsed, external } = process.memoryUsage();
  return (heapUsed + external) / 1e6;
}

async function listen(): Promise<void> {
  const loaded = loadWeights();
  if (!loaded.ok) throw new Error(`hour: no network weights: ${loaded.wrong}`);
  const model = modelWith({ weights: loaded.weights });
  const listener = createRecordingListener(model, { sampleRateHz: RATE_HZ, weights: loaded.weights, keep: { sound: true } });
  const heard: { word: string; startedAtS: number }[] = [];
  const pieces = LENGTH_S / PIECE_S;
  let unsure = 0;
  let warmMb = 0;
  const before = process.cpuUsage();
  for (let i = 0; i < pieces; i++) {
    for (const hearing of listener.push(piece(i))) {
      if (hearing.kind === 'word') heard.push({ word: hearing.word, startedAtS: hearing.startedAtS });
      else unsure++;
    }
    if (i === Math.min(30, Math.floor(pieces / 2))) warmMb = await megabytes();
  }
  const spent = process.cpuUsage(before);
  const grewMb = (await megabytes()) - warmMb;
  console.log(`${LENGTH_S} s of sound, processor ${((spent.user + spent.system) / 1e6).toFixed(0)} s, unsure ${unsure}`);
  const atTimes = heard.map(({ word, startedAtS }) => `${word} at ${startedAtS.toFixed(2)} s`).join(', ');
  const right = heard.length === 2 && heard.every((h, i) => Math.abs(h.startedAtS - (WORDS_AT_S[i] as number)) < 0.25);
  check(right, `the two words are heard at their time, and nothing else: ${atTimes}`);
  check(grewMb < MOST_GROWTH_MB, `memory after the first minutes grew by ${grewMb.toFixed(1)} MB`);
}

function anHourAsATake(): void {
  const samples = new Float32Array(LENGTH_S * RATE_HZ);
  for (let i = 0; i < LENGTH_S / PIECE_S; i++) samples.set(piece(i), i * PIECE_S * RATE_HZ);
  const { faults } = inspectTake({ samples, sampleRateHz: RATE_HZ });
  check(faults.length > 0, `as a take it is told what is wrong with it: ${faults.join(', ')}`);
  const enrolled = enrol({ words: { hold: [{ samples, sampleRateHz: RATE_HZ }] }, talk: [] });
  console.log(
    `     taught alone: ${enrolled.ok ? 'taken, with what is wrong with it told' : 'refused'} (${JSON.stringify(enrolled.problems)})`,
  );
}

/** 16-bit mono. */
function anHourAsAFile(): void {
  const folder = mkdtempSync(join(tmpdir(), 'hour-'));
  const bytes = 2 * LENGTH_S * RATE_HZ;
  const file = Buffer.alloc(44 + bytes);
  file.write('RIFF', 0);
  file.writeUInt32LE(36 + bytes, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20);
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(RATE_HZ, 24);
  file.writeUInt32LE(2 * RATE_HZ, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(bytes, 40);
  writeFileSync(join(folder, 'hour.wav'), file);
  const read = readWav(join(folder, 'hour.wav'));
  rmSync(folder, { recursive: true });
  check(read.ok && read.recording.samples.length === LENGTH_S * RATE_HZ, 'as a file it is read whole');
}

await listen();
anHourAsATake();
anHourAsAFile();
if (failures.length > 0) process.exit(1);
