/** Opens, goes on with and closes a session, and routes to it what was heard by ear, key or button. */

import { stepsOf } from '../core/exam/exam-steps.ts';
import { t } from '../core/language.ts';
import { NOTHING_CARRIED, planAfter } from '../core/next-start.ts';
import { ruleOf, STEADY } from '../core/rule.ts';
import { settingsOf } from '../core/settings.ts';
import { treatsForSession } from '../core/treats.ts';
import { type Heard, isWord, type Unsure, type Word } from '../core/word.ts';
import { hears } from '../ears/ear-state.ts';
import { pressed } from '../ears/keys.ts';
import type { OwnWordsParts } from '../ears/own-words.ts';
import { showHeads } from './heads.ts';
import { isLive } from './live.ts';
import { treatsGivenToday } from './people.ts';
import { openReview, readLog, startOf } from './read-back.ts';
import type { Rooms } from './rooms.ts';

type Hearing = Parameters<OwnWordsParts['onHearing']>[0];

export function heard(rooms: Rooms, hearing: Hearing): void {
  const { startedAtS, endedAtS, decidedAtS } = hearing;
  const when = { startedAtS, endedAtS, decidedAtS, by: 'own-words' as const };
  if (!isLive(rooms.use.getState().live)) return showTried(rooms, hearing);
  if (hearing.kind === 'unsure') {
    const unsure: Unsure = { ...when, nearest: hearing.nearest };
    void rooms.practice.unsure(unsure).then((id) => keepHeard(rooms, id, hearing));
  } else if (isWord(hearing.word))
    void take(rooms, { ...when, word: hearing.word, confidence: hearing.confidence }, (id) => keepHeard(rooms, id, hearing));
}

export async function take(rooms: Rooms, word: Heard, onKept?: (eventId: string | null) => void): Promise<void> {
  const was = isLive(rooms.practice.state());
  const eventId = await rooms.practice.hear(word);
  onKept?.(eventId);
  if (was && !isLive(rooms.practice.state())) await closePractice(rooms);
}

/** After the event itself, and apart from it: a full device costs what could have been learnt, never a rep. */
function keepHeard({ store, parts }: Rooms, id: string | null, { kept }: Hearing): void {
  if (id === null || !kept) return;
  void store.keepHeard({ id, atMs: parts.wall.now().getTime(), stretch: kept.stretch, sound: kept.sound ?? null });
}

/** Every tap in a session wakes the sound too: a clock that stands still would make holds of no length. */
export function sayByHand(rooms: Rooms, word: Word): void {
  if (word === 'resume') void listenAgain(rooms);
  else void rooms.room.unlock();
  void take(rooms, pressed(word, rooms.room.clock.now(), 'button'));
}

function showTried({ use }: Rooms, hearing: Hearing): void {
  const word = hearing.kind === 'word' ? hearing.word : (hearing.nearest[0]?.word ?? '');
  use.setState(({ tried }) => ({
    tried: [{ word, sure: hearing.kind === 'word', n: (tried[0]?.n ?? 0) + 1 }, ...tried].slice(0, 6),
  }));
}

/**
 * From a tap. False when no session could begin; why is shown.
 * A second tap, or a tap while a session runs, leads back to the one that runs: never two at once.
 */
export function practise(rooms: Rooms, planId: string, sessionId?: string): Promise<boolean> {
  return openSession(rooms, () => (sessionId ? goOn(rooms, sessionId) : beginSession(rooms, planId)));
}

/** From a tap: the same ears, beats and log for an examination. */
export function examine(rooms: Rooms, examId: string): Promise<boolean> {
  return openSession(rooms, () => beginExam(rooms, examId));
}

/** @param begin null, or why it could not. */
async function openSession(rooms: Rooms, begin: () => Promise<string | null>): Promise<boolean> {
  const { use, room, practice, parts, teaching } = rooms;
  if (isLive(practice.state())) return true;
  // Before anything is waited for: some phones give the recogniser to a tap alone.
  const byPlatform = openPlatformEar(rooms);
  await room.unlock();
  await teaching.stop();
  if (!byPlatform) await openOwnWords(rooms);
  const refusal = await begin();
  use.setState({ refusal });
  if (refusal !== null) {
    closeEars(rooms);
    return false;
  }
  use.setState({ unfinished: null, screenStaysOn: await parts.wakeLock.hold() });
  tellEar(rooms, byPlatform);
  return true;
}

/** The ear in use says how it is, for the log. */
function tellEar({ practice, platformEar, ear }: Rooms, byPlatform: boolean): void {
  if (byPlatform) void practice.ear('platform', platformEar.ear().state);
  else void practice.ear('own-words', ear.ear().state);
}

