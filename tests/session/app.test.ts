/** The app around a session, with fakes for the browser: a deaf ear, a hidden page, two words at once, a private window. */
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import type { RoomState, SoundRoom } from '../../src/audio/sound-room.ts';
import type { Heard } from '../../src/core/word.ts';
import { EAR_OFF, type Ear } from '../../src/ears/ear-state.ts';
import type { OwnWords, OwnWordsParts } from '../../src/ears/own-words.ts';
import { createPlatformEar } from '../../src/ears/platform.ts';
import { createApp } from '../../src/session/app.ts';
import type { AppParts } from '../../src/session/rooms.ts';
import { createFakeTimers } from '../../src/session/timers.fake.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';

/** Lets every promise that is ready go on. */
const settle = async () => {
  for (let i = 0; i < 5; i++) await new Promise<void>((ready) => setImmediate(ready));
};

async function opened(wish: { mayWrite?: boolean; sound?: boolean; unreadable?: boolean } = {}) {
  const clock = { nowS: 50 };
  const did: string[] = [];
  const store = createMemoryStore({ newId: () => 'phone' });
  if (wish.unreadable) store.library = async () => ({ ok: false, problem: { kind: 'severed', cause: 'test' } });
  const timers = createFakeTimers();
  let ears: OwnWordsParts | null = null;
  let ear: Ear = EAR_OFF;
  let pressKey: ((heard: Heard) => void) | null = null;
  let page: { onHidden: () => void; onShown: () => void } | null = null;
  let onRoom: ((state: RoomState) => void) | null = null;
  let ids = 0;
  const becomes = (next: Partial<Ear>) => {
    ear = { ...ear, ...next };
    ears?.onState(ear);
  };
  const fakeEar: OwnWords = {
    open: async () => {
      becomes({ state: 'listening' });
      return ear.state;
    },
    ...{
      listen: () => did.push('ear listens'),
      teach: () => did.push('ear teaches'),
      idle: () => {},
      look: () => did.push('looked'),
    },
    enrol: async () => ({ ok: false, problems: [] }),
    ...{ expectOwnSound: () => {}, expect: () => {}, ear: () => ear, close: () => becomes({ state: 'off' }) },
    away: (why) => becomes({ state: 'suspended', why }),
    back: () => becomes({ state: 'restarting', why: null }),
  };
  const room = {
    clock: { now: () => clock.nowS, toContextS: (s: number) => s, fromContextS: (s: number) => s, goOnFrom: () => {} },
    beats: { start: () => did.push('beats'), stop: () => did.push('no beats'), dispose: () => {} },
    calls: {
      call: (kind: string) => did.push(`call ${kind}`),
      ...{ holdBegan: () => {}, holdEnded: () => {}, voice: () => {}, silence: () => {}, setSpoken: () => {}, dispose: () => {} },
    },
    ...{
      context: () => ({}) as AudioContext,
      unlock: async () => 'running' as const,
      preview: () => {},
      setVolume: () => {},
      setMode: () => {},
    },
  } as unknown as SoundRoom;
  const parts: AppParts = {
    wall: {
      now: () => new Date(Date.UTC(2026, 2, 2, 17) + 1000 * clock.nowS),
      monoMs: () => 1000 * clock.nowS,
      newId: () => `id-${++ids}`,
    },
    timers,
    wakeLock: { hold: async () => true, release: () => did.push('screen may sleep') },
    openStore: async () => ({ store, kept: 'visit-only' }),
    claim: async () => wish.mayWrite ?? true,
    ...{ askToPersist: async () => 'kept' as const, watchUpdates: () => {}, nextKey: () => () => {}, decode: async () => null },
    openRoom: async (events) => {
      onRoom = events.onState;
      return wish.sound === false ? { kind: 'no-web-audio' } : { kind: 'open', room };
    },
    language: 'en-GB',
    createPlatformEar: async (given) => createPlatformEar({ ...given, recogniser: () => null, onDevice: null }),
    createEar: (given) => {
      ears = given;
      return fakeEar;
    },
    listenToKeys: ({ onHeard }) => {
      pressKey = onHeard;
      return () => {};
    },
    watchPage: (events) => {
      page = events;
      return () => {};
    },
    invented: { dog: DEMO_DOG, plan: DEMO_PLAN },
  };
  const app = createApp(parts);
  await settle();
  const press = async (word: Heard['word'], atS: number) => {
    clock.nowS = atS;
    pressKey?.({ word, startedAtS: atS, endedAtS: atS, decidedAtS: atS, confidence: 1, by: 'key' });
    await settle();
  };
  return { app, did, store, timers, press, becomes, clock, page: () => page, room: () => onRoom, ears: () => ears };
}

async function practising() {
  const all = await opened();
  await all.app.intents.practise(DEMO_PLAN.id);
  await settle();
  return all;
}

test('an empty app opens with the invented dog and her plan', async () => {
  const { app } = await opened();
  expect(app.getState().opening).toEqual({ kind: 'ready', kept: 'visit-only' });
  expect(app.getState().library.dogs).toEqual([DEMO_DOG]);
});

test('a tab that may not write says so and opens nothing', async () => {
  const { app, did } = await opened({ mayWrite: false });
  expect(app.getState().opening).toEqual({ kind: 'another-tab' });
  expect(did).toEqual([]);
});

test('a browser without sound is told, not left blank', async () => {
  const { app } = await opened({ sound: false });
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
  const { did, timers } = await opened();
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
  const { app, store } = await opened();
  await Promise.all([app.intents.practise(DEMO_PLAN.id), app.intents.practise(DEMO_PLAN.id)]);
  await settle();
  const heads = await store.sessionHeads();
  expect(heads.ok && heads.value.heads).toHaveLength(1);
});

test('with the browser’s recogniser switched on, that ear has the microphone and the other is closed', async () => {
  const { app } = await opened();
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
  const { app, ears } = await opened();
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
  const { app } = await opened();
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
  const { app, store } = await opened({ unreadable: true });
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
