/**
 * `npm run bench:clicks`: what a taught clicker and a taught click of the tongue are mixed up with. All sounds but the app's own beats are made by code
 * (tests/hearing/clicks-made.ts), so it ranks the kinds of mistakes; real clickers may do worse. Real talk is added where ../shared lies beside.
 */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readWav } from '../../src/command/wav-in.ts';
import { enrol } from '../../src/hearing/enrol.ts';
import { createListener } from '../../src/hearing/listen.ts';
import type { Model } from '../../src/hearing/model.ts';
import { at16kHz, type Take } from '../../src/hearing/take.ts';
import {
  bark,
  type Chance,
  chanceFrom,
  clap,
  clicker,
  dish,
  inRoom,
  knock,
  latch,
  rattle,
  tongue,
  track,
} from '../hearing/clicks-made.ts';

type Maker = (chance: Chance) => Float32Array;

/** Handlers, each with a clicker and a mouth of their own. */
const HANDLERS = 12;
const REPEATS = 10;
const TAKES = 5;
/** Peaks while practising, of full scale; taught at .3. */
const PEAKS = [0.06, 0.25] as const;
const ROOT = join(import.meta.dirname, '../..');

const beat = wav(join(ROOT, 'sounds/beat.wav'));

function wav(path: string): Float32Array {
  const read = readWav(path);
  if (!read.ok) throw new Error(`${path}: ${read.problem.wrong}`);
  return at16kHz(read.recording);
}

const placed = (make: Maker, chance: Chance, peak: number, lengthS: number): Float32Array =>
  track(lengthS, [{ sound: inRoom(make(chance), chance), atS: 0.4, peak }], chance);

const takesOf = (make: Maker, chance: Chance): Take[] =>
  Array.from({ length: TAKES }, () => ({ samples: placed(make, chance, 0.3, 0.9), sampleRateHz: 16_000 }));

function modelOf(words: Readonly<Record<string, readonly Take[]>>): Model {
  const enrolled = enrol({ words, talk: [] });
  if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problems));
  return enrolled.model;
}

function heardIn(model: Model, samples: Float32Array): string[] {
  const listener = createListener(model, { sampleRateHz: 16_000 });
  return [...listener.push(samples), ...listener.flush()].map((each) => (each.kind === 'word' ? each.word : 'unsure'));
}

type Row = Record<'clicker' | 'tongue' | 'unsure' | 'nothing', number>;
const rows = new Map<string, Row>();

function count(sound: string, heard: readonly string[]): void {
  const row = rows.get(sound) ?? { clicker: 0, tongue: 0, unsure: 0, nothing: 0 };
  const as = (['clicker', 'tongue', 'unsure'] as const).find((name) => heard.includes(name)) ?? 'nothing';
  rows.set(sound, { ...row, [as]: row[as] + 1 });
}

for (let handler = 1; handler <= HANDLERS; handler++) {
  const chance = chanceFrom(7_000 + handler);
  const model = modelOf({ clicker: takesOf(clicker(handler), chance), tongue: takesOf(tongue(handler), chance) });
  const sounds: Record<string, Maker> = {
    'the taught clicker': clicker(handler),
    'the taught tongue click': tongue(handler),
    'another clicker': clicker(handler + 100),
    "somebody else's tongue click": tongue(handler + 100),
    ...{ knock, clap, bark, dish, latch, 'treats in a tin': rattle, 'a beat of the app': () => beat },
  };
  for (const [name, make] of Object.entries(sounds)) {
    for (const peak of PEAKS) for (let k = 0; k < REPEATS; k++) count(name, heardIn(model, placed(make, chance, peak, 1.4)));
  }
}
console.table(Object.fromEntries(rows));

const TALK = join(ROOT, '../shared/speech');
if (!existsSync(TALK)) console.log('skipped: real talk and kitchen noise (../shared/speech is not here)');
else {
  const files = [...readdirSync(join(TALK, 'talk')).map((file) => join(TALK, 'talk', file)), join(TALK, 'noise/kitchen.wav')];
  let lengthS = 0;
  const wrong = { clicker: 0, tongue: 0, unsure: 0 };
  for (let handler = 1; handler <= 3; handler++) {
    const chance = chanceFrom(9_000 + handler);
    const model = modelOf({ clicker: takesOf(clicker(handler), chance), tongue: takesOf(tongue(handler), chance) });
    for (const samples of files.map(wav)) {
      lengthS += samples.length / 16_000;
      for (const heard of heardIn(model, samples)) wrong[heard as keyof typeof wrong]++;
    }
  }
  console.log(`real talk and kitchen, ${(lengthS / 60).toFixed(0)} min: ${JSON.stringify(wrong)}`);
}
