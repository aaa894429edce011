/** An examination from the tap to the review: kept as a session of its own kind, and no part of progress. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import type { ExamPlan } from '../../src/core/exam/exam.ts';
import { openedApp, settle } from './opened-app.ts';

const EXAM: ExamPlan = {
  ...{ id: 'e1', dogId: DEMO_DOG.id, date: '2026-03-02', place: 'practice' },
  items: [
    { id: 'ear', area: 'ears', what: 'look into the ear', forS: 10 },
    { id: 'paw', area: 'paws', what: 'lift the paw', forS: 5 },
  ],
};

async function examining() {
  const opened = await openedApp();
  await opened.app.intents.saveExam(EXAM);
  expect(await opened.app.intents.examine('e1')).toBe(true);
  await settle();
  return opened;
}

test('its session names the list, the place and its kind, and where to start next time on a plan does not hang on it', async () => {
  const { app, press } = await examining();
  expect(app.getState().live?.start).toMatchObject({ kind: 'exam', planId: 'e1', place: 'practice', startStepId: 'ear' });
  await press('hold', 60);
  await press('lifted', 62);
  await press('finish', 70);
  await settle();
  expect(app.getState().reviewed?.state.reps).toMatchObject([{ outcome: 'lifted' }]);
  expect((await app.intents.startOf(DEMO_PLAN.id))?.why).toEqual({ kind: 'first-session' });
});

test('a treat that was given in it belongs to the day', async () => {
  const { app, press } = await examining();
  await press('hold', 60);
  await press('mark', 63);
  await press('finish', 70);
  await settle();
  expect(await app.intents.treatsGivenToday(DEMO_DOG.id)).toBe(1);
});

test('progress counts it apart', async () => {
  const { app, press } = await examining();
  await press('hold', 60);
  await press('mark', 63);
  await press('finish', 70);
  await settle();
  const progress = await app.intents.readProgress();
  expect(progress?.digests).toEqual([]);
  expect(progress?.exams).toMatchObject([{ kind: 'exam', planId: 'e1', steps: [{ stepId: 'ear', kept: 1 }] }]);
});

test('nothing is sounded but the seconds', async () => {
  const { press, did } = await examining();
  await press('hold', 60);
  await press('lifted', 61);
  await press('hold', 64);
  await press('lifted', 65);
  await press('harder', 67);
  expect(did.filter((one) => one.startsWith('call'))).toEqual([]);
  expect(did).toContain('beats');
});

test('a list that is empty or not here begins nothing and says so', async () => {
  const { app } = await openedApp();
  expect(await app.intents.examine('e9')).toBe(false);
  expect(app.getState().refusal).toBe('This examination is not on this device.');
  await app.intents.saveExam({ ...EXAM, items: [] });
  expect(await app.intents.examine('e1')).toBe(false);
  expect(app.getState().refusal).toBe('Nothing is on its list yet.');
});

test('with the dog its examinations are erased', async () => {
  const { app, press } = await examining();
  await press('hold', 60);
  await press('finish', 70);
  await settle();
  expect(await app.intents.eraseDog(DEMO_DOG.id)).toBeNull();
  expect(app.getState().library.exams).toEqual([]);
  expect(app.getState().heads).toEqual([]);
});
