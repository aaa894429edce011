/** Looks at the built app from outside: it opens in silence, alone, and without a network. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';

let app: OpenedApp;

beforeEach(async () => {
  app = await openApp();
});

afterEach(() => app.close());

/** Opens the page once more, after one visit and with the network gone. */
async function openWithoutNetwork(): Promise<void> {
  await app.page.evaluate(async () => {
    await navigator.serviceWorker.register('./sw.js');
    await navigator.serviceWorker.ready;
  });
  await app.context.setOffline(true);
  await app.page.reload();
}

describe('the built app', () => {
  test('opens on a screen with something to read', async () => {
    await app.page.waitForFunction(() => (document.getElementById('root')?.textContent ?? '').length > 0);
    expect(await app.page.title()).toContain('Stillbeat');
  });

  test('opens again without a network after one visit', async () => {
    await openWithoutNetwork();
    await app.page.waitForFunction(() => (document.getElementById('root')?.textContent ?? '').length > 0);
  });

  test('names whose work it is built on, and their terms, without a network too', async () => {
    await openWithoutNetwork();
    const terms = await app.page.evaluate(async () => (await fetch('./licences.txt')).text());
    for (const built of ['## react -', '## pitchy -', '## fft.js -', '## RNNoise (BSD-3-Clause)', 'Apache License'])
      expect(terms).toContain(built);
    // A host may send it without saying UTF-8: the mark at its beginning does.
    const start = await app.page.evaluate(async () => [
      ...new Uint8Array(await (await fetch('./licences.txt')).arrayBuffer()).slice(0, 3),
    ]);
    expect(start).toEqual([0xef, 0xbb, 0xbf]);
  });

  test('is refused an inline script and a request to another host', async () => {
    const ran = await app.page.evaluate(async () => {
      const script = document.createElement('script');
      script.textContent = 'window.inlineRan = true';
      document.head.append(script);
      const foreign = await fetch('https://example.invalid/').catch(() => 'refused');
      return { inline: 'inlineRan' in window, foreign };
    });
    expect(ran).toEqual({ inline: false, foreign: 'refused' });
    const refusals = app.complaints.splice(0);
    expect(refusals.filter((line) => !/Content Security Policy/.test(line))).toEqual([]);
    expect(refusals.length).toBeGreaterThanOrEqual(2);
  });
});
