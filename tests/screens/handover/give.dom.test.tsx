/** Giving homework and answering with an adjusted plan, as the trainer meets it. */
import { screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { openedApp } from '../../session/opened-app.ts';
import { shown, tap, trainerWhoGave, type } from './shown.tsx';

const said = (label: string): string => (screen.getByLabelText(label) as HTMLTextAreaElement).value;

test('what I typed of an answer is there when I come back from changing the plan, and gone once the version is made', async () => {
  const trainer = await trainerWhoGave();
  const { go } = await shown(trainer, `/give/${trainer.planId}`);
  await type('A note', 'Two seconds are plenty this week.');
  await type('Sessions a week', '2');
  await tap('link', 'change the plan');
  expect(screen.getByRole('heading', { name: 'The ladder' })).toBeTruthy();
  await go(`/give/${trainer.planId}`);
  expect([said('A note'), said('Sessions a week')]).toEqual(['Two seconds are plenty this week.', '2']);
  expect(said('Your name, as the owner knows you')).toBe('Alex');
  await tap('button', 'Make version 2');
  expect(trainer.app.getState().library.homework.given.at(-1)?.homework).toMatchObject({
    ...{ revision: 2, note: 'Two seconds are plenty this week.', sessionsAWeek: 2 },
  });
  expect(trainer.app.getState().homeworkDrafts[trainer.planId]).toEqual({});
});

test('another dog chosen on a draft brings its own owner, not the name typed for the one before', async () => {
  const trainer = await openedApp();
  await trainer.app.intents.saveDog({ id: 'moss', name: 'Moss', notes: '', invented: false, owner: 'Ines' });
  const { go } = await shown(trainer, '/give/demo-plan');
  await type('Owner', 'Kim');
  await type('For which dog', 'moss');
  expect(said('Owner')).toBe('Ines');
  await go('/homework');
  await go('/give/demo-plan');
  expect([said('For which dog'), said('Owner')]).toEqual(['moss', 'Ines']);
});

test('the version before is folded away under the answer, and gone once the answer is made', async () => {
  const trainer = await trainerWhoGave();
  await shown(trainer, `/give/${trainer.planId}`);
  const fold = () => screen.getByRole('button', { name: 'Save or share the file' }).closest('details');
  expect(fold()?.open).toBe(false);
  expect(fold()?.querySelector('summary')?.textContent).toBe('Hand out version 1 once more');
  await tap('button', 'Make version 2');
  expect(fold()).toBeNull();
  expect(screen.getByRole('heading', { name: 'Version 2 for Biscuit is ready' })).toBeTruthy();
  expect(screen.queryByText(/version 1/i)).toBeNull();
});

test('what is said beside the file speaks to the trainer who hands it out', async () => {
  const trainer = await trainerWhoGave();
  await shown(trainer, `/give/${trainer.planId}`);
  expect(screen.getByText(/It is no signature/).textContent).toContain(
    'that it is from you, the owner knows only by the way it comes',
  );
  expect(screen.queryByText(/gave it to you/)).toBeNull();
});
