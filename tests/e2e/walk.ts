/** What a person does in the app, for the end-to-end tests: teach from files, practise, read back what was written. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Page } from 'playwright';
import type { SessionEvent, StoredEvent } from '../../src/core/event.ts';
import { fold, type SessionState } from '../../src/core/fold.ts';
import type {} from '../support/built-app.ts';

/** WAV files of a folder, in the order of their numbers. */
function wavs(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.wav'))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
    .map((name) => join(folder, name));
}

/** Teaches the three words and the talk from the recordings of a folder (`words/<word>/*.wav`, `talk/*.wav`). */
export async function teachFromFiles(page: Page, appUrl: string, folder: string): Promise<void> {
  await page.goto(`${appUrl}#/sound`);
  for (const word of ['hold', 'mark', 'lifted']) {
    const files = wavs(join(folder, 'words', word));
    await page.getByLabel(`Recordings of “${word}” from files`).setInputFiles(files);
    await page.locator('li', { hasText: word }).getByText(`${files.length} of ${files.length} takes`).first().waitFor();
  }
  const talk = wavs(join(folder, 'talk'));
  await page.getByLabel('Recordings of “your praise” from files').setInputFiles(talk);
  await page.getByText(`${talk.length} of ${talk.length} takes`).first().waitFor();
  await page.getByRole('heading', { name: 'What to expect' }).waitFor();
}

/** From the first screen to the practice screen, by the primary action. */
export async function startPractice(page: Page, appUrl: string): Promise<void> {
  await page.goto(`${appUrl}#/`);
  await page.getByRole('button', { name: 'Practise', exact: true }).first().click();
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
}

/** One rep by keys: hold, so many seconds, then the key that ends it. */
export async function repByKeys(page: Page, heldS: number, end: 'm' | 'l' | 'v'): Promise<void> {
  await page.keyboard.press('h');
  await page.waitForTimeout(1000 * heldS);
  await page.keyboard.press(end);
  // Longer than two reports of one word may lie apart.
  await page.waitForTimeout(350);
}

/** Every event on the device, as the database holds it. */
export async function readEvents(page: Page): Promise<StoredEvent[]> {
  const events = await page.evaluate(
    () =>
      new Promise<unknown[]>((resolve, reject) => {
        const opening = indexedDB.open('stillbeat');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('events').objectStore('events').getAll();
          all.onerror = () => reject(all.error);
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result.map((event) => ({ ...event, body: { ...event.body, samples: undefined } })));
          };
        };
      }),
  );
  return (events as StoredEvent[]).sort((a, b) => a.seq - b.seq);
}

/** The latest session, folded from what is on the device. */
export async function readSession(page: Page): Promise<SessionState> {
  const events = (await readEvents(page)).filter((event): event is SessionEvent => event.session !== null);
  const latest = events.findLast(({ type }) => type === 'session-started')?.session;
  const folded = fold(events.filter(({ session }) => session === latest));
  if (!folded.ok) throw new Error(`the device holds no whole session: ${folded.problem.kind}`);
  return folded.state;
}

/** What axe finds, as "rule: element". WCAG 2.2 A and AA, and its own best practices. */
export async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document);
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`));
  });
}
