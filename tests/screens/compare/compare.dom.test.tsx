/** The comparison as the handler meets it: what is offered, what is refused in words, and that it can be walked and read aloud. */
import { act, fireEvent, render, screen } from '@testing-library/react';
import axe from 'axe-core';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { create } from 'zustand';
import { DEMO_DOG } from '../../../demo/scenario.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { CompareScreen } from '../../../src/screens/compare/compare.tsx';
import type { App } from '../../../src/session/app.ts';
import { digest, on } from '../../core/progress/digests.ts';

function fakeApp(digests: readonly SessionDigest[]): App {
  const library = { dogs: [DEMO_DOG], plans: [], handlers: [], places: [], homework: { given: [], received: [] } };
  const use = create(() => ({ library, heads: [] }));
  const intents = { readProgress: async () => ({ digests, unread: 0, today: 40 }), after: () => () => {} };
  return Object.assign(use, { intents }) as unknown as App;
}

async function show(digests: readonly SessionDigest[]) {
  await act(async () => {
    render(
      <AppProvider value={fakeApp(digests)}>
        <Router hook={memoryLocation().hook}>
          <main>
            <CompareScreen />
          </main>
        </Router>
      </AppProvider>,
    );
  });
}

/** Colours and targets are looked at in a real browser; jsdom has neither. */
async function findings(): Promise<string[]> {
  const { violations } = await axe.run(document.body, {
    rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
  });
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}

const TWO_PLACES = [
  digest(4, [on('Lie 2 s', 8, 10), on('Lie 3 s', 2, 4)]),
  digest(5, [on('Lie 2 s', 9, 10), on('Lie 3 s', 5, 6)], { place: 'garden' }),
];

test('with one session it says what is missing, and shows an invented picture that is named as such', async () => {
  await show(TWO_PLACES.slice(0, 1));
  expect(screen.getByText(/Practise a second one/)).toBeDefined();
  expect(screen.getByText(/Invented, to show how it is read/)).toBeDefined();
  expect(screen.getByRole('link', { name: 'Practise' }).getAttribute('href')).toBe('/');
  expect(await findings()).toEqual([]);
});

test('two sessions stand side by side, the earlier as A, step by step and all together', async () => {
  await show(TWO_PLACES);
  expect(screen.getByText(/^On the 2 steps that both practised: A kept 10 of 14, B kept 14 of 16\./)).toBeDefined();
  const rows = screen.getAllByRole('row', { hidden: true }).map((row) => [...row.children].map(({ textContent }) => textContent));
  expect(rows[2]).toEqual(['Lie 3 s', '2', '4', '5', '6', '–', '–', '–']);
  expect(rows[3]?.slice(0, 5)).toEqual(['All of these', '10', '14', '14', '16']);
  expect(await findings()).toEqual([]);
});

test('arrow keys walk from step to step, and the picked one is told', async () => {
  await show(TWO_PLACES);
  const all = screen.getByRole('button', { name: /^All of these/ });
  expect(all.getAttribute('tabindex')).toBe('0');
  act(() => all.focus());
  fireEvent.keyDown(all, { key: 'Home' });
  const first = screen.getByRole('button', { name: /^Lie 2 s/ });
  expect(document.activeElement).toBe(first);
  fireEvent.keyDown(first, { key: 'Enter' });
  expect(screen.getByText(/^Lie 2 s\. A kept 8 of 10, B kept 9 of 10\./)).toBeDefined();
});

test('where there is one person only, it says so and what to do', async () => {
  await show(TWO_PLACES);
  fireEvent.click(screen.getByLabelText('two people'));
  expect(screen.getByText(/^One person practised this plan so far/)).toBeDefined();
});

test('the same on both sides is not drawn', async () => {
  await show(TWO_PLACES);
  fireEvent.click(screen.getByLabelText('two places'));
  fireEvent.change(screen.getByLabelText('A (dot)'), { target: { value: 'garden' } });
  fireEvent.change(screen.getByLabelText('B (diamond)'), { target: { value: 'garden' } });
  expect(screen.getByText(/^A and B are the same/)).toBeDefined();
});
