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
  expect(await app.intents.eraseDog(DEMO_DOG.id)).toBeNull();
  expect(app.getState()).toMatchObject({ heads: [], library: { dogs: [], plans: [] }, reviewed: null });
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
