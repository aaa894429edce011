/** Corrections in the app: written first, shown then, counted for next time; the session as it was heard stays. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import type { App } from '../../src/session/app.ts';
import { openedApp, settle } from './opened-app.ts';

const reviewedIn = (app: App) => {
  const { reviewed } = app.getState();
  if (!reviewed) throw new Error('nothing is reviewed');
  return reviewed;
};
const outcomes = (app: App) => reviewedIn(app).state.reps.map(({ outcome }) => outcome);

/** Three kept and one lift, finished and in review. */
async function endedOnALift() {
  const opened = await openedApp();
  await opened.app.intents.practise(DEMO_PLAN.id);
  await settle();
  for (const [nth, word] of (['mark', 'mark', 'mark', 'lifted'] as const).entries()) {
    await opened.press('hold', 60 + 10 * nth);
    await opened.press(word, 61 + 10 * nth);
  }
  await opened.app.intents.finish();
  return opened;
}

test('a lift that was a mark is put right: written as one more event, shown, and the next session starts from it', async () => {
  const { app, store } = await endedOnALift();
  const { sessionId, original, next } = reviewedIn(app);
  const before = await store.session(sessionId);
  expect(next.why.kind).toBe('ended-on-a-lift-at-the-easiest');
  const of = original.reps[3]?.endedBy ?? '';
  expect(await app.intents.correct({ do: 'relabel', of, as: 'mark' })).toBeNull();
  expect(outcomes(app)).toEqual(['kept', 'kept', 'kept', 'kept']);
  expect(reviewedIn(app).original.reps.map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'kept', 'lifted']);
  expect(reviewedIn(app).next.why.kind).toBe('step-reached');
  expect((await app.intents.startOf(DEMO_PLAN.id))?.why.kind).toBe('step-reached');
  const after = await store.session(sessionId);
  if (!before.ok || !after.ok) throw new Error('the store cannot be read');
  expect(after.value.events.slice(0, -1)).toEqual(before.value.events);
  expect(after.value.events.at(-1)).toMatchObject({ type: 'corrected', body: { do: 'relabel', of, as: 'mark' } });
});

test('undo and redo go through corrections one by one, and what was undone stays written', async () => {
  const { app, store } = await endedOnALift();
  const { sessionId, original } = reviewedIn(app);
  const [first, last] = [original.reps[0]?.endedBy ?? '', original.reps[3]?.endedBy ?? ''];
  await app.intents.correct({ do: 'relabel', of: last, as: 'mark' });
  await app.intents.correct({ do: 'void', of: first, reason: 'the door bell' });
  expect(outcomes(app)).toEqual(['void', 'kept', 'kept', 'kept']);
  await app.intents.undoCorrection();
  expect(outcomes(app)).toEqual(['kept', 'kept', 'kept', 'kept']);
  await app.intents.undoCorrection();
  expect(outcomes(app)).toEqual(['kept', 'kept', 'kept', 'lifted']);
  await app.intents.undoCorrection();
  await app.intents.redoCorrection();
  await app.intents.redoCorrection();
  await app.intents.redoCorrection();
  expect(outcomes(app)).toEqual(['void', 'kept', 'kept', 'kept']);
  const read = await store.session(sessionId);
  expect(read.ok && read.value.events.slice(-6).map(({ type }) => type)).toEqual([
    ...['corrected', 'corrected', 'undone', 'undone', 'undone', 'undone'],
  ]);
});

test('what cannot be put right is refused in a sentence, and nothing is written', async () => {
  const { app, store } = await endedOnALift();
  const { sessionId } = reviewedIn(app);
  const before = await store.session(sessionId);
  expect(await app.intents.correct({ do: 'confirm', of: 'nowhere' })).toBe('There is no such word in this session (nowhere).');
  expect(await app.intents.correct({ do: 'insert', word: 'mark', startedAtS: Number.NaN })).toMatch(
    /within the session, got NaN/,
  );
  expect(await store.session(sessionId)).toEqual(before);
});

test('a review weeks later does not make the session younger: the gap is counted from the session', async () => {
  const { app, clock } = await endedOnALift();
  const of = reviewedIn(app).original.reps[3]?.endedBy ?? '';
  clock.nowS += 30 * 86_400;
  await app.intents.correct({ do: 'relabel', of, as: 'mark' });
  await app.intents.correct({ do: 'insert', word: 'void', startedAtS: 45 });
  expect(reviewedIn(app).next.why).toEqual({ kind: 'gap', days: 30 });
  expect((await app.intents.startOf(DEMO_PLAN.id))?.why).toEqual({ kind: 'gap', days: 30 });
});
