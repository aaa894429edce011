/** The app as the screens know it: one state to read, and the intents that they forward. */
import { create, type StoreApi, type UseBoundStore } from 'zustand';
import type { SoundName } from '../audio/names.ts';
import type { Correction } from '../core/correction.ts';
import type { Dog, Named, Settings, TaughtSound } from '../core/event.ts';
import type { ExamPlan } from '../core/exam/exam.ts';
import type { SessionState } from '../core/fold.ts';
import type { Homework } from '../core/handover/homework.ts';
import { type LanguageTag, t } from '../core/language.ts';
import { foldLibrary } from '../core/library.ts';
import type { NextStart } from '../core/next-start.ts';
import type { Observation } from '../core/observe/observation.ts';
import type { Plan } from '../core/plan.ts';
import type { Seconds } from '../core/units.ts';
import type { Word } from '../core/word.ts';
import { EAR_OFF } from '../ears/ear-state.ts';
import type { Change } from '../ears/enrolled.ts';
import type { SayingProblem } from '../ears/platform-words.ts';
import type { AppState, HomeworkDraft } from './app-state.ts';
import type { Looked, SavedFile } from './backup.ts';
import type { Desk, LookedAtReturn } from './desk.ts';
import type { ForDog, HomeworkWish, Opened, Return } from './handover.ts';
import type { Lesson } from './learning.ts';
import type { RecordingHeard, RecordingToHear } from './observing.ts';
import { openHome } from './open-home.ts';
import type { Progress } from './progress.ts';
import { changesBetween, createReport, sayError } from './report.ts';
import type { AppParts, HomeRooms, Rooms } from './rooms.ts';
import type { StorageStatus } from './storage.ts';
import type { Syncing } from './syncing.ts';
import { watchKeys } from './watch-keys.ts';
import type { LookedAtWords } from './words-file.ts';

