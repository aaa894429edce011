/**
 * `npm run bench:torture -- [sessions]`: a real browser that is killed, starved, doubled, put out of time and robbed of its database while sessions are
 * practised on keys. After each harm the page is opened again and every word that the screen had told is looked for. Prints what was tried and what was lost.
 */
import { mkdtempSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { build, preview } from 'vite';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { events, open, sessionStart, type } from '../../demo/typed-session.ts';
import type { StoredEvent } from '../../src/core/event.ts';
import { fold } from '../../src/core/fold.ts';
import { exportText } from '../../src/store/export.ts';
import { readEvents } from '../e2e/walk.ts';
import { chanceFrom } from '../hearing/clicks-made.ts';
import { launchOptions } from '../support/chromium.ts';

const SESSIONS = Number(process.argv[2] ?? 50);
const startedAtMs = Date.now();
const SEED = 20261125;
const next = chanceFrom(SEED);
/** From 0 to 1. */
const chance = (): number => (next() + 1) / 2;
const pick = <T>(of: readonly T[]): T => of[Math.floor(chance() * of.length)] as T;

declare global {
  interface Window {
    /** Words that the screen has told since the page was loaded, newest last. */
    told: (word: string) => void;
    shiftMs: number;
  }
}

const HARMS = [
  'killed',
  'killed in a hold',
  'reloaded',
  'tab doubled',
  'clock back',
  'clock forward',
  'device full',
  'database deleted',
  'import killed',
] as const;
type Harm = (typeof HARMS)[number];

interface Row {
  tried: number;
  told: number;
  lost: number;
  doubled: number;
  broken: number;
}
const table = new Map<Harm, Row>(HARMS.map((harm) => [harm, { tried: 0, told: 0, lost: 0, doubled: 0, broken: 0 }]));

const profile = mkdtempSync(join(tmpdir(), 'stillbeat-torture-'));
const outDir = mkdtempSync(join(tmpdir(), 'stillbeat-torture-app-'));
await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
const server = await preview({ logLevel: 'warn', build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
const address = server.httpServer.address();
if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
const appUrl = `http://127.0.0.1:${address.port}/`;

/** Words told by the screen in the session under way. */
let told = 0;

async function openBrowser(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.launchPersistentContext(profile, { ...launchOptions(), viewport: { width: 390, height: 844 } });
  await context.exposeFunction('told', () => {
    told++;
  });
  await context.addInitScript(watchScreen);
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(appUrl);
  await page.getByRole('button', { name: 'Practise', exact: true }).first().waitFor();
  return { context, page };
}

/** The last word stands on the practice screen once it is written. Two alike in a row look like one: what is counted is the least that was told. */
function watchScreen(): void {
  const RealDate = Date;
  window.shiftMs = Number(new URLSearchParams(location.search).get('shift') ?? 0);
  window.Date = class extends RealDate {
    constructor(...args: unknown[]) {
      if (args.length === 0) super(RealDate.now() + window.shiftMs);
      else super(...(args as [number]));
    }
    static override now(): number {
      return RealDate.now() + window.shiftMs;
    }
  } as DateConstructor;
  let before = '';
  new MutationObserver(() => {
    const now = document.querySelector('[data-fresh]')?.textContent ?? '';
    if (now !== '' && now !== before) window.told(now);
    before = now;
  }).observe(document, { subtree: true, childList: true, characterData: true });
}

async function killBrowser(context: BrowserContext): Promise<void> {
  const id = Number(/\d+$/.exec(readlinkSync(join(profile, 'SingletonLock')))?.[0]);
  const gone = new Promise<void>((resolve) => context.once('close', () => resolve()));
  process.kill(id, 'SIGKILL');
  await gone;
}

const wordsOf = (all: readonly StoredEvent[]): number => all.filter(({ type: kind }) => kind === 'word-heard').length;

/** Keys at random: whole reps, and words out of place. */
async function practise(page: Page, keys: number): Promise<void> {
  for (let nth = 0; nth < keys; nth++) {
    await page.keyboard.press(pick(['h', 'm', 'h', 'm', 'h', 'l', 'v']));
    await page.waitForTimeout(60 + 340 * chance());
  }
}

async function beginSession(page: Page): Promise<void> {
  await page.goto(`${appUrl}#/`);
  await page.getByRole('button', { name: 'Practise', exact: true }).first().click();
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
}

/** What stands in the database now against what was there and what was told: lost and doubled words, sessions that do not fold. */
function judge(harm: Harm, before: readonly StoredEvent[], after: readonly StoredEvent[], toldNow: number): void {
  const row = table.get(harm) as Row;
  const kept = new Set(after.map(({ id }) => id));
  const sessions = new Set(after.flatMap(({ session }) => session ?? []));
  const folds = [...sessions].filter((session) => fold(after.filter((event) => event.session === session) as never).ok).length;
  row.tried++;
  row.told += toldNow;
  row.lost += before.filter(({ id }) => !kept.has(id)).length + Math.max(0, wordsOf(before) + toldNow - wordsOf(after));
  row.doubled += after.length - kept.size + doubledWords(after);
  row.broken += sessions.size - folds;
}

/** The same word of the same session at the same moment, under two ids. */
function doubledWords(all: readonly StoredEvent[]): number {
  const moments = all.flatMap((event) =>
    event.type === 'word-heard' ? [`${event.session} ${event.body.word} ${event.body.startedAtS}`] : [],
  );
  return moments.length - new Set(moments).size;
}

/** Chromium trusts the room it once saw for half a minute. */
const QUOTA_SEEN_MS = 32_000;

/** Until the returned function is called the device is full. */
async function fillDevice(page: Page): Promise<() => Promise<void>> {
  // The limit lasts as long as this session of the protocol.
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Storage.overrideQuotaForOrigin', { origin: new URL(appUrl).origin, quotaSize: 1 });
  await page.waitForTimeout(QUOTA_SEEN_MS);
  return async () => {
    await cdp.send('Storage.overrideQuotaForOrigin', { origin: new URL(appUrl).origin });
    await cdp.detach();
  };
}

/** A copy of another device, large enough to be killed in the middle. */
function bigCopy(nth: number): string {
  const all = Array.from({ length: 60 }, (_, i) =>
    events(
      type(open(sessionStart(DEMO_PLAN), { session: `other-${nth}-${i}`, device: `other-${nth}-${i}`, seq: 1 }), 'kkklkkvkkkkl'),
    ),
  );
  return exportText({ events: all.flat(), damaged: [] }, '2026-03-02T21:00:00.000+01:00');
}

let { context, page } = await openBrowser();

async function reopen(): Promise<void> {
  ({ context, page } = await openBrowser());
}

const DAY_MS = 86_400_000;

async function torture(harm: Harm, nth: number): Promise<void> {
  const before = await readEvents(page);
  told = 0;
  await beginSession(page);
  await practise(page, 4 + Math.floor(12 * chance()));
  switch (harm) {
    case 'killed in a hold':
      await page.keyboard.press('h');
      await page.waitForTimeout(300 * chance());
      await killBrowser(context);
      return reopenAndJudge(harm, before);
    case 'killed':
      await killBrowser(context);
      return reopenAndJudge(harm, before);
    case 'reloaded':
      await page.reload();
      break;
    case 'tab doubled': {
      const second = await context.newPage();
      await second.goto(appUrl);
      await second.getByText('open in another tab').waitFor();
      await practise(page, 6);
      await second.close();
      break;
    }
    case 'clock back':
    case 'clock forward':
      await page.evaluate(
        (ms) => {
          window.shiftMs = ms;
        },
        (harm === 'clock back' ? -1 : 1) * (1 + 40 * chance()) * DAY_MS,
      );
      await practise(page, 8);
      break;
    case 'device full': {
      const makeRoom = await fillDevice(page);
      await practise(page, 8);
      // A harm that did not bite proves nothing.
      await page.getByText('This device is full').waitFor({ timeout: 5_000 });
      await makeRoom();
      await page.getByRole('button', { name: 'Try again' }).click();
      await page.getByText('This device is full').waitFor({ state: 'detached', timeout: 60_000 });
      await practise(page, 2);
      break;
    }
    case 'database deleted':
      await page.evaluate(
        () =>
          new Promise<void>((resolve, reject) => {
            const deleting = indexedDB.deleteDatabase('stillbeat');
            deleting.onsuccess = () => resolve();
            deleting.onerror = () => reject(deleting.error);
          }),
      );
      await practise(page, 6);
      break;
    case 'import killed': {
      await page.getByRole('button', { name: 'Finish' }).click();
      await page.getByRole('heading', { name: 'Next time' }).waitFor();
      await page.goto(`${appUrl}#/settings`);
      await page
        .getByLabel('Add from a copy')
        .setInputFiles({ name: 'copy.json', mimeType: 'application/json', buffer: Buffer.from(bigCopy(nth)) });
      await page.getByRole('button', { name: 'Add what is new' }).click();
      await page.waitForTimeout(400 * chance());
      await killBrowser(context);
      return reopenAndJudge(harm, before);
    }
  }
  await page.waitForTimeout(400);
  const toldNow = told;
  await context.close();
  await reopen();
  judge(harm, before, await readEvents(page), toldNow);
}

async function reopenAndJudge(harm: Harm, before: readonly StoredEvent[]): Promise<void> {
  const toldNow = told;
  await reopen();
  const after = await readEvents(page);
  judge(harm, before, after, toldNow);
  // An import is there whole or not at all.
  const parts = after.filter(({ device }) => device.startsWith('other-'));
  const whole = new Set(parts.map(({ session }) => session)).size % 60 === 0;
  if (harm === 'import killed' && !whole) (table.get(harm) as Row).broken++;
}

for (let nth = 0; nth < SESSIONS; nth++) {
  const harm = HARMS[nth % HARMS.length] as Harm;
  try {
    await torture(harm, nth);
  } catch (error) {
    console.error(`session ${nth}, ${harm}: ${error instanceof Error ? error.message.split('\n')[0] : error}`);
    (table.get(harm) as Row).broken++;
    await context.close().catch(() => {});
    await reopen();
  }
}
const minutes = ((Date.now() - startedAtMs) / 60_000).toFixed(1);
console.log(
  `seed ${SEED}, ${SESSIONS} sessions, dog ${DEMO_DOG.name}, ${minutes} min, Chromium ${context.browser()?.version() ?? ''}`,
);
console.table(Object.fromEntries(table));
await context.close();
await server.close();
rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 });
process.exit(0);
