/** `npm run demo`: the invented session, heard from its recordings and judged by the real engine, printed as a table. */
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { loadWeights } from '../src/command/ear-weights.ts';
import { hearTrack, teach } from '../src/command/hear.ts';
import { sessionOf } from '../src/command/reps.ts';
import { readTeaching } from '../src/command/teaching-in.ts';
import { readWav } from '../src/command/wav-in.ts';
import { sayCall, sayOutcome } from '../src/core/sentences.ts';
import { DEMO_DOG, DEMO_PLAN } from './scenario.ts';

const RECORDINGS = join(dirname(fileURLToPath(import.meta.url)), 'recordings');

function fail(what: string): never {
  console.error(`demo: ${what}`);
  process.exit(2);
}

function hear() {
  const loaded = loadWeights();
  const weights = loaded.ok ? loaded.weights : undefined;
  const taught = readTeaching(join(RECORDINGS, 'words'), join(RECORDINGS, 'talk'));
  const track = readWav(join(RECORDINGS, 'session.wav'));
  if (!taught.ok || !track.ok) return fail('the recordings are missing: run npm run demo:record');
  const enrolled = teach(taught.teaching, weights);
  if (!enrolled.ok) return fail('the recorded words cannot be told apart');
  return hearTrack(enrolled.model, track.recording, weights);
}

const heard = hear();
const { reps, standing } = sessionOf(heard.words);
console.log(
  `${DEMO_DOG.name}, ${DEMO_PLAN.position.toLowerCase()}: ${heard.lengthS.toFixed(0)} s of recording, ears: ${heard.features}\n`,
);
console.log(' time   held  step         outcome');
for (const rep of reps) {
  const line = [rep.holdAtS.toFixed(1).padStart(5), `${rep.heldForS.toFixed(1)} s`.padStart(6), rep.step.title.padEnd(12)];
  console.log(`${line.join('  ')} ${rep.isWarmUp ? 'warm-up, ' : ''}${sayOutcome(rep.outcome, rep.voidReason)}`);
  for (const call of rep.calls) console.log(`       -> ${sayCall(call, standing.steps)}`);
}
console.log(`\n${reps.length} reps; ${heard.unsure.length} stretches were unsure.`);
