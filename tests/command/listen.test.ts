/** `npm run listen` as a user meets it: it prints what was heard, and says what is wrong with a file. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { type GlideName, room, say } from '../hearing/sounds.ts';
import { type WavKind, wavOf } from './wavs.ts';

const root = mkdtempSync(join(tmpdir(), 'listen-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const PLAIN: WavKind = { bits: 16 };

function taught(name: string, kind: WavKind = PLAIN): string {
  const folder = join(root, name);
  for (const word of ['hold', 'mark', 'lifted'] satisfies GlideName[]) {
    mkdirSync(join(folder, 'words', word), { recursive: true });
    for (let take = 1; take <= 3; take++)
      writeFileSync(join(folder, 'words', word, `${take}.wav`), wavOf(say(word, take, kind.sampleRateHz), kind));
  }
  mkdirSync(join(folder, 'talk'));
  (['good', 'come', 'name'] satisfies GlideName[]).forEach((word, i) => {
    writeFileSync(join(folder, 'talk', `${i}.wav`), wavOf(say(word, 9), PLAIN));
  });
  const track = room(6, [
    { name: 'hold', atS: 1, seed: 31 },
    { name: 'good', atS: 2.2, seed: 33 },
    { name: 'mark', atS: 3.5, seed: 32 },
  ]);
  writeFileSync(join(folder, 'track.wav'), wavOf(track, PLAIN));
  return folder;
}

function listen(...args: string[]): { status: number | null; out: string; err: string } {
  const run = spawnSync(process.execPath, ['--import', 'tsx', 'src/command/listen.ts', '--ear', 'cepstra', ...args], {
    encoding: 'utf8',
  });
  return { status: run.status, out: run.stdout, err: run.stderr };
}

const all = (folder: string): string[] => ['--words', join(folder, 'words'), '--talk', join(folder, 'talk')];

test('a session comes out as one JSON document with words, reps and what it cost', () => {
  const folder = taught('json', { bits: 24, channels: 2, sampleRateHz: 48_000 });
  const { status, out } = listen(...all(folder), '--json', join(folder, 'track.wav'));
  expect(status).toBe(0);
  const heard = JSON.parse(out);
  expect(heard.words.map((w: { word: string }) => w.word)).toEqual(['hold', 'mark']);
  expect(heard.sampleRateHz).toBe(16_000);
  expect(heard.lengthS).toBe(6);
  expect(heard.realTimeFactor).toBeGreaterThan(0);
  expect(heard.reps).toHaveLength(1);
  expect(heard.reps[0]).toMatchObject({ outcome: 'mark' });
  expect(Math.abs(heard.reps[0].heldS - 2.5)).toBeLessThan(0.3);
  const table = listen(...all(folder), join(folder, 'track.wav'));
  expect(table.out).toMatch(/held .* s {2}mark/);
});

test('wrong files are named, with what is wrong and what to do, and the exit is 2', () => {
  const folder = taught('wrong');
  const track = join(folder, 'track.wav');
  const bad = (name: string, bytes: Uint8Array): string => {
    writeFileSync(join(folder, name), bytes);
    return join(folder, name);
  };
  const cases: [string[], RegExp][] = [
    [[...all(folder), bad('noise.wav', new Uint8Array(99))], /noise\.wav is not a WAV file\. What to do: /],
    [[...all(folder), bad('silent.wav', wavOf(new Float32Array(16_000), PLAIN))], /silent\.wav is silent/],
    [[...all(folder), join(folder, 'none.wav')], /none\.wav cannot be read \(ENOENT\)/],
    [['--words', join(folder, 'nowhere'), track], /nowhere is not a folder/],
    [[track], /--words is missing/],
    [all(folder), /no TRACK\.wav given/],
    [[...all(folder), '--loud', track], /--loud/],
  ];
  for (const [args, message] of cases) {
    const { status, err, out } = listen(...args);
    expect(err).toMatch(message);
    expect(status).toBe(2);
    expect(out).toBe('');
  }
  mkdirSync(join(folder, 'words', 'easier'));
  expect(listen(...all(folder), track).err).toMatch(/easier holds no take/);
  writeFileSync(join(folder, 'words', 'easier', '1.wav'), wavOf(new Float32Array(16_000), PLAIN));
  expect(listen(...all(folder), track)).toMatchObject({ status: 2, err: expect.stringMatching(/easier.1\.wav is silent/) });
});

test.skipIf(!existsSync('../shared/speech/compose.mjs'))(
  'real speech: most words of a composed session are heard with cepstra alone',
  () => {
    const out = join(root, 'composed');
    spawnSync(process.execPath, [
      '../shared/speech/compose.mjs',
      '--speaker',
      'theo',
      '--seed',
      '3',
      '--minutes',
      '1',
      '--out',
      out,
    ]);
    const heard = JSON.parse(listen(...all(out), '--json', join(out, 'track.wav')).out);
    expect(heard.words.length).toBeGreaterThan(3);
  },
);
