/** Reads sessions back from the store: one for review, and where the next one starts. Fetched after the first screen is drawn. */
import { foldCorrected } from '../core/correct.ts';
import { isSessionEvent, type SessionEvent } from '../core/event.ts';
import { endedOnLift, fold, type SessionState } from '../core/fold.ts';
import { practisedAs } from '../core/handover/homework.ts';
import { firstStart, type NextStart, nextStart } from '../core/next-start.ts';
import type { Plan } from '../core/plan.ts';
import { sessionOrder } from '../core/standing.ts';
import type { HomeRooms } from './rooms.ts';
import { daysBetween } from './wall-clock.ts';

export async function openReview(rooms: HomeRooms, sessionId: string): Promise<boolean> {
  const log = await readLog(rooms, sessionId);
  const original = log && fold(log);
  const corrected = log && foldCorrected(log);
  if (!original?.ok || !corrected?.ok) return false;
  const { session } = corrected;
  const plan = rooms.keeper.library().plans.find(({ id }) => id === session.state.start.planId);
  const next = nextAfter(rooms, session.state, plan);
  rooms.use.setState({ reviewed: { sessionId, state: session.state, original: original.state, session, next } });
  return true;
}

/** What waits to be written is part of the session too. */
export async function readLog({ store, use, writer }: HomeRooms, sessionId: string): Promise<readonly SessionEvent[] | null> {
  const events = await store.session(sessionId);
  if (!events.ok) {
    use.setState({ writeProblem: events.problem });
    return null;
  }
  const waiting = writer.waiting().filter(isSessionEvent);
  return sessionOrder([...events.value.events, ...waiting.filter(({ session }) => session === sessionId)]);
}

/** As it was put right: where to start next time hangs on what happened, not on what was misheard. */
export async function readSession(rooms: HomeRooms, sessionId: string): Promise<SessionState | null> {
  const log = await readLog(rooms, sessionId);
  const corrected = log && foldCorrected(log);
  return corrected?.ok ? corrected.session.state : null;
}

/** On the plan as it stands now: it may have been edited since. */
function nextAfter({ parts }: HomeRooms, state: SessionState, plan: Plan | undefined): NextStart {
  const days = daysBetween(state.log.at(-1)?.at ?? state.startedAt, parts.wall.now());
  return nextStart(state.standing, endedOnLift(state), days, plan);
}

/** Null when there is no such plan, or its last session cannot be read: a dog is never put back to the first step by that. */
export async function startOf(rooms: HomeRooms, planId: string): Promise<NextStart | null> {
  const { plans, homework } = rooms.keeper.library();
  const plan = plans.find(({ id }) => id === planId);
  if (!plan) return null;
  // What an owner practised on a plan that was given is where their dog stands on it.
  const planIds = practisedAs(planId, homework);
  const latest = rooms.use.getState().heads.find(({ started }) => planIds.has(started.body.planId));
  if (!latest) return firstStart(plan.steps);
  const state = await readSession(rooms, latest.id);
  return state && nextAfter(rooms, state, plan);
}
