/** Three phones and a real server behind `npm start -- --sync`, over a line that breaks: two practise, the third joins late. */
import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { chanceOf } from '../../demo/chance.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { launchChromium } from '../support/chromium.ts';
import { type Couch, startCouch } from '../support/couch.ts';
import { watch } from '../support/open-app.ts';
import { findings, readEvents, repByKeys, startPractice } from './walk.ts';

const ROOT = join(import.meta.dirname, '../..');
const PASSPHRASE = 'sprats in the bath';

let couch: Couch;
let server: ChildProcess;
let address: string;
let browser: Browser;

beforeAll(async () => {
  couch = await startCouch();
  await couch.addUser('anna', 'pa');
  await couch.addUser('ben', 'pb');
  await couch.addDatabase('dog-pixel', ['anna']);
  server = spawn(process.execPath, ['--import', 'tsx', join(ROOT, 'src/command/serve.ts'), '--port', '0', '--sync', couch.url], {
    cwd: ROOT,
  });
  address = await new Promise<string>((resolve) => {
    let said = '';
    server.stdout?.on('data', (piece) => {
      said += piece;
      const found = /http:\S+/.exec(said);
      if (found && said.includes('same network')) resolve(found[0]);
    });
  });
  browser = await launchChromium({ shell: true });
}, 60_000);

afterAll(async () => {
  // What a phone still asks in the background when all is checked is not waited for, as Playwright advises.
  await Promise.all(browser.contexts().map((context) => context.unrouteAll({ behavior: 'ignoreErrors' })));
  await browser.close();
  server.kill('SIGINT');
  await couch.stop();
});

/** Of three requests one is lost: on its way there, or on its way back when the server has done what was asked. */
const chance = chanceOf(3);
let cuts = 0;
async function breakLine(context: BrowserContext, line: { isGone: boolean }): Promise<void> {
  await context.route('**/sync/**', async (route) => {
    if (line.isGone) return route.abort('internetdisconnected');
    if (chance() > 0.33) return route.continue();
    cuts += 1;
    if (chance() < 0.5) await route.fetch();
    await route.abort('connectionreset');
  });
}

/** A phone with a profile of its own; what it asked and said is written down. */
async function phone() {
  const complaints: string[] = [];
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const line = { isGone: false };
  await breakLine(context, line);
  const page = await context.newPage();
  watch(page, new URL(address).origin, complaints);
  await page.goto(address);
  await page.getByRole('button', { name: 'Practise', exact: true }).first().waitFor();
  return { line, page, complaints };
}

/** Again and again, as one does where the line is bad. */
async function signIn(page: Page, user: string, password: string): Promise<void> {
  await page.locator('[name=user]').fill(user);
  await page.locator('[name=password]').fill(password);
  const isIn = page.getByText(`Signed in as ${user}.`);
  for (let n = 0; n < 12 && !(await isIn.isVisible()); n++) {
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await isIn.or(page.getByText(/does not answer|cannot right now/)).waitFor();
  }
  await isIn.waitFor();
}

/** Once; what the app says to it. */
async function addDog(page: Page, dog: string, passphrase: string): Promise<string> {
  await page.locator('form select').selectOption({ label: dog });
  await page.locator('[name=database]').fill('dog-pixel');
  await page.getByLabel('Passphrase of this dog').fill(passphrase);
  await page.getByRole('button', { name: 'Keep in step' }).click();
  const said = page.locator('form', { hasText: 'Add a dog' }).getByRole('status');
  await page.waitForFunction((element) => !/^$|One moment/.test(element?.textContent ?? ''), await said.elementHandle());
  return (await said.textContent()) ?? '';
}

/** Again and again, as one does where the line is bad. */
async function addDogAtLast(page: Page, dog: string): Promise<void> {
  for (let n = 0; n < 12; n++) {
    const said = await addDog(page, dog, PASSPHRASE);
    if (/Added, and on its way/.test(said)) return;
    expect(said).toMatch(/does not answer|cannot right now/);
  }
  throw new Error('the dog was never added');
}

async function open(page: Page): Promise<void> {
  await page.goto(`${address}#/sync`);
  await page.getByRole('heading', { name: 'More than one device' }).waitFor();
}

