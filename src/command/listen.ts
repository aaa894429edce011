/** `npm run -s listen -- --words DIR [--talk DIR] [--json] TRACK.wav`: the ear and the engine over a recording. */
import { parseArgs } from 'node:util';
import { loadWeights } from './ear-weights.ts';
import { type HeardSession, hearTrack, teach } from './hear.ts';
import { located, readTeaching } from './teaching-in.ts';
import { type FileProblem, type Recording, readWav } from './wav-in.ts';

const USAGE = `usage: npm run -s listen -- --words DIR [--talk DIR] [--json] [--ear cepstra] TRACK.wav
  --words DIR    DIR/<word>/*.wav are takes of each word (hold, mark, lifted and any others)
  --talk DIR     DIR/*.wav are other things the handler says: fewer false triggers
  --json         one JSON document instead of a table
  --ear cepstra  do without the network`;

function fail(problems: readonly FileProblem[]): never {
  for (const { path, wrong, help } of problems) console.error(`listen: ${path} ${wrong}. What to do: ${help}.`);
  process.exit(2);
}

function failUsage(wrong: string): never {
  console.error(`listen: ${wrong}\n${USAGE}`);
  process.exit(2);
}

interface Request {
  readonly words: string;
  readonly talk: string | undefined;
  readonly json: boolean;
  readonly ear: string;
  readonly track: string;
}

function readRequest(): Request {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        words: { type: 'string' },
        talk: { type: 'string' },
        json: { type: 'boolean', default: false },
        ear: { type: 'string', default: 'fused' },
      },
    });
    if (!values.words) failUsage('--words is missing');
    if (values.ear !== 'fused' && values.ear !== 'cepstra') failUsage(`--ear: expected fused or cepstra, got ${values.ear}`);
    if (positionals.length !== 1)
      failUsage(positionals.length === 0 ? 'no TRACK.wav given' : `one TRACK.wav expected, got ${positionals.length}`);
    return { words: values.words, talk: values.talk, json: values.json, ear: values.ear, track: positionals[0] as string };
  } catch (error) {
    return failUsage((error as Error).message);
  }
}

function readTrack(path: string): Recording {
  const read = readWav(path);
  if (!read.ok) return fail([read.problem]);
  // Digital silence is a broken recording; a quiet room is not silent.
  if (read.recording.samples.every((sample) => sample === 0))
    fail([{ path, wrong: 'is silent from end to end', help: 'check the microphone and record again' }]);
  return read.recording;
}

const time = (seconds: number): string =>
  `${String(Math.floor(seconds / 60)).padStart(2)}:${(seconds % 60).toFixed(2).padStart(5, '0')}`;

function table(heard: HeardSession): string {
  const words = heard.words.map(
    (w) => `${time(w.startedAtS)}  ${w.word.padEnd(10)} ${(100 * w.confidence).toFixed(0).padStart(3)} %`,
  );
  const unsure = heard.unsure.map((u) => `${time(u.startedAtS)}  unsure     ${u.nearest.map((n) => n.word).join(' or ')}?`);
  const lines = [...words, ...unsure].sort();
  const reps = heard.reps.map(
    (r) => `${time(r.holdAtS)}  held ${r.heldS.toFixed(2).padStart(5)} s  ${r.outcome}${r.call ? `  ${r.call}` : ''}`,
  );
  const ear = heard.features === 'cepstra' ? 'cepstra alone' : 'network';
  return [
    `${time(heard.lengthS).trim()} heard with ${ear}, ${(100 * heard.realTimeFactor).toFixed(1)} % of one core`,
    '',
    'words',
    ...lines,
    '',
    'reps',
    ...reps,
  ].join('\n');
}

function main(): void {
  const request = readRequest();
  const taught = readTeaching(request.words, request.talk);
  if (!taught.ok) return fail(taught.problems);
  const track = readTrack(request.track);
  const loaded = request.ear === 'cepstra' ? undefined : loadWeights();
  if (loaded && !loaded.ok) console.error(`listen: ${loaded.wrong}; going on with cepstra alone, which mishears more.`);
  const weights = loaded?.ok ? loaded.weights : undefined;
  const enrolled = teach(taught.teaching, weights);
  const problems = enrolled.problems.map((p) => located(p, taught.paths, request.words));
  if (!enrolled.ok) return fail(problems);
  for (const { path, wrong, help } of problems) console.error(`listen: note: ${path} ${wrong} (${help}).`);
  const heard = hearTrack(enrolled.model, track, weights);
  console.log(request.json ? JSON.stringify(heard, null, 1) : table(heard));
}

main();