async function openOwnWords({ ear, teaching, keeper }: Rooms): Promise<void> {
  const enrolled = (await teaching.current())?.enrolled;
  if (!enrolled?.ok) return ear.close();
  ear.listen(enrolled.model, settingsOf(keeper.library()).keepSounds ?? false);
  void ear.open();
}

function closeEars({ ear, platformEar }: Rooms): void {
  ear.close();
  platformEar.close();
}

/** From a tap, in a session: wakes the sound, and opens the ear again if it does not hear. */
export async function listenAgain(rooms: Rooms): Promise<void> {
  const byPlatform = settingsOf(rooms.keeper.library()).platformEar?.on ?? false;
  if (byPlatform) rooms.platformEar.open();
  await rooms.room.unlock();
  if (!byPlatform && !hears(rooms.ear.ear())) await openOwnWords(rooms);
}

/** One ear owns the microphone: the other is closed first. */
function openPlatformEar({ ear, platformEar, keeper }: Rooms): boolean {
  const on = settingsOf(keeper.library()).platformEar?.on ?? false;
  if (!on) {
    platformEar.close();
    return false;
  }
  ear.close();
  platformEar.open();
  return true;
}

/** Null, or why it could not begin. */
async function beginSession(rooms: Rooms, planId: string): Promise<string | null> {
  const library = rooms.keeper.library();
  const { dogs, plans } = library;
  const plan = plans.find(({ id }) => id === planId);
  const start = await startOf(rooms, planId);
  if (!plan) return t('This plan is not on this device.');
  if (!start)
    return t(
      'The last session on this plan cannot be read, so where to start is not known. Nothing was deleted: save a copy in the settings, then load the page again.',
    );
  const dog = dogs.find(({ id }) => id === plan.dogId);
  const dogName = dog?.name ?? '';
  const { steps, startStepId, carried } = start;
  const { handler, place, ...settings } = settingsOf(library);
  const treats = dog
    ? treatsForSession(dog, settings.limits.treats, await treatsGivenToday(rooms, dog.id))
    : settings.limits.treats;
  const limits = { ...settings.limits, treats };
  await rooms.practice.begin({
    ...{ dogId: plan.dogId, dogName, planId, planTitle: plan.title, position: plan.position },
    ...{ steps, startStepId, carried, limits, handler, place, rule: ruleOf(plan.rule) },
  });
  return null;
}

/** Null, or why it could not begin. */
async function beginExam({ keeper, practice }: Rooms, examId: string): Promise<string | null> {
  const library = keeper.library();
  const exam = library.exams.find(({ id }) => id === examId);
  if (!exam) return t('This examination is not on this device.');
  const dogName = library.dogs.find(({ id }) => id === exam.dogId)?.name ?? '';
  const steps = stepsOf(exam);
  const [first] = steps;
  if (!first) return t('Nothing is on its list yet.');
  const { handler, place, limits } = settingsOf(library);
  await practice.begin({
    ...{ kind: 'exam', dogId: exam.dogId, dogName, planId: examId, planTitle: t('Examination'), position: '' },
    ...{ steps, startStepId: first.id, carried: NOTHING_CARRIED, rule: STEADY },
    ...{ limits, handler, place: exam.place || place },
  });
  return null;
}

/** Null, or why it cannot go on. */
async function goOn(rooms: Rooms, sessionId: string): Promise<string | null> {
  const log = await readLog(rooms, sessionId);
  if (!log) return t('This session cannot be read right now. Nothing was deleted: load the page again.');
  const goesOn = await rooms.practice.goOn(log);
  return goesOn ? null : t('This session cannot go on: its records do not fit together. They are kept; begin a new session.');
}

export async function finish(rooms: Rooms): Promise<void> {
  await rooms.practice.end('handler');
  await closePractice(rooms);
}

async function closePractice(rooms: Rooms): Promise<void> {
  const { practice, room, parts } = rooms;
  room.beats.stop();
  room.calls.silence();
  closeEars(rooms);
  parts.wakeLock.release();
  await keepSplits(rooms);
  await showHeads(rooms);
  // The first saved session is when it becomes worth keeping; the browser may ask the handler.
  void parts.askToPersist().then((persistence) => rooms.use.setState({ persistence }));
  const id = practice.state()?.log[0]?.session;
  if (id) await openReview(rooms, id);
}

/** The half steps that a session put in belong to the plan from now on; they can be taken out there. */
async function keepSplits({ practice, keeper }: Rooms): Promise<void> {
  const state = practice.state();
  const plan = keeper.library().plans.find(({ id }) => id === state?.start.planId);
  if (!state || !plan) return;
  const after = planAfter(plan, state.standing);
  if (after.steps.length > plan.steps.length) await keeper.keep({ type: 'plan-saved', body: after });
}
