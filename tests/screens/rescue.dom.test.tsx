/** A screen that breaks: the way back, the data, the report. */
import { fireEvent, render, screen } from '@testing-library/react';
import { expect, test, vi } from 'vitest';
import { AppProvider } from '../../src/screens/app-context.tsx';
import { Rescue } from '../../src/screens/rescue.tsx';
import type { App } from '../../src/session/app.ts';

let broken = true;
let what = 'no such rep';
function Fragile() {
  if (broken) throw new Error(what);
  return <p>all is well</p>;
}

function shown(intents: Partial<App['intents']>) {
  // React tells of every caught error on the console: that is what is looked for here.
  vi.spyOn(console, 'error').mockImplementation(() => {});
  const app = Object.assign(() => null, { intents }) as unknown as App;
  return render(
    <AppProvider value={app}>
      <Rescue>
        <Fragile />
      </Rescue>
    </AppProvider>,
  );
}

test('it says what broke, notes it, and shows the screen again once it holds', () => {
  broken = true;
  const noteBroken = vi.fn();
  shown({ noteBroken });
  expect(screen.getByRole('heading', { name: 'This screen broke' })).toBeTruthy();
  expect(document.body.textContent).toContain('no such rep');
  expect(noteBroken).toHaveBeenCalledTimes(1);
  broken = false;
  fireEvent.click(screen.getByRole('button', { name: 'Try again' }));
  screen.getByText('all is well');
});

test('the report can be read where it cannot be copied, and data that cannot be read is told as kept', async () => {
  broken = true;
  shown({ noteBroken: () => {}, report: () => 'line one', exportAll: async () => null });
  fireEvent.click(screen.getByRole('button', { name: 'Copy the report' }));
  expect((await screen.findByRole('status')).textContent).toBe('line one');
  fireEvent.click(screen.getByRole('button', { name: 'Save my data' }));
  await screen.findByText(/Nothing was deleted/);
});

test('a part of an older version that is gone asks for a fresh page, not for another try', () => {
  broken = true;
  what = 'Failed to fetch dynamically imported module: /assets/plan.js';
  const reload = vi.fn();
  shown({ noteBroken: () => {}, reload });
  fireEvent.click(screen.getByRole('button', { name: 'Load the page again' }));
  expect(reload).toHaveBeenCalledTimes(1);
});
