/** A trainer and an owner, each with a browser of their own: homework goes by file and by code, sessions come back, an answer follows. */
import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import jsQR from 'jsqr';
import type { Locator, Page } from 'playwright';
import { afterEach, expect, inject, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { findings, repByKeys } from './walk.ts';

const opened: OpenedApp[] = [];
afterEach(async () => {
  for (const app of opened.splice(0)) await app.close();
});

async function person(): Promise<Page> {
  const app = await openApp();
  opened.push(app);
  return app.page;
}

const go = async (page: Page, at: string, sign: string) => {
  await page.goto(`${inject('appUrl')}#${at}`);
  await page.getByText(sign).first().waitFor();
};

/** What a tap hands out, as a file on this machine. */
async function saved(page: Page, button: Locator): Promise<string> {
  const waits = page.waitForEvent('download');
  await button.click();
  const path = join(tmpdir(), `${Date.now()}-${(await waits).suggestedFilename()}`);
  await (await waits).saveAs(path);
  return path;
}

/** From the invented plan to homework for Biscuit, made and ready. */
async function give(trainer: Page): Promise<void> {
  await go(trainer, '/plan/demo-plan', 'File one claw');
  await trainer.getByRole('link', { name: 'Give as homework' }).click();
  await trainer.getByLabel('The dog’s name').fill('Biscuit');
  await trainer.getByLabel('Owner', { exact: true }).fill('Kim');
  await trainer.getByLabel('Your name, as the owner knows you').fill('Alex');
  await trainer.getByLabel('paid').fill('yes');
  await trainer.getByRole('button', { name: 'Make the homework' }).click();
  await trainer.getByRole('heading', { name: 'Version 1 for Biscuit is ready' }).waitFor();
}

/** What a camera would read: the code as it stands on the screen, pixel by pixel. */
async function readCode(page: Page): Promise<string | undefined> {
  const picture = page.getByRole('img', { name: 'QR code of the homework for Biscuit' });
  const png = await picture.screenshot();
  const blank = await page.context().newPage();
  const pixels = await blank.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const context = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
    context.drawImage(bitmap, 0, 0);
    const { data, width, height } = context.getImageData(0, 0, bitmap.width, bitmap.height);
    return { data: Array.from(data), width, height };
  }, png.toString('base64'));
  await blank.close();
  return jsQR(Uint8ClampedArray.from(pixels.data), pixels.width, pixels.height)?.data;
}

test('by file: given, accepted, practised two taps later, sent back, seen on the desk, answered, and the answer told in words', async () => {
  const [trainer, owner] = [await person(), await person()];
  await give(trainer);
  const file = await saved(trainer, trainer.getByRole('button', { name: 'Save or share the file' }));

  await go(owner, '/', 'Open homework from a trainer');
  await owner.getByRole('link', { name: 'Open homework from a trainer' }).click();
  await owner.getByLabel('Open homework from a file').setInputFiles(file);
  await owner.getByText('Homework from Alex, version 1').waitFor();
  expect(await findings(owner), 'homework told').toEqual([]);
  // Two taps from the first rep.
  await owner.getByRole('button', { name: 'Accept it' }).click();
  await owner.getByRole('button', { name: 'Practise', exact: true }).click();
  await owner.getByRole('button', { name: 'Hold', exact: true }).waitFor();
  for (let n = 0; n < 5; n++) await repByKeys(owner, 0.2, 'm');
  await owner.getByRole('button', { name: 'Finish' }).click();
  await owner.getByRole('heading', { name: 'Next time' }).waitFor();

  await go(owner, '/homework', '1 session that your trainer has not seen yet');
  expect(await findings(owner), 'homework accepted').toEqual([]);
  const sessions = await saved(owner, owner.getByRole('button', { name: 'Send what is new' }));
  await owner.getByText('Nothing new since you last sent').waitFor();

  await go(trainer, '/desk', 'no session yet');
  await trainer.getByLabel('Add sessions from a file').setInputFiles(sessions);
  await trainer.getByRole('heading', { name: '1 new session with Biscuit' }).waitFor();
  await trainer.getByRole('button', { name: 'Add it' }).click();
  await trainer.getByText('1 in seven days, asked for: 3').waitFor();
  expect(await findings(trainer), 'the desk').toEqual([]);
  await trainer.getByRole('link', { name: /Biscuit/ }).click();
  await trainer
    .getByText(/5 of 5/)
    .first()
    .waitFor();
  expect(await findings(trainer), 'a dog on the desk').toEqual([]);
  // The dog of the owner does not crowd the trainer's first screen.
  await go(trainer, '/', 'The desk: 1 dog');
  expect(await trainer.getByRole('heading', { level: 2 }).allTextContents()).toEqual([expect.stringContaining('Pixel')]);

  await trainer.getByRole('link', { name: 'The desk: 1 dog' }).click();
  await trainer.getByRole('link', { name: /Biscuit/ }).click();
  await trainer.getByRole('link', { name: 'Answer with an adjusted plan' }).click();
  await trainer.getByLabel('Sessions a week').fill('2');
  await trainer.getByRole('button', { name: 'Make version 2' }).click();
  await trainer.getByRole('heading', { name: 'Version 2 for Biscuit is ready' }).waitFor();
  const answer = await saved(trainer, trainer.getByRole('button', { name: 'Save or share the file' }));

  await owner.getByLabel('Open homework from a file').setInputFiles(answer);
  await owner.getByRole('heading', { name: 'What is new since version 1' }).waitFor();
  await owner.getByText('Sessions a week: 2 instead of 3.').waitFor();
  await owner.getByRole('button', { name: 'Go on with version 2' }).click();
  await owner.getByText('1 in the latest seven days').waitFor();
  await go(owner, '/review', 'Biscuit');
});

