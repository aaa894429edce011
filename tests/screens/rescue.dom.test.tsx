/** A screen that breaks: the way back, the data, the report. On the real app, with fakes for the browser. */
import { act, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { AppProvider } from '../../src/screens/app-context.tsx';
import { Rescue } from '../../src/screens/rescue.tsx';
import { openedApp, settle } from '../session/opened-app.ts';

let broken = true;
let what = 'no such rep';
function Fragile() {
  if (broken) throw new Error(what);
  return <p>all is well</p>;
}

/** After one session of the handler Noor; what is handed out is noted. */
async function shown(says = 'no such rep') {
  broken = true;
  what = says;
  // React tells of every caught error on the console: that is what is looked for here.
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const handedOut: Blob[] = [];
  URL.createObjectURL = (file) => `blob:${handedOut.push(file as Blob)}`;
  window.matchMedia = () => ({ matches: false }) as MediaQueryList;
  HTMLAnchorElement.prototype.click = () => {};
  const all = await openedApp();
  await all.app.intents.saveSettings({ handler: 'Noor' });
  await act(all.practised);
  render(
    <AppProvider value={all.app}>
      <Rescue>
        <Fragile />
      </Rescue>
    </AppProvider>,
  );
  return { ...all, handedOut };
}

afterEach(() => vi.unstubAllGlobals());

const tap = (name: string) => fireEvent.click(screen.getByRole('button', { name }));

test('it says what broke, and shows the screen again once it holds', async () => {
  await shown();
  screen.getByRole('heading', { name: 'This screen broke' });
  expect(document.body.textContent).toContain('no such rep');
  tap('Try again');
  screen.getByRole('heading', { name: 'This screen broke' });
  broken = false;
  tap('Try again');
  screen.getByText('all is well');
});

test('the data that is saved holds the session, and its age is told from then on', async () => {
  const { app, handedOut } = await shown();
  tap('Save my data');
  expect((await screen.findByRole('status')).textContent).toBe('Your data is saved as a file.');
  const copy = JSON.parse((await handedOut[0]?.text()) ?? '');
  expect(copy.events.filter(({ type }: { type: string }) => type === 'session-started')).toHaveLength(1);
  expect((await app.intents.lookAtStorage())?.copy).toEqual({ daysAgo: 0, sessionsSince: 0, isDue: false });
});

test('the report that is copied tells what broke and names nobody', async () => {
  await shown('no rep “Pixel’s ninth”');
  const writeText = vi.fn(async (_: string) => {});
  vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { clipboard: { writeText } }));
  tap('Copy the report');
  expect((await screen.findByRole('status')).textContent).toContain('holds no names and no sound');
  const [report] = writeText.mock.lastCall ?? [''];
  expect(report).toContain('screen broke: Error: no rep');
  expect(report).toContain('sessions kept: 1');
  for (const name of ['Noor', DEMO_DOG.name, DEMO_PLAN.title]) expect(report).not.toContain(name);
});

test('the report can be read where it cannot be copied', async () => {
  await shown();
  tap('Copy the report');
  expect((await screen.findByRole('status')).textContent).toContain('Stillbeat report');
});

test('data that cannot be read is told as kept', async () => {
  const { store } = await shown();
  store.all = async () => ({ ok: false, problem: { kind: 'severed', cause: 'test' } });
  tap('Save my data');
  await screen.findByText(/Nothing was deleted/);
});

test.each([
  'Failed to fetch dynamically imported module: /assets/plan.js',
  'error loading dynamically imported module: /assets/plan.js',
  'Importing a module script failed.',
  'Unable to preload CSS for /assets/plan.css',
])('a part of an older version that is gone asks for the newest page, not for another try: %s', async (says) => {
  const { did } = await shown(says);
  tap('Load the page again');
  await act(settle);
  expect(did).toContain('newest');
});