/** What a screen may ask for. Those that need a tap say so: browsers give sound and microphone only to a tap. */
export interface Intents {
  /** From a tap. `sessionId`: go on with one that was closed. */
  practise(planId: string, sessionId?: string): Promise<boolean>;
  /** From a tap: an examination begins. */
  examine(examId: string): Promise<boolean>;
  saveExam(exam: ExamPlan): Promise<void>;
  /** From a tap, in a session: the sound is woken and the ear opened again. */
  listenAgain(): Promise<void>;
  say(word: Word): void;
  finish(): Promise<void>;
  openReview(sessionId: string): Promise<boolean>;
  /** Puts something right in the reviewed session. Null, or why it cannot be. */
  correct(correction: Correction): Promise<string | null>;
  /** Takes back the latest correction, or brings it back. */
  undoCorrection(): Promise<void>;
  redoCorrection(): Promise<void>;
  /** What the corrections of the reviewed session can teach the ear; null: no session is reviewed. */
  lookAtLesson(): Promise<Lesson | null>;
  /** Teaches the ear by them; what that changes on this session, or null where it cannot be told. */
  learn(): Promise<Change | null>;
  /** The ear forgets what this session taught it. */
  unlearn(): Promise<void>;
  /** The words of the handler whose turn it is, as a file; null: they cannot be read right now. */
  exportWords(): Promise<SavedFile | null>;
  /** Tells what a file of words holds that this device does not, and offers to add it. */
  lookAtWords(text: string): Promise<LookedAtWords>;
  hasHeardSound(eventId: string): Promise<boolean>;
  /** From a tap. */
  playHeardSound(eventId: string): Promise<void>;
  countSounds(): Promise<number>;
  /** False: they could not be deleted. */
  forgetSounds(): Promise<boolean>;
  /** From a tap: microphone on, and takes of this word are caught until told otherwise. */
  teach(word: string, said: string): Promise<void>;
  stopTeaching(): Promise<void>;
  /** Adds recordings from files; returns the names of those that are no sound. */
  addRecordings(word: string, said: string, files: readonly { name: string; bytes: ArrayBuffer }[]): Promise<readonly string[]>;
  forget(eventId: string): Promise<void>;
  /** A forgotten take comes back, as the newest of its word. */
  teachAgain(take: TaughtSound): Promise<void>;
  /** From a tap: listens and shows what it hears, without a session. */
  tryOut(): Promise<void>;
  closeEar(): void;
  /** The sound check is left: the microphone closes, and nothing said from now on is kept. */
  leaveSoundCheck(): Promise<void>;
  /** From a tap. */
  hearSound(name: SoundName): Promise<void>;
  saveSettings(settings: Partial<Settings>): Promise<void>;
  /** Everything is said in this language from now on; null: as the browser wishes. */
  chooseLanguage(chosen: LanguageTag | null): Promise<void>;
  /** Waits for a key and binds the word to it; returns the way to stop waiting. */
  bindNextKey(word: Word, done: () => void): () => void;
  saveDog(dog: Dog): Promise<void>;
  savePlan(plan: Plan): Promise<void>;
  /** A handler or a place: named, renamed, put away or brought back. */
  saveNamed(what: 'handler' | 'place', named: Named): Promise<void>;
  /** In all sessions of today with this dog. */
  treatsGivenToday(dogId: string): Promise<number>;
  /** A session as it was put right; null when it cannot be read. */
  readSession(sessionId: string): Promise<SessionState | null>;
  /** A second observer's scoring, kept beside the session. */
  saveObservation(observation: Observation): Promise<void>;
  /** The app's own ear over the sound of a recording; nothing leaves the device. */
  hearFile(file: RecordingToHear): Promise<RecordingHeard>;
  /** Tells each word that is pressed, and how long ago, s; returns the way to stop. */
  watchKeys(onWord: (word: Word, agoS: Seconds) => void): () => void;
  tryWritingAgain(): Promise<void>;
  /** What happened inside lately, without names or sound; a screen that broke is noted there. */
  report(): string;
  noteBroken(error: unknown): void;
  /** Loads the newest version: a part of this one is gone. */
  reload(): Promise<void>;
  /** Everything that is kept, as one document; null when it cannot be read (the problem is shown). */
  exportAll(): Promise<SavedFile | null>;
  /** A copy was handed out: from now on its age is told. */
  noteCopy(): Promise<void>;
  /** What the browser promises, the room that is left, the age of the last copy; null: nothing is open. */
  lookAtStorage(): Promise<StorageStatus | null>;
  /** From a tap: asks the browser again to keep what is kept. */
  askToKeep(): Promise<void>;
  /** One session with its dog and its plan; null when it cannot be read. */
  exportSession(sessionId: string): Promise<SavedFile | null>;
  /** A plan with its dog, as both stand; null when it cannot be read. */
  exportPlan(planId: string): Promise<SavedFile | null>;
  /** Holds what was typed of homework on this plan while the trainer looks elsewhere; {}: nothing is left to hold. */
  draftHomework(planId: string, draft: HomeworkDraft): void;
  /** Writes down that a plan was given as homework. Null: the plan is not here. */
  giveHomework(wish: HomeworkWish): Promise<Homework | null>;
  /** The file that says it, and the code for a link; null: this browser cannot pack one. */
  handOut(homework: Homework): Promise<{ readonly file: SavedFile; readonly code: string | null }>;
  /** Tells what a file or a link says, and how it stands to what is here. Keeps nothing. */
  openHomework(from: { readonly text: string } | { readonly code: string }): Promise<Opened>;
  /** The plan that it becomes; null: the app is not open. */
  acceptHomework(homework: Homework, forDog: ForDog): Promise<string | null>;
  /** Null: there is none, or it cannot be read (the problem is shown). */
  returnHomework(homeworkId: string, again: boolean): Promise<Return | null>;
  noteReturned(homeworkId: string, sessions: Return['sessions']): Promise<void>;
  /** Null when it cannot be read (the problem is shown). */
  readDesk(): Promise<Desk | null>;
  /** Reads ahead what is kept for it. */
  readDeskAhead(): Promise<void>;
  /** Tells what an owner's file holds, and offers to add it. */
  lookAtReturn(text: string): Promise<LookedAtReturn>;
  /** Tells what a document holds that this device does not, and offers to add it. Nothing is ever replaced. */
  lookAtImport(text: string): Promise<Looked>;
  /** For good. Null, or why it could not. */
  eraseDog(dogId: string): Promise<string | null>;
  eraseEverything(): Promise<string | null>;
  /** Seconds on the clock of the live session. */
  sessionS(): Seconds;
  newId(): string;
  /** The browser's language, BCP 47. */
  readonly language: string;
  /** Sayings typed for the browser's recogniser, and which of them would be taken for one another. */
  checkSayings(typed: Readonly<Record<string, string>>): {
    sayings: Readonly<Record<string, readonly string[]>>;
    problems: readonly SayingProblem[];
  };
  /** Calls once, later; returns the way to call it off. */
  after(ms: number, work: () => void): () => void;
  /** What may be asked of sync; null: nothing is open. */
  syncing(): Promise<Syncing | null>;
  /** A digest of every session; null when they cannot be read (the problem is shown). */
  readProgress(): Promise<Progress | null>;
  /** Where a session on this plan would start now. */
  startOf(planId: string): Promise<NextStart | null>;
}

