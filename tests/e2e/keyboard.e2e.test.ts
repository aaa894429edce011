/** A whole session and its review by the keyboard alone: every control is reached by Tab, named, and visibly focused. */
import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { openApp } from '../support/open-app.ts';
import { readSession, repByKeys } from './walk.ts';

interface Focused {
  readonly name: string;
  readonly isSeen: boolean;
}

/** What has the focus: its name as a screen reader says it, and whether an outline or the like shows it. */
function focused(page: Page): Promise<Focused> {
  return page.evaluate(() => {
    const at = document.activeElement as HTMLElement | null;
    if (!at || at === document.body) return { name: '', isSeen: false };
    const style = getComputedStyle(at);
    const labels = [...((at as HTMLInputElement).labels ?? [])].map((label) => label.textContent).join(' ');
    const name = (at.getAttribute('aria-label') ?? labels) || (at.textContent ?? '');
    return { name: name.trim(), isSeen: style.outlineStyle !== 'none' || style.boxShadow !== 'none' };
  });
}

/** Whether the pixels around what has the focus change when it loses it: a ring may be drawn by a child, or by hand in a picture. */
async function looksFocused(page: Page): Promise<boolean> {
  const at = await page.evaluateHandle(() => document.activeElement as HTMLElement);
  const picture = async () => page.screenshot({ animations: 'disabled' });
  const on = await picture();
  await at.evaluate((element) => element.blur());
  const off = await picture();
  await at.evaluate((element) => element.focus());
  return !on.equals(off);
}

/** Tabs on until something of that name has the focus; fails when it never comes, has no name, or is not to be seen. */
async function tabTo(page: Page, wanted: string | RegExp): Promise<void> {
  const passed: string[] = [];
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press('Tab');
    const { name, isSeen } = await focused(page);
    if (name === '' && !(await page.evaluate(() => document.activeElement === document.body)))
      throw new Error(`a control without a name, after ${passed.at(-1)}`);
    if (name !== '' && !isSeen && !(await looksFocused(page))) throw new Error(`the focus cannot be seen on "${name}"`);
    if (typeof wanted === 'string' ? name === wanted : wanted.test(name)) return;
    passed.push(name);
  }
  throw new Error(`Tab never came to ${wanted}; it passed ${[...new Set(passed)].join(' | ')}`);
}

test('by the keyboard alone: practise, review, open a rep, put it right, take it back, look at the plan and the settings', async () => {
  const app = await openApp();
  const { page } = app;
  await page.getByRole('button', { name: 'Practise', exact: true }).first().waitFor();
  await tabTo(page, 'Practise');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Hold', exact: true }).waitFor();
  await repByKeys(page, 0.5, 'm');
  await repByKeys(page, 0.5, 'm');
  await repByKeys(page, 0.5, 'l');
  await tabTo(page, /^Finish/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Next time' }).waitFor();

  // The picture is one stop; the arrows go from bar to bar.
  await tabTo(page, /^Rep 1,/);
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  expect((await focused(page)).name).toMatch(/^Rep 3,/);
  await page.keyboard.press('Enter');
  await page.getByText('Was it heard right?').waitFor();
  await tabTo(page, /lifted/);
  await page.keyboard.press('Enter');
  await tabTo(page, 'It was mark');
  await page.keyboard.press('Enter');
  await page.getByText('1 correction.').first().waitFor();
  await tabTo(page, 'Undo: rep 3, it was mark');
  await page.keyboard.press('Enter');
  await page.getByText('0 corrections.').first().waitFor();
  expect((await readSession(page)).reps.map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'lifted']);

  await tabTo(page, 'Dogs');
  await page.keyboard.press('Enter');
  await tabTo(page, /^The plan/);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'File one claw' }).first().waitFor();
  await tabTo(page, 'Settings');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Your data' }).waitFor();
  await app.close();
});