test('by code: what a camera reads from the screen opens the homework, and nothing of it is asked from a server', async () => {
  const [trainer, owner] = [await person(), await person()];
  await give(trainer);
  expect(await findings(trainer), 'homework handed out').toEqual([]);
  const link = (await readCode(trainer)) ?? '';
  expect(link.startsWith(`${inject('appUrl')}#/homework/`)).toBe(true);

  const asked: string[] = [];
  owner.on('request', (request) => asked.push(request.url()));
  await owner.goto(link);
  await owner.getByText('Homework from Alex, version 1').waitFor();
  expect(asked.filter((url) => url.includes(link.slice(-40)))).toEqual([]);
  await owner.getByRole('button', { name: 'Accept it' }).click();
  await owner.getByRole('button', { name: 'Practise', exact: true }).waitFor();
  // The way back does not offer it again.
  expect(new URL(owner.url()).hash).toBe('#/homework');

  // One letter mistyped: refused, and nothing is kept.
  const other = link.at(-30) === 'A' ? 'B' : 'A';
  await owner.goto(`${link.slice(0, -30)}${other}${link.slice(-29)}`);
  await owner.getByRole('heading', { name: 'This homework was not taken' }).waitFor();
  await owner.getByText('damaged or changed on the way').waitFor();
});

test('a file that was tampered with, one of a newer app, and one of something else are refused, each with its reason', async () => {
  const [trainer, owner] = [await person(), await person()];
  await give(trainer);
  const file = await saved(trainer, trainer.getByRole('button', { name: 'Save or share the file' }));
  const text = readFileSync(file, 'utf8');
  const refusals: readonly (readonly [string, string])[] = [
    [text.replace('"holdForS": 5', '"holdForS": 50'), 'damaged or changed on the way'],
    [text.replace('"version": 1', '"version": 2'), 'made by a newer Stillbeat'],
    ['{"format":"stillbeat events"}', 'file › format: expected "stillbeat homework", got "stillbeat events"'],
  ];
  for (const [nth, [changed, reason]] of refusals.entries()) {
    const path = join(tmpdir(), `${Date.now()}-tampered-${nth}.json`);
    writeFileSync(path, changed);
    await go(owner, '/homework', 'Open homework from a file');
    await owner.getByLabel('Open homework from a file').setInputFiles(path);
    await owner.getByText(reason).waitFor();
    await owner.getByText('Nothing was kept or changed').waitFor();
    await owner.getByRole('button', { name: 'All homework' }).click();
  }
  expect(await owner.getByRole('button', { name: 'Practise' }).count()).toBe(0);
});

/** Under another name of this computer the sheet carries the code, as it does for a published app. */
const elsewhere = (): string => inject('appUrl').replace('127.0.0.1', 'stillbeat.localhost');

/** The app's own files, asked for under that name. */
function forgiveElsewhere(): void {
  for (const { complaints } of opened)
    complaints.splice(0, Infinity, ...complaints.filter((said) => !said.startsWith(`foreign request: ${elsewhere()}`)));
}

/** With the margins of a usual print dialog. Pages are counted by their objects (ISO 32000, 7.7.3.3, M). */
async function pagesOf(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const edge = '0.4in';
  await page.getByRole('article').getByRole('img').waitFor();
  const pdf = await page.pdf({ format, margin: { top: edge, bottom: edge, left: edge, right: edge } });
  return pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
}

test('on paper eleven steps, with the code, a note and what to mind, are one page, in English and in German', async () => {
  const trainer = await person();
  const base = elsewhere();
  await trainer.goto(`${base}#/give/demo-plan`);
  await trainer.getByLabel('The dog’s name').fill('Biscuit');
  await trainer
    .getByLabel('What to mind')
    .fill('Stop when she flinches at the left paw; your veterinarian looks at it on Friday.');
  await trainer.getByLabel('A note').fill('Five minutes at most, after her walk. Pay where the head rests.');
  await trainer.getByRole('button', { name: 'Make the homework' }).click();
  await trainer.getByRole('link', { name: 'A sheet of paper' }).click();
  expect([await pagesOf(trainer, 'A4'), await pagesOf(trainer, 'Letter')]).toEqual([1, 1]);
  const sheet = trainer.url();
  await trainer.goto(`${base}#/settings`);
  await trainer.getByRole('combobox', { name: 'Language' }).selectOption('de');
  await trainer.getByRole('heading', { name: 'Einstellungen' }).waitFor();
  await trainer.goto(sheet);
  await trainer.getByText('Haken: gehalten').waitFor();
  expect([await pagesOf(trainer, 'A4'), await pagesOf(trainer, 'Letter')]).toEqual([1, 1]);
  forgiveElsewhere();
});
