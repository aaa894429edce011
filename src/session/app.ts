/** Wires store, sound, ears and core into the one state that the screens draw, and the intents that they forward. */
import { create, type StoreApi, type UseBoundStore } from 'zustand';
import type { FlashListener, OwnSoundListener, SoundName } from '../audio/names.ts';
import type { Opened, RoomState, SoundRoom } from '../audio/sound-room.ts';
import { type Dog, isSessionEvent, type Settings } from '../core/event.ts';
import { endedOnLift, fold, type SessionState } from '../core/fold.ts';
import { bindKey } from '../core/key-bindings.ts';
import { foldLibrary } from '../core/library.ts';
import { firstStart, type NextStart, nextStart } from '../core/next-start.ts';
import type { Plan } from '../core/plan.ts';
import { settingsOf } from '../core/settings.ts';
import type { Seconds } from '../core/units.ts';
import { type Heard, isWord, type Unsure, type Word } from '../core/word.ts';
import { EAR_OFF, type Ear, hears } from '../ears/ear-state.ts';
import { pressed } from '../ears/keys.ts';
import type { OwnWords, OwnWordsParts } from '../ears/own-words.ts';
import type { EventStore } from '../store/event-store.ts';
import type { AppState, Reviewed } from './app-state.ts';
import { createLibraryKeeper, type LibraryKeeper } from './library.ts';
import { createPractice, type Practice } from './practice.ts';
import { createTeaching, type Teaching } from './teaching.ts';
import type { Timers } from './timers.ts';
import type { WakeLock } from './wake-lock.ts';
import { daysBetween, type WallClock } from './wall-clock.ts';
import { createWriter, type Writer } from './writer.ts';

/** What `main.tsx` hands in: the rooms, or fakes of them. */
export interface AppParts {
  readonly wall: WallClock;
  readonly timers: Timers;
  readonly wakeLock: WakeLock;
  readonly openStore: () => Promise<{ store: EventStore; kept: 'on-device' | 'visit-only' }>;
  /** True when this tab may write. */
  readonly claim: () => Promise<boolean>;
  readonly openRoom: (events: {
    onOwnSound: OwnSoundListener;
    onFlash: FlashListener;
    onState: (state: RoomState) => void;
    onContext: () => void;
  }) => Opened;
  readonly createEar: (parts: OwnWordsParts) => OwnWords;
  readonly listenToKeys: (parts: {
    bindings: () => Settings['keys'];
    atS: (timeStampMs: number) => Seconds;
    onHeard: (heard: Heard) => void;
  }) => () => void;
  /** Calls back with the next key pressed, or null; returns the way to stop waiting. */
  readonly nextKey: (onKey: (key: string | null) => void) => () => void;
  readonly watchPage: (events: { onHidden: () => void; onShown: () => void }) => () => void;
  readonly decode: (
    context: BaseAudioContext,
    bytes: ArrayBuffer,
  ) => Promise<{ samples: Float32Array; sampleRateHz: number } | null>;
  /** The invented dog and plan that an empty app opens with. */
  readonly invented: { readonly dog: Dog; readonly plan: Plan };
}

/** What a screen may ask for. Those that need a tap say so: browsers give sound and microphone only to a tap. */
export interface Intents {
  /** From a tap. `sessionId`: go on with one that was closed. */
  practise(planId: string, sessionId?: string): Promise<void>;
  say(word: Word): void;
  finish(): Promise<void>;
  openReview(sessionId: string): Promise<boolean>;
  /** From a tap: microphone on, and takes of this word are caught until told otherwise. */
  teach(word: string, said: string): Promise<void>;
  stopTeaching(): Promise<void>;
  /** Adds recordings from files; returns the names of those that are no sound. */
  addRecordings(word: string, said: string, files: readonly { name: string; bytes: ArrayBuffer }[]): Promise<readonly string[]>;
  forget(eventId: string): Promise<void>;
  /** From a tap: listens and shows what it hears, without a session. */
  tryOut(): Promise<void>;
  closeEar(): void;
  /** From a tap. */
  hearSound(name: SoundName): Promise<void>;
  saveSettings(settings: Partial<Settings>): Promise<void>;
  /** Waits for a key and binds the word to it; returns the way to stop waiting. */
  bindNextKey(word: Word, done: () => void): () => void;
  saveDog(dog: Dog): Promise<void>;
  savePlan(plan: Plan): Promise<void>;
  tryWritingAgain(): Promise<void>;
  /** Seconds on the clock of the live session. */
  sessionS(): Seconds;
  newId(): string;
  /** Calls once, later; returns the way to call it off. */
  after(ms: number, work: () => void): () => void;
  /** Where a session on this plan would start now. */
  startOf(planId: string): Promise<NextStart | null>;
}

