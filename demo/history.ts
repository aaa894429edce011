/** Invents a history: many sessions of one invented dog through the real engine, with days, places and people. Seeded; no clock. */
import type { SessionEvent, SessionStart } from '../src/core/event.ts';
import { endedOnLift, type SessionState } from '../src/core/fold.ts';
import { firstStart, nextStart } from '../src/core/next-start.ts';
import { criterionS, type Plan } from '../src/core/plan.ts';
import { between, type Chance, chanceOf } from './chance.ts';
import { bornBy, inventedDog } from './invented-dog.ts';
import { events, open, type Played, say, sessionStart } from './typed-session.ts';

const DAY_MS = 86_400_000;
/** Monday 5 January 2026, 18:00 in UTC. */
const FIRST_MS = Date.UTC(2026, 0, 5, 18);

export interface InventedSession {
  readonly log: readonly SessionEvent[];
  readonly state: SessionState;
}

export interface HistoryWish {
  readonly plan: Plan;
  readonly sessions: number;
  readonly seed: number;
  /** Reps of a session, at most. */
  readonly reps?: number;
  /** After which sessions (1 for the first) nobody practised for so many days. */
  readonly gaps?: Readonly<Record<number, number>>;
  readonly places?: readonly string[];
  readonly handlers?: readonly string[];
}

/** Once a plan is learned it is practised again from a step of chance, as people do. */
export function inventedHistory(wish: HistoryWish): readonly InventedSession[] {
  const { plan, seed, sessions, gaps = {}, places = ['bathroom'], handlers = ['demo handler'] } = wish;
  const chance = chanceOf(2 * seed + 1);
  const dog = inventedDog(bornBy(chanceOf(2 * seed), plan.steps.length), plan.steps);
  const made: InventedSession[] = [];
  let [start, atMs, seq] = [firstStart(plan.steps), FIRST_MS, 1];
  for (let n = 1; n <= sessions; n++) {
    const place = pick(places, n > 8 && chance() < 0.3 ? Math.floor(chance() * places.length) : 0);
    const handler = pick(handlers, n > 12 && chance() < 0.2 ? Math.floor(chance() * handlers.length) : 0);
    const body = { ...sessionStart(plan, start, { reps: wish.reps ?? 14, minutes: 1000, treats: null }), place, handler };
    const played = play(body, dog, chance, { session: `invented-${seed}-${n}`, seq, at: isoAt(atMs) });
    const log = events(played);
    made.push({ log, state: played.state });
    seq += log.length;
    const days = gaps[n] ?? 1 + Math.floor(3 * chance());
    dog.wait(days);
    atMs += days * DAY_MS;
    start = nextStart(played.state.standing, endedOnLift(played.state), days);
    if (atTop(played.state)) start = { ...start, startStepId: pick(plan.steps, Math.floor(chance() * plan.steps.length)).id };
  }
  return made;
}

const isoAt = (ms: number): string => new Date(ms).toISOString().replace('Z', '+00:00');

function pick<T>(list: readonly T[], at: number): T {
  return list[at % list.length] as T;
}

function atTop({ standing }: SessionState): boolean {
  return standing.stepId === standing.steps.at(-1)?.id;
}

function play(
  body: SessionStart,
  dog: ReturnType<typeof inventedDog>,
  chance: Chance,
  stamp: { session: string; seq: number; at: string },
): Played {
  let played = open(body, { device: 'invented', ...stamp });
  for (let n = 0; n < body.limits.reps; n++) {
    played = rep(played, dog, chance, n);
    if (played.state.reps.at(-1)?.calls.some(({ kind }) => kind === 'rest')) break;
  }
  return say(played, 'finish', played.atS + 1);
}

function rep(played: Played, dog: ReturnType<typeof inventedDog>, chance: Chance, n: number): Played {
  const { standing } = played.state;
  const step = standing.steps.find(({ id }) => id === standing.stepId);
  if (!step) throw new Error('history: the step is not on its ladder');
  const kept = chance() < dog.successNow(step, n);
  const heldS = kept ? criterionS(step) + between(chance, 0.1, 0.6) : Math.max(1, criterionS(step)) * between(chance, 0.2, 0.95);
  const holding = say({ ...played, atS: played.atS + between(chance, 4, 8) }, 'hold');
  const done = say(holding, kept ? 'mark' : 'lifted', holding.atS - 0.3 + heldS);
  dog.learn(step, kept);
  for (const { inserted } of done.state.reps.at(-1)?.calls ?? []) if (inserted) dog.meet(inserted);
  return done;
}
