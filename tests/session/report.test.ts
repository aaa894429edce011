/** A report that a handler can hand on: what happened inside, and nothing that was said or typed. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { createReport, sayError } from '../../src/session/report.ts';
import { openedApp } from './opened-app.ts';

test('a session, an ear that failed and an error stand in it; no name does', async () => {
  const { app, practised, becomes, fails } = await openedApp();
  await app.intents.saveSettings({ handler: 'Noor Quist', place: 'old barn' });
  await practised();
  becomes({ state: 'restarting', why: 'no-sound' });
  fails(new TypeError('cannot read "Noor Quist" of undefined'));
  const report = app.intents.report();
  expect(report).toContain('session: waiting');
  expect(report).toContain('ear: restarting, no-sound');
  expect(report).toContain('not caught: TypeError');
  for (const name of ['Noor', 'barn', DEMO_DOG.name, DEMO_PLAN.title]) expect(report).not.toContain(name);
});

test('only the last 500 things are kept', () => {
  const report = createReport({ now: () => new Date(0), monoMs: () => 0 }, () => 'a test');
  for (let n = 1; n <= 700; n++) report.note(`thing ${n}.`);
  const lines = report.text().split('\n');
  expect(lines).toHaveLength(502);
  expect(lines.at(2)).toContain('thing 201.');
  expect(lines.at(-1)).toContain('thing 700.');
});

test('what stands in quotes is left out of an error', () => {
  expect(sayError(new Error('no dog “Pixel” in "my plan"'))).toBe('Error: no dog “…“ in "…"');
});
