/**
 * `npm run bench:desk -- [dogs] [sessions]`: how soon the trainer's desk stands after a tap, with many dogs and sessions on the device: the first time
 * of all, when every session it tells of is read, and on every later visit. In the built app, in Chromium. Fails above its limit.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright';
import { build, preview } from 'vite';
import { inventedHistory } from '../../demo/history.ts';
import { LONG_LADDER } from '../../demo/long-ladder.ts';
import type { Dog, SessionEvent } from '../../src/core/event.ts';
import { launchChromium } from '../support/chromium.ts';

const DOGS = Number(process.argv[2] ?? 200);
const SESSIONS = Number(process.argv[3] ?? 20_000);
const VISITS = 5;
/** The issue's: the desk with 200 dogs and 20,000 sessions. */
const LIMIT_MS = 500;
/** The first time of all every session is read. */
const FIRST_WITHIN_MS = 180_000;
/** Histories that differ; each is given to every so-manieth dog, under the dog's own ids. */
const HISTORIES = 10;
const REPS = 8;

/** tsx names functions by a helper that the page does not have. */
const NAMES = 'globalThis.__name = (named) => named';

interface Seeding {
  readonly logs: readonly (readonly SessionEvent[])[];
  readonly dogs: readonly number[];
  readonly moveMs: number;
  readonly histories: number;
  readonly dog: Omit<Dog, 'id' | 'name' | 'owner'>;
}

/** Gives one history to each of the dogs, as events of another device. Runs in the page. */
async function seed({ logs, dogs, moveMs, dog, histories }: Seeding): Promise<number> {
  // The journal holds the same: else it would be filled while the desk is measured.
  const bases = await Promise.all(
    ['stillbeat', 'stillbeat-journal'].map((name) => {
      const opening = indexedDB.open(name);
      return new Promise<IDBDatabase>((done, failed) => {
        opening.onsuccess = () => done(opening.result);
        opening.onerror = () => failed(opening.error);
      });
    }),
  );
  const moved = (at: string): string => new Date(Date.parse(at) + moveMs).toISOString().replace('Z', '+00:00');
  let count = 0;
  for (const n of dogs) {
    const device = `seeded-${n}`;
    let seq = 0;
    const stamped = <E extends object>(event: E) => {
      seq += 1;
      return { ...event, id: `${device}:${seq}`, device, seq };
    };
    const saved = { ...dog, id: `dog-${n}`, name: `Dog ${n}`, owner: `Owner ${n}` };
    const rows: object[] = [
      stamped({ session: null, type: 'dog-saved', version: 1, at: moved('2026-01-05T18:00:00+00:00'), monoMs: 0, body: saved }),
    ];
    // Dogs of one history practise on different days, so that some are overdue.
    const later = -86_400_000 * Math.floor(n / histories);
    for (const log of logs)
      for (const event of log) {
        const at = new Date(Date.parse(moved(event.at)) + later).toISOString().replace('Z', '+00:00');
        const body =
          event.type === 'session-started'
            ? { ...event.body, dogId: saved.id, dogName: saved.name, planId: `plan-${n}` }
            : event.body;
        rows.push(stamped({ ...event, at, session: `${event.session}-${n}`, body }));
      }
    await Promise.all(
      bases.map((base) => {
        const write = base.transaction('events', 'readwrite', { durability: 'relaxed' });
        const events = write.objectStore('events');
        for (const row of rows) events.add(row);
        return new Promise<void>((done, failed) => {
          write.oncomplete = () => done();
          write.onabort = () => failed(write.error);
        });
      }),
    );
    count += rows.length;
  }
  for (const base of bases) base.close();
  return count;
}

async function opened(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(NAMES);
  await page.goto(appUrl);
  await page.getByRole('button', { name: 'Practise', exact: true }).first().waitFor({ timeout: FIRST_WITHIN_MS });
  return page;
}

/** From the tap to the frame after the rows stand, ms, by the page's own clock. */
async function tapDesk(page: Page): Promise<number> {
  const link = page.getByRole('link', { name: `The desk: ${DOGS} dogs`, exact: true });
  await link.waitFor();
  // The room's own code comes with the first idle moment; a trainer has looked for the link by then.
  await page.waitForTimeout(2_000);
  return link.evaluate(async (anchor: HTMLElement) => {
    const from = performance.now();
    anchor.click();
    await new Promise<void>((done) => {
      const look = () =>
        document.querySelectorAll('main li[data-kind], main ul a[href*="/desk/"]').length > 0
          ? done()
          : requestAnimationFrame(look);
      look();
    });
    await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 0)));
    return performance.now() - from;
  });
}

const outDir = mkdtempSync(join(tmpdir(), 'stillbeat-desk-'));
await build({ logLevel: 'warn', build: { outDir, emptyOutDir: true } });
const server = await preview({ logLevel: 'warn', build: { outDir }, preview: { port: 0, host: '127.0.0.1' } });
const address = server.httpServer.address();
if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
const appUrl = `http://127.0.0.1:${address.port}/`;

const browser = await launchChromium();
const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
await (await opened(context)).close();

const each = Math.ceil(SESSIONS / DOGS);
const empty = await context.newPage();
await empty.addInitScript(NAMES);
await empty.goto(`${appUrl}icon.svg`);
let events = 0;
for (let history = 0; history < HISTORIES; history++) {
  const logs = inventedHistory({ plan: LONG_LADDER, sessions: each, seed: history + 1, reps: REPS }).map(({ log }) => log);
  const last = Date.parse(logs.at(-1)?.[0]?.at ?? '');
  const dogs = Array.from({ length: DOGS }, (_, n) => n).filter((n) => n % HISTORIES === history);
  const moveMs = Date.now() - 3_600_000 - last;
  events += await empty.evaluate(seed, { logs, dogs, moveMs, histories: HISTORIES, dog: { notes: '', invented: false } });
}
await empty.close();
console.log(`${DOGS} dogs, ${DOGS * each} sessions, ${events} events; Chromium ${browser.version()}`);

const times: number[] = [];
for (let visit = 0; visit <= VISITS; visit++) {
  const from = performance.now();
  const page = await opened(context);
  const homeMs = performance.now() - from;
  const deskMs = await tapDesk(page);
  const dogs = await page.locator('main ul a[href*="/desk/"]').count();
  if (dogs !== DOGS) throw new Error(`the desk shows ${dogs} of ${DOGS} dogs`);
  // What was read is kept for the next visit, in the background.
  await page.waitForTimeout(3_000);
  await page.close();
  console.log(
    `${visit === 0 ? 'first time of all' : `visit ${visit}`}: desk ${Math.round(deskMs)} ms after the tap, first screen ${Math.round(homeMs)} ms`,
  );
  if (visit > 0) times.push(deskMs);
}
await browser.close();
await server.close();
rmSync(outDir, { recursive: true, force: true });
const worst = times.reduce((a, b) => Math.max(a, b), 0);
console.log(`worst of ${VISITS} visits: ${Math.round(worst)} ms of ${LIMIT_MS}`);
process.exit(worst <= LIMIT_MS ? 0 : 1);
