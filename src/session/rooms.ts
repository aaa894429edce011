/** Names what `main.tsx` hands to the session, and the rooms once they are open. */
import type { StoreApi, UseBoundStore } from 'zustand';
import type { FlashListener, OwnSoundListener } from '../audio/names.ts';
import type { Opened, RoomState, SoundRoom } from '../audio/sound-room.ts';
import type { Dog, Settings } from '../core/event.ts';
import type { LanguageTag } from '../core/language.ts';
import type { Plan } from '../core/plan.ts';
import type { Seconds } from '../core/units.ts';
import type { Heard } from '../core/word.ts';
import type { OwnWords, OwnWordsParts } from '../ears/own-words.ts';
import type { PlatformEar, PlatformEarParts } from '../ears/platform.ts';
import type { EventStore } from '../store/event-store.ts';
import type { Persistence, Room } from '../store/persist.ts';
import type { AppState } from './app-state.ts';
import type { Digested } from './digested.ts';
import type { LibraryKeeper } from './library.ts';
import type { Practice } from './practice.ts';
import type { Teaching } from './teaching.ts';
import type { Timers } from './timers.ts';
import type { WakeLock } from './wake-lock.ts';
import type { WallClock } from './wall-clock.ts';
import type { Web } from './web.ts';
import type { Writer } from './writer.ts';

/** What `main.tsx` hands in: the rooms, or fakes of them. */
export interface AppParts {
  readonly wall: WallClock;
  readonly timers: Timers;
  /** The way out, to this page's own address: nothing goes there unless sync is switched on. */
  readonly web: Web;
  /** The browser's language, BCP 47. */
  readonly language: string;
  /** From here on the app speaks this language; null: as the browser wishes. Returns which that is. */
  readonly speak: (chosen: LanguageTag | null) => Promise<LanguageTag>;
  readonly wakeLock: WakeLock;
  readonly openStore: () => Promise<{ store: EventStore; kept: 'on-device' | 'visit-only' }>;
  /** True when this tab may write; `onLost` when another took over. */
  readonly claim: (onLost: () => void) => Promise<boolean>;
  /** Asks the browser not to clear what is kept. */
  readonly askToPersist: () => Promise<Persistence>;
  /** What it answered, and how much room there is; null: it does not tell. */
  readonly persistence: () => Promise<Persistence>;
  readonly roomLeft: () => Promise<Room | null>;
  /** Calls back when a newer app is ready to take over. */
  readonly watchUpdates: (onReady: (update: () => void) => void) => void;
  readonly openRoom: (events: {
    onOwnSound: OwnSoundListener;
    onFlash: FlashListener;
    onState: (state: RoomState) => void;
    onContext: () => void;
  }) => Promise<Opened>;
  readonly createEar: (parts: OwnWordsParts) => Promise<OwnWords>;
  readonly createPlatformEar: (parts: Omit<PlatformEarParts, 'recogniser' | 'onDevice'>) => Promise<PlatformEar>;
  readonly listenToKeys: (parts: {
    bindings: () => Settings['keys'];
    atS: (timeStampMs: number) => Seconds;
    onHeard: (heard: Heard) => void;
  }) => () => void;
  /** Calls back with the next key pressed, or null; returns the way to stop waiting. */
  readonly nextKey: (onKey: (key: string | null) => void) => () => void;
  /** Resolves when what was drawn before can be seen. */
  readonly painted: () => Promise<void>;
  readonly watchPage: (events: { onHidden: () => void; onShown: () => void }) => () => void;
  readonly decode: (
    context: BaseAudioContext,
    bytes: ArrayBuffer,
  ) => Promise<{ samples: Float32Array; sampleRateHz: number } | null>;
  /** Calls with every error that nobody caught. */
  readonly watchErrors: (onError: (error: unknown) => void) => void;
  /** Which browser this is, for a report. */
  readonly browser: string;
  /** Loads the page anew. */
  readonly reload: () => void;
  /** The same, past what the service worker keeps of an older version. */
  readonly loadNewest: () => Promise<void>;
  /** The invented dog and plan that an empty app opens with, in the language spoken. */
  readonly invented: () => { readonly dog: Dog; readonly plan: Plan };
}

/** What is open with the first screen: it reads and writes, it does not hear or sound. */
export interface HomeRooms {
  readonly parts: AppParts;
  readonly use: UseBoundStore<StoreApi<AppState>>;
  readonly store: EventStore;
  readonly writer: Writer;
  readonly keeper: LibraryKeeper;
}

/** All rooms, once they are open. */
export interface Rooms extends HomeRooms {
  readonly room: SoundRoom;
  readonly ear: OwnWords;
  /** The browser's recogniser. Only one of the two has the microphone. */
  readonly platformEar: PlatformEar;
  readonly practice: Practice;
  readonly teaching: Teaching;
  readonly digested: Digested;
}