export type App = UseBoundStore<StoreApi<AppState>> & { readonly intents: Intents };

const NOTHING: AppState = {
  opening: { kind: 'opening' },
  library: foldLibrary([]),
  heads: [],
  live: null,
  unfinished: null,
  reviewed: null,
  ear: EAR_OFF,
  level: null,
  room: 'suspended',
  flash: null,
  teaching: { kind: 'idle' },
  taught: null,
  tried: [],
  writeProblem: null,
  screenStaysOn: false,
};

/** How often it is looked whether the ear still gets sound, ms. */
const LOOK_MS = 500;
/** A session left open longer ago than this is over, days. */
const GO_ON_DAYS = 0.5;

/** The rooms, once they are open. */
interface Rooms {
  readonly parts: AppParts;
  readonly use: UseBoundStore<StoreApi<AppState>>;
  readonly store: EventStore;
  readonly writer: Writer;
  readonly keeper: LibraryKeeper;
  readonly room: SoundRoom;
  readonly ear: OwnWords;
  readonly practice: Practice;
  readonly teaching: Teaching;
}

export function createApp(parts: AppParts): App {
  const use = create<AppState>()(() => NOTHING);
  const opened = openRooms(parts, use);
  const withRooms = <T>(work: (rooms: Rooms) => Promise<T>, otherwise: T): Promise<T> =>
    opened.then((rooms) => (rooms ? work(rooms) : otherwise));
  let rooms: Rooms | null = null;
  void opened.then((ready) => {
    rooms = ready;
  });
  const intents: Intents = {
    practise: (planId, sessionId) => withRooms((all) => practise(all, planId, sessionId), undefined),
    say: (word) => rooms && sayByHand(rooms, word),
    finish: () => withRooms(finish, undefined),
    openReview: (sessionId) => withRooms((all) => openReview(all, sessionId), false),
    teach: (word, said) => withRooms((all) => teach(all, word, said), undefined),
    stopTeaching: () => withRooms(({ teaching }) => teaching.stop(), undefined),
    addRecordings: (word, said, files) => withRooms((all) => addRecordings(all, word, said, files), []),
    forget: (eventId) => withRooms((all) => forget(all, eventId), undefined),
    tryOut: () => withRooms(tryOut, undefined),
    closeEar: () => rooms?.ear.close(),
    hearSound: (name) => withRooms((all) => hearSound(all, name), undefined),
    saveSettings: (settings) => withRooms((all) => saveSettings(all, settings), undefined),
    bindNextKey: (word, done) =>
      parts.nextKey((key) => {
        done();
        if (key !== null) void withRooms((all) => bind(all, key, word), undefined);
      }),
    saveDog: (dog) => withRooms(({ keeper }) => keeper.keep({ type: 'dog-saved', body: dog }), undefined),
    savePlan: (plan) => withRooms(({ keeper }) => keeper.keep({ type: 'plan-saved', body: plan }), undefined),
    tryWritingAgain: () => withRooms(({ writer }) => writer.tryAgain().then(() => undefined), undefined),
    sessionS: () => rooms?.practice.sessionS() ?? 0,
    newId: parts.wall.newId,
    after: parts.timers.after,
    startOf: (planId) => withRooms((all) => startOf(all, planId), null),
  };
  return Object.assign(use, { intents });
}

