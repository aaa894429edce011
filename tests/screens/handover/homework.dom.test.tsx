/** Practising homework and sending it back, as the owner meets it. */
import { screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { openedApp } from '../../session/opened-app.ts';
import { calm, ownerWhoAccepted, practised, shown, tap, trainerWhoGave } from './shown.tsx';

const OFFER = { name: 'Send to your trainer' };

test('the review of a session on homework leads to sending it back, and no longer once it was sent', async () => {
  const owner = await ownerWhoAccepted();
  const sessionId = await practised(owner, owner.planId, 100);
  const { go } = await shown(owner, `/review/${sessionId}`);
  await tap('button', OFFER.name);
  expect(screen.getByText('1 session that your trainer has not seen yet.')).toBeTruthy();
  // The one primary action.
  expect(document.querySelectorAll('.primary')).toHaveLength(1);
  expect(screen.getByRole('button', { name: 'Send what is new' }).className).toBe('primary');

  const back = await owner.app.intents.returnHomework(owner.homework.id, false);
  await owner.app.intents.noteReturned(owner.homework.id, back?.sessions ?? []);
  await go(`/review/${sessionId}`);
  expect(screen.getByRole('button', { name: 'Practise again' })).toBeTruthy();
  expect(screen.queryByRole('button', OFFER)).toBeNull();
});

test('the review of a session on a plan of one’s own sends nothing to anybody', async () => {
  const own = await openedApp();
  await shown(own, `/review/${await practised(own, DEMO_PLAN.id, 100)}`);
  expect(screen.getByRole('button', { name: 'Practise again' })).toBeTruthy();
  expect(screen.queryByRole('button', OFFER)).toBeNull();
});

test('a trainer who takes the sessions in is not asked to send them back', async () => {
  const { app, homework, ...trainer } = await trainerWhoGave();
  const owner = await openedApp({ device: 'owner' });
  const planId = (await owner.app.intents.acceptHomework(homework, { kind: 'new', name: 'Biscuit' })) ?? '';
  const sessionId = await practised(owner, planId, 100);
  const back = await owner.app.intents.returnHomework(homework.id, false);
  const looked = await app.intents.lookAtReturn(back?.file.text ?? '');
  if (looked.ok) await looked.offer.add();
  const { go } = await shown({ ...trainer, app }, '/');
  expect(screen.queryByText(/not sent back/)).toBeNull();
  await go(`/review/${sessionId}`);
  expect(screen.getByRole('button', { name: 'Practise again' })).toBeTruthy();
  expect(screen.queryByRole('button', OFFER)).toBeNull();
});

test('the first screen says how many sessions of the homework were not sent back', async () => {
  const owner = await ownerWhoAccepted();
  await shown(owner, '/');
  const link = () => screen.getByRole('link', { name: /^Homework: / }).textContent;
  expect(link()).toBe(`Homework: ${DEMO_PLAN.title}`);
  await practised(owner, owner.planId, 100);
  await calm();
  expect(link()).toBe(`Homework: ${DEMO_PLAN.title} · 1 session not sent back`);
  await practised(owner, owner.planId, 200);
  await calm();
  expect(link()).toBe(`Homework: ${DEMO_PLAN.title} · 2 sessions not sent back`);
});

/** What stands under this label. */
const underLabel = (label: string): string | null | undefined =>
  screen.getAllByText(label).find((found) => found.tagName === 'DT' && !found.closest('details'))?.nextElementSibling
    ?.textContent;

test('the trainer’s note and what to mind stand above Practise, each with its label', async () => {
  await shown(await ownerWhoAccepted(), '/homework');
  expect(underLabel('From your trainer')).toBe('After her walk.');
  expect(underLabel('What to mind')).toBe('Her left hip is sore.');
  const [note] = screen.getAllByText('After her walk.');
  const practise = screen.getByRole('button', { name: 'Practise' });
  expect((note?.compareDocumentPosition(practise) ?? 0) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
  // Read again in full, they are labelled there, too.
  expect(screen.getAllByText('What to mind')).toHaveLength(2);
});

test('on the sheet of paper what to mind has its label, beside the note', async () => {
  const owner = await ownerWhoAccepted();
  await shown(owner, `/sheet/${owner.homework.id}`);
  expect(underLabel('What to mind')).toBe('Her left hip is sore.');
  expect(screen.getByText('What to mind').previousElementSibling?.textContent).toBe('After her walk.');
});
