/** Lays many dogs out on the trainer's desk: who needs help first, each with its reasons. */
import { type Day, dayOf } from '../progress/day.ts';
import type { SessionDigest } from '../progress/digest.ts';
import type { DeskDog } from './dogs.ts';
import { LATEST, type Need, needsOf } from './needs.ts';

export interface DeskRow {
  readonly dog: DeskDog;
  /** The gravest first; empty: it goes well, or nothing is known. */
  readonly needs: readonly Need[];
  /** Of the latest session; null: none came back yet. */
  readonly lastDay: Day | null;
  /** Sessions in the latest seven days. */
  readonly thisWeek: number;
}

/** Enough of a session to sort it to its dog; newest first. */
export interface SessionOnDesk {
  readonly id: string;
  readonly dogId: string;
}

/** The latest sessions of each dog, which are all that is asked about; newest first. */
export function latestSessions<S extends SessionOnDesk>(dogs: readonly DeskDog[], sessions: readonly S[]): readonly S[] {
  const dogOf = new Map(dogs.flatMap((dog) => [...dog.dogIds].map((id) => [id, dog.id] as const)));
  const taken = new Map<string, number>();
  return sessions.filter(({ dogId }) => {
    const of = dogOf.get(dogId);
    if (of === undefined) return false;
    const n = (taken.get(of) ?? 0) + 1;
    taken.set(of, n);
    return n <= LATEST;
  });
}

/** Every dog of the desk, who needs help most first. */
export function deskOf(
  dogs: readonly DeskDog[],
  digests: readonly SessionDigest[],
  ladders: ReadonlyMap<string, readonly string[]>,
  today: Day,
): readonly DeskRow[] {
  const byDog = new Map<string, SessionDigest[]>();
  for (const digest of digests) byDog.set(digest.dogId, [...(byDog.get(digest.dogId) ?? []), digest]);
  return dogs
    .map((dog) => rowOf(dog, [...dog.dogIds].flatMap((id) => byDog.get(id) ?? []).toSorted(byTime), ladders, today))
    .toSorted(byNeed);
}

const byTime = (a: SessionDigest, b: SessionDigest): number => a.day - b.day || a.atMs - b.atMs;

function rowOf(
  dog: DeskDog,
  sessions: readonly SessionDigest[],
  ladders: ReadonlyMap<string, readonly string[]>,
  today: Day,
): DeskRow {
  const [latest] = dog.homework;
  const asked = latest ? { aWeek: latest.homework.sessionsAWeek, since: dayOf(latest.homework.givenAt) } : null;
  const needs = needsOf({ sessions, ladders, asked }, today).toSorted((a, b) => RANK[a.kind] - RANK[b.kind]);
  const thisWeek = sessions.filter(({ day }) => day <= today && today - day < 7).length;
  return { dog, needs, lastDay: sessions.at(-1)?.day ?? null, thisWeek };
}

/**
 * What comes first, and why (common practice, no source): what may hurt · what the dog says more and more often · where only the trainer
 * can help, because the plan is wrong there · what a sentence to the owner mends · where nothing goes wrong meanwhile.
 */
const RANK: Readonly<Record<Need['kind'], number>> = {
  veterinarian: 0,
  'lifts-rising': 1,
  stuck: 2,
  'too-many-reps': 3,
  'too-many-a-day': 4,
  'too-many-a-week': 5,
  'not-practised': 6,
};

/** By the gravest need, then by the next; then who has more of them, how much, who practised last, and the name. */
function byNeed(a: DeskRow, b: DeskRow): number {
  for (const [nth, need] of a.needs.entries()) {
    const other = b.needs[nth];
    if (!other) return -1;
    const apart = RANK[need.kind] - RANK[other.kind];
    if (apart !== 0) return apart;
  }
  if (b.needs.length > a.needs.length) return 1;
  return sizeOf(b.needs[0]) - sizeOf(a.needs[0]) || (b.lastDay ?? 0) - (a.lastDay ?? 0) || compareNames(a.dog, b.dog);
}

/** How much of it there is, to compare two dogs with one need. */
function sizeOf(need: Need | undefined): number {
  if (!need) return 0;
  switch (need.kind) {
    case 'lifts-rising':
      return need.now.lifted / need.now.of;
    case 'too-many-reps':
    case 'too-many-a-day':
      return need.most;
    case 'not-practised':
      return need.days;
    default:
      return need.sessions;
  }
}

// Not localeCompare: the order must not hang on the language of the device.
function compareNames(a: DeskDog, b: DeskDog): number {
  const [one, other] = [`${a.name} ${a.id}`, `${b.name} ${b.id}`];
  return one < other ? -1 : Number(one > other);
}