async function openRooms(parts: AppParts, use: Rooms['use']): Promise<Rooms | null> {
  if (!(await parts.claim())) {
    use.setState({ opening: { kind: 'another-tab' } });
    return null;
  }
  const { store, kept } = await parts.openStore();
  const rooms = await furnish(parts, use, store);
  if (!rooms) {
    use.setState({ opening: { kind: 'no-web-audio' } });
    return null;
  }
  await rooms.teaching.refresh();
  await showHeads(rooms);
  use.setState({ opening: { kind: 'ready', kept } });
  return rooms;
}

async function furnish(parts: AppParts, use: Rooms['use'], store: EventStore): Promise<Rooms | null> {
  const { wall, timers } = parts;
  const writer = await createWriter(store, wall.newId, (writeProblem) => use.setState({ writeProblem }));
  const kept = await store.library();
  const damaged = kept.ok ? kept.value.damaged : [];
  if (!kept.ok) use.setState({ writeProblem: kept.problem });
  else if (damaged.length > 0) use.setState({ writeProblem: { kind: 'damaged', damaged } });
  const keeper = createLibraryKeeper(kept.ok ? kept.value.events : [], {
    wall,
    writer,
    show: (library) => use.setState({ library }),
  });
  if (keeper.library().dogs.length === 0) await seed(keeper, parts.invented);
  use.setState({ library: keeper.library() });

  const late: { rooms: Rooms | null } = { rooms: null };
  const opened = parts.openRoom({
    onOwnSound: (fromS, toS) => late.rooms?.ear.expectOwnSound(fromS, toS),
    onFlash: (name) => use.setState(({ flash }) => ({ flash: { name, n: (flash?.n ?? 0) + 1 } })),
    onState: (state) => late.rooms && roomChanged(late.rooms, state),
    onContext: () => void late.rooms?.ear.open(),
  });
  if (opened.kind === 'no-web-audio') return null;
  const { room } = opened;
  const ear = parts.createEar({
    context: room.context,
    clock: room.clock,
    onHearing: (hearing) => late.rooms && heard(late.rooms, hearing),
    onCaught: (take) => void late.rooms?.teaching.caught(take),
    onLevel: (level) => use.setState({ level }),
    onState: (state) => late.rooms && earChanged(late.rooms, state),
  });
  const practice = createPractice({
    ...{ nowS: room.clock.now, wall, writer, beats: room.beats, calls: room.calls },
    show: (live) => use.setState({ live }),
  });
  const teaching = createTeaching({
    ...{ ear, keeper, handler: () => settingsOf(keeper.library()).handler },
    show: (state, taught) => use.setState({ teaching: state, taught }),
  });
  const rooms: Rooms = { parts, use, store, writer, keeper, room, ear, practice, teaching };
  late.rooms = rooms;
  applySettings(rooms);
  timers.every(LOOK_MS, () => ear.look());
  parts.listenToKeys({
    bindings: () => (isLive(use.getState().live) ? settingsOf(keeper.library()).keys : {}),
    atS: (timeStampMs) => room.clock.now() - (wall.monoMs() - timeStampMs) / 1000,
    onHeard: (word) => void take(rooms, word),
  });
  parts.watchPage({ onHidden: () => hidden(rooms), onShown: () => shown(rooms) });
  return rooms;
}

function seed(keeper: LibraryKeeper, { dog, plan }: AppParts['invented']): Promise<void> {
  return keeper.keep({ type: 'dog-saved', body: dog }, { type: 'plan-saved', body: plan });
}

function applySettings({ room, keeper }: Rooms): void {
  const { volume, mode, speakCalls } = settingsOf(keeper.library());
  room.setVolume(volume);
  room.setMode(mode);
  room.calls.setSpoken(speakCalls);
}

function isLive(live: SessionState | null): live is SessionState {
  return live !== null && live.phase.phase !== 'ended';
}

// What was heard

type Hearing = Parameters<OwnWordsParts['onHearing']>[0];

