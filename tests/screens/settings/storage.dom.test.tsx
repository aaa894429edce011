/** How safe what is kept is, as the handler reads it, and the nudge towards a copy on the first screen. */
import { act, fireEvent, render, screen } from '@testing-library/react';
import type { ReactNode } from 'react';
import { expect, test, vi } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { CopyNudge } from '../../../src/screens/home/copy-nudge.tsx';
import { Backup } from '../../../src/screens/settings/backup.tsx';
import { openedApp, settle } from '../../session/opened-app.ts';

const calm = () => act(settle);

async function show(screenOf: ReactNode, sessions: number) {
  URL.createObjectURL = () => 'blob:test';
  window.matchMedia = () => ({ matches: false }) as MediaQueryList;
  HTMLAnchorElement.prototype.click = () => {};
  const all = await openedApp();
  for (let n = 0; n < sessions; n++) await act(all.practised);
  const draw = () =>
    render(
      <AppProvider value={all.app}>
        <Router hook={memoryLocation().hook}>{screenOf}</Router>
      </AppProvider>,
    );
  const view = draw();
  await calm();
  return { ...all, ...view, draw };
}

test('settings tell the promise, the room and the age of the copy; a copy that is saved is told at once', async () => {
  await show(<Backup />, 6);
  await screen.findByText('It uses 3 MB here; the browser allows about 9 GB more.');
  screen.getByText('No copy was saved yet: 6 sessions are on this device alone. It is time for one.');
  fireEvent.click(screen.getByRole('button', { name: 'Ask it to keep everything' }));
  await screen.findByText('This browser has promised to keep it.');
  fireEvent.click(screen.getByRole('button', { name: 'Save a copy' }));
  await screen.findByText('Last copy: today, no session since.');
});

test('a copy that was called off in the share sheet is no copy', async () => {
  const share = vi.fn(() => Promise.reject(new DOMException('not now', 'AbortError')));
  await show(<Backup />, 1);
  window.matchMedia = () => ({ matches: true }) as MediaQueryList;
  vi.stubGlobal('navigator', Object.assign(Object.create(navigator), { canShare: () => true, share }));
  fireEvent.click(screen.getByRole('button', { name: 'Save a copy' }));
  await vi.waitFor(() => expect(share).toHaveBeenCalled());
  await calm();
  vi.unstubAllGlobals();
  screen.getByText('No copy was saved yet: 1 session is on this device alone.');
});

test('the first screen asks for a copy after five sessions, not after four, and thanks for it once it is there', async () => {
  const few = await show(<CopyNudge />, 4);
  expect(screen.queryByRole('heading')).toBeNull();
  await act(few.practised);
  await screen.findByRole('heading', { name: 'Save a copy of your sessions' });
  fireEvent.click(screen.getByRole('button', { name: 'Save a copy' }));
  expect((await screen.findByRole('status')).textContent).toContain('handed out');
  expect(screen.queryByRole('heading')).toBeNull();
});

test('put off, it asks no more in this visit', async () => {
  const { unmount, draw } = await show(<CopyNudge />, 5);
  fireEvent.click(await screen.findByRole('button', { name: 'Later' }));
  expect(screen.queryByRole('heading')).toBeNull();
  unmount();
  draw();
  await calm();
  expect(screen.queryByRole('heading')).toBeNull();
});
