/** Wires the rooms once; the only file that knows all of them. */

import { registerSW } from 'virtual:pwa-register';
import { createRoot } from 'react-dom/client';
import { demoDog, demoPlan } from '../demo/scenario.ts';
import { listenToKeys, nextKey } from './ears/keys.ts';
import { Rooms } from './screens/rooms.tsx';
import { createApp } from './session/app.ts';
import { loadNewestPage, painted, reloadPage, speakOnPage, watchErrors, watchPage } from './session/page.ts';
import { pageTimers } from './session/timers.ts';
import { createWakeLock } from './session/wake-lock.ts';
import { pageClock } from './session/wall-clock.ts';
import { pageWeb } from './session/web.ts';
import { openEventStore } from './store/event-store.ts';
import { recover, withJournal, withoutErasing } from './store/journal.ts';
import { claimWriter } from './store/one-writer.ts';
import { askToPersist, persistence, roomLeft } from './store/persist.ts';

const NAME = 'stillbeat';
/** The first screen and the first tap come before it. */
const CATCH_UP_AFTER_MS = 10_000;

const app = createApp({
  wall: pageClock,
  timers: pageTimers,
  web: pageWeb,
  language: navigator.language,
  speak: speakOnPage,
  wakeLock: createWakeLock(),
  claim: async (onLost) => (await claimWriter(NAME, onLost)) === 'writer',
  ...{ askToPersist, persistence, roomLeft },
  watchUpdates: (onReady) => {
    const update = registerSW({ onNeedRefresh: () => onReady(() => void update(true)) });
  },
  openStore: async () => {
    const open = (name: string) => openEventStore({ name, newId: pageClock.newId, after: pageTimers.after });
    const [opened, journal] = await Promise.all([open(NAME), open(`${NAME}-journal`)]);
    // A private window keeps nothing: practise all the same, and say so.
    if (!opened.ok) {
      const { createMemoryStore } = await import('./store/memory-store.ts');
      return { store: createMemoryStore({ newId: pageClock.newId }), kept: 'visit-only' };
    }
    if (!journal.ok) return { store: withoutErasing(opened.value, 'the journal did not open'), kept: 'on-device' };
    await recover(opened.value, journal.value);
    const store = withJournal(opened.value, journal.value);
    pageTimers.after(CATCH_UP_AFTER_MS, () => void store.catchUp());
    return { store, kept: 'on-device' };
  },
  // The first screen is silent: what sounds is fetched after it.
  openRoom: async (events) => (await import('./audio/sound-room.ts')).openSoundRoom(events),
  createEar: async (parts) => (await import('./ears/own-words.ts')).createOwnWords(parts),
  createPlatformEar: async (parts) => {
    const { browserRecogniser, createPlatformEar } = await import('./ears/platform.ts');
    return createPlatformEar({ ...parts, ...browserRecogniser() });
  },
  listenToKeys: (parts) => listenToKeys(window, parts),
  nextKey: (onKey) => nextKey(window, onKey),
  painted: () => painted(pageTimers),
  watchPage,
  reload: reloadPage,
  loadNewest: () => loadNewestPage(pageWeb),
  watchErrors,
  browser: navigator.userAgent,
  decode: async (context, bytes) => (await import('./audio/decode.ts')).decodeSound(context, bytes),
  invented: () => ({ dog: demoDog(), plan: demoPlan() }),
});

const root = document.getElementById('root');
if (root) createRoot(root).render(<Rooms app={app} />);
