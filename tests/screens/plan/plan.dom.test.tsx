/** The plan as the handler meets it: stairs to read, and steps to change. */
import { act, fireEvent, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { checkPlan } from '../../../src/core/check-plan.ts';
import type { HandlingStep, Plan } from '../../../src/core/plan.ts';
import { change, open, press, show, stairs, titles } from './shown-plan.tsx';

test('the hardest step stands on top, the easiest at the bottom', async () => {
  await show();
  expect(titles()[0]).toContain('One stroke of the file');
  expect(titles().at(-1)).toContain('Lie flat, paid at once');
});

test('the step where the next session starts is marked', async () => {
  await show();
  expect(titles().filter((title) => title.includes('next session'))).toEqual(['Lie flat 5 snext session']);
});

test('a caution stands before the first step that it holds for, once, and the steps bear its sign', async () => {
  await show();
  expect(screen.getAllByText(/question for your veterinarian/)).toHaveLength(1);
  expect(stairs().getAllByRole('img', { name: 'with caution' })).toHaveLength(5);
});

test('a half step is put in, kept at once, and taken back by undo', async () => {
  const { app } = await show();
  open('Lie flat 5 s');
  press('Put half a step before it');
  expect(titles().join()).toContain('Lie flat 4.5 shalf step');
  expect(app.saved.at(-1)?.steps).toHaveLength(DEMO_PLAN.steps.length + 1);
  press('Undo');
  expect(titles().join()).not.toContain('half step');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('the lowest step cannot be halved or moved down, the highest not moved up', async () => {
  await show();
  open('Lie flat, paid at once');
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Put half a step before it' }).disabled).toBe(true);
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Move down' }).disabled).toBe(true);
  open('One stroke of the file');
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Move up' }).disabled).toBe(true);
});

test('a step that would make the ladder go down is left as it was, and it says why', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '1' } });
  press('Change');
  const form = within(screen.getByLabelText('Seconds').closest('form') as HTMLElement);
  expect(form.getByRole('alert').textContent).toBe('1 s would be less than the step below, Lie flat 2 s.');
  expect(app.saved).toEqual([]);
});

test.each([
  ['6', '6 s would be more than the step above, Lie flat 4 s.'],
  ['4', '4 s would be as long as the step above, Lie flat 4 s.'],
  ['', 'Say how many seconds; 0 is paid at once.'],
  ['700', '700 s is too long: 600 s is the most.'],
])('seconds of "%s" are refused in words of the ladder, beside the field', async (value, said) => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value } });
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe(said);
  expect(app.saved).toEqual([]);
});

test('what was refused on one step is not said on another, and goes away with the next change', async () => {
  await show();
  open('Lie flat 3 s');
  press('Move up');
  expect(screen.getByRole('alert').textContent).toBe('3 s would be less than the step below, Lie flat 4 s.');
  open('Lie flat 2 s');
  expect(screen.queryByRole('alert')).toBeNull();
  open('Lie flat 3 s');
  press('Put half a step before it');
  expect(screen.queryByRole('alert')).toBeNull();
});

test('words and seconds changed together are kept in one change, and taken back in one', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('In a few words'), { target: { value: 'Flat on the mat' } });
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '3.5' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]).toMatchObject({ title: 'Flat on the mat', holdForS: 3.5 });
  press('Undo');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('a title follows the seconds that it names', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '3.5' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]).toMatchObject({ title: 'Lie flat 3.5 s', holdForS: 3.5 });
});

test('new words are kept, and a step above is put in and may be kept', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('In a few words'), { target: { value: 'Flat for three' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]?.title).toBe('Flat for three');
  press('Put a step above');
  const plan = app.saved.at(-1) as Plan;
  expect(plan.steps[4]).toMatchObject({ id: 'new-1', holdForS: 3.5 });
  expect(checkPlan(plan)).toEqual([]);
});

test('what the hand does, the place and the caution are changed together', async () => {
  const { app } = await show();
  open('Touch the top of the paw');
  change('What the hand does', 'one finger on the toe');
  change('Place', 'coat-and-tail');
  change('Caution, said before the step', '');
  press('Change');
  const { caution: _, ...bare } = DEMO_PLAN.steps[6] as HandlingStep;
  expect(app.saved.at(-1)?.steps[6]).toEqual({ ...bare, area: 'coat-and-tail', extent: 'one finger on the toe' });
});

