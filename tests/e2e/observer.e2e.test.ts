/** A second observer in a real browser: a session is on the device, its recording is dropped in, and ear and keys score it again. */
import { readFileSync } from 'node:fs';
import { afterEach, expect, inject, test } from 'vitest';
import { sessionOf } from '../../src/command/reps.ts';
import { exportText } from '../../src/store/export.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { findings, readEvents, teachFromFiles } from './walk.ts';

const FOLDER = 'demo/recordings';
/** The film began so much after the session, s. */
const LATER_S = 12.5;

interface Truth {
  readonly words: readonly { readonly word: string; readonly startedAtS: number; readonly endedAtS: number }[];
}
const truth = JSON.parse(readFileSync(`${FOLDER}/truth.json`, 'utf8')) as Truth;

let app: OpenedApp;
afterEach(() => app.close());

/** The session of the recording as if it had been practised here: its words are those of truth.json, on a clock of its own. */
function practisedSession(change: (word: string, nth: number) => string): string {
  const words = truth.words.map(({ word, startedAtS, endedAtS }, nth) => ({
    ...{ word: change(word, nth), startedAtS: startedAtS + LATER_S, endedAtS: endedAtS + LATER_S },
    ...{ decidedAtS: endedAtS + LATER_S + 0.2, confidence: 1 },
  }));
  return exportText({ events: [...sessionOf(words).log], damaged: [] }, '2026-03-02T21:00:00.000+01:00');
}

async function observeWith(change: (word: string, nth: number) => string): Promise<void> {
  const { page } = app;
  const buffer = Buffer.from(practisedSession(change));
  await page.goto(`${inject('appUrl')}#/settings`);
  await page.getByLabel('Add from a copy').setInputFiles({ name: 'owner.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: 'Add what is new' }).click();
  await page.getByText(/^Added: /).waitFor();
  await page.goto(`${inject('appUrl')}#/review/recording`);
  await page.getByRole('link', { name: /a second observer/ }).click();
  await page.getByLabel('A video or a sound recording of this session').setInputFiles(`${FOLDER}/session.wav`);
}

test('the ear scores the recording of a session: of 22 words one differs, and the list leads to its second', async () => {
  app = await openApp();
  const { page } = app;
  await teachFromFiles(page, inject('appUrl'), FOLDER);
  // The owner pressed mark for the first lift: word 16 of the truth, at 31.4 s or so of the film.
  const first = truth.words.findIndex(({ word }) => word === 'lifted');
  await observeWith((word, nth) => (nth === first ? 'mark' : word));
  await page.getByText('Or let the app’s ear score').click();
  await page.getByRole('button', { name: 'Let the ear listen' }).click();
  await page.getByText('It heard 22 words').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Compare' }).click();
  // By hand: 21 words meet, and the other one is another word for each: 21 of 23.
  await page.getByText('21 of 23 words agree to within 1 s.').waitFor();
  // By hand from truth.json: 11 reps, 10 alike; marked 10 and 9, lifted 1 and 2; kappa = (10/11 - 92/121) / (29/121) = 18/29.
  await page.getByText('Of 11 reps that both noted, 10 ended alike: kappa 0.62.').waitFor();
  await page.getByText(/The recording began 12\.[3-7] s into the session/).waitFor();
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: /^Look at/ }).click();
  const atS = truth.words[first]?.startedAtS ?? 0;
  const shown = await page.evaluate(() => document.querySelector('video')?.currentTime ?? -1);
  expect(shown).toBeGreaterThan(atS - 2.5);
  expect(shown).toBeLessThan(atS);
  await page.getByRole('button', { name: 'Save this scoring' }).click();
  await page.getByText('Saved beside the session.').waitFor();
  const saved = (await readEvents(page)).filter(({ type }) => type === 'observation-saved');
  expect(saved).toHaveLength(1);
  expect(saved[0]?.session).toBeNull();
});

test('keys and buttons note words where the film stands, one is struck out, and the practice is not shown before', async () => {
  app = await openApp();
  const { page } = app;
  await observeWith((word) => word);
  const stand = (atS: number) =>
    page.evaluate((to) => {
      const film = document.querySelector('video') as HTMLVideoElement;
      return new Promise<void>((done) => {
        film.onseeked = () => done();
        film.currentTime = to;
      });
    }, atS);
  await page.getByText('Nothing noted yet.').waitFor();
  for (const { word, startedAtS } of truth.words.slice(0, 3)) {
    await stand(startedAtS);
    await page.keyboard.press(word === 'hold' ? 'h' : 'm');
  }
  await stand(9);
  await page.getByRole('button', { name: 'Lifted' }).click();
  await page.getByText('4 noted; the latest: lifted at 0:09.0').waitFor();
  await page.keyboard.press('l');
  await page.getByText('5 noted; the latest: lifted at 0:09.0').waitFor();
  await page.keyboard.press('u');
  await page.getByText('4 noted', { exact: true }).waitFor();
  expect(await page.getByText(/agree to within/).count()).toBe(0);
  await page.getByText('All that is noted').click();
  await page.getByRole('button', { name: 'Strike out lifted at 0:09.0' }).click();
  await page.getByRole('button', { name: 'Compare' }).click();
  await page.getByText(/^3 of 22 words agree/).waitFor();
});
