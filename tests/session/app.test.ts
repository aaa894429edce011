/** The app around a session, with fakes for the browser: a deaf ear, a hidden page, two words at once, a private window. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { openedApp, settle } from './opened-app.ts';

async function practising() {
  const all = await openedApp();
  await all.app.intents.practise(DEMO_PLAN.id);
  await settle();
  return all;
}

test('an empty app opens with the invented dog and her plan', async () => {
  const { app } = await openedApp();
  expect(app.getState().opening).toEqual({ kind: 'ready', kept: 'visit-only' });
  expect(app.getState().library.dogs).toEqual([DEMO_DOG]);
});

test('a tab that may not write says so and opens nothing', async () => {
  const { app, did } = await openedApp({ mayWrite: false });
  expect(app.getState().opening).toEqual({ kind: 'another-tab' });
  expect(did).toEqual([]);
});

test('a browser without sound is told, not left blank', async () => {
  const { app } = await openedApp({ sound: false });
  expect(app.getState().opening).toEqual({ kind: 'no-web-audio' });
});

test('an ear that goes deaf in a session is sounded, shown and written down', async () => {
  const { app, did, becomes } = await practising();
  becomes({ state: 'listening' });
  becomes({ state: 'restarting', why: 'no-sound' });
  await settle();
  expect(did).toContain('call lost');
  expect(app.getState().live?.ear).toBe('restarting');
  expect(app.getState().ear.why).toBe('no-sound');
});

test('a page that is hidden is a pause, so that unheard seconds are not held seconds', async () => {
  const { app, press, page } = await practising();
  await press('hold', 60);
  page()?.onHidden();
  await settle();
  expect(app.getState().live?.phase.phase).toBe('paused');
  expect(app.getState().live?.reps).toMatchObject([{ outcome: 'void', voidReason: 'paused' }]);
});

test('a call of the phone suspends the ear until the sound is back', async () => {
  const { app, room, becomes } = await practising();
  becomes({ state: 'listening' });
  room()?.('interrupted');
  expect(app.getState().ear).toMatchObject({ state: 'suspended', why: 'interrupted' });
  room()?.('running');
  expect(app.getState().ear.state).toBe('restarting');
});

test('finishing by a word ends the session, lets the screen sleep and opens the review', async () => {
  const { app, press, did } = await practising();
  await press('hold', 60);
  await press('mark', 61);
  await press('finish', 65);
  await settle();
  const { reviewed, heads } = app.getState();
  expect(reviewed?.state.reps).toHaveLength(1);
  expect(reviewed?.state.phase.phase).toBe('ended');
  expect(heads).toHaveLength(1);
  expect(did).toContain('screen may sleep');
});

test('an unsure stretch is asked about and never becomes a rep', async () => {
  const { app, did, ears } = await practising();
  const nearest = [
    { word: 'hold', confidence: 0.4 },
    { word: 'mark', confidence: 0.3 },
  ];
  ears()?.onHearing({ kind: 'unsure', startedAtS: 60, endedAtS: 60.4, decidedAtS: 60.6, nearest });
  await settle();
  expect(did).toContain('call unsure');
  expect(app.getState().live).toMatchObject({ reps: [], lastUnsure: { nearest } });
});

test('the ear is looked after twice a second', async () => {
  const { did, timers } = await openedApp();
  timers.advance(2000);
  expect(did.filter((what) => what === 'looked')).toHaveLength(4);
});

test('the next session starts where this one says', async () => {
  const { app, press } = await practising();
  for (let i = 0; i < 5; i++) {
    await press('hold', 60 + 5 * i);
    await press('mark', 61 + 5 * i);
  }
  await press('finish', 99);
  await settle();
  expect((await app.intents.startOf(DEMO_PLAN.id))?.startStepId).toBe('hold-1');
});

test('a second tap on practise does not begin a second session', async () => {
  const { app, store } = await openedApp();
  await Promise.all([app.intents.practise(DEMO_PLAN.id), app.intents.practise(DEMO_PLAN.id)]);
  await settle();
  const heads = await store.sessionHeads();
  expect(heads.ok && heads.value.heads).toHaveLength(1);
});

test('with the browser’s recogniser switched on, that ear has the microphone and the other is closed', async () => {
  const { app } = await openedApp();
  const platformEar = { on: true, mayLeave: true, language: 'en-GB', sayings: { hold: ['steady'] } };
  await app.intents.saveSettings({ platformEar });
  await app.intents.practise(DEMO_PLAN.id);
  await settle();
  // This browser has none: said so, and keys still work.
  expect(app.getState().ear).toMatchObject({ state: 'blocked', why: 'no-recogniser' });
  const ears = app.getState().live?.log.flatMap((event) => (event.type === 'ear-changed' ? [event.body.ear] : []));
  expect(new Set(ears)).toEqual(new Set(['platform']));
});

test('leaving the sound check in the middle closes the microphone, and nothing said after it is a take', async () => {
  const { app, ears } = await openedApp();
  await app.intents.teach('hold', 'steady');
  await settle();
  expect(app.getState().teaching.kind).toBe('catching');
  await app.intents.leaveSoundCheck();
  await settle();
  expect(app.getState()).toMatchObject({ teaching: { kind: 'idle' }, ear: { state: 'off' } });
  const caught = { samples: new Float32Array(8000), sampleRateHz: 16_000, startedAtS: 1, endedAtS: 1.5, cut: false };
  const report = {
    ...{ levelDb: -20, noiseDb: -60, clippedShare: 0 },
    speechStartsAtS: 0,
    speechEndsAtS: 0.5,
    speechLengthS: 0.5,
    faults: [],
    isClick: false,
  };
  ears()?.onCaught({ caught, report });
  await settle();
  expect(app.getState().library.sounds).toEqual([]);
});

test('a session on a plan that is not here is refused with the reason, and the microphone stays closed', async () => {
  const { app } = await openedApp();
  expect(await app.intents.practise('nowhere')).toBe(false);
  expect(app.getState().refusal).toContain('not on this device');
  expect(app.getState()).toMatchObject({ live: null, ear: { state: 'off' } });
});

test('a last session that cannot be read does not put the dog back to the first step', async () => {
  const { app, store, press } = await practising();
  await press('hold', 60);
  await press('mark', 61);
  await press('finish', 65);
  await settle();
  store.session = async () => ({ ok: false, problem: { kind: 'severed', cause: 'test' } });
  expect(await app.intents.startOf(DEMO_PLAN.id)).toBeNull();
  expect(await app.intents.practise(DEMO_PLAN.id)).toBe(false);
  expect(app.getState().refusal).toContain('cannot be read');
});

test('a library that cannot be read is not opened as an empty one', async () => {
  const { app, store } = await openedApp({ unreadable: true });
  expect(app.getState().opening.kind).toBe('failed');
  const all = await store.all();
  expect(all.ok && all.value.events).toEqual([]);
});

test('a tap on go on opens an ear again that had gone deaf', async () => {
  const { app, becomes, did } = await practising();
  becomes({ state: 'blocked', why: 'not-allowed' });
  await app.intents.listenAgain();
  await settle();
  // Nothing is taught here: it stays closed and says so, instead of pretending to listen.
  expect(app.getState().ear.state).toBe('off');
  expect(did).not.toContain('ear listens');
});
