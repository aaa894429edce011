/** After an update a part of the older version is no longer on the server: the screen says so, the data can be had, and one tap loads the newest. */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, inject, test } from 'vitest';
import { launchChromium } from '../support/chromium.ts';
import { repByKeys, startPractice } from './walk.ts';

/** The built app on a server from which a file can go. */
async function hosted() {
  const gone = { pattern: null as RegExp | null };
  const asked: string[] = [];
  const server = createServer(async (request, response) => {
    const path = request.url ?? '/';
    asked.push(path);
    if (gone.pattern?.test(path)) return void response.writeHead(404).end();
    const answer = await fetch(new URL(path, inject('appUrl')));
    response.writeHead(answer.status, { 'content-type': answer.headers.get('content-type') ?? '' });
    response.end(new Uint8Array(await answer.arrayBuffer()));
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return { gone, asked, url, close: () => new Promise((closed) => server.close(closed).closeAllConnections()) };
}

test('a part that is gone costs nothing: the data is saved, the report is copied, the newest version comes by one tap', async () => {
  const host = await hosted();
  const browser = await launchChromium({ shell: true });
  const context = await browser.newContext({
    acceptDownloads: true,
    permissions: ['microphone', 'clipboard-read', 'clipboard-write'],
  });
  const page = await context.newPage();
  await page.goto(host.url);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await startPractice(page, host.url);
  await repByKeys(page, 0.4, 'm');
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();
  // The server has moved on, and this browser has cleared what it kept of the older version.
  host.gone.pattern = /settings-.*\.js/;
  await page.evaluate(async () => {
    for (const name of await caches.keys()) await caches.delete(name);
  });
  await page.goto(`${host.url}#/settings`);
  await page.getByRole('heading', { name: 'This screen broke' }).waitFor();

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save my data' }).click();
  const copy = JSON.parse(readFileSync(await (await download).path(), 'utf8'));
  expect(copy.events.map(({ type }: { type: string }) => type)).toContain('session-ended');

  await page.getByRole('button', { name: 'Copy the report' }).click();
  await page.getByText('It holds no names').waitFor();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('screen broke: TypeError');

  host.gone.pattern = null;
  host.asked.splice(0);
  await page.getByRole('button', { name: 'Load the page again' }).click();
  await page.getByRole('heading', { name: 'Your data' }).waitFor();
  // Not from what the service worker kept of the older page.
  expect(host.asked).toContain('/');
  await browser.close();
  await host.close();
});
