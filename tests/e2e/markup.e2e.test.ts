/**
 * Names and notes that are markup, formulas and paths: text everywhere, on every screen, on paper, in pictures, tables and names of files.
 * The same walk counts what the page asks the network for: nothing but its own address.
 */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { events, feed, open, sessionStart, type } from '../../demo/typed-session.ts';
import type { LibraryEvent, StoredEvent } from '../../src/core/event.ts';
import { exportText } from '../../src/store/export.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';

const BAD = '<img src=x onerror=alert(1)>';
const FORMULA = '=HYPERLINK("https://example.invalid","x")';
const PATH = `../../${BAD}`;

let app: OpenedApp;
let requests: string[];
beforeEach(async () => {
  app = await openApp();
  requests = [];
  app.page.on('request', (request) => requests.push(request.url()));
  app.page.on('dialog', (dialog) => app.complaints.push(`a dialog opened: ${dialog.message()}`));
});
afterEach(() => app.close());

/** A dog, a plan and three sessions of which everything that can be typed is hostile. */
function hostileCopy(): string {
  const plan = {
    ...{ ...DEMO_PLAN, id: 'bad-plan', dogId: 'bad-dog', title: PATH, position: BAD },
    steps: DEMO_PLAN.steps.map((step) => ({ ...step, title: `${FORMULA} ${step.id}` })),
  };
  const dog = { id: 'bad-dog', name: BAD, notes: BAD, pain: BAD, advice: BAD, food: FORMULA, scares: BAD, invented: false };
  const drafts = [
    { type: 'dog-saved', body: dog },
    { type: 'plan-saved', body: plan },
    { type: 'place-saved', body: { id: FORMULA, name: FORMULA, archived: false } },
    { type: 'handler-saved', body: { id: BAD, name: BAD, archived: false } },
  ] as const;
  const library = drafts.map((draft, nth) => {
    const stamp = { device: 'bad', seq: nth + 1, session: null, version: 1, at: '2026-03-01T18:00:00.000+01:00', monoMs: nth };
    return { id: `bad:${nth + 1}`, ...stamp, ...draft } as LibraryEvent;
  });
  const start = { ...sessionStart(plan), dogName: BAD, place: FORMULA, handler: BAD };
  const sessions = [1, 2, 3].map((day) => {
    const stamp = { session: `bad-${day}`, device: `bad-${day}`, seq: 1, at: `2026-03-0${day}T18:00:00.000+01:00` };
    const played = type(open(start, stamp), 'kkklkvkkll');
    const ended = events(feed(played, { kind: 'end', atS: played.atS, why: 'handler' }));
    const last = ended.at(-1) as StoredEvent;
    const body = { do: 'note', of: null, text: BAD } as const;
    return [
      ...ended,
      { ...last, id: `${last.device}:${last.seq + 1}`, seq: last.seq + 1, type: 'corrected', body } as StoredEvent,
    ];
  });
  return exportText({ events: [...library, ...sessions.flat()], damaged: [] }, '2026-03-04T18:00:00.000+01:00');
}

async function add(page: Page, text: string): Promise<void> {
  await page.goto(`${inject('appUrl')}#/settings`);
  const file = { name: `${BAD}.json`, mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.getByLabel('Add from a copy').setInputFiles(file);
  await page.getByRole('button', { name: 'Add what is new' }).click();
  await page.getByText('Added:').waitFor();
}

async function saved(page: Page, button: string): Promise<{ name: string; text: string }> {
  const waits = page.waitForEvent('download');
  await page.getByRole('button', { name: button, exact: true }).first().click();
  const download = await waits;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** What became an element though it was typed. */
const madeElements = (page: Page) => page.evaluate(() => document.querySelectorAll('img, [onerror], script:not([src])').length);

const ROOMS = [
  ...['#/', '#/review', '#/review/bad-1', '#/observe/bad-1', '#/progress', '#/compare', '#/dogs', '#/dogs/bad-dog'],
  ...['#/plan/bad-plan', '#/plan/new', '#/sound', '#/settings'],
];

test('typed markup stays text on every screen and on paper, and the whole walk asks no other host for anything', async () => {
  const { page } = app;
  await add(page, hostileCopy());
  for (const at of ROOMS) {
    await page.goto(`${inject('appUrl')}${at}`);
    await page.locator('h1').first().waitFor({ state: 'attached' });
    await page.waitForTimeout(300);
    expect(await madeElements(page), at).toBe(0);
  }
  await page.goto(`${inject('appUrl')}#/review/bad-1`);
  await page.emulateMedia({ media: 'print' });
  await page.getByText(BAD).first().waitFor();
  expect(await page.getByLabel('A note on this session').inputValue()).toBe(BAD);
  expect(await madeElements(page)).toBe(0);
  await page.emulateMedia({ media: 'screen' });

  await page.goto(`${inject('appUrl')}#/`);
  await page.getByRole('button', { name: 'Practise', exact: true }).last().click();
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
  for (const key of ['h', 'm', 'h', 'l', 'm']) {
    await page.keyboard.press(key);
    await page.waitForTimeout(350);
  }
  expect(await madeElements(page)).toBe(0);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();
  expect(await madeElements(page)).toBe(0);

  // complaints hold every foreign request, every policy violation and every console message: `close` expects none.
  const { origin } = new URL(inject('appUrl'));
  expect(requests.filter((url) => new URL(url).origin !== origin && !url.startsWith('blob:'))).toEqual([]);
  expect(requests.length).toBeGreaterThan(10);
});

test('in files it is text too: pictures, tables, documents and their names', async () => {
  const { page } = app;
  await add(page, hostileCopy());

  await page.goto(`${inject('appUrl')}#/plan/bad-plan`);
  const plan = await saved(page, 'Save this plan as a file');
  expect(plan.name).toMatch(/^stillbeat-plan-img-src-x-onerror-alert-1-\d{4}-\d\d-\d\d\.json$/);
  expect(JSON.parse(plan.text).events[0].body.name).toBe(BAD);

  await page.goto(`${inject('appUrl')}#/review/bad-1`);
  expect((await saved(page, 'Save this session as a file')).name).toBe('stillbeat-session-2026-03-01.json');
  const table = await saved(page, 'Its reps as a table (CSV)');
  const [, first = ''] = table.text.split('\r\n');
  expect(first).toContain(`"'=HYPERLINK(""https://example.invalid"",""x"")`);
  expect(table.text).not.toMatch(/(^|,|\n)"?[=+@\t]/);

  await page.goto(`${inject('appUrl')}#/progress`);
  const csv = await saved(page, 'CSV');
  expect(csv.text).toContain(`"'=HYPERLINK(`);
  const svg = await saved(page, 'SVG');
  expect(svg.name).toMatch(/^[\p{L}\p{N}.-]+$/u);
  const inside = await page.evaluate((text) => {
    const drawn = new DOMParser().parseFromString(text, 'image/svg+xml');
    return {
      isWhole: drawn.querySelector('parsererror') === null,
      elements: [...new Set([...drawn.querySelectorAll('*')].map(({ localName }) => localName))],
      handlers: [...drawn.querySelectorAll('*')].flatMap(({ attributes }) =>
        [...attributes].filter(({ name }) => name.startsWith('on')),
      ).length,
    };
  }, svg.text);
  expect(inside).toMatchObject({ isWhole: true, handlers: 0 });
  for (const element of ['script', 'img', 'image', 'foreignObject', 'a', 'use']) expect(inside.elements).not.toContain(element);
});
