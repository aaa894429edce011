/** The ear learns in a real browser: what was heard is kept, a correction makes a take of it, and the words travel to another device. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, inject, test } from 'vitest';
import { openApp } from '../support/open-app.ts';
import { readEvents, startPractice, teachFromFiles } from './walk.ts';

const folder = resolve('demo/recordings');

test('a word that was heard and found right teaches the ear; its sound can be heard and deleted; the words go to another device', async () => {
  const appUrl = inject('appUrl');
  const { page, ...app } = await openApp({ microphoneWav: join(folder, 'session.wav') });
  await teachFromFiles(page, appUrl, folder);
  // The talk is in the model: a session does not have to wait for it.
  await page
    .getByText(/[1-9]\d* pieces of talk/)
    .first()
    .waitFor({ timeout: 120_000 });
  await page.goto(`${appUrl}#/settings`);
  await page.getByLabel(/^Keep the sound of words too/).click();
  await page.getByText('0 sounds are kept.').waitFor();
  await startPractice(page, appUrl);
  await page.getByText('Listening').waitFor();
  await page.waitForTimeout(14_000);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();

  await page.locator('[aria-label="The session as bars on stairs"] [role=button]').first().click();
  await page.getByRole('region', { name: 'Put rep 1 right' }).locator('summary').first().click();
  await page.getByRole('button', { name: 'Hear it' }).first().click();
  await page.getByRole('button', { name: 'Right', exact: true }).first().click();
  const learns = page.getByRole('region', { name: 'What the ear learns' });
  await learns.getByText('1 correction can teach the ear').waitFor();
  await learns.getByRole('button', { name: 'Teach the ear' }).click();
  await learns.getByText(/was judged as if it were new/).waitFor({ timeout: 60_000 });
  const learnt = (await readEvents(page)).flatMap((event) => (event.type === 'take-learned' ? [event.body] : []));
  expect(learnt.map(({ word, stretch }) => [word, stretch.features])).toEqual([['hold', 'cleaned']]);

  await page.goto(`${appUrl}#/settings`);
  await page.getByRole('button', { name: 'Delete the kept sounds' }).click();
  await page.getByText('0 sounds are kept.').waitFor();

  await page.goto(`${appUrl}#/sound`);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save my words' }).click(),
  ]);
  const file = readFileSync(await download.path());
  await app.close();

  const other = await openApp({ at: '#/sound' });
  await other.page
    .getByLabel('Add words from a file')
    .setInputFiles({ name: download.suggestedFilename(), mimeType: 'application/json', buffer: file });
  await other.page.getByText(/hold \(3, 1 learnt\)/).waitFor();
  expect((await readEvents(other.page)).filter(({ type }) => type === 'sound-taught')).toEqual([]);
  await other.page.getByRole('button', { name: 'Add what is new' }).click();
  await other.page.getByText(/^Added\. The ear listens to/).waitFor();
  await other.page.getByText('3 of 3 takes').first().waitFor();
  await other.close();
}, 400_000);
