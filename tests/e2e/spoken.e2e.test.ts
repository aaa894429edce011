/** A spoken session in a real browser: words taught from files, a recording as the microphone, beats and calls, the review. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, inject, test } from 'vitest';
import type { Rep } from '../../src/core/fold.ts';
import { openApp } from '../support/open-app.ts';
import { readSession, startPractice, teachFromFiles } from './walk.ts';

interface TrueRep {
  readonly holdAtS: number;
  readonly heldS: number;
  readonly outcome: 'mark' | 'lifted';
}

/**
 * True reps that were not heard. As the scorer of the composed sessions judges (outcome equal, length within 0.4 s, hold within 0.5 s),
 * but for the clock: on a busy machine the audio clock of a browser stands still now and then while the recording runs on, so each
 * hold is held against the distance that the rep before it had.
 */
function unlike(
  truth: readonly TrueRep[],
  reps: readonly { holdAtS: number; heldS: number; outcome: string }[],
  shiftS: number,
): TrueRep[] {
  let driftS = shiftS;
  return truth.filter((rep) => {
    const heard = reps.find(({ holdAtS }) => Math.abs(rep.holdAtS + driftS - holdAtS) < 0.5);
    if (!heard || heard.outcome !== rep.outcome || Math.abs(heard.heldS - rep.heldS) >= 0.4) return true;
    driftS = heard.holdAtS - rep.holdAtS;
    return false;
  });
}

function told(rep: Rep) {
  return { holdAtS: rep.holdAtS, heldS: rep.heldForS, outcome: rep.outcome === 'lifted' ? 'lifted' : 'mark' };
}

/** The microphone opens a moment after the session's clock started: the first hold tells by how much. */
function shiftOf(truth: readonly TrueRep[], reps: readonly { holdAtS: number }[]): number {
  return (reps[0]?.holdAtS ?? 0) - (truth[0]?.holdAtS ?? 0);
}

async function practiseWith(folder: string, wav: string, lengthS: number) {
  const app = await openApp({ microphoneWav: wav });
  const appUrl = inject('appUrl');
  await teachFromFiles(app.page, appUrl, folder);
  // The fake microphone hears nothing that the app plays: cancelling what is not there would take from the words.
  await app.page.getByLabel(/^Cancel the app’s own sounds/).click();
  await app.page.locator('label', { hasText: 'Cancel the app’s own sounds' }).locator('input:not(:checked)').waitFor();
  await startPractice(app.page, appUrl);
  await app.page.getByText('Listening').waitFor();
  await app.page.waitForTimeout(1000 * lengthS);
  await app.page.getByRole('button', { name: 'Finish' }).click();
  await app.page.getByRole('heading', { name: 'Next time' }).waitFor();
  const session = await readSession(app.page);
  const rows = await app.page.locator('tbody tr').count();
  await app.close();
  return { session, rows };
}

describe('a spoken session', () => {
  test('the invented session is heard whole: every rep as it was spoken, its raise and its split called', async () => {
    const folder = resolve('demo/recordings');
    const truth: { reps: TrueRep[]; lengthS: number } = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8'));
    const { session, rows } = await practiseWith(folder, join(folder, 'session.wav'), truth.lengthS + 1);
    const reps = session.reps.map(told);
    expect(unlike(truth.reps, reps, shiftOf(truth.reps, reps))).toEqual([]);
    expect(rows).toBe(reps.length);
    expect(session.reps).toHaveLength(truth.reps.length);
    expect(session.reps.flatMap(({ calls }) => calls.map(({ kind }) => kind))).toEqual(['raise', 'split']);
  });

  const speech = resolve('../shared/speech');
  test.skipIf(!existsSync(join(speech, 'compose.mjs')))(
    'a composed session of a real speaker is heard as the command line hears it (needs ../shared/speech)',
    async () => {
      const folder = mkdtempSync(join(tmpdir(), 'stillbeat-spoken-'));
      const compose = ['compose.mjs', '--speaker', 'nicolas', '--seed', '11', '--minutes', '1.5', '--out', folder];
      execFileSync(process.execPath, compose, { cwd: speech });
      const track = join(folder, 'track.wav');
      const listen = [
        '--import',
        'tsx',
        'src/command/listen.ts',
        '--words',
        join(folder, 'words'),
        '--talk',
        join(folder, 'talk'),
        '--json',
      ];
      const line = JSON.parse(execFileSync(process.execPath, [...listen, track], { encoding: 'utf8' }));
      const truth: { reps: TrueRep[]; lengthS: number } = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8'));
      const { session } = await practiseWith(folder, track, truth.lengthS + 1);
      const reps = session.reps.map(told);
      const missedOnScreen = unlike(truth.reps, reps, shiftOf(truth.reps, reps));
      const missedOnLine = unlike(truth.reps, line.reps, 0);
      expect(missedOnLine.length).toBeLessThan(truth.reps.length);
      for (const rep of missedOnScreen) expect(missedOnLine).toContainEqual(rep);
    },
    240_000,
  );
});