export type App = UseBoundStore<StoreApi<AppState>> & { readonly intents: Intents };

const NOTHING: AppState = {
  language: 'en',
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
  isWorkingOut: false,
  tried: [],
  writeProblem: null,
  screenStaysOn: false,
  update: null,
  sync: null,
  refusal: null,
  persistence: 'not-told',
  homeworkDrafts: {},
};

// Asked for in the review, the sound check and the settings alone: fetched then.
const backup = () => import('./backup.ts');
const handover = () => import('./handover.ts');
const desk = () => import('./desk.ts');
const correcting = () => import('./correcting.ts');
const learning = () => import('./learning.ts');
const observing = () => import('./observing.ts');
const notOpen = () => ({ kind: 'failed', what: t('the app is not open') }) as const;
const wordsFile = () => import('./words-file.ts');
const heardSounds = () => import('./heard-sounds.ts');
const storage = () => import('./storage.ts');
const people = () => import('./people.ts');
const readBack = () => import('./read-back.ts');

/** What hears and sounds, and what is done with it: none of it is needed to draw the first screen. */
async function openDoing(home: HomeRooms) {
  const { furnish } = await import('./furnish.ts');
  const { examine, finish, listenAgain, practise, sayByHand } = await import('./run.ts');
  const soundCheck = await import('./sound-check.ts');
  const { addRecordings, bind, checkSayings, forget, hearSound } = soundCheck;
  const { leaveSoundCheck, saveSettings, teach, teachAgain, tryOut } = soundCheck;
  const running = { examine, finish, listenAgain, practise, sayByHand };
  const checking = {
    addRecordings,
    bind,
    checkSayings,
    forget,
    hearSound,
    leaveSoundCheck,
    saveSettings,
    teach,
    teachAgain,
    tryOut,
  };
  const rooms = await furnish(home);
  return rooms && { rooms, does: { ...running, ...checking } };
}
type Doing = NonNullable<Awaited<ReturnType<typeof openDoing>>>['does'];

