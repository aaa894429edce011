/** The day itself: planned from what the dog has practised, held by buttons and by keys alone, told in the review and on the card. */
import type { Page } from 'playwright';
import { afterEach, describe, expect, inject, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { findings, readEvents, readSession } from './walk.ts';

let app: OpenedApp;
afterEach(() => app.close());

/** The day on which the test runs, as the page has it. */
const today = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const now = new Date();
    return new Date(now.getTime() - 60_000 * now.getTimezoneOffset()).toISOString().slice(0, 10);
  });

async function planExam(page: Page, date: string): Promise<void> {
  await page.goto(`${inject('appUrl')}#/`);
  await page.getByRole('link', { name: 'Plan an examination' }).first().click();
  await page.getByLabel('The day').fill(date);
  await page.getByLabel('Where').fill('the practice');
  await page.getByRole('button', { name: 'Plan it' }).click();
  await page.getByText('Nothing is on the list yet').waitFor();
  await add(page, 'Paws', 'Steady one claw 3 s', 4);
  await add(page, 'Ears', 'Look into the ear 4 s', 10);
}

async function add(page: Page, area: string, what: string, forS: number): Promise<void> {
  await page.getByLabel('Place of the body').selectOption({ label: area });
  await page.getByLabel('What is done').selectOption({ label: what });
  await page.getByLabel('Seconds it takes').fill(String(forS));
  await page.getByRole('button', { name: 'Add to the list' }).click();
  await page.getByRole('heading', { name: what }).waitFor();
}

/** The list before the day has the same headings: the day has begun when there is something to hold. */
async function begin(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Begin the examination' }).click();
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
}

describe('before the day', () => {
  test.each(['light', 'dark'] as const)(
    'the list is laid beside what was practised, and what is not ready is said, in the %s theme',
    async (colorScheme) => {
      app = await openApp({ colorScheme });
      const { page } = app;
      await planExam(page, '2099-03-01');
      const list = page.getByRole('list').first();
      expect(await list.getByRole('heading').allTextContents()).toEqual(['Steady one claw 3 s', 'Look into the ear 4 s']);
      expect(await list.textContent()).toContain('A step of “File one claw”, not tried yet.');
      expect(await list.textContent()).toContain('On no plan of this dog.');
      // Ten steps up to the claw, and one for the fourth second that no ladder has.
      expect(await page.getByText('Steps missing: 11.').textContent()).toContain('From so few sessions no pace can be told');
      await page.getByText('A shorter list: what is ready').waitFor();
      await page.getByText('Whether what cannot wait is kinder under sedation. The veterinarian decides.').waitFor();
      await page.getByText('your dog never practised in this place (the practice)').waitFor();
      await page.getByRole('button', { name: 'Later: Steady one claw 3 s' }).click();
      await expect
        .poll(() => list.getByRole('heading').allTextContents())
        .toEqual(['Look into the ear 4 s', 'Steady one claw 3 s']);
      expect(await findings(page)).toEqual([]);
    },
  );
});

describe('on the day', () => {
  test('by buttons: hold and lifted, the next thing, a pause; kept as an examination and told on the card', async () => {
    app = await openApp();
    const { page } = app;
    await planExam(page, await today(page));
    await begin(page);
    const button = (name: string) => page.getByRole('button', { name, exact: true });
    await page.getByRole('heading', { name: 'Steady one claw 3 s' }).waitFor();
    for (const each of await page.getByRole('button').all()) {
      const box = await each.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0), (await each.textContent()) ?? '').toBeGreaterThanOrEqual(64);
    }
    expect(await findings(page)).toEqual([]);
    await button('Hold').click();
    await page.waitForTimeout(1200);
    await button('Done: next').click();
    await page.getByRole('heading', { name: 'Look into the ear 4 s' }).waitFor();
    await button('Hold').click();
    await page.waitForTimeout(600);
    await button('Lifted').click();
    await page.getByText('Lifted: hands off.').waitFor();
    await button('Hold').click();
    await button('Pause').click();
    await page.getByText('Everybody stops.').waitFor();
    expect(await findings(page)).toEqual([]);
    await button('Go on').click();
    await button('Finish').click();
    await page.getByRole('heading', { name: 'The list: 1 of 2 done' }).waitFor();
    expect(await page.getByRole('heading', { name: 'Next time' }).count()).toBe(0);
    expect(await findings(page)).toEqual([]);
    const { start, reps } = await readSession(page);
    expect(start).toMatchObject({ kind: 'exam', place: 'the practice', dogName: 'Pixel' });
    expect(reps.map(({ outcome, voidReason }) => voidReason ?? outcome)).toEqual(['kept', 'lifted', 'paused']);
    await page.getByRole('link', { name: 'Card for the examiner' }).click();
    await page.getByText('1 of 2 done. Head up at: Look into the ear 4 s.').waitFor();
    await page.getByText('Nothing was practised with this app yet.').waitFor();
    await page.goto(`${inject('appUrl')}#/progress`);
    await page.getByText('No sessions yet.').waitFor();
  });

  test('by keys alone: two lifts at one thing are an answer, and no call is ever made', async () => {
    app = await openApp();
    const { page } = app;
    await planExam(page, await today(page));
    await begin(page);
    await page.getByRole('heading', { name: 'Steady one claw 3 s' }).waitFor();
    for (let n = 0; n < 2; n++) {
      await page.keyboard.press('h');
      await page.waitForTimeout(400);
      await page.keyboard.press('l');
      await page.waitForTimeout(350);
    }
    await page.getByText('Twice no: leave this one').waitFor();
    // Easier, stay and void mean something in practice alone; the minus has nothing before the first thing to go back to.
    for (const key of ['s', 'v', '-']) await page.keyboard.press(key);
    await page.keyboard.press('+');
    await page.getByRole('heading', { name: 'Look into the ear 4 s' }).waitFor();
    await page.keyboard.press('p');
    await page.getByText('Everybody stops.').waitFor();
    await page.keyboard.press('g');
    await page.keyboard.press('f');
    await page.getByRole('heading', { name: 'The list: 0 of 2 done' }).waitFor();
    const called = (await readEvents(page)).flatMap((event) => (event.type === 'called' ? [event.body] : []));
    expect(called.map(({ kind, reasons }) => [kind, reasons.map((reason) => reason.kind)])).toEqual([
      ['raise', ['handler-says']],
    ]);
  });
});
