/** The browser dies in the middle of a hold: nothing that was said is lost, and the session goes on. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright';
import { afterEach, expect, inject, test } from 'vitest';
import { launchOptions } from '../support/chromium.ts';
import { readEvents, readSession, repByKeys, startPractice } from './walk.ts';

const profile = mkdtempSync(join(tmpdir(), 'stillbeat-killed-'));
let running: ChildProcess | null = null;

afterEach(() => {
  running?.kill('SIGKILL');
  // Its helpers write on for a moment after it is gone.
  rmSync(profile, { recursive: true, force: true, maxRetries: 20, retryDelay: 250 });
});

/** A browser of our own, on one profile, that can be killed by its own id. */
async function openBrowser(): Promise<{ browser: Browser; page: Page; kill: () => Promise<void> }> {
  const { executablePath, args } = launchOptions();
  const started = spawn(
    executablePath ?? '',
    [...args, '--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`],
    {
      stdio: ['ignore', 'ignore', 'pipe'],
    },
  );
  running = started;
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    started.stderr?.on('data', (chunk) => {
      said += chunk;
      const found = /ws:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    started.once('exit', () => reject(new Error(`the browser did not start: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const context = browser.contexts()[0] ?? (await browser.newContext());
  const page = await context.newPage();
  const kill = () =>
    new Promise<void>((resolve) => {
      started.removeAllListeners('exit');
      started.once('exit', () => resolve());
      started.kill('SIGKILL');
    });
  return { browser, page, kill };
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
  await second.browser.close();
});
