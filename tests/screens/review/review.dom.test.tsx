/** The review as the handler meets it: the finding, the why, and where to go on. */
import { fireEvent, render, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import { expect, test, vi } from 'vitest';
import { endedOnLift, type SessionState } from '../../../src/core/fold.ts';
import { nextStart } from '../../../src/core/next-start.ts';
import { callsInOrder } from '../../../src/core/placed-calls.ts';
import { sayCall } from '../../../src/core/sentences.ts';
import { Review } from '../../../src/screens/review/review.tsx';
import { hardOfHearing, nothing, oneRep, soreAtThePaws, wholeSession } from '../picture/sessions.ts';

function review(state: SessionState, does: { onPractise?: () => void; onDone?: () => void } = {}) {
  const next = nextStart(state.standing, endedOnLift(state), 0);
  return render(
    <main>
      <Review state={state} next={next} {...does} />
    </main>,
  );
}

const words = (): string => (document.body.textContent ?? '').replaceAll('\u00a0', ' ');

test('it opens with the dog, the plan and the day as it was where they practised', () => {
  review(wholeSession());
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Pixel: File one claw');
  expect(words()).toMatch(/Monday,? 2 March 2026(,| at) 18:00, bathroom/);
});

test('the first thing read is how many trials were kept, of how many', () => {
  review(wholeSession());
  expect(screen.getByRole('region', { name: 'What happened' }).textContent).toMatch(/^\d+ of \d+ trials kept\./);
});

test('nowhere stands a percentage', () => {
  for (const state of [nothing(), oneRep(), wholeSession(), soreAtThePaws()]) {
    const { unmount } = review(state);
    expect(words()).not.toContain('%');
    unmount();
  }
});

test('every call stands there with its reasons', () => {
  const state = wholeSession();
  review(state);
  const listed = within(screen.getByRole('heading', { name: 'What was called, and why' }).parentElement as HTMLElement)
    .getAllByRole('listitem')
    .map(({ textContent }) => textContent?.replaceAll('\u00a0', ' '));
  const made = callsInOrder(state).map(({ call, afterRep }) => `after rep ${afterRep}${sayCall(call, state.standing.steps)}`);
  expect(listed).toEqual(made);
});

test('a picked bar tells what was heard and how long the head stayed', () => {
  review(wholeSession());
  fireEvent.click(screen.getByRole('button', { name: /^Rep 11,/ }));
  const detail = screen.getByRole('status').textContent?.replaceAll('\u00a0', ' ');
  expect(detail).toContain('Rep 11Lifted. Lie flat 4 s: held 2.0 s of 4 s.');
  expect(detail).toContain('hold, by key');
  expect(detail).toContain('lifted, by key');
});

test('a picked flag tells why it was called', () => {
  review(wholeSession());
  fireEvent.click(screen.getByRole('button', { name: 'After rep 12: half a step' }));
  expect(screen.getByRole('status').textContent?.replaceAll('\u00a0', ' ')).toBe(
    'After rep 12: half a stepHalf a step: Lie flat 3.5 s. 2 lifts running: the step was too big. The rise is halved.',
  );
});

test('a word that was nearly heard is shown with its bar, and is said not to count', () => {
  review(hardOfHearing());
  fireEvent.click(screen.getByRole('button', { name: /^Rep 4,/ }));
  expect(screen.getByRole('status').textContent).toContain('unsure: mark 0.48. It did not count.');
});

test('it says for how long the ear could not hear', () => {
  review(hardOfHearing());
  expect(words()).toMatch(/The ear could not hear for 12 s of \d+ s\./);
  expect(words()).toContain('1 stretch was unsure and did not count.');
});

test('lifts that gather at one place become a question that names the veterinarian', () => {
  review(soreAtThePaws());
  const caution = screen.getByRole('heading', { name: 'Could something hurt?' }).parentElement;
  expect(caution?.textContent).toMatch(/the paws.*veterinarian/);
});

test('no such question without such lifts', () => {
  review(wholeSession());
  expect(screen.queryByRole('heading', { name: 'Could something hurt?' })).toBeNull();
});

test('it closes with where to start next time, why, and one thing to do', () => {
  const onPractise = vi.fn();
  const onDone = vi.fn();
  review(oneRep(), { onPractise, onDone });
  const close = screen.getByRole('heading', { name: 'Next time' }).parentElement as HTMLElement;
  expect(close.textContent).toContain('You go on from the step you reached.');
  fireEvent.click(within(close).getByRole('button', { name: 'Practise again' }));
  fireEvent.click(within(close).getByRole('button', { name: 'Done' }));
  expect(onPractise).toHaveBeenCalledTimes(1);
  expect(onDone).toHaveBeenCalledTimes(1);
});

test('before a handling the caution of the plan is there again', () => {
  review(soreAtThePaws());
  const close = screen.getByRole('heading', { name: 'Next time' }).parentElement as HTMLElement;
  const start = nextStart(soreAtThePaws().standing, true, 0);
  const caution = start.steps.find(({ id }) => id === start.startStepId)?.caution;
  expect(close.textContent?.includes('veterinarian')).toBe(caution !== undefined);
});

test('a session without a rep teaches the picture, and says that the picture is invented', () => {
  review(nothing(), { onPractise: () => {} });
  expect(words()).toContain('Invented, to show how it is read:');
  expect(screen.getAllByRole('button', { name: /^Rep \d/ }).length).toBeGreaterThan(10);
  expect(screen.queryByRole('table')).toBeNull();
  screen.getByRole('button', { name: 'Practise again' });
});

test.each([
  ['an empty review', nothing],
  ['a review of one rep', oneRep],
  ['a whole review', wholeSession],
  ['a review with a caution', soreAtThePaws],
] as const)(
  '%s leaves nobody out (axe)',
  async (_, stateOf) => {
    review(stateOf(), { onPractise: () => {}, onDone: () => {} });
    fireEvent.click(screen.getAllByRole('button', { name: /^Rep/ })[0] as HTMLElement);
    const { violations } = await axe.run(document.body, {
      // Colours are checked where there are colours: in the browser. A component is no page.
      rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
    });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  },
  60_000,
);
