/** The list of sessions: what each came to, by the names in use now. */
import { act, render, screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { DEMO_DOG } from '../../../demo/scenario.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { ReviewList } from '../../../src/screens/review-list/review-list.tsx';
import { openedApp, settle } from '../../session/opened-app.ts';

async function show({ app }: Awaited<ReturnType<typeof openedApp>>) {
  const { hook } = memoryLocation();
  render(
    <AppProvider value={app}>
      <Router hook={hook}>
        <ReviewList />
      </Router>
    </AppProvider>,
  );
  await act(settle);
}

test('a line says what the session came to, and calls dog and place by the names they have now', async () => {
  const all = await openedApp();
  await all.practised();
  await all.app.intents.saveDog({ ...DEMO_DOG, name: 'Pix' });
  await all.app.intents.saveNamed('place', { id: 'at home', name: 'kitchen', archived: false });
  await show(all);
  const line = await screen.findByRole('link', { name: /Pix/ });
  expect(await screen.findByText('1 of 1 trial kept.', { exact: false })).toBeTruthy();
  expect(line.textContent).toContain('kitchen');
  expect(line.querySelector('svg')).toBeTruthy();
});

test('a session that was put right is told as it was put right', async () => {
  const all = await openedApp();
  await all.practised();
  const { reviewed } = all.app.getState();
  const of = reviewed?.state.reps[0]?.endedBy ?? '';
  expect(await all.app.intents.correct({ do: 'relabel', of, as: 'lifted' })).toBeNull();
  await show(all);
  expect(await screen.findByText('0 of 1 trial kept.', { exact: false })).toBeTruthy();
});

test('without a session it says what will be here and leads to the first', async () => {
  await show(await openedApp());
  expect(screen.getByRole('link', { name: 'Practise a first session' })).toBeTruthy();
});
