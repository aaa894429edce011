/** Opens, goes on with and closes a session, and routes to it what was heard by ear, key or button. */

import type { SessionState } from '../core/fold.ts';
import { planAfter } from '../core/next-start.ts';
import { ruleOf } from '../core/rule.ts';
import { settingsOf } from '../core/settings.ts';
import { type Heard, isWord, type Unsure, type Word } from '../core/word.ts';
import { pressed } from '../ears/keys.ts';
import type { OwnWordsParts } from '../ears/own-words.ts';
import { openReview, showHeads, startOf } from './read-back.ts';
import type { Rooms } from './rooms.ts';

export function isLive(live: SessionState | null): live is SessionState {
  return live !== null && live.phase.phase !== 'ended';
}

type Hearing = Parameters<OwnWordsParts['onHearing']>[0];

export function heard(rooms: Rooms, hearing: Hearing): void {
  const { startedAtS, endedAtS, decidedAtS } = hearing;
  const when = { startedAtS, endedAtS, decidedAtS, by: 'own-words' as const };
  if (!isLive(rooms.use.getState().live)) return showTried(rooms, hearing);
  if (hearing.kind === 'unsure') {
    const unsure: Unsure = { ...when, nearest: hearing.nearest };
    void rooms.practice.unsure(unsure);
  } else if (isWord(hearing.word)) void take(rooms, { ...when, word: hearing.word, confidence: hearing.confidence });
}

export async function take(rooms: Rooms, word: Heard): Promise<void> {
  const was = isLive(rooms.practice.state());
  await rooms.practice.hear(word);
  if (was && !isLive(rooms.practice.state())) await closePractice(rooms);
}

export function sayByHand(rooms: Rooms, word: Word): void {
  void take(rooms, pressed(word, rooms.room.clock.now(), 'button'));
}

function showTried({ use }: Rooms, hearing: Hearing): void {
  const word = hearing.kind === 'word' ? hearing.word : (hearing.nearest[0]?.word ?? '');
  use.setState(({ tried }) => ({
    tried: [{ word, sure: hearing.kind === 'word', n: (tried[0]?.n ?? 0) + 1 }, ...tried].slice(0, 6),
  }));
}

/** A second tap, or a tap while a session runs, leads back to the one that runs: never two at once. */
export async function practise(rooms: Rooms, planId: string, sessionId?: string): Promise<void> {
  const { use, room, ear, platformEar, teaching, practice, parts } = rooms;
  if (isLive(practice.state())) return;
  // Before anything is waited for: some phones give the recogniser to a tap alone.
  const byPlatform = openPlatformEar(rooms);
  await room.unlock();
  const enrolled = byPlatform ? null : (teaching.taught() ?? (await teaching.refresh()))?.enrolled;
  if (enrolled?.ok) {
    ear.listen(enrolled.model);
    void ear.open();
  }
  if (sessionId) await goOn(rooms, sessionId);
  else await beginSession(rooms, planId);
  use.setState({ unfinished: null, screenStaysOn: await parts.wakeLock.hold() });
  if (byPlatform) void practice.ear('platform', platformEar.ear().state);
  else void practice.ear('own-words', ear.ear().state);
}

/** One ear owns the microphone: the other is closed first. */
function openPlatformEar({ ear, platformEar, keeper }: Rooms): boolean {
  const on = settingsOf(keeper.library()).platformEar?.on ?? false;
  if (on) ear.close();
  else platformEar.close();
  if (on) platformEar.open();
  return on;
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
    ...{ steps, startStepId, carried, limits, handler, place, rule: ruleOf(plan.rule) },
  });
}

async function goOn(rooms: Rooms, sessionId: string): Promise<void> {
  const events = await rooms.store.session(sessionId);
  if (events.ok) await rooms.practice.goOn(events.value.events);
  else rooms.use.setState({ writeProblem: events.problem });
}

export async function finish(rooms: Rooms): Promise<void> {
  await rooms.practice.end('handler');
  await closePractice(rooms);
}

async function closePractice(rooms: Rooms): Promise<void> {
  const { practice, room, ear, platformEar, parts } = rooms;
  room.beats.stop();
  room.calls.silence();
  ear.close();
  platformEar.close();
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
