/** The charts of progress as files: on light paper in a dark room, complete without a style sheet, under the content policy. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterEach, expect, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';

let app: OpenedApp;
afterEach(() => app.close());

async function save(page: Page, ending: 'SVG' | 'PNG' | 'CSV'): Promise<{ name: string; bytes: Buffer }> {
  const waits = page.waitForEvent('download');
  await page.getByRole('button', { name: ending }).first().click();
  const download = await waits;
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test('a chart saved in a dark room lies on light paper, and needs no style sheet', async () => {
  app = await openApp({ colorScheme: 'dark', at: '#/progress' });
  const svg = await save(app.page, 'SVG');
  expect(svg.name).toBe('invented-kept.svg');
  const text = svg.bytes.toString();
  const [, ...paper] = /<rect[^>]*fill="rgb\((\d+),(\d+),(\d+)\)"/.exec(text)?.map(Number) ?? [];
  expect(Math.min(...paper)).toBeGreaterThan(220);
  expect(text).not.toMatch(/class=|oklch|var\(/);
  expect(await app.page.evaluate(() => getComputedStyle(document.body).colorScheme)).toBe('light dark');
});

test('a chart is saved as a picture of pixels, three to each point', async () => {
  app = await openApp({ at: '#/progress' });
  const { name, bytes } = await save(app.page, 'PNG');
  expect(name).toBe('invented-kept.png');
  expect(bytes.subarray(1, 4).toString()).toBe('PNG');
  // Height in the header of a PNG (ISO 15948, R): 280 points of the chart.
  expect(bytes.readUInt32BE(20)).toBe(3 * 280);
});

test('a chart is saved as the rows of its table', async () => {
  app = await openApp({ at: '#/progress' });
  const { bytes } = await save(app.page, 'CSV');
  const [head, first] = bytes.toString().split('\r\n');
  expect(head).toBe('\uFEFFsession,day,kept,trials,from,to,step,place,with,rule,plan,new here');
  expect(first).toBe('1,2026-01-05,6,10,0.31,0.83,Lie flat 2 s,bathroom,you,Steady,File one claw,');
});
