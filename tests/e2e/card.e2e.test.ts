/** The card for the examiner: one page of A4 and of Letter in either language, whether a dog has nothing or forty steps; and what is filled in. */
import { Buffer } from 'node:buffer';
import type { Page } from 'playwright';
import { afterEach, describe, expect, inject, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { MOST, manySteps } from './many-steps.ts';
import { findings } from './walk.ts';

let app: OpenedApp;
afterEach(() => app.close());

async function addCopy(page: Page, text: string): Promise<void> {
  await page.goto(`${inject('appUrl')}#/settings`);
  await page
    .getByLabel('Add from a copy')
    .setInputFiles({ name: 'many.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Add what is new' }).click();
  await page.getByText('Added: ').waitFor();
}

/** Its sentences are the longer ones. */
async function speakGerman(page: Page): Promise<void> {
  await page.goto(`${inject('appUrl')}#/settings`);
  await page.getByRole('combobox', { name: 'Language' }).selectOption('de');
  await page.getByRole('heading', { name: 'Einstellungen' }).waitFor();
}

async function openCard(page: Page, dogId: string): Promise<void> {
  await page.goto(`${inject('appUrl')}#/card/${dogId}`);
  await page.getByRole('article').waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => true));
}

const textOf = async (page: Page): Promise<string> => (await page.getByRole('article').textContent()) ?? '';

/** Pages of a printed PDF, counted by their objects (ISO 32000, 7.7.3.3, M); nothing is printed but what the sheet needs: no backgrounds. */
async function pagesOf(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format, printBackground: false });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

describe('the printed card is one page', () => {
  test('of a dog with nothing practised, and says so', async () => {
    app = await openApp();
    await openCard(app.page, 'demo-dog');
    expect(await textOf(app.page)).toContain('Nothing was practised with this app yet.');
    expect([await pagesOf(app.page, 'A4'), await pagesOf(app.page, 'Letter')]).toEqual([1, 1]);
  });

  test('of a dog with forty steps and every text at its longest, in English and in German', async () => {
    app = await openApp();
    await addCopy(app.page, manySteps());
    await openCard(app.page, 'many');
    const card = await textOf(app.page);
    // 24 steps are kept for good: 6 lines and 18; 16 are not yet: 3 lines and 13; ten were never begun.
    expect(card).toContain('And 18 more: Ears 4, Eyes 4, Mouth 5, Paws 5.');
    expect(card).toContain('And 13 more: Ears 3, Eyes 3, Mouth 3, Paws 4.');
    expect(card).toContain('Steps of its plans: Coat and tail 10.');
    expect(card).toContain('30 of 30 on 3 days, last 12 January');
    expect(card).toContain('1 of 2 done. Head up at: Look into the right ear with the lamp.');
    expect([await pagesOf(app.page, 'A4'), await pagesOf(app.page, 'Letter')]).toEqual([1, 1]);
    await speakGerman(app.page);
    await openCard(app.page, 'many');
    expect(await textOf(app.page)).toContain('30 von 30 an 3 Tagen, zuletzt 12. Januar');
    expect([await pagesOf(app.page, 'A4'), await pagesOf(app.page, 'Letter')]).toEqual([1, 1]);
  });

  test.each([
    ['large', { areas: 1, steps: 2, kept: 1, letters: 30 }],
    ['large', { areas: 1, steps: 3, kept: 2, letters: 30 }],
    ['medium', { areas: 4, steps: 2, kept: 1, letters: 100 }],
    ['small', { ...MOST, steps: 3, kept: 1 }],
  ] as const)('set as %s as it may be, with as much as it may hold then', async (size, much) => {
    app = await openApp();
    await addCopy(app.page, manySteps(much));
    await speakGerman(app.page);
    await openCard(app.page, 'many');
    expect(await app.page.getByRole('article').getAttribute('data-size')).toBe(size);
    expect([await pagesOf(app.page, 'A4'), await pagesOf(app.page, 'Letter')]).toEqual([1, 1]);
  });
});

test.each(['light', 'dark'] as const)(
  'what only the handler knows is filled in on it, and nobody is shut out, in the %s theme',
  async (colorScheme) => {
    app = await openApp({ colorScheme });
    await app.page.getByRole('link', { name: 'Card for the examiner' }).first().click();
    await app.page.getByLabel('Signs that something is too much for it').fill('She looks away and holds her breath.');
    await app.page.getByLabel('Whom to call: a name and a number').fill('Noor, 555 0100');
    await app.page.getByRole('button', { name: 'Save' }).click();
    await app.page.getByText('Saved.').waitFor();
    expect(await textOf(app.page)).toContain('Whom to call: Noor, 555 0100');
    expect(await textOf(app.page)).toContain('She looks away and holds her breath.');
    expect(await findings(app.page)).toEqual([]);
    await app.page.getByRole('link', { name: 'About Pixel: notes and treats' }).click();
    expect(await app.page.getByLabel('Whom to call: a name and a number').inputValue()).toBe('Noor, 555 0100');
  },
);
