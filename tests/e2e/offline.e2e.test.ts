/** After one visit the whole job is done without a network: teach, practise, review, and the screens that were never opened before. */
import { resolve } from 'node:path';
import { expect, inject, test } from 'vitest';
import { openApp } from '../support/open-app.ts';
import { readSession, repByKeys, startPractice, teachFromFiles } from './walk.ts';

test('after one visit everything works without a network', async () => {
  const app = await openApp();
  const { page } = app;
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    // Ready is not yet filled: the first visit goes on until all is in the cache.
    while (!(await caches.keys()).some((name) => name.includes('precache'))) await new Promise((next) => setTimeout(next, 100));
  });
  await page.waitForFunction(async () => {
    const [name = ''] = (await caches.keys()).filter((each) => each.includes('precache'));
    const before = (await (await caches.open(name)).keys()).length;
    await new Promise((next) => setTimeout(next, 500));
    return before > 20 && before === (await (await caches.open(name)).keys()).length;
  });
  await app.context.setOffline(true);
  await page.reload();
  await teachFromFiles(page, inject('appUrl'), resolve('demo/recordings'));
  await startPractice(page, inject('appUrl'));
  await repByKeys(page, 0.4, 'm');
  await repByKeys(page, 0.4, 'm');
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();
  expect((await readSession(page)).reps.map(({ outcome }) => outcome)).toEqual(['kept', 'kept']);
  for (const [at, sign] of [
    ['#/plan/demo-plan', 'File one claw'],
    ['#/settings', 'Your data'],
    ['#/review', 'Sessions'],
  ] as const) {
    await page.goto(`${inject('appUrl')}${at}`);
    await page.getByRole('heading', { name: sign }).first().waitFor();
  }
  await app.close();
});
