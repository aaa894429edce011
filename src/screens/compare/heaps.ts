/** Sorts sessions into the heaps that can be held against each other: single sessions, weeks, places, people. */
import { t } from '../../core/language.ts';
import { trialsOf } from '../../core/progress/choice.ts';
import { mondayOf, sayDayShort, weekOf } from '../../core/progress/day.ts';
import type { SessionDigest } from '../../core/progress/digest.ts';
import { groupBy } from '../../core/progress/group.ts';
import { saySessions } from '../progress/counts.ts';
import { personName, placeName } from '../progress/words.ts';

export const KINDS = ['sessions', 'weeks', 'places', 'people'] as const;
export type Kind = (typeof KINDS)[number];

export interface Heap {
  readonly key: string;
  readonly name: string;
  readonly digests: readonly SessionDigest[];
}

/** More in one choice would be no choice. */
const MOST_HEAPS = 200;

/** Newest first; places and people: most often first. Heaps without a trial are left out. */
export function heapsOf(kind: Kind, digests: readonly SessionDigest[]): readonly Heap[] {
  const newest = digests.filter((digest) => trialsOf(digest).of > 0).toSorted((a, b) => b.day - a.day || b.atMs - a.atMs);
  const grouped = [...groupBy(newest, KEYS[kind])].map(([key, own]) => ({ key, name: NAMES[kind](own), digests: own }));
  const isByCount = kind === 'places' || kind === 'people';
  return (isByCount ? grouped.toSorted((a, b) => b.digests.length - a.digests.length) : grouped).slice(0, MOST_HEAPS);
}

const KEYS: Readonly<Record<Kind, (digest: SessionDigest) => string>> = {
  sessions: ({ id }) => id,
  weeks: ({ day }) => String(weekOf(day)),
  places: ({ place }) => place,
  people: ({ handler }) => handler,
};

const NAMES: Readonly<Record<Kind, (own: readonly SessionDigest[]) => string>> = {
  sessions: ([one]) => (one ? `${sayDayShort(one.day)}, ${one.startedAt.slice(11, 16)}, ${placeName(one.place)}` : ''),
  weeks: (own) => {
    const day = sayDayShort(mondayOf(weekOf(own[0]?.day ?? 0)));
    return `${t('week of {day}', { day })}, ${saySessions(own.length)}`;
  },
  places: (own) => `${placeName(own[0]?.place ?? '')}, ${saySessions(own.length)}`,
  people: (own) => `${personName(own[0]?.handler ?? '')}, ${saySessions(own.length)}`,
};

/** B is the newest (or most usual), A the nearest before it that shares a step with it: time runs from A to B. */
export function pairOf(
  heaps: readonly Heap[],
  keys: readonly [a: string | null, b: string | null],
): readonly [Heap, Heap] | null {
  const find = (key: string | null) => heaps.find((heap) => heap.key === key);
  const b = find(keys[1]) ?? heaps[0];
  if (!b) return null;
  const others = heaps.filter((heap) => heap !== b);
  const a = find(keys[0]) ?? others.find((heap) => sharesStep(heap, b)) ?? others[0];
  return a ? [a, b] : null;
}

function sharesStep(one: Heap, other: Heap): boolean {
  const steps = stepsOf(one);
  return [...stepsOf(other)].some((id) => steps.has(id));
}

function stepsOf({ digests }: Heap): ReadonlySet<string> {
  return new Set(
    digests.flatMap(({ steps }) => steps.filter(({ kept, lifted }) => kept + lifted > 0).map(({ stepId }) => stepId)),
  );
}
