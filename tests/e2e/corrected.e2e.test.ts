/** A session put right in the built app, by the keyboard alone: written beside what was heard, there again after a reload, taken back. */
import type { Page } from 'playwright';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import type { SessionEvent } from '../../src/core/event.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { readEvents, repByKeys, startPractice } from './walk.ts';

let app: OpenedApp;

beforeEach(async () => {
  app = await openApp();
});

afterEach(() => app.close());

const heard = async (page: Page) =>
  (await readEvents(page)).filter((event): event is SessionEvent => event.session !== null && event.type !== 'corrected');

/** As a screen reader's or a keyboard's user gets there. */
async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab');
    const label = await page.evaluate(
      () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
    );
    if (name.test(label)) return;
  }
  throw new Error(`the tab key does not come to ${name}`);
}

test('a lift that was a mark is put right by keys alone, survives a reload, and can be taken back', async () => {
  const { page } = app;
  await startPractice(page, inject('appUrl'));
  for (const end of ['m', 'm', 'l'] as const) await repByKeys(page, 0.4, end);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByText('The session ended on a lift').waitFor();
  const before = await heard(page);

  await tabTo(page, /^Rep 1,/);
  await page.keyboard.press('End');
  await page.keyboard.press('Enter');
  await tabTo(page, /lifted \(by key\)/);
  await page.keyboard.press('Enter');
  await tabTo(page, /^It was mark$/);
  await page.keyboard.press('Enter');
  await page.getByText('You go on from the step you reached').waitFor();
  await page.getByText('Put right. As heard: lifted').waitFor();
  expect(await heard(page)).toEqual(before);

  await page.reload();
  await page.getByText('1 correction. As heard: 2 of 3 trials kept.').waitFor();
  await page.getByRole('button', { name: /^Rep 3,.*Kept.*Put right\.$/ }).waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('The session ended on a lift').waitFor();
  await page.getByRole('button', { name: 'Redo' }).click();
  await page.getByText('You go on from the step you reached').waitFor();
});

test('everything that puts right is at least 44 px to hit on a phone, and nothing is wider than the screen', async () => {
  const { page } = app;
  await startPractice(page, inject('appUrl'));
  for (const end of ['m', 'l'] as const) await repByKeys(page, 0.4, end);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('button', { name: /^Rep 2,/ }).click();
  const panel = page.getByRole('region', { name: 'Put rep 2 right' });
  await panel.locator('details').evaluateAll((all) => {
    for (const details of all) details.setAttribute('open', '');
  });
  const targets = await panel.locator('button:visible, summary:visible, input:visible, select:visible, textarea:visible').all();
  expect(targets.length).toBeGreaterThan(15);
  for (const target of targets) {
    const box = await target.boundingBox();
    expect(box?.height, (await target.textContent()) ?? '').toBeGreaterThanOrEqual(44);
    expect(box?.width, (await target.textContent()) ?? '').toBeGreaterThanOrEqual(44);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});
