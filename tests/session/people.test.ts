/** Names that change, and treats that are counted over the day. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { nameOf } from '../../src/core/named.ts';
import { openedApp, settle } from './opened-app.ts';

const FED = { ...DEMO_DOG, weightKg: 10, neutered: true, kcalPerTreat: 21 };

test('a handler is named, renamed and put away; the id in the sessions stays', async () => {
  const { app, practised } = await openedApp();
  await app.intents.saveNamed('handler', { id: 'me', name: 'Noor', archived: false });
  await practised();
  await app.intents.saveNamed('handler', { id: 'me', name: 'Noor A.', archived: true });
  const { library, reviewed, heads } = app.getState();
  expect(library.handlers).toEqual([{ id: 'me', name: 'Noor A.', archived: true }]);
  expect(reviewed?.state.start.handler).toBe('me');
  expect(nameOf(library.handlers, heads[0]?.started.body.handler ?? '')).toBe('Noor A.');
});

test('a dog of which nothing is known has its treats counted only if there are some at hand', async () => {
  const { app } = await openedApp();
  await app.intents.practise(DEMO_PLAN.id);
  await settle();
  expect(app.getState().live?.start.limits.treats).toBeNull();
});

test('what one session gave, the next one of that day has less: 63 kcal in treats of 21 are 3, then 2', async () => {
  const { app, practised } = await openedApp();
  await app.intents.saveDog(FED);
  await practised();
  expect(app.getState().reviewed?.state.start.limits.treats).toBe(3);
  expect(await app.intents.treatsGivenToday(DEMO_DOG.id)).toBe(1);
  await app.intents.practise(DEMO_PLAN.id);
  await settle();
  expect(app.getState().live?.start.limits.treats).toBe(2);
});

test('the next day has its own budget, and another dog its own', async () => {
  const { app, practised, clock } = await openedApp();
  await app.intents.saveDog(FED);
  await practised();
  clock.nowS += 86_400;
  expect(await app.intents.treatsGivenToday(DEMO_DOG.id)).toBe(0);
  clock.nowS -= 86_400;
  expect(await app.intents.treatsGivenToday('another')).toBe(0);
});

test('the pouch bounds the session where it is the least', async () => {
  const { app } = await openedApp();
  await app.intents.saveDog(FED);
  const { limits } = app.getState().library.settings ?? { limits: { reps: 20, minutes: 5, treats: null } };
  await app.intents.saveSettings({ limits: { ...limits, treats: 1 } });
  await app.intents.practise(DEMO_PLAN.id);
  await settle();
  expect(app.getState().live?.start.limits.treats).toBe(1);
});