export function createApp(parts: AppParts): App {
  const use = create<AppState>()(() => NOTHING);
  const report = createReport(parts.wall, () => parts.browser);
  use.subscribe((now, before) => {
    for (const change of changesBetween(before, now)) report.note(change);
  });
  parts.watchErrors((error) => report.note(`not caught: ${sayError(error)}`));
  const failed = (error: unknown) => {
    use.setState({ opening: { kind: 'failed', what: error instanceof Error ? error.message : String(error) } });
    return null;
  };
  const home = openHome(parts, use).catch(failed);
  const opened = home
    .then(async (open) => {
      // What hears and sounds is fetched and read behind the first picture, not before it.
      await parts.painted();
      return open && openDoing(open);
    })
    .catch(failed);
  const withHome = <T>(work: (rooms: HomeRooms) => Promise<T>, otherwise: T): Promise<T> =>
    home.then((rooms) => (rooms ? work(rooms) : otherwise));
  const withRooms = <T>(work: (rooms: Rooms, does: Doing) => Promise<T>, otherwise: T): Promise<T> =>
    opened.then((open) => (open ? work(open.rooms, open.does) : otherwise));
  let now: Awaited<ReturnType<typeof openDoing>> = null;
  void opened.then((ready) => {
    now = ready;
  });
  // One correction after the other: two quick taps on Undo take back two, not the same one twice.
  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
    const done = turn.then(work);
    turn = done.catch(() => {});
    return done;
  };
  // Opened once, and without being asked only where it was switched on.
  let sync: Promise<Syncing | null> | null = null;
  const syncing = () => {
    sync ??= withRooms(async (all) => (await import('./syncing.ts')).openSyncing(all), null);
    return sync;
  };
  void withRooms(async ({ store }) => {
    const notes = await store.syncNotes();
    if (notes.ok && notes.value !== undefined) void syncing();
  }, undefined);
  const intents: Intents = {
    syncing,
    practise: (planId, sessionId) => withRooms((all, does) => does.practise(all, planId, sessionId), false),
    examine: (examId) => withRooms((all, does) => does.examine(all, examId), false),
    saveExam: (body) => withHome(({ keeper }) => keeper.keep({ type: 'exam-planned', body }), undefined),
    listenAgain: () => withRooms((all, does) => does.listenAgain(all), undefined),
    say: (word) => now?.does.sayByHand(now.rooms, word),
    finish: () => withRooms((all, does) => does.finish(all), undefined),
    openReview: (sessionId) => withHome(async (all) => (await readBack()).openReview(all, sessionId), false),
    correct: (correction) =>
      inTurn(() => withRooms(async (all) => (await correcting()).correct(all, correction), t('The app is not open.'))),
    undoCorrection: () => inTurn(() => withRooms(async (all) => (await correcting()).undoCorrection(all), undefined)),
    redoCorrection: () => inTurn(() => withRooms(async (all) => (await correcting()).redoCorrection(all), undefined)),
    lookAtLesson: () => withRooms(async (all) => (await learning()).lookAtLesson(all), null),
    learn: () => withRooms(async (all) => (await learning()).learn(all), null),
    unlearn: () => withRooms(async (all) => (await learning()).unlearn(all), undefined),
    exportWords: () => withRooms(async (all) => (await wordsFile()).exportWords(all), null),
    lookAtWords: (text) =>
      withRooms(async (all) => (await wordsFile()).lookAtWords(all, text), { ok: false, why: t('The app is not open.') }),
    hasHeardSound: (eventId) => withRooms(async (all) => (await heardSounds()).hasHeardSound(all, eventId), false),
    playHeardSound: (eventId) => withRooms(async (all) => (await heardSounds()).playHeardSound(all, eventId), undefined),
    countSounds: () => withRooms(async (all) => (await heardSounds()).countSounds(all), 0),
    forgetSounds: () => withRooms(async (all) => (await heardSounds()).forgetSounds(all), false),
    teach: (word, said) => withRooms((all, does) => does.teach(all, word, said), undefined),
    stopTeaching: () => withRooms(({ teaching }) => teaching.stop(), undefined),
    addRecordings: (word, said, files) => withRooms((all, does) => does.addRecordings(all, word, said, files), []),
    forget: (eventId) => withRooms((all, does) => does.forget(all, eventId), undefined),
    teachAgain: (take) => withRooms((all, does) => does.teachAgain(all, take), undefined),
    tryOut: () => withRooms((all, does) => does.tryOut(all), undefined),
    closeEar: () => now?.rooms.ear.close(),
    leaveSoundCheck: () => withRooms((all, does) => does.leaveSoundCheck(all), undefined),
    hearSound: (name) => withRooms((all, does) => does.hearSound(all, name), undefined),
    chooseLanguage: (chosen) =>
      withRooms(async (all, does) => {
        use.setState({ language: await parts.speak(chosen) });
        await does.saveSettings(all, { language: chosen });
      }, undefined),
    saveSettings: (settings) => withRooms((all, does) => does.saveSettings(all, settings), undefined),
    bindNextKey: (word, done) =>
      parts.nextKey((key) => {
        done();
        if (key !== null) void withRooms((all, does) => does.bind(all, key, word), undefined);
      }),
    saveDog: (dog) => withHome(({ keeper }) => keeper.keep({ type: 'dog-saved', body: dog }), undefined),
    savePlan: (plan) => withHome(({ keeper }) => keeper.keep({ type: 'plan-saved', body: plan }), undefined),
    saveNamed: (what, named) => withRooms(async (all) => (await people()).saveNamed(all, what, named), undefined),
    treatsGivenToday: (dogId) => withRooms(async (all) => (await people()).treatsGivenToday(all, dogId), 0),
    reload: parts.loadNewest,
    report: report.text,
    noteBroken: (error) => report.note(`screen broke: ${sayError(error)}`),
    readSession: (sessionId) => withHome(async (all) => (await readBack()).readSession(all, sessionId), null),
    saveObservation: (body) => withHome(({ keeper }) => keeper.keep({ type: 'observation-saved', body }), undefined),
    hearFile: (file) => withRooms(async (all) => (await observing()).hearFile(all, file), notOpen()),
    watchKeys: (onWord) => (now ? watchKeys(now.rooms, onWord) : () => {}),
    tryWritingAgain: () => withHome(({ writer }) => writer.tryAgain().then(() => undefined), undefined),
    exportAll: () => withRooms(async (all) => (await backup()).exportAll(all), null),
    noteCopy: () => withHome(async (all) => (await storage()).noteCopy(all), undefined),
    lookAtStorage: () => withHome(async (all) => (await storage()).lookAtStorage(all), null),
    askToKeep: () => withHome(async (all) => (await storage()).askToKeep(all), undefined),
    exportSession: (sessionId) => withRooms(async (all) => (await backup()).exportSession(all, sessionId), null),
    exportPlan: (planId) => withRooms(async (all) => (await backup()).exportPlan(all, planId), null),
    draftHomework: (planId, draft) =>
      use.setState(({ homeworkDrafts }) => ({ homeworkDrafts: { ...homeworkDrafts, [planId]: draft } })),
    giveHomework: (wish) => withRooms(async (all) => (await handover()).giveHomework(all, wish), null),
    handOut: async (homework) => (await handover()).handOut(homework),
    openHomework: (from) => withRooms(async (all) => (await handover()).openHomework(all, from), { kind: 'not-open' }),
    acceptHomework: (homework, forDog) =>
      withRooms(async (all) => (await handover()).acceptHomework(all, homework, forDog), null),
    returnHomework: (id, again) => withRooms(async (all) => (await handover()).returnHomework(all, id, again), null),
    noteReturned: (id, sessions) => withRooms(async (all) => (await handover()).noteReturned(all, id, sessions), undefined),
    readDesk: () => withRooms(async (all) => (await desk()).readDesk(all), null),
    readDeskAhead: () => withRooms(async (all) => (await desk()).readDeskAhead(all), undefined),
    lookAtReturn: (text) =>
      withRooms(async (all) => (await desk()).lookAtReturn(all, text), { ok: false, why: t('The app is not open.') }),
    lookAtImport: (text) =>
      withRooms(async (all) => (await backup()).lookAtImport(all, text), { ok: false, why: t('The app is not open.') }),
    eraseDog: (dogId) => withRooms(async (all) => (await backup()).eraseDog(all, dogId), t('The app is not open.')),
    eraseEverything: () => withRooms(async (all) => (await backup()).eraseEverything(all), t('The app is not open.')),
    sessionS: () => now?.rooms.practice.sessionS() ?? 0,
    newId: parts.wall.newId,
    checkSayings: (typed) => now?.does.checkSayings(typed) ?? { sayings: {}, problems: [] },
    language: parts.language,
    after: parts.timers.after,
    startOf: (planId) => withHome(async (all) => (await readBack()).startOf(all, planId), null),
    // Not needed for the first rep: fetched when asked for.
    readProgress: () => withRooms((all) => import('./progress.ts').then(({ readProgress }) => readProgress(all)), null),
  };
  return Object.assign(use, { intents });
}
