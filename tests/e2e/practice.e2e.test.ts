/** A session by keys in the built app: what is called, shown, written and taken back; a second tab; a whole backup. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { readSession, repByKeys, startPractice } from './walk.ts';

let app: OpenedApp;

beforeEach(async () => {
  app = await openApp();
});

afterEach(() => app.close());

const seconds = () => app.page.getByLabel('Seconds held').locator('output');
const says = (text: string) => app.page.locator('[role=status]', { hasText: text }).first().waitFor();

test('five kept raise, two lifts running halve the step, and undo takes it all back', async () => {
  await startPractice(app.page, inject('appUrl'));
  for (let i = 0; i < 5; i++) await repByKeys(app.page, 0.4, 'm');
  await says('Next step: Lie flat 1 s');
  await repByKeys(app.page, 0.4, 'l');
  await repByKeys(app.page, 0.4, 'l');
  await says('Half a step');
  await app.page.keyboard.press('u');
  await app.page.getByRole('heading', { name: 'Lie flat 1 s' }).waitFor();
  const taken = await readSession(app.page);
  expect(taken.reps.map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'kept', 'kept', 'kept', 'lifted']);
  expect(taken.phase.phase).toBe('holding');
});

test('the seconds count up during a hold and stand still after it', async () => {
  await startPractice(app.page, inject('appUrl'));
  await app.page.keyboard.press('h');
  await app.page.waitForTimeout(2300);
  expect(await seconds().textContent()).toBe('2');
  await app.page.keyboard.press('m');
  await app.page.waitForTimeout(1500);
  expect(await seconds().textContent()).toBe('2');
});

test('a marker with no hold is a question on the screen and no rep', async () => {
  await startPractice(app.page, inject('appUrl'));
  await app.page.keyboard.press('m');
  await says('A marker, but no hold was heard');
  expect((await readSession(app.page)).reps).toEqual([]);
});

test('the whole session works by buttons alone, and every one is at least 64 px to hit', async () => {
  await startPractice(app.page, inject('appUrl'));
  for (const button of await app.page.getByRole('button').all()) {
    const box = await button.boundingBox();
    expect(box?.height, (await button.textContent()) ?? '').toBeGreaterThanOrEqual(64);
    expect(box?.width, (await button.textContent()) ?? '').toBeGreaterThanOrEqual(64);
  }
  await app.page.getByRole('button', { name: 'Hold', exact: true }).click();
  await app.page.getByRole('button', { name: 'Mark' }).click();
  await says('kept');
  await app.page.getByRole('button', { name: 'Finish' }).click();
  await app.page.getByRole('heading', { name: 'Next time' }).waitFor();
  expect((await readSession(app.page)).phase.phase).toBe('ended');
});

test('a second tab is told that the first one writes', async () => {
  await startPractice(app.page, inject('appUrl'));
  const second = await app.another();
  await second.getByRole('heading', { name: 'Stillbeat is open in another tab' }).waitFor();
});

test('a copy of everything can be saved, and adding it again changes nothing', async () => {
  await startPractice(app.page, inject('appUrl'));
  await repByKeys(app.page, 0.4, 'm');
  await app.page.getByRole('button', { name: 'Finish' }).click();
  await app.page.getByRole('heading', { name: 'Next time' }).waitFor();
  await app.page.getByRole('link', { name: 'Settings' }).click();
  const [file] = await Promise.all([
    app.page.waitForEvent('download'),
    app.page.getByRole('button', { name: 'Save a copy' }).click(),
  ]);
  const path = await file.path();
  expect(JSON.parse(readFileSync(path, 'utf8')).events.length).toBeGreaterThan(4);
  await app.page.getByLabel('Add from a copy').setInputFiles(path);
  await app.page.getByText('New: nothing').waitFor();
  expect(await app.page.getByRole('button', { name: 'Add what is new' }).count()).toBe(0);
  await app.page
    .getByLabel('Add from a copy')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{"no') });
  await app.page.getByText(/^Nothing was changed/).waitFor();
});

test('a name with a tag in it is a name', async () => {
  await app.page.getByRole('button', { name: 'Add your dog' }).click();
  const name = '<img src=x onerror=alert(1)> Ø';
  await app.page.getByLabel('Name').fill(name);
  await app.page.getByRole('button', { name: 'Add, and choose a plan' }).click();
  await app.page.getByRole('button', { name: 'Keep this plan' }).click();
  await app.page.getByText(name).first().waitFor();
  await app.page.getByRole('link', { name: 'Dogs' }).click();
  await app.page.getByRole('heading', { name }).waitFor();
  expect(await app.page.locator('main img').count()).toBe(0);
});
