/** The age of the last copy, as the app tells it: it outlives a reload and goes with a deletion. */
import { expect, test } from 'vitest';
import { openedApp } from './opened-app.ts';

test('a copy that was handed out is told with its age, also after the page was loaded anew', async () => {
  const { app, store, practised } = await openedApp();
  await practised();
  expect(await app.intents.lookAtStorage()).toMatchObject({ copy: { daysAgo: null, sessionsSince: 1 } });
  await app.intents.noteCopy();
  await practised();
  const now = await app.intents.lookAtStorage();
  expect(now?.copy).toEqual({ daysAgo: 0, sessionsSince: 1, isDue: false });
  const again = await openedApp({ store });
  expect((await again.app.intents.lookAtStorage())?.copy).toEqual(now?.copy);
});

test('what the browser promised and the room left are told without a session in between', async () => {
  const { app } = await openedApp();
  expect(await app.intents.lookAtStorage()).toMatchObject({
    persistence: 'may-be-cleared',
    room: { usedBytes: 3e6, quotaBytes: 9e9 },
  });
  expect(app.getState().persistence).toBe('may-be-cleared');
  await app.intents.askToKeep();
  expect(app.getState().persistence).toBe('kept');
});

test('the copy itself does not hold the note of it: added to another phone it is no copy of that one', async () => {
  const { app, practised } = await openedApp();
  await practised();
  const copy = await app.intents.exportAll();
  await app.intents.noteCopy();
  expect(copy?.text).not.toContain('copy-saved');
});
