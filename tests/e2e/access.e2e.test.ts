/** axe looks at every screen, light and dark, and finds nothing. */
import { afterEach, describe, expect, inject, test } from 'vitest';
import { type OpenedApp, openApp } from '../support/open-app.ts';
import { findings, repByKeys, startPractice } from './walk.ts';

let app: OpenedApp;
afterEach(() => app.close());

const SCREENS: readonly (readonly [string, string])[] = [
  ['#/', 'Practise'],
  ['#/sound', 'Your words'],
  ['#/settings', 'Your data'],
  ['#/review', 'Sessions'],
  ['#/progress', 'Places and people'],
  ['#/plan/demo-plan', 'File one claw'],
  ['#/practice', 'No session is running'],
  ['#/review/nowhere', 'not on this device'],
  ['#/dogs', 'Dogs, handlers, places'],
  ['#/dogs/demo-dog', 'Worth knowing'],
  ['#/card/demo-dog', 'A head that comes up is a no'],
  ['#/exam/demo-dog', 'Ask the practice what will be done'],
  ['#/observe/nowhere', 'not on this device'],
  ['#/homework', 'Open homework from a file'],
  ['#/homework/NOTHING', 'This homework was not taken'],
  ['#/desk', 'Nothing lies on it yet'],
  ['#/desk/nowhere', 'not on the desk'],
  ['#/give/demo-plan', 'Sessions a week'],
  ['#/sheet/nowhere', 'not on this device'],
];

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  test('no screen has anything that shuts somebody out', async () => {
    app = await openApp({ colorScheme });
    for (const [at, sign] of SCREENS) {
      await app.page.goto(inject('appUrl') + at);
      await app.page.getByText(sign).first().waitFor();
      expect(await findings(app.page), at).toEqual([]);
    }
  });

  test('nor has a session, waiting, holding, called, paused and reviewed', async () => {
    app = await openApp({ colorScheme });
    await startPractice(app.page, inject('appUrl'));
    expect(await findings(app.page), 'waiting').toEqual([]);
    await app.page.keyboard.press('h');
    await app.page.getByText('“hold”').waitFor();
    expect(await findings(app.page), 'holding').toEqual([]);
    await app.page.keyboard.press('m');
    for (let i = 0; i < 4; i++) await repByKeys(app.page, 0.4, 'm');
    await repByKeys(app.page, 0.3, 'l');
    expect(await findings(app.page), 'called and lifted').toEqual([]);
    await app.page.keyboard.press('p');
    await app.page.getByText('Nothing you say counts now').waitFor();
    expect(await findings(app.page), 'paused').toEqual([]);
    await app.page.getByRole('button', { name: 'Finish' }).click();
    await app.page.getByRole('heading', { name: 'Next time' }).waitFor();
    expect(await findings(app.page), 'review').toEqual([]);
    await app.page.getByRole('button', { name: /^Rep 2,/ }).click();
    const panel = app.page.getByRole('region', { name: 'Put rep 2 right' });
    await panel.locator('details').evaluateAll((all) => {
      for (const details of all) details.setAttribute('open', '');
    });
    await panel.getByRole('button', { name: 'It was lifted' }).last().click();
    await app.page.getByText('Put right. As heard: kept').waitFor();
    expect(await findings(app.page), 'a rep put right').toEqual([]);
  });
});
