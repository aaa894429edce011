/** The picture in German: the names of bars and flags, the key and the table, of the invented session that empty screens show. */
import { render, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { speak } from '../../../src/core/language.ts';
import { callsInOrder } from '../../../src/core/placed-calls.ts';
import { inventedSession } from '../../../src/screens/picture/invented.ts';
import { Key } from '../../../src/screens/picture/key.tsx';
import { Stairs } from '../../../src/screens/picture/stairs.tsx';
import { StairsTable } from '../../../src/screens/picture/table.tsx';
import { englishIn } from '../../house/english-words.ts';

beforeEach(() => speak('de'));
afterEach(() => speak('en'));

function draw(): readonly string[] {
  const state = inventedSession();
  const calls = callsInOrder(state);
  const putRight = new Set([3]);
  render(
    <>
      <Stairs reps={state.reps} steps={state.standing.steps} calls={calls} putRight={putRight} onPick={() => {}} />
      <Key calls={calls} hasPutRight />
      <StairsTable reps={state.reps} calls={calls} putRight={putRight} />
    </>,
  );
  return [...document.querySelectorAll('[aria-label]')].map((element) => element.getAttribute('aria-label') ?? '');
}

test('nothing that is read or heard of it is English', () => {
  const heard = draw();
  expect([...heard, document.body.textContent].flatMap(englishIn)).toEqual([]);
});

test('a bar is named with its rep, its step, its outcome and a decimal comma, a flag with its call', () => {
  const heard = draw();
  expect(heard).toContain('Wiederholung 3, Flach liegen 2 s. Gehalten, 2,3 s lang. Berichtigt.');
  expect(heard).toContain('Wiederholung 9, Flach liegen 4 s. Zählt nicht: ein Versehen oder eine Ablenkung, nach 1,2 s.');
  expect(heard).toContain('Nach Wiederholung 7: eine Stufe höher');
});

test('the table has German heads and decimal commas', () => {
  draw();
  expect(screen.getAllByRole('columnheader').map(({ textContent }) => textContent)).toEqual([
    'Zeit',
    'Stufe',
    'gehalten',
    'Ergebnis',
    'Ansage',
  ]);
  expect(screen.getAllByRole('cell', { name: '2,4 s' }).length).toBeGreaterThan(0);
});