function heard(rooms: Rooms, hearing: Hearing): void {
  const { startedAtS, endedAtS, decidedAtS } = hearing;
  const when = { startedAtS, endedAtS, decidedAtS, by: 'own-words' as const };
  if (!isLive(rooms.use.getState().live)) return showTried(rooms, hearing);
  if (hearing.kind === 'unsure') {
    const unsure: Unsure = { ...when, nearest: hearing.nearest };
    void rooms.practice.unsure(unsure);
  } else if (isWord(hearing.word)) void take(rooms, { ...when, word: hearing.word, confidence: hearing.confidence });
}

async function take(rooms: Rooms, word: Heard): Promise<void> {
  await rooms.practice.hear(word);
  if (rooms.practice.state()?.phase.phase === 'ended') await closePractice(rooms);
}

function sayByHand(rooms: Rooms, word: Word): void {
  void take(rooms, pressed(word, rooms.room.clock.now(), 'button'));
}

function showTried({ use }: Rooms, hearing: Hearing): void {
  const word = hearing.kind === 'word' ? hearing.word : (hearing.nearest[0]?.word ?? '');
  use.setState(({ tried }) => ({
    tried: [{ word, sure: hearing.kind === 'word', n: (tried[0]?.n ?? 0) + 1 }, ...tried].slice(0, 6),
  }));
}

// What the ear and the page say of themselves

function earChanged(rooms: Rooms, ear: Ear): void {
  const { use, practice, room } = rooms;
  const before = use.getState().ear;
  use.setState({ ear });
  if (!isLive(use.getState().live)) return;
  if (hears(before) && !hears(ear)) room.calls.call('lost', 'I cannot hear');
  void practice.ear('own-words', ear.state);
}

function roomChanged({ use, ear }: Rooms, room: RoomState): void {
  use.setState({ room });
  if (room === 'interrupted' || room === 'frozen') ear.away('interrupted');
  else if (room === 'running') ear.back();
}

/** Some systems take the microphone from a hidden page and say nothing: what could not be heard is a pause, not silence. */
function hidden(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.away('hidden');
  void rooms.practice.pause('hidden');
}

function shown(rooms: Rooms): void {
  if (!isLive(rooms.use.getState().live)) return;
  rooms.ear.back();
  void rooms.parts.wakeLock.hold().then((screenStaysOn) => rooms.use.setState({ screenStaysOn }));
}

// Practice

async function practise(rooms: Rooms, planId: string, sessionId?: string): Promise<void> {
  const { use, room, ear, teaching, practice, parts } = rooms;
  await room.unlock();
  const enrolled = (teaching.taught() ?? (await teaching.refresh()))?.enrolled;
  if (enrolled?.ok) {
    ear.listen(enrolled.model);
    void ear.open();
  }
  if (sessionId) await goOn(rooms, sessionId);
  else await beginSession(rooms, planId);
  use.setState({ unfinished: null, screenStaysOn: await parts.wakeLock.hold() });
  if (practice.state()) void practice.ear('own-words', ear.ear().state);
}

async function beginSession(rooms: Rooms, planId: string): Promise<void> {
  const library = rooms.keeper.library();
  const { dogs, plans } = library;
  const plan = plans.find(({ id }) => id === planId);
  const start = await startOf(rooms, planId);
  if (!plan || !start) return;
  const dogName = dogs.find(({ id }) => id === plan.dogId)?.name ?? '';
  const { steps, startStepId, carried } = start;
  const { limits, handler, place } = settingsOf(library);
  await rooms.practice.begin({
    ...{ dogId: plan.dogId, dogName, planId, planTitle: plan.title, position: plan.position },
    ...{ steps, startStepId, carried, limits, handler, place, rule: 'steady' },
  });
}

async function goOn(rooms: Rooms, sessionId: string): Promise<void> {
  const events = await rooms.store.session(sessionId);
  if (events.ok) await rooms.practice.goOn(events.value.events);
  else rooms.use.setState({ writeProblem: events.problem });
}

async function finish(rooms: Rooms): Promise<void> {
  await rooms.practice.end('handler');
  await closePractice(rooms);
}