async function putHalfStep(page: Page): Promise<void> {
  await page.goto(`${address}#/plan/${DEMO_PLAN.id}`);
  await page.getByRole('button', { name: /Lie flat 5 s/ }).click();
  await page.getByRole('button', { name: 'Put half a step before it' }).click();
  await page.getByText('Lie flat 4.5 s').first().waitFor();
}

async function practise(page: Page): Promise<void> {
  await startPractice(page, address);
  await repByKeys(page, 0.4, 'm');
  await repByKeys(page, 0.4, 'l');
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();
}

/** Until nothing waits and nothing goes on. */
async function syncNow(page: Page): Promise<void> {
  await open(page);
  await page.locator('button:enabled', { hasText: 'Sync now' }).click({ timeout: 60_000 });
  await page.locator('button:enabled', { hasText: 'Sync now' }).waitFor({ timeout: 60_000 });
  await page.getByText('Nothing waits to be sent.').waitFor();
}

async function sessionsOn(page: Page): Promise<readonly string[]> {
  const events = await readEvents(page);
  return events.flatMap(({ id, session }) => (session === null ? [] : [id])).toSorted();
}

test('two phones come to hold the same sessions over a line that breaks, a third that joins late gets all, others get nothing', async () => {
  const [a, b] = [await phone(), await phone()];
  await practise(a.page);
  expect(a.complaints, 'before it is switched on nothing leaves').toEqual([]);
  await open(a.page);
  expect(await findings(a.page)).toEqual([]);
  await signIn(a.page, 'anna', 'pa');
  await addDogAtLast(a.page, 'Pixel');
  expect(await findings(a.page)).toEqual([]);
  // All of it is there before the second phone looks: what comes later it would look for minutes from then.
  await syncNow(a.page);

  await open(b.page);
  await signIn(b.page, 'anna', 'pa');
  expect(await addDog(b.page, 'one that is on the server already', 'sprats in the bag')).toMatch(
    /not the passphrase|not answer|cannot/,
  );
  expect(await sessionsOn(b.page)).toEqual([]);
  await addDogAtLast(b.page, 'one that is on the server already');
  await expect.poll(() => sessionsOn(b.page), { timeout: 60_000 }).toEqual(await sessionsOn(a.page));

  // The one who trains adjusts the plan: the other practises by it, and the session comes back below.
  await putHalfStep(a.page);
  await syncNow(a.page);
  await syncNow(b.page);
  await b.page.goto(`${address}#/plan/${DEMO_PLAN.id}`);
  await b.page.getByText('Lie flat 4.5 s').first().waitFor();

  // Out of reach one of them goes on, and is in step again afterwards.
  a.line.isGone = true;
  await practise(a.page);
  await practise(b.page);
  a.line.isGone = false;
  await syncNow(a.page);
  await syncNow(b.page);
  await syncNow(a.page);
  const sessions = await sessionsOn(a.page);
  expect(new Set(sessions.map((id) => id.split(':')[0])).size, 'events of both phones').toBe(2);
  await expect.poll(() => sessionsOn(b.page), { timeout: 60_000 }).toEqual(sessions);

  const late = await phone();
  await open(late.page);
  await signIn(late.page, 'ben', 'pb');
  expect(await addDog(late.page, 'one that is on the server already', PASSPHRASE)).toMatch(
    /does not let you in|not answer|cannot/,
  );
  expect(await sessionsOn(late.page)).toEqual([]);
  await late.page.getByRole('button', { name: 'Sign in otherwise' }).click();
  await signIn(late.page, 'anna', 'pa');
  await addDogAtLast(late.page, 'one that is on the server already');
  await expect.poll(() => sessionsOn(late.page), { timeout: 60_000 }).toEqual(sessions);
  await late.page.goto(`${address}#/review`);
  await expect.poll(() => late.page.getByRole('link', { name: /Pixel/ }).count()).toBe(3);

  const stored = await couch.documents('dog-pixel');
  expect(sessions.filter((id) => !stored.some(({ _id }) => _id === id))).toEqual([]);
  expect(cuts, 'so often the line broke').toBeGreaterThan(3);
  for (const { complaints } of [a, b, late]) expect(complaints.filter((said) => !isExpected(said))).toEqual([]);
});

/** What sync asks, and what the browser says of a line that is down or of an answer that is no. */
function isExpected(said: string): boolean {
  return /unasked request: (GET|PUT|POST) \/sync\/(_session|dog-pixel\/)|Failed to load resource/.test(said);
}
