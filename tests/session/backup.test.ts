/** Copies in and deletions, as a handler meets them. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { isLive } from '../../src/session/live.ts';
import { openedApp } from './opened-app.ts';

test('a copy of one session opens on another phone with its dog and its plan, once', async () => {
  const mine = await openedApp();
  await mine.practised();
  const [head] = mine.app.getState().heads;
  const copy = await mine.app.intents.exportSession(head?.id ?? '');

  const yours = await openedApp({ device: 'yours' });
  const looked = await yours.app.intents.lookAtImport(copy?.text ?? '');
  if (!looked.ok) throw new Error(looked.why);
  expect(looked.offer.fresh).toEqual([
    { what: 'dog', count: 1 },
    { what: 'plan', count: 1 },
    { what: 'session', count: 1 },
  ]);
  expect(yours.app.getState().heads).toEqual([]);
  expect(await looked.offer.add()).toEqual({ ok: true, added: looked.offer.freshRecords });
  expect(yours.app.getState().heads.map(({ id }) => id)).toEqual([head?.id]);

  const again = await yours.app.intents.lookAtImport(copy?.text ?? '');
  expect(again).toMatchObject({ ok: true, offer: { fresh: [], freshRecords: 0 } });
});

test('a plan goes to another phone as one file, as it stands and with its dog, and can be practised there', async () => {
  const mine = await openedApp();
  const [first, ...others] = DEMO_PLAN.steps;
  if (!first) throw new Error('a plan without a step');
  await mine.app.intents.savePlan({ ...DEMO_PLAN, title: 'Claw, slower', steps: [{ ...first, title: 'Lie flat' }, ...others] });
  await mine.practised();
  const file = await mine.app.intents.exportPlan(DEMO_PLAN.id);
  expect(file?.name).toBe('stillbeat-plan-Claw-slower-2026-03-02.json');
  expect(JSON.parse(file?.text ?? '').events.map(({ type }: { type: string }) => type)).toEqual(['dog-saved', 'plan-saved']);

  const yours = await openedApp({ device: 'yours' });
  await yours.app.intents.eraseDog(DEMO_DOG.id);
  const looked = await yours.app.intents.lookAtImport(file?.text ?? '');
  if (!looked.ok) throw new Error(looked.why);
  expect(looked.offer.fresh).toEqual([
    { what: 'dog', count: 1 },
    { what: 'plan', count: 1 },
  ]);
  expect(await looked.offer.add()).toMatchObject({ ok: true });
  expect(yours.app.getState().library.plans.map(({ title, steps }) => [title, steps[0]?.title])).toEqual([
    ['Claw, slower', 'Lie flat'],
  ]);
  expect(await yours.app.intents.practise(DEMO_PLAN.id)).toBe(true);
});

test('a file of a newer app, and one that is cut in the middle, say what to do; nothing is added', async () => {
  const { app, store, practised } = await openedApp();
  await practised();
  const before = await store.all();
  const copy = (await app.intents.exportAll())?.text ?? '';
  expect(await app.intents.lookAtImport(copy.replace('"version":1', '"version":2'))).toEqual({
    ok: false,
    why: expect.stringMatching(
      /^A newer Stillbeat made this file.*\nfile › version: expected 1, the newest this app knows, got 2$/,
    ),
  });
  expect(await app.intents.lookAtImport(copy.slice(0, copy.length / 2))).toEqual({
    ok: false,
    why: expect.stringMatching(/^It is cut off.*\nfile: expected JSON, got /),
  });
  expect(await store.all()).toEqual(before);
});

test('what is here with other content is shown with both contents, and adding the rest changes neither', async () => {
  const { app, store, practised } = await openedApp();
  await practised();
  const copy = (await app.intents.exportAll())?.text ?? '';
  const other = copy.replace('"word":"mark"', '"word":"lifted"');
  const looked = await app.intents.lookAtImport(other);
  if (!looked.ok) throw new Error(looked.why);
  expect(looked.offer.refused).toEqual([
    expect.stringMatching(
      /^event phone:\d+ › body › word: it is here already with other content, "mark"; in the file "lifted"\. Both are left/,
    ),
  ]);
  const before = await store.all();
  expect(await looked.offer.add()).toEqual({ ok: true, added: 0 });
  expect(await store.all()).toEqual(before);
});

test('a file that is none of ours changes nothing and says where it went wrong', async () => {
  const { app } = await openedApp();
  expect(await app.intents.lookAtImport('{"format":"something"}')).toEqual({
    ok: false,
    why: 'file › format: expected "stillbeat events", got "something"',
  });
});

test('a dog that is deleted is gone with its plan and its sessions, and the next session keeps its numbers apart', async () => {
  const { app, store, practised } = await openedApp();
  await practised();
  app.intents.draftHomework(DEMO_PLAN.id, { dogId: DEMO_DOG.id, caution: 'a sore ear' });
  expect(await app.intents.eraseDog(DEMO_DOG.id)).toBeNull();
  expect(app.getState()).toMatchObject({ heads: [], library: { dogs: [], plans: [] }, reviewed: null, homeworkDrafts: {} });
  const left = await store.all();
  expect(left.ok && left.value.events.filter(({ session }) => session !== null)).toEqual([]);
  await app.intents.saveDog({ ...DEMO_DOG, id: 'new', name: 'Moth' });
  expect(app.getState().writeProblem).toBeNull();
  expect(app.getState().library.dogs.map(({ name }) => name)).toEqual(['Moth']);
});

test('nothing is deleted while a session runs', async () => {
  const { app } = await openedApp();
  await app.intents.practise(DEMO_PLAN.id);
  expect(await app.intents.eraseDog(DEMO_DOG.id)).toContain('finish it first');
  expect(await app.intents.eraseEverything()).toContain('finish it first');
  expect(isLive(app.getState().live)).toBe(true);
});

test('everything deleted: the device keeps nothing, and the app begins anew', async () => {
  const { app, store, did, practised } = await openedApp();
  await practised();
  expect(await app.intents.eraseEverything()).toBeNull();
  expect(did).toContain('reload');
  expect(await store.all()).toEqual({ ok: true, value: { events: [], damaged: [] } });
});