test.each([
  ['What the hand does', ' ', 'Change', 'Say what the hand does.'],
  ['Half of it, in a few words: less of the place, less pressure or less time', '', 'Change', 'The half needs a few words.'],
  ['What the hand does in the half', '', 'Change', 'Say what the hand does in the half.'],
  ['Seconds the half lasts', '3', 'Change', 'The half lasts 3 s: it cannot be longer than the whole, 2 s.'],
  ['Seconds the half lasts', '', 'Change', 'Say how many seconds the half lasts; 0 is a touch and away.'],
  ['Seconds the half lasts', '2', 'Change', 'The half is the whole: make it less of the place, less pressure or less time.'],
  ['Seconds it lasts', '0.5', 'Change', 'The half lasts 1 s: it cannot be longer than the whole, 0.5 s.'],
  ['Seconds it lasts', '', 'Change', 'Say how many seconds; 0 is paid at once.'],
])('%s "%s" is refused beside the field', async (label, value, button, said) => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change(label, value);
  press(button);
  expect(screen.getByRole('alert').textContent).toBe(said);
  expect(app.saved).toEqual([]);
});

test('near the face a caution that does not name the veterinarian is refused', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('Place', 'eyes');
  change('Caution, said before the step', 'Be gentle.');
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe('Near the face a step needs its caution, and it names the veterinarian.');
  expect(app.saved).toEqual([]);
});

test('a handling is put above a hold, at the place that the plan handles, and may be kept', async () => {
  const { app } = await show();
  open('Lie flat 5 s');
  press('Put a handling above');
  const plan = app.saved.at(-1) as Plan;
  expect(plan.steps[6]).toMatchObject({ kind: 'handling', id: 'new-1', area: 'paws', forS: 0 });
  expect(checkPlan(plan)).toEqual([]);
});

test('the seconds inside a handling are changed, and its title follows', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('Seconds it lasts', '4');
  press('Change');
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({ forS: 4, title: 'Rest a hand on the paw 4 s' });
});

test('a half that is no longer prepared can be worded anew, with its extent and its seconds', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  press('Prepare no half');
  expect(app.saved.at(-1)?.steps[7]).not.toHaveProperty('halfway');
  change(/^Half of it/, 'Two fingers 1.5 s');
  change('What the hand does in the half', 'two fingers, no weight');
  change('Seconds the half lasts', '1.5');
  press('Change');
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({
    halfway: { title: 'Two fingers 1.5 s', extent: 'two fingers, no weight', forS: 1.5 },
  });
});

test('the half of a handling is worded by the handler', async () => {
  const { app } = await show();
  open('Touch the top of the paw');
  fireEvent.change(screen.getByLabelText(/^Half of it/), { target: { value: 'Touch the elbow' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[6]).toMatchObject({ halfway: { title: 'Touch the elbow' } });
});

test('a new plan is a ready ladder for the position and place chosen', async () => {
  const { app, history } = await show(DEMO_PLAN, 'new');
  fireEvent.click(screen.getByLabelText('Standing on a mat'));
  fireEvent.click(screen.getByLabelText('Mouth'));
  expect(screen.getByText(/sore teeth and gums are for your veterinarian/)).toBeTruthy();
  await act(async () => press('Keep this plan'));
  const plan = app.saved.at(-1) as Plan;
  expect(plan).toMatchObject({ id: 'new-1', dogId: DEMO_DOG.id, title: 'Mouth: standing on a mat' });
  expect(history?.at(-1)).toBe('/plan/new-1');
});

test('a plan that is not on this device says so and offers a new one', async () => {
  await show(DEMO_PLAN, 'nowhere');
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('There is no such plan on this device');
  expect(screen.getByRole('link', { name: 'Make a plan' })).toBeTruthy();
});

// A whole ladder takes axe a second, and six on a machine that does much else.
test.each(['demo-plan', 'new', 'nowhere'])('axe finds nothing on the plan "%s", a step open', async (planId) => {
  await show(DEMO_PLAN, planId);
  if (planId === 'demo-plan') open('Rest a hand on the paw 2 s');
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});

test('one button keeps all that was written of a step, and one undo takes it back', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('In a few words', 'Hand on the paw');
  change('What the hand does', 'the palm rests, no weight');
  change('Seconds it lasts', '3');
  change('Seconds the half lasts', '2.5');
  press('Change');
  expect(app.saved).toHaveLength(1);
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({
    ...{ title: 'Hand on the paw', extent: 'the palm rests, no weight', forS: 3 },
    halfway: { forS: 2.5 },
  });
  press('Undo');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('what is typed in one field stays while a refused change and a move of the step are answered', async () => {
  await show();
  open('Rest a hand on the paw 2 s');
  change('What the hand does', 'the palm rests, no weight');
  change('Seconds it lasts', '');
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe('Say how many seconds; 0 is paid at once.');
  press('Prepare no half');
  press('Move down');
  expect(screen.getByLabelText<HTMLInputElement>('What the hand does').value).toBe('the palm rests, no weight');
}, 20_000);
