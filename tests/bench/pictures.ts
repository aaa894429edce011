/** Takes the pictures of the README from the running app: builds it, invents a history, walks the screens. `npm run pictures`. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright';
import { build, preview } from 'vite';
import { inventedHistory } from '../../demo/history.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { exportText } from '../../src/store/export.ts';
import { launchOptions } from '../support/chromium.ts';

const OUT = join(dirname(fileURLToPath(import.meta.url)), '../../demo/pictures');
const DAY_MS = 86_400_000;
/** A phone held upright. */
const PHONE = { width: 390, height: 844 };

/** Eight weeks of one invented dog, so that progress has something to show. */
const HISTORY = {
  ...{ plan: DEMO_PLAN, sessions: 9, seed: 5 },
  ...{ places: ['bathroom', 'garden', 'a friend’s kitchen'], handlers: ['me', 'Ada'] },
};

async function main(): Promise<void> {
  const outDir = mkdtempSync(join(tmpdir(), 'stillbeat-pictures-'));
  await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
  const server = await preview({ logLevel: 'warn', build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
  const browser = await chromium.launch(launchOptions());
  mkdirSync(OUT, { recursive: true });
  try {
    const address = server.httpServer.address();
    if (address === null || typeof address === 'string') throw new Error('the preview server has no port');
    await takeAll(browser, `http://127.0.0.1:${address.port}/`);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}

async function takeAll(browser: Browser, appUrl: string): Promise<void> {
  const context = await browser.newContext({
    viewport: PHONE,
    colorScheme: 'light',
    permissions: ['microphone'],
    locale: 'en-GB',
  });
  const page = await context.newPage();
  await page.goto(appUrl);
  await page.getByRole('button', { name: 'Practise', exact: true }).waitFor();
  await take(page, 'first-screen');
  await addHistory(page, appUrl);
  await practise(page, appUrl);
  await take(page, 'review');
  for (const [path, name] of SCREENS) {
    await page.goto(`${appUrl}#/${path}`);
    await page.locator('main h1').first().waitFor();
    await take(page, name);
  }
}

/** Where each is found, and the name of its picture. */
const SCREENS: readonly (readonly [string, string])[] = [
  ['plan/demo-plan', 'plan'],
  ['progress', 'progress'],
  ['card/demo-dog', 'card'],
  ['give/demo-plan', 'homework'],
];

async function addHistory(page: Page, appUrl: string): Promise<void> {
  const buffer = Buffer.from(
    exportText({ events: endingYesterday(), damaged: [] }, new Date().toISOString().replace('Z', '+00:00')),
  );
  await page.goto(`${appUrl}#/settings`);
  await page.locator('input[type=file]').last().setInputFiles({ name: 'history.json', mimeType: 'application/json', buffer });
  await page.getByRole('button', { name: 'Add what is new' }).click();
  await page
    .getByText(/^Added: /)
    .first()
    .waitFor();
}

/** The history, moved to the weeks before today: nobody wants to read of last winter. */
function endingYesterday(): SessionEvent[] {
  const events = inventedHistory(HISTORY).flatMap(({ log }) => log);
  const last = Math.max(...events.map(({ at }) => Date.parse(at)));
  const days = Math.floor((Date.now() - last) / DAY_MS) - 1;
  const moved = (at: string) => new Date(Date.parse(at) + days * DAY_MS).toISOString().replace('Z', '+00:00');
  return events.map((event) => ({ ...event, at: moved(event.at) }));
}

/** By keys: a few reps, one of them in the middle of its hold. */
async function practise(page: Page, appUrl: string): Promise<void> {
  await page.goto(`${appUrl}#/`);
  await page.getByRole('button', { name: 'Practise', exact: true }).click();
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
  for (const [heldS, end] of REPS) await rep(page, heldS, end);
  await page.keyboard.press('h');
  await page.waitForTimeout(3300);
  await take(page, 'practice');
  await page.keyboard.press('m');
  await page.waitForTimeout(400);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.waitForTimeout(500);
}

/** Seconds held, and the key that ends it: two to warm up, then one lift among those that held. */
const REPS = [
  [3.4, 'm'],
  [3.3, 'm'],
  [4.3, 'm'],
  [4.2, 'm'],
  [2.6, 'l'],
  [4.4, 'm'],
  [4.2, 'm'],
] as const;

async function rep(page: Page, heldS: number, end: string): Promise<void> {
  await page.keyboard.press('h');
  await page.waitForTimeout(1000 * heldS);
  await page.keyboard.press(end);
  await page.waitForTimeout(900);
}

async function take(page: Page, name: string): Promise<void> {
  await page.evaluate(() => scrollTo(0, 0));
  await page.waitForTimeout(400);
  await page.screenshot({ path: join(OUT, `${name}.png`) });
}

await main();
