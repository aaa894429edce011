/** The app with fakes for the browser: a clock in the hand, an ear that hears what the test says, a store in memory. */
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import type { RoomState, SoundRoom } from '../../src/audio/sound-room.ts';
import type { Heard } from '../../src/core/word.ts';
import { EAR_OFF, type Ear } from '../../src/ears/ear-state.ts';
import type { OwnWords, OwnWordsParts } from '../../src/ears/own-words.ts';
import { createPlatformEar } from '../../src/ears/platform.ts';
import { createApp } from '../../src/session/app.ts';
import type { AppParts } from '../../src/session/rooms.ts';
import { createFakeTimers } from '../../src/session/timers.fake.ts';
import type { Web } from '../../src/session/web.ts';
import type { EventStore } from '../../src/store/event-store.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';

/** Lets every promise that is ready go on. */
export const settle = async () => {
  for (let i = 0; i < 5; i++) await new Promise<void>((ready) => setImmediate(ready));
};

/** Fails a test in which something leaves the device unasked. */
const NO_WAY_OUT: Web = {
  fetch: () => Promise.reject(new Error('a request left the device')),
  addressOf: () => null,
  randomBytes: (count) => crypto.getRandomValues(new Uint8Array(count)),
  chance: () => 0.5,
};

interface Wish {
  readonly web?: Web;
  /** What sync left in an earlier visit. */
  readonly syncNotes?: unknown;
  readonly mayWrite?: boolean;
  readonly sound?: boolean;
  readonly unreadable?: boolean;
  readonly device?: string;
  /** What an earlier visit kept. */
  readonly store?: EventStore;
  /** An ear that learns; without them it has learnt nothing. */
  readonly enrol?: (...given: Parameters<OwnWords['enrol']>) => Awaited<ReturnType<OwnWords['enrol']>>;
  readonly compare?: (...given: Parameters<OwnWords['compare']>) => Awaited<ReturnType<OwnWords['compare']>>;
}

export async function openedApp(wish: Wish = {}) {
  const clock = { nowS: 50 };
  const did: string[] = [];
  const store = wish.store ?? createMemoryStore({ newId: () => wish.device ?? 'phone' });
  if (wish.syncNotes !== undefined) await store.keepSyncNotes(wish.syncNotes);
  if (wish.unreadable) store.library = async () => ({ ok: false, problem: { kind: 'severed', cause: 'test' } });
  const timers = createFakeTimers();
  let ears: OwnWordsParts | null = null;
  let ear: Ear = EAR_OFF;
  let pressKey: ((heard: Heard) => void) | null = null;
  let page: { onHidden: () => void; onShown: () => void } | null = null;
  let onRoom: ((state: RoomState) => void) | null = null;
  let uncaught: ((error: unknown) => void) | null = null;
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
    enrol: async (teaching) => wish.enrol?.(teaching) ?? { ok: false, problems: [] },
    compare: async (compare) => wish.compare?.(compare) ?? null,
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
      newId: () => `${wish.device ?? ''}id-${++ids}`,
    },
    timers,
    web: wish.web ?? NO_WAY_OUT,
    speak: async (chosen) => chosen ?? 'en',
    wakeLock: { hold: async () => true, release: () => did.push('screen may sleep') },
    openStore: async () => ({ store, kept: 'visit-only' }),
    claim: async () => wish.mayWrite ?? true,
    askToPersist: async () => 'kept' as const,
    persistence: async () => 'may-be-cleared' as const,
    roomLeft: async () => ({ usedBytes: 3e6, quotaBytes: 9e9 }),
    ...{ watchUpdates: () => {}, nextKey: () => () => {}, decode: async () => null },
    openRoom: async (events) => {
      onRoom = events.onState;
      return wish.sound === false ? { kind: 'no-web-audio' } : { kind: 'open', room };
    },
    language: 'en-GB',
    createPlatformEar: async (given) => createPlatformEar({ ...given, recogniser: () => null, onDevice: null }),
    createEar: async (given) => {
      ears = given;
      return fakeEar;
    },
    listenToKeys: ({ onHeard }) => {
      pressKey = onHeard;
      return () => {};
    },
    reload: () => did.push('reload'),
    loadNewest: async () => void did.push('newest'),
    browser: 'a test',
    watchErrors: (onError) => {
      uncaught = onError;
    },
    painted: async () => {},
    watchPage: (events) => {
      page = events;
      return () => {};
    },
    invented: () => ({ dog: DEMO_DOG, plan: DEMO_PLAN }),
  };
  const app = createApp(parts);
  // Answers once everything is open, or could not be.
  await app.intents.countSounds();
  await settle();
  const press = async (word: Heard['word'], atS: number) => {
    clock.nowS = atS;
    pressKey?.({ word, startedAtS: atS, endedAtS: atS, decidedAtS: atS, confidence: 1, by: 'key' });
    await settle();
  };
  /** A short session, kept and finished. */
  const practised = async () => {
    await app.intents.practise(DEMO_PLAN.id);
    await settle();
    await press('hold', 60);
    await press('mark', 61);
    await app.intents.finish();
  };
  return {
    app,
    did,
    store,
    practised,
    timers,
    press,
    becomes,
    clock,
    page: () => page,
    room: () => onRoom,
    ears: () => ears,
    fails: (error: unknown) => uncaught?.(error),
  };
}
