/** One session typed on the keys goes through every call in the built app: each with its sound, its flash, its sentence and its picture. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright';
import { afterEach, expect, inject, test } from 'vitest';
import type { Call } from '../../src/core/call.ts';
import { callsInOrder } from '../../src/core/placed-calls.ts';
import { sayCall } from '../../src/core/sentences.ts';
import { clothPath } from '../../src/screens/picture/shapes.ts';
import { layoutSmall } from '../../src/screens/picture/variants.ts';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { readSession, repByKeys, startPractice } from './walk.ts';

let app: OpenedApp;
afterEach(() => app.close());

const SOUNDS = ['beat', 'enough', 'raise', 'return', 'split', 'rest', 'unsure', 'lost'] as const;

/** The sounds are told apart by their lengths, ms: no two are alike. 44 bytes of head, then 16 bits a sample, one channel. */
const LENGTHS_MS = new Map(
  SOUNDS.map((name) => {
    const wav = readFileSync(`sounds/${name}.wav`);
    return [name, (1000 * (wav.length - 44)) / 2 / wav.readUInt32LE(24)] as const;
  }),
);

/** How long each sound was that played to its end, ms; and which cues flashed. */
interface Noted {
  readonly soundedMs: number[];
  readonly flashed: string[];
}

/** Before the app begins: what reaches the loudspeaker is noted at the browser's own source of sound. */
async function noteSounds(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const noted: Noted = { soundedMs: [], flashed: [] };
    Object.assign(window, { noted });
    const { start, stop } = AudioBufferSourceNode.prototype;
    AudioBufferSourceNode.prototype.start = function (...when) {
      const ms = 1000 * (this.buffer?.duration ?? 0);
      this.addEventListener('ended', () => this.dataset !== 'withdrawn' && noted.soundedMs.push(ms));
      start.apply(this, when);
    };
    AudioBufferSourceNode.prototype.stop = function (...when) {
      Object.assign(this, { dataset: 'withdrawn' });
      stop.apply(this, when);
    };
    new MutationObserver((records) => {
      for (const { addedNodes } of records)
        for (const node of addedNodes) {
          const flash =
            node instanceof HTMLElement ? (node.dataset.cue ?? node.querySelector<HTMLElement>('[data-cue]')?.dataset.cue) : null;
          if (flash) noted.flashed.push(flash);
        }
    }).observe(document, { childList: true, subtree: true });
  });
}

declare global {
  interface AudioBufferSourceNode {
    readonly dataset?: string;
  }
}

const nameOf = (ms: number) => SOUNDS.find((name) => Math.abs((LENGTHS_MS.get(name) ?? 0) - ms) < 2) ?? `a sound of ${ms} ms`;

/** What sounded and flashed since the last time it was asked; taps of the seconds left out. */
async function since(page: Page): Promise<{ sounded: string[]; flashed: string[] }> {
  const noted = await page.evaluate(() => {
    const { soundedMs, flashed } = (window as unknown as { noted: Noted }).noted;
    return { soundedMs: soundedMs.splice(0), flashed: flashed.splice(0) };
  });
  const isCall = (name: string) => name !== 'beat' && name !== 'enough';
  // The silence that wakes a sleeping output is no sound of ours.
  const sounded = noted.soundedMs.map(nameOf).filter((name) => isCall(name) && !name.startsWith('a sound'));
  return { sounded, flashed: noted.flashed.filter(isCall) };
}

/** Long enough that two calls, which keep half a second clear of the handler's word and of each other, have sounded to their ends. */
const CALLED_MS = 3200;

interface Expected {
  readonly cues: readonly string[];
  readonly headline: string;
  readonly says: readonly string[];
  /** The call whose flag is the last one in the picture. */
  readonly flag: Call['kind'];
}

async function expectCalled(page: Page, { cues, headline, says, flag }: Expected): Promise<void> {
  await page.locator('[role=status] p', { hasText: headline }).first().waitFor();
  await page.waitForTimeout(CALLED_MS);
  expect(await since(page)).toEqual({ sounded: cues, flashed: cues });
  const said = flat((await page.locator('[role=status]', { hasText: headline }).first().textContent()) ?? '');
  for (const each of says) expect(said).toContain(each);
  await expectPicture(page, flag);
}

/** The strip of the practice screen ends in the flag of that call, in the shape that belongs to it. */
async function expectPicture(page: Page, kind: Call['kind']): Promise<void> {
  const session = await readSession(page);
  const { reps, standing } = session;
  const flag = layoutSmall({ reps, steps: standing.steps, calls: callsInOrder(session) }, 'strip').flags.at(-1);
  expect(flag?.call.kind).toBe(kind);
  const cloths = page.locator('svg[role=img] path[class*=loth]');
  expect(await cloths.last().getAttribute('d')).toBe(flag && clothPath(flag));
}