async function closePractice(rooms: Rooms): Promise<void> {
  const { practice, room, ear, parts } = rooms;
  room.beats.stop();
  room.calls.silence();
  ear.close();
  parts.wakeLock.release();
  await showHeads(rooms);
  const id = practice.state()?.log[0]?.session;
  if (id) await openReview(rooms, id);
}

// Reading back

async function showHeads({ store, use, parts }: Rooms): Promise<void> {
  const heads = await store.sessionHeads();
  if (!heads.ok) return use.setState({ writeProblem: heads.problem });
  const latest = heads.value.heads[0];
  const open = latest && !latest.ended && daysBetween(latest.lastAt, parts.wall.now()) < GO_ON_DAYS;
  use.setState({ heads: heads.value.heads, unfinished: open ? latest : null });
}

async function openReview(rooms: Rooms, sessionId: string): Promise<boolean> {
  const read = await readSession(rooms, sessionId);
  if (!read) return false;
  rooms.use.setState({ reviewed: { sessionId, state: read, next: nextAfter(rooms, read) } satisfies Reviewed });
  return true;
}

/** What waits to be written is part of the session too. */
async function readSession({ store, use, writer }: Rooms, sessionId: string): Promise<SessionState | null> {
  const events = await store.session(sessionId);
  if (!events.ok) {
    use.setState({ writeProblem: events.problem });
    return null;
  }
  const waiting = writer.waiting().filter(isSessionEvent);
  const folded = fold([...events.value.events, ...waiting.filter(({ session }) => session === sessionId)]);
  return folded.ok ? folded.state : null;
}

function nextAfter({ parts }: Rooms, state: SessionState): NextStart {
  return nextStart(state.standing, endedOnLift(state), daysBetween(state.log.at(-1)?.at ?? state.startedAt, parts.wall.now()));
}

async function startOf(rooms: Rooms, planId: string): Promise<NextStart | null> {
  const plan = rooms.keeper.library().plans.find(({ id }) => id === planId);
  if (!plan) return null;
  const latest = rooms.use.getState().heads.find(({ started }) => started.body.planId === planId);
  const state = latest && (await readSession(rooms, latest.id));
  return state ? nextAfter(rooms, state) : firstStart(plan.steps);
}

// Teaching

async function teach(rooms: Rooms, word: string, said: string): Promise<void> {
  await rooms.room.unlock();
  if (!hears(rooms.ear.ear())) await rooms.ear.open();
  rooms.teaching.catchTakes(word, said);
}

async function tryOut(rooms: Rooms): Promise<void> {
  await rooms.room.unlock();
  const enrolled = (await rooms.teaching.refresh())?.enrolled;
  if (!enrolled?.ok) return;
  rooms.use.setState({ tried: [] });
  rooms.ear.listen(enrolled.model);
  if (!hears(rooms.ear.ear())) await rooms.ear.open();
}

async function addRecordings(
  { room, teaching, parts }: Rooms,
  word: string,
  said: string,
  files: readonly { name: string; bytes: ArrayBuffer }[],
): Promise<readonly string[]> {
  const refused: string[] = [];
  for (const { name, bytes } of files) {
    const recording = await parts.decode(room.context(), bytes);
    if (recording) await teaching.addRecording(word, said, recording);
    else refused.push(name);
  }
  await teaching.refresh();
  return refused;
}

async function forget({ teaching }: Rooms, eventId: string): Promise<void> {
  await teaching.remove(eventId);
  await teaching.refresh();
}

async function hearSound({ room }: Rooms, name: SoundName): Promise<void> {
  await room.unlock();
  room.preview(name);
}

function bind(rooms: Rooms, key: string, word: Word): Promise<void> {
  return saveSettings(rooms, { keys: bindKey(settingsOf(rooms.keeper.library()).keys, key, word) });
}

async function saveSettings(rooms: Rooms, settings: Partial<Settings>): Promise<void> {
  await rooms.keeper.keep({ type: 'settings-saved', body: { ...settingsOf(rooms.keeper.library()), ...settings } });
  applySettings(rooms);
}
