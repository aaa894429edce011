/** Reads a folder of takes (one folder a word) and a folder of ordinary talk. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { EnrolProblem, Teaching } from '../hearing/enrol.ts';
import type { Take } from '../hearing/take.ts';
import { type FileProblem, readWav } from './wav-in.ts';

export type ReadTeaching =
  | { readonly ok: true; readonly teaching: Teaching; readonly paths: Readonly<Record<string, readonly string[]>> }
  | { readonly ok: false; readonly problems: readonly FileProblem[] };

/** The key under which the paths of ordinary talk are kept: no folder can be called this. */
const TALK = '/';

const byNumber = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });
const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

const wavsIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => name.toLowerCase().endsWith('.wav') && !name.startsWith('.'))
    .sort(byNumber)
    .map((name) => join(folder, name));

const wordFolders = (folder: string): string[] =>
  readdirSync(folder)
    .filter((name) => !name.startsWith('.') && isFolder(join(folder, name)))
    .sort(byNumber);

function readTakes(paths: readonly string[], problems: FileProblem[]): Take[] {
  return paths.flatMap((path) => {
    const read = readWav(path);
    if (read.ok) return [read.recording];
    problems.push(read.problem);
    return [];
  });
}

export function readTeaching(wordsFolder: string, talkFolder: string | undefined): ReadTeaching {
  const problems: FileProblem[] = [];
  const layout = `it should hold one folder a word (hold, mark, lifted), each with 3 to 5 takes as .wav`;
  if (!isFolder(wordsFolder)) return { ok: false, problems: [{ path: wordsFolder, wrong: 'is not a folder', help: layout }] };
  if (talkFolder !== undefined && !isFolder(talkFolder)) {
    return {
      ok: false,
      problems: [
        { path: talkFolder, wrong: 'is not a folder', help: 'it should hold ordinary talk as .wav; or leave --talk out' },
      ],
    };
  }
  const names = wordFolders(wordsFolder);
  if (names.length === 0)
    return { ok: false, problems: [{ path: wordsFolder, wrong: 'holds no folder of takes', help: layout }] };
  const paths = Object.fromEntries(names.map((name) => [name, wavsIn(join(wordsFolder, name))]));
  for (const name of names) {
    if (paths[name]?.length === 0)
      problems.push({ path: join(wordsFolder, name), wrong: 'holds no take', help: 'record the word 3 to 5 times, as .wav' });
  }
  const talkPaths = talkFolder === undefined ? [] : wavsIn(talkFolder);
  const words = Object.fromEntries(names.map((name) => [name, readTakes(paths[name] ?? [], problems)]));
  const talk = readTakes(talkPaths, problems);
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, teaching: { words, talk }, paths: { ...paths, [TALK]: talkPaths } };
}

const FAULTS: Readonly<Record<EnrolProblem['kind'], readonly [wrong: string, help: string]>> = {
  'no-words': ['teaches no word', 'add a folder of takes for each word'],
  'no-takes': ['has no take that can be used', 'record the word 3 to 5 times'],
  'not-a-click': ['is no click, as the other takes of this word are', 'record it again, or take it away'],
  'not-finite': ['holds samples that are not numbers', 'export it again as 16-bit WAV'],
  'bad-rate': ['has a sample rate outside 8 to 192 kHz', 'record it again at 16 to 48 kHz'],
  'too-short': ['holds no speech, or less than 0.08 s of it', 'say the word clearly after the recording has begun'],
  'too-long': ['holds more than 2.5 s of speech', 'say the word alone, with quiet around it'],
  'too-quiet': ['is silent or nearly so', 'come closer, or check the microphone'],
  'too-noisy': ['stands hardly above the noise', 'come closer, or find a quieter room'],
  clipped: ['is clipped', 'speak from further away, or turn the input down'],
  'cut-off-start': ['begins in the middle of the word', 'wait a moment before you speak'],
  'cut-off-end': ['ends in the middle of the word', 'wait a moment before you stop the recording'],
};

/** An enrolment problem with the file it came from. */
export function located(
  problem: EnrolProblem,
  paths: Readonly<Record<string, readonly string[]>>,
  wordsFolder: string,
): FileProblem {
  const [wrong, help] = FAULTS[problem.kind];
  if (problem.kind === 'no-words') return { path: wordsFolder, wrong, help };
  if (problem.kind === 'no-takes') return { path: join(wordsFolder, problem.word), wrong, help };
  return { path: paths[problem.word ?? TALK]?.[problem.take] ?? wordsFolder, wrong, help };
}
