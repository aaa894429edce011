/** Owns the AudioContext of the page: opens it through howler, wakes it, notices when it stops, and lends it to the ear. */
import { Howler } from 'howler';
import type { Milliseconds, Seconds, Share } from '../core/units.ts';
import { type Beats, createBeats } from './beats.ts';
import { type Calls, createCalls } from './calls.ts';
import { type ContextClock, createContextClock } from './clock.ts';
import { beginWatch, type ClockWatch, isFrozen, lookAtClock } from './clock-watch.ts';
import { type Buffers, loadSounds } from './load-sounds.ts';
import type { CueMode, FlashListener, OwnSoundListener, SoundName } from './names.ts';
import { createSchedule, type Schedule } from './schedule.ts';
import { createSpeaker } from './speaker.ts';
import { createWorkerTick, type Tick } from './tick.ts';

/** `suspended`: waits for a tap. `interrupted`: a call or another app has the sound. `frozen`: says it runs, and does not. */
export type RoomState = 'suspended' | 'running' | 'frozen' | 'interrupted';

export interface SoundRoomOptions {
  /** Session time; the end already includes what the output is late by. */
  readonly onOwnSound: OwnSoundListener;
  readonly onFlash?: FlashListener;
  readonly onState?: (state: RoomState) => void;
  /** A new context took the place of the old one: the microphone must be tapped again. */
  readonly onContext?: (context: AudioContext) => void;
  readonly mode?: CueMode;
  readonly volume?: Share;
}

export interface SoundRoom {
  readonly clock: ContextClock;
  readonly beats: Beats;
  readonly calls: Calls;
  /** Names the sounds that could not be loaded; empty when all are there. */
  readonly missing: Promise<readonly SoundName[]>;
  /** The one context, to be shared with the microphone's tap. Ask again after `onContext`. */
  context(): AudioContext;
  state(): RoomState;
  /** Call it from a tap: wakes the context, and replaces it if its clock is frozen. */
  unlock(): Promise<RoomState>;
  /** Sounds one cue now, for the sound check and the settings. */
  preview(name: SoundName): void;
  setVolume(volume: Share): void;
  setMode(mode: CueMode): void;
  dispose(): void;
}

export type Opened = { readonly kind: 'open'; readonly room: SoundRoom } | { readonly kind: 'no-web-audio' };

/** What changes while a room is open. */
interface Inside {
  readonly options: SoundRoomOptions;
  readonly clock: ContextClock;
  readonly tick: Tick;
  mode: CueMode;
  watch: ClockWatch;
  told: RoomState | null;
}

export function openSoundRoom(options: SoundRoomOptions): Opened {
  askForPlayAndRecord();
  Howler.autoSuspend = false;
  const { buffers, missing } = loadSounds();
  if (!Howler.ctx) return { kind: 'no-web-audio' };
  Howler.volume(options.volume ?? 1);
  const clock = createContextClock(() => Howler.ctx);
  const inside: Inside = {
    options,
    clock,
    tick: createWorkerTick(),
    mode: options.mode ?? 'sound',
    watch: beginWatch(clock.now(), performance.now()),
    told: null,
  };
  return { kind: 'open', room: furnish(inside, buffers, missing) };
}

function furnish(inside: Inside, buffers: Buffers, missing: SoundRoom['missing']): SoundRoom {
  const { clock, tick } = inside;
  const parts = { ...cueParts(inside, buffers), clock, tick };
  const beats = createBeats(parts);
  const calls = createCalls({ ...parts, speaker: createSpeaker(() => Howler.volume(), pageLanguage) });
  const stopWatching = watchContext(inside);
  return {
    clock,
    beats,
    calls,
    missing,
    context: () => Howler.ctx,
    state: () => stateOf(inside),
    unlock: () => unlock(inside),
    preview: (name) => preview(parts.schedule, parts.onOwnSound, name),
    setVolume: (volume) => {
      Howler.volume(volume);
    },
    setMode: (mode) => {
      inside.mode = mode;
    },
    dispose: () => {
      beats.dispose();
      calls.dispose();
      stopWatching();
      tick.dispose();
      closeContext();
    },
  };
}

/** What beats and calls share. */
function cueParts(inside: Inside, buffers: Buffers) {
  const { clock, options } = inside;
  const schedule = createSchedule({
    clock,
    context: () => Howler.ctx,
    output: () => Howler.masterGain,
    bufferOf: (name) => buffers.get(name),
  });
  const onOwnSound: OwnSoundListener = (fromS, toS) => options.onOwnSound(fromS, toS + outputLatencyS());
  return { schedule, onOwnSound, mode: () => inside.mode, ...(options.onFlash && { onFlash: options.onFlash }) };
}

/** 0 where the browser does not say. */
function outputLatencyS(): Seconds {
  return Howler.ctx.outputLatency || 0;
}

function preview(schedule: Schedule, onOwnSound: OwnSoundListener, name: SoundName): void {
  const sounding = schedule.play(name, schedule.soonestS());
  if (sounding) onOwnSound(sounding.fromS, sounding.toS);
}

function stateOf({ watch }: Inside): RoomState {
  const { state } = Howler.ctx;
  if (state === 'running') return isFrozen(watch, performance.now()) ? 'frozen' : 'running';
  return state === 'interrupted' ? 'interrupted' : 'suspended';
}

/** Looks at the context on every tick: one place sees states that send no event, such as a frozen clock. */
function watchContext(inside: Inside): () => void {
  const look = (): void => {
    const nowMs = performance.now();
    const ticking = Howler.ctx.state === 'running';
    inside.watch = (ticking ? lookAtClock : fresh)(inside.watch, inside.clock.now(), nowMs);
    tellState(inside);
  };
  const wake = (): void => {
    if (document.visibilityState === 'visible' && Howler.ctx.state !== 'running') void resume();
  };
  const unlisten = inside.tick.listen(look);
  document.addEventListener('visibilitychange', wake);
  return () => {
    unlisten();
    document.removeEventListener('visibilitychange', wake);
  };
}

function fresh(_: ClockWatch, audioS: Seconds, nowMs: Milliseconds): ClockWatch {
  return beginWatch(audioS, nowMs);
}

function tellState(inside: Inside): void {
  const state = stateOf(inside);
  if (state === inside.told) return;
  inside.told = state;
  inside.options.onState?.(state);
}

async function unlock(inside: Inside): Promise<RoomState> {
  if (stateOf(inside) === 'frozen') replaceContext(inside);
  await resume();
  tellState(inside);
  return stateOf(inside);
}

/** A refusal is no error of ours: the state says "suspended", and the next tap tries again. */
async function resume(): Promise<void> {
  await Howler.ctx.resume().catch(() => undefined);
}

/** The clock goes on: by the time that passed while the old one stood still. */
function replaceContext(inside: Inside): void {
  const { clock, watch, options } = inside;
  const nowS = watch.audioS + (performance.now() - watch.movedAtMs) / 1000;
  Howler.unload();
  clock.goOnFrom(nowS);
  inside.watch = beginWatch(nowS, performance.now());
  options.onContext?.(Howler.ctx);
}

/** Howler opens a new context as it closes the old one; left asleep, it costs nothing. */
function closeContext(): void {
  Howler.unload();
  void Howler.ctx.suspend().catch(() => undefined);
}

/** iOS: without it, opening the microphone re-routes or silences what is playing. */
function askForPlayAndRecord(): void {
  const { audioSession } = navigator as { audioSession?: { type: string } };
  if (audioSession) audioSession.type = 'play-and-record';
}

function pageLanguage(): string {
  return document.documentElement.lang || navigator.language;
}
