/** What the progress screen is told of all sessions: each digested once, and anew when it has grown or was put right. */
import { expect, test, vi } from 'vitest';
import { inventedHistory } from '../../demo/history.ts';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { openedApp, settle } from './opened-app.ts';

const totals = (progress: Awaited<ReturnType<Awaited<ReturnType<typeof openedApp>>['app']['intents']['readProgress']>>) =>
  progress?.digests.map(({ steps }) => steps.reduce((sum, { kept, lifted, others }) => sum + kept + lifted + others, 0));

test('before the first session there is nothing to fold', async () => {
  const { app } = await openedApp();
  expect(await app.intents.readProgress()).toMatchObject({ digests: [], unread: 0 });
});

test('a session that was practised is in the progress, on the day of the wall clock', async () => {
  const { app, practised } = await openedApp();
  await practised();
  const progress = await app.intents.readProgress();
  expect(progress?.digests).toMatchObject([{ planId: DEMO_PLAN.id, day: progress?.today }]);
});

test('a correction changes the digest of its session, and no other session is read again', async () => {
  const { app, store, practised } = await openedApp();
  const history = inventedHistory({ plan: DEMO_PLAN, sessions: 30, seed: 1 });
  await store.merge(history.flatMap(({ log }) => log));
  await practised();
  const sessionId = app.getState().heads[0]?.id ?? '';
  const before = await app.intents.readProgress();
  expect(before?.digests).toHaveLength(31);
  const [all, one] = [vi.spyOn(store, 'all'), vi.spyOn(store, 'session')];
  await app.intents.openReview(sessionId);
  const rep = app.getState().reviewed?.state.reps[0];
  expect(await app.intents.correct({ do: 'relabel', of: rep?.endedBy ?? '', as: null })).toBeNull();
  expect(app.getState().reviewed?.session.corrections, 'shown, though another device had the session').toBe(1);
  await settle();
  one.mockClear();
  const after = await app.intents.readProgress();
  expect(one.mock.calls).toEqual([[sessionId]]);
  expect(all).not.toHaveBeenCalled();
  expect(totals(after)).not.toEqual(totals(before));
});

test('a dog that was erased is gone from the progress too', async () => {
  const { app, practised } = await openedApp();
  await practised();
  expect((await app.intents.readProgress())?.digests).toHaveLength(1);
  await app.intents.eraseDog(DEMO_PLAN.dogId);
  expect((await app.intents.readProgress())?.digests).toEqual([]);
});

test('what was digested once is taken as it is at the next visit, but not what was put right since', async () => {
  const first = await openedApp();
  await first.store.merge(inventedHistory({ plan: DEMO_PLAN, sessions: 30, seed: 1 }).flatMap(({ log }) => log));
  await first.practised();
  const before = await first.app.intents.readProgress();
  await settle();

  const { app, store } = await openedApp({ store: first.store });
  const [all, one] = [vi.spyOn(store, 'all'), vi.spyOn(store, 'session')];
  expect(await app.intents.readProgress()).toEqual(before);
  expect([all.mock.calls, one.mock.calls]).toEqual([[], []]);

  const sessionId = app.getState().heads[0]?.id ?? '';
  await app.intents.openReview(sessionId);
  await app.intents.correct({ do: 'relabel', of: app.getState().reviewed?.state.reps[0]?.endedBy ?? '', as: null });
  await settle();
  const after = await app.intents.readProgress();
  expect(totals(after)).not.toEqual(totals(before));

  const third = await openedApp({ store });
  expect(totals(await third.app.intents.readProgress())).toEqual(totals(after));
});
