/** Dogs, handlers and places as the handler meets them, on the real app with fakes for the browser. */
import { act, fireEvent, render, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { DEMO_DOG } from '../../../demo/scenario.ts';
import { USUAL_SETTINGS } from '../../../src/core/settings.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { DogScreen } from '../../../src/screens/dogs/dog.tsx';
import { DogsScreen } from '../../../src/screens/dogs/dogs.tsx';
import { Home } from '../../../src/screens/home/home.tsx';
import { openedApp, settle } from '../../session/opened-app.ts';

const calm = () => act(settle);

async function show(what: 'dogs' | 'dog' | 'home', opened?: Awaited<ReturnType<typeof openedApp>>) {
  const all = opened ?? (await openedApp());
  const { hook } = memoryLocation();
  const view = render(
    <AppProvider value={all.app}>
      <Router hook={hook}>
        <main>
          {what === 'dogs' ? <DogsScreen /> : null}
          {what === 'dog' ? <DogScreen dogId={DEMO_DOG.id} /> : null}
          {what === 'home' ? <Home /> : null}
        </main>
      </Router>
    </AppProvider>,
  );
  await calm();
  return { ...all, ...view };
}

async function type(label: string, text: string) {
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
  await calm();
}
async function press(name: string, nth = 0) {
  fireEvent.click(screen.getAllByRole('button', { name })[nth] as HTMLElement);
  await calm();
}
const library = ({ app }: Awaited<ReturnType<typeof openedApp>>) => app.getState().library;

test('a place is added, renamed under the id that old sessions hold, put away and brought back', async () => {
  const all = await show('dogs');
  await type('Another place', '  garden ');
  await press('Add', 1);
  await press('Rename garden');
  await type('New name for garden', 'garden, by the shed');
  await press('Rename');
  expect(library(all).places).toEqual([{ id: 'garden', name: 'garden, by the shed', archived: false }]);
  await press('Put away garden, by the shed');
  expect(screen.getByText('Put away: 1')).toBeTruthy();
  await press('Bring back garden, by the shed');
  expect(library(all).places).toEqual([{ id: 'garden', name: 'garden, by the shed', archived: false }]);
});

test('two handlers of one name are refused, and the name stays to be changed', async () => {
  const all = await show('dogs');
  await type('Another handler', 'Noor');
  await press('Add', 0);
  await press('Rename Noor');
  await type('New name for Noor', 'me');
  await press('Rename');
  expect(screen.getByRole('alert').textContent).toContain('There is one called me already');
  expect(library(all).handlers.map(({ name }) => name)).toEqual(['Noor']);
});

test('who practises now cannot be put away, everybody can be renamed', async () => {
  await show('dogs');
  expect(screen.queryByRole('button', { name: 'Put away me' })).toBeNull();
  expect(screen.getByRole('button', { name: 'Rename me' })).toBeTruthy();
});

test('what is typed of a dog is kept field by field, and its treats are told while one types', async () => {
  const all = await show('dog');
  await type('Pain, or a place that is sore', 'left hip');
  await type('Weight, kg', '10');
  fireEvent.click(screen.getByLabelText('yes'));
  await type('kcal in one treat', '3');
  // R2, C: 394 kcal at rest, 630 a day, 63 in treats; 63 / 3 = 21.
  expect(screen.getByText(/About 630 kcal a day \(394 kcal at rest\)/).textContent).toContain('21 treats a day, 63 kcal');
  await press('Save');
  expect(library(all).dogs).toEqual([{ ...DEMO_DOG, pain: 'left hip', weightKg: 10, neutered: true, kcalPerTreat: 3 }]);
  await type('Weight, kg', '');
  await press('Save');
  expect(library(all).dogs[0]).not.toHaveProperty('weightKg');
});

test('the dog’s screen tells which limit wins, and takes what the settings have at hand into account', async () => {
  const all = await openedApp();
  const { saveSettings, saveDog } = all.app.intents;
  const { limits } = USUAL_SETTINGS;
  await saveDog({ ...DEMO_DOG, weightKg: 10, neutered: true, kcalPerTreat: 3, treatsPerSession: 12 });
  await saveSettings({ limits: { ...limits, treats: 8 } });
  await show('dog', all);
  expect(screen.getByText(/counts down from 8: that is what the settings have at hand/)).toBeTruthy();
  await act(() => saveSettings({ limits: { ...limits, treats: null } }));
  expect(screen.getByText(/counts down from 12: that is what you set for one session/)).toBeTruthy();
});

test('another dog can be added where the dogs are listed', async () => {
  const all = await show('dogs');
  await press('Add your dog');
  await type('Name', 'Bean');
  await press('Add, and choose a plan');
  expect(library(all).dogs.map(({ name }) => name)).toEqual([DEMO_DOG.name, 'Bean']);
});

test('one’s own dog stands above the invented one on the first screen', async () => {
  const all = await openedApp();
  const dogs = await show('dogs', all);
  await press('Add your dog');
  await type('Name', 'Bean');
  await press('Add, and choose a plan');
  dogs.unmount();
  await show('home', all);
  const headings = screen.getAllByRole('heading', { level: 2 }).map(({ textContent }) => textContent);
  expect(headings.slice(0, 2)).toEqual(['Bean', expect.stringContaining(DEMO_DOG.name)]);
});

test('a dog that is put away leaves the first screen, keeps its sessions and can come back', async () => {
  const all = await openedApp();
  await all.practised();
  const dog = await show('dog', all);
  await press('Put away');
  dog.unmount();
  const home = await show('home', all);
  expect(screen.queryByRole('heading', { name: /Pixel/ })).toBeNull();
  expect(await screen.findByText('Dogs, handlers, places, and who was put away')).toBeTruthy();
  expect(all.app.getState().heads).toHaveLength(1);
  home.unmount();
  await show('dog', all);
  await press('Bring back');
  expect(library(all).dogs[0]?.archived).toBe(false);
});

test('with two places the first screen offers them, and the next session notes the one chosen', async () => {
  const all = await openedApp();
  await all.app.intents.saveNamed('place', { id: 'vet', name: 'at the vet’s', archived: false });
  await show('home', all);
  fireEvent.change(screen.getByLabelText(/^Where/), { target: { value: 'vet' } });
  await calm();
  await act(() => all.practised());
  expect(all.app.getState().heads[0]?.started.body.place).toBe('vet');
});

test.each(['dogs', 'dog'] as const)('axe finds nothing on the screen %s', async (what) => {
  const { container } = await show(what);
  const { violations } = await axe.run(container, { rules: { 'color-contrast': { enabled: false } } });
  expect(violations.map(({ id }) => id)).toEqual([]);
  expect(within(container).getByRole('heading', { level: 1 })).toBeTruthy();
});
