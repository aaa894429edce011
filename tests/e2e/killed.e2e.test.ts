/** The browser dies in the middle of a hold: nothing that was said is lost, and the session goes on. */
import { mkdtempSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright';
import { afterEach, expect, inject, test } from 'vitest';
import { launchOptions } from '../support/chromium.ts';
import { readEvents, readSession, repByKeys, startPractice } from './walk.ts';

const profile = mkdtempSync(join(tmpdir(), 'stillbeat-killed-'));
let running: BrowserContext | null = null;

afterEach(async () => {
  await running?.close();
  // Its helpers write on for a moment after it is gone.
  rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 });
});

/** A browser on one profile, that can be killed by its own id. */
async function openBrowser(): Promise<{ page: Page; kill: () => Promise<void> }> {
  const context = await chromium.launchPersistentContext(profile, launchOptions());
  running = context;
  const page = context.pages()[0] ?? (await context.newPage());
  return { page, kill: () => kill(context) };
}

/** SIGKILL to the browser's own process, whose id is the end of the lock on its profile: `host-1234`. */
async function kill(context: BrowserContext): Promise<void> {
  const id = Number(/\d+$/.exec(readlinkSync(join(profile, 'SingletonLock')))?.[0]);
  const gone = new Promise<void>((resolve) => context.once('close', () => resolve()));
  process.kill(id, 'SIGKILL');
  await gone;
}

test('a browser killed in mid-hold has lost no word, and the session goes on where it was', async () => {
  const appUrl = inject('appUrl');
  const first = await openBrowser();
  await first.page.goto(appUrl);
  await startPractice(first.page, appUrl);
  await repByKeys(first.page, 0.5, 'm');
  await repByKeys(first.page, 0.5, 'm');
  await first.page.keyboard.press('h');
  await first.page.getByText('“hold”').waitFor();
  await first.kill();

  const second = await openBrowser();
  await second.page.goto(appUrl);
  await second.page.getByText('was closed in the middle').waitFor();
  const kept = await readSession(second.page);
  expect(kept.reps.map(({ outcome }) => outcome)).toEqual(['kept', 'kept']);
  expect(kept.phase.phase).toBe('holding');

  await second.page.getByRole('button', { name: /^Go on/ }).click();
  await second.page.getByText('Nothing you say counts now').waitFor();
  await second.page.getByRole('button', { name: 'Go on', exact: true }).click();
  await repByKeys(second.page, 0.5, 'm');
  await second.page.getByRole('button', { name: 'Finish' }).click();
  await second.page.getByRole('heading', { name: 'Next time' }).waitFor();
  const whole = await readSession(second.page);
  expect(whole.reps.map(({ outcome, voidReason }) => voidReason ?? outcome)).toEqual(['kept', 'kept', 'paused', 'kept']);
  expect(new Set((await readEvents(second.page)).map(({ session }) => session)).size).toBe(2);
});
