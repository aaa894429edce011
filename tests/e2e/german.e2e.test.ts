/** The app in a German browser: every screen in German, none of it wider than a phone, and English again when it is chosen. */
import type { Page } from 'playwright';
import { afterEach, expect, inject, test } from 'vitest';
import { GERMAN } from '../../src/core/languages/german.ts';
import { englishIn } from '../house/english-words.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';

let app: OpenedApp;
afterEach(() => app.close());

/** What is short and holds no telling word: "Save". */
const ENGLISH = new Set(
  Object.entries(GERMAN)
    .map(([message, german]) => [message.replace(/#.*/s, ''), german] as const)
    .filter(([english, german]) => english !== german)
    .map(([english]) => english),
);
const GERMAN_TOO = new Set<string>(Object.values(GERMAN));

/** Before anything was practised: also what stands in place of a screen that has nothing to show. */
const EMPTY = [
  ...['/', '/sound', '/dogs', '/dogs/demo-dog', '/dogs/nobody', '/practice', '/settings', '/plan/demo-plan', '/plan/new'],
  ...['/review', '/review/nowhere', '/observe/nowhere', '/progress', '/compare'],
  ...[
    '/exam/demo-dog',
    '/card/demo-dog',
    '/desk',
    '/desk/nobody',
    '/give/demo-plan',
    '/homework',
    '/homework/broken',
    '/sheet/none',
  ],
];
/** Those that look different once there is a session. */
const FILLED = ['/', '/review', '/progress', '/compare', '/card/demo-dog', '/desk'];

test('a German handler reads German from the first screen to the review, and English once it is chosen', async () => {
  app = await openApp({ locale: 'de-DE' });
  const { page } = app;
  for (const path of EMPTY) await isGermanAt(page, path);
  await practise(page);
  await page.getByRole('heading', { name: 'Nächstes Mal' }).waitFor();
  await isGerman(page, 'the review');
  for (const path of FILLED) await isGermanAt(page, path);
  await page.getByRole('link', { name: 'Einstellungen' }).click();
  await page.getByRole('combobox', { name: /^Sprache/ }).selectOption('en');
  await page.getByRole('heading', { name: 'Settings' }).waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe('en');
  // The plan keeps the words it was made with; what stands around it follows.
  await page.getByRole('link', { name: 'Dogs', exact: true }).click();
  await page.getByRole('button', { name: 'Practise' }).waitFor();
});

/** By the buttons: two reps kept, one lifted, one not offered, a pause; each state is read. */
async function practise(page: Page): Promise<void> {
  const tap = (name: string) => page.getByRole('button', { name, exact: true }).click();
  await page.goto(`${inject('appUrl')}#/`);
  await tap('Üben');
  await page.getByText('Bereit').waitFor();
  await isGerman(page, 'ready');
  for (const end of ['Marker', 'Marker', 'Abgehoben']) {
    await tap('Halten');
    await page.waitForTimeout(400);
    await tap(end);
    await page.waitForTimeout(400);
    await isGerman(page, end);
  }
  await tap('Nicht angeboten');
  await tap('Pause');
  await page.getByText('Was du jetzt sagst, zählt nicht').waitFor();
  await isGerman(page, 'paused');
  await tap('Weiter');
  await tap('Schluss');
}

async function isGermanAt(page: Page, path: string): Promise<void> {
  // From elsewhere, so that it is not the screen before that is read; and until every part of it has come.
  await page.goto('about:blank');
  await page.goto(`${inject('appUrl')}#${path}`, { waitUntil: 'networkidle' });
  await page.locator('h1').first().waitFor();
  await isGerman(page, path);
}

/** Everything that is read or read aloud, with what is folded unfolded. */
async function isGerman(page: Page, where: string): Promise<void> {
  const { named, widthPx } = await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
    const all = ['aria-label', 'title', 'placeholder', 'alt'].flatMap((name) =>
      [...document.querySelectorAll(`[${name}]`)].map((element) => element.getAttribute(name) ?? ''),
    );
    return { named: all, widthPx: document.documentElement.scrollWidth };
  });
  // biome-ignore lint/performance/useDomNodeTextContent: what is seen, a line a block; not what scripts hold.
  const says = [...(await page.locator('body').innerText()).split('\n'), ...named];
  const lines = says
    .map((line) => line.trim())
    .filter((line) => englishIn(line).length > 0 || (ENGLISH.has(line) && !GERMAN_TOO.has(line)));
  expect(lines, `${where}: English is left`).toEqual([]);
  expect(widthPx, `${where}: wider than the phone`).toBeLessThanOrEqual(390);
}
