/** One session typed on the keys goes through every call in the built app: each with its sentence, its flash and its picture. */
import { afterEach, expect, inject, test } from 'vitest';
import type { Call } from '../../src/core/call.ts';
import { sayCall } from '../../src/core/sentences.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { readSession, repByKeys, startPractice } from './walk.ts';

let app: OpenedApp;
afterEach(() => app.close());

/** Which cues flashed, in their order: a flash and its sound come from one decision. */
async function watchFlashes(): Promise<() => Promise<string[]>> {
  await app.page.evaluate(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    new MutationObserver((records) => {
      for (const { addedNodes } of records)
        for (const node of addedNodes) {
          const flash =
            node instanceof HTMLElement ? (node.dataset.cue ?? node.querySelector<HTMLElement>('[data-cue]')?.dataset.cue) : null;
          if (flash) seen.push(flash);
        }
    }).observe(document.body, { childList: true, subtree: true });
  });
  return () => app.page.evaluate(() => (window as unknown as { seen: string[] }).seen);
}

/** Long enough that a call, which keeps half a second clear of the handler's word, has sounded. */
const CALLED_MS = 900;

test('raise, split, re-earn, return, rest and the question about pain: each is sounded, said, written and drawn', async () => {
  app = await openApp({ viewport: { width: 1280, height: 800 } });
  const appUrl = inject('appUrl');
  await app.page.goto(`${appUrl}#/settings`);
  await app.page.getByLabel('Both').click();
  await app.page.locator('label', { hasText: 'Both' }).locator('input:checked').waitFor();
  await startPractice(app.page, appUrl);
  const flashes = await watchFlashes();
  const headline = (text: string) => app.page.locator('[role=status] p', { hasText: text }).first().waitFor();
  const rep = async (heldS: number, end: 'm' | 'l') => {
    await repByKeys(app.page, heldS, end);
  };
  const called = async (words: string) => {
    await headline(words);
    await app.page.waitForTimeout(CALLED_MS);
  };

  for (let i = 0; i < 5; i++) await rep(0.35, 'm');
  await called('next step');
  for (let i = 0; i < 5; i++) await rep(0.85, 'm');
  await called('next step');
  // The 2 s step is too big: two lifts running halve the rise.
  await rep(0.35, 'l');
  await rep(0.35, 'l');
  await called('half a step');
  await app.page.getByRole('heading', { name: /1\.5 s/ }).waitFor();
  // Re-earned in full: five clean ones on the half step.
  for (let i = 0; i < 5; i++) await rep(1.35, 'm');
  await called('rest now');
  await headline('a good moment to end');
  // And lost again: nothing lies between 1.5 s and 2 s, so it goes one step back; the second return today is enough.
  await rep(0.35, 'l');
  await rep(0.35, 'l');
  await called('rest now');
  await headline('The second return today');
  // Lifts on steps that were easy ask whether something hurts.
  for (let i = 0; i < 2; i++) await rep(0.35, 'l');
  await headline('Is something sore?');
  await rep(0.35, 'l');
  await headline('ask your veterinarian');
  await called('rest now');

  const session = await readSession(app.page);
  const calls = session.reps.flatMap((each) => each.calls);
  const kinds = calls.map(({ kind }) => kind);
  // The first rest is advice to stop while ahead: a step gained, and fewer than five of the twenty reps left.
  expect(kinds.slice(0, 7)).toEqual(['raise', 'raise', 'split', 'raise', 'rest', 'return', 'rest']);
  expect(await flashes()).toEqual(expect.arrayContaining(['beat', 'raise', 'split', 'return', 'rest']));
  await app.page.getByRole('button', { name: 'Finish' }).click();
  await app.page.getByRole('heading', { name: 'Next time' }).waitFor();
  const review = (await app.page.locator('main').textContent()) ?? '';
  for (const call of calls.filter(({ kind }) => kind !== 'begin')) expect(flat(review)).toContain(flat(firstSentence(call)));
  expect(review).toContain('veterinarian');

  function firstSentence(call: Call): string {
    return sayCall(call, session.standing.steps).split('. ')[0] ?? '';
  }
});

/** Without the narrow and unbreakable spaces of typography. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}