async function neverTired(page: Page, appUrl: string): Promise<void> {
  await page.goto(`${appUrl}#/settings`);
  await page.getByLabel('Both').click();
  await page.locator('label', { hasText: 'Both' }).locator('input:checked').waitFor();
  // So that a rest comes for its own reason and not because the reps are done.
  await page.getByLabel(/^Rest after so many reps/).fill('100');
  await page.getByLabel(/^Rest after so many reps/).blur();
}

test('raise, stay, split, re-earn, return, rest and the question about pain: each is sounded, said, written and drawn', async () => {
  app = await openApp({ viewport: { width: 1280, height: 800 } });
  const { page } = app;
  const appUrl = inject('appUrl');
  await noteSounds(page);
  await page.reload();
  await neverTired(page, appUrl);
  await startPractice(page, appUrl);
  await since(page);
  const reps = async (n: number, heldS: number, end: 'm' | 'l') => {
    for (let i = 0; i < n; i++) await repByKeys(page, heldS, end);
  };

  await reps(5, 0.35, 'm');
  await expectCalled(page, {
    ...{ cues: ['raise'], headline: 'next step', flag: 'raise' },
    says: ['Next step: Lie flat 1 s.', 'The first 5 of 5 on this step held.'],
  });
  await reps(5, 0.85, 'm');
  await expectCalled(page, { cues: ['raise'], headline: 'next step', says: ['Next step: Lie flat 2 s.'], flag: 'raise' });
  // Declined: the step is the one before, and its way down is sounded. Taken back, the raise stands again.
  await page.getByRole('button', { name: 'Stay' }).click();
  await page.getByRole('heading', { name: 'Lie flat 1 s' }).waitFor();
  await expectCalled(page, {
    ...{ cues: ['return'], headline: 'stay', flag: 'remain' },
    says: ['Stay: Lie flat 1 s.', 'The call “next step” is not followed'],
  });
  await page.keyboard.press('u');
  await page.getByRole('heading', { name: 'Lie flat 2 s' }).waitFor();
  // The 2 s step is too big: two lifts running halve the rise.
  await reps(2, 0.35, 'l');
  await expectCalled(page, {
    ...{ cues: ['split'], headline: 'half a step', flag: 'split' },
    says: ['Half a step: Lie flat 1.5 s.', '2 lifts running: the step was too big.', 'The rise is halved.'],
  });
  // Re-earned in full: five clean ones on the half step, and not three.
  await reps(4, 1.35, 'm');
  await page.getByRole('heading', { name: 'Lie flat 1.5 s' }).waitFor();
  await reps(1, 1.35, 'm');
  await expectCalled(page, { cues: ['raise'], headline: 'next step', says: ['Next step: Lie flat 2 s.'], flag: 'raise' });
  // And lost again: nothing lies between 1.5 s and 2 s, so it goes one step back; the second return today is enough.
  await reps(2, 0.35, 'l');
  await expectCalled(page, {
    ...{ cues: ['return', 'rest'], headline: 'rest now', flag: 'rest' },
    says: ['One step back: Lie flat 1.5 s.', 'Rest now.', 'The second return today: enough for now.'],
  });
  // Lifts on steps that were easy ask whether something hurts.
  await reps(2, 0.35, 'l');
  await expectCalled(page, {
    ...{ cues: ['return', 'rest'], headline: 'rest now', flag: 'rest' },
    says: ['One step back: Lie flat 1 s.', 'leave it for today and look. Is something sore?'],
  });
  await reps(1, 0.35, 'l');
  await expectCalled(page, {
    ...{ cues: ['rest'], headline: 'rest now', flag: 'rest' },
    says: [
      'Lifts keep coming at the position. A change like this can be pain: stop handling this place and ask your veterinarian.',
    ],
  });

  const session = await readSession(page);
  const calls = callsInOrder(session);
  expect(calls.map(({ call }) => call.kind)).toEqual([
    ...['raise', 'raise', 'split', 'raise', 'return', 'rest', 'return', 'rest', 'rest'],
  ]);
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('heading', { name: 'Next time' }).waitFor();
  await expectFlags(page, session.standing.steps, calls);
  const review = flat((await page.locator('main').textContent()) ?? '');
  for (const { call } of calls) expect(review).toContain(flat(sayCall(call, session.standing.steps)));
  await page.getByRole('heading', { name: 'Could something hurt?' }).waitFor();
});

type Placed = ReturnType<typeof callsInOrder>;

/** In the review every call is a flag at its stair, and opens its reasons. */
async function expectFlags(page: Page, steps: Parameters<typeof sayCall>[1], calls: Placed): Promise<void> {
  for (const { call, afterRep } of calls) {
    const index = calls.filter((each) => each.afterRep === afterRep).findIndex((each) => each.call === call);
    await page.locator(`[data-item="call-${afterRep}-${index}"]`).focus();
    await page.keyboard.press('Enter');
    const said = async () => flat((await page.locator('[role=status]').allTextContents()).join(' '));
    await expect.poll(said).toContain(flat(sayCall(call, steps)));
  }
}

/** Without the narrow and unbreakable spaces of typography. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}
