/** The plan in German: its ladder, its editor, its rule with all figures unfolded. */
import { fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readyPlan } from '../../../src/core/ladders.ts';
import { speak } from '../../../src/core/language.ts';
import type { Plan } from '../../../src/core/plan.ts';
import { englishIn } from '../../house/english-words.ts';
import { change, fakeApp, press, show } from './shown-plan.tsx';

beforeEach(() => speak('de'));
afterEach(() => speak('en'));

const germanPlan = (): Plan => readyPlan('plan', 'demo-dog', 'lying-on-side', 'paws');
const open = (title: string) => fireEvent.click(screen.getByRole('button', { name: new RegExp(`^${title}`) }));

/** What is read and what is only heard. */
function allWords(): string {
  const heard = [...document.querySelectorAll('[aria-label]')].map((element) => element.getAttribute('aria-label'));
  return [document.body.textContent, ...heard].join(' ');
}

test.each(['Flach liegen 3 s', 'Die Pfote anheben 2 s'])('nothing of the plan is English, "%s" open', async (title) => {
  await show(germanPlan());
  open(title);
  expect(englishIn(allWords())).toEqual([]);
});

test('nor is a new plan, nor one that is not there', async () => {
  await show(germanPlan(), 'new');
  expect(englishIn(allWords())).toEqual([]);
  await show(germanPlan(), 'nirgends');
  expect(englishIn(allWords())).toEqual([]);
});

test('a change that cannot be is refused in German, with a decimal comma', async () => {
  await show(germanPlan());
  open('Flach liegen 3 s');
  change('Sekunden', '1.5');
  press('Ändern');
  expect(screen.getByRole('alert').textContent).toBe('1,5 s wäre weniger als die Stufe darunter, Flach liegen 2 s.');
});

test('a title follows its seconds with a decimal comma, and they are not said twice', async () => {
  const { app } = await show(germanPlan(), 'plan', fakeApp(germanPlan()));
  open('Flach liegen 3 s');
  change('Sekunden', '3.5');
  press('Ändern');
  expect(app.saved.at(-1)?.steps[3]).toMatchObject({ title: 'Flach liegen 3,5 s', holdForS: 3.5 });
  expect(screen.getByRole('button', { expanded: true }).textContent).toBe('Flach liegen 3,5 s');
});

test('the figures of a rule have decimal commas', async () => {
  await show(germanPlan());
  expect(screen.getByText(/^8 von 9 gehalten/).textContent).toBe(
    '8 von 9 gehalten auf der Stufe, die als Nächstes kommt: Auf die Dauer kann das alles zwischen 5,7 und 9,8 von 10 bedeuten.',
  );
});
