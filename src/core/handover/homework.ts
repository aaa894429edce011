/** Describes homework: a plan that a trainer hands to an owner, with all that is said beside it, and how a new sending stands to what is here. */
import type { Plan } from '../plan.ts';
import { type StoredRule, sameRule } from '../rule.ts';
import type { IsoTime } from '../units.ts';

/** The three words that nobody can practise without. */
export const HOMEWORK_WORDS = ['hold', 'mark', 'lifted'] as const;
export type HomeworkWord = (typeof HOMEWORK_WORDS)[number];

export interface Homework {
  /** Made by the trainer's app; every later sending carries the same one. */
  readonly id: string;
  /** 1 for the first sending; each answer counts up by one. */
  readonly revision: number;
  readonly givenAt: IsoTime;
  readonly trainer: string;
  readonly ownerName: string;
  readonly dogName: string;
  readonly title: string;
  readonly position: string;
  readonly steps: Plan['steps'];
  readonly rule?: StoredRule;
  /** What is said for each, in the trainer's words; '': as the owner likes. */
  readonly words: Readonly<Record<HomeworkWord, string>>;
  /** Beside the cautions of single steps; '': none. */
  readonly caution: string;
  readonly sessionsAWeek: number;
  readonly note: string;
}

/** Bounds of what is written in homework, characters, and of how often a week: three times a day is more than any trainer asks. */
export const HOMEWORK_BOUNDS = { name: 60, title: 200, text: 2000, sessionsAWeek: 21 } as const;

/** On the trainer's device: what was handed out, for which dog, from which plan. */
export interface HomeworkGiven {
  readonly homework: Homework;
  readonly dogId: string;
  readonly planId: string;
}

/** On the owner's device: what was accepted, for which dog, and the plan that it became. */
export interface HomeworkReceived {
  readonly homework: Homework;
  readonly dogId: string;
  readonly planId: string;
}

/** On the owner's device: sessions that were handed back, each with the number of events that it had then. */
export interface HomeworkReturned {
  readonly homeworkId: string;
  readonly sessions: readonly { readonly id: string; readonly events: number }[];
}

/** The latest sending of one homework; undefined: it was never sent. */
export function latestSent<T extends { readonly homework: Homework }>(sent: readonly T[], homeworkId: string): T | undefined {
  return sent
    .filter(({ homework }) => homework.id === homeworkId)
    .reduce<T | undefined>((last, each) => (last && last.homework.revision > each.homework.revision ? last : each), undefined);
}

/** Each homework once, by its latest sending; the one that came last comes first. */
export function latestOfEach<T extends { readonly homework: Homework }>(sent: readonly T[]): readonly T[] {
  const ids = [...new Set(sent.map(({ homework }) => homework.id))];
  return ids
    .flatMap((id) => latestSent(sent, id) ?? [])
    .toSorted((a, b) => Date.parse(b.homework.givenAt) - Date.parse(a.homework.givenAt));
}

/** How a homework that was opened stands to those that were accepted before. */
export type Arrival =
  | { readonly kind: 'new' }
  /** An answer: the sessions done so far stay with it. */
  | { readonly kind: 'newer'; readonly before: HomeworkReceived }
  | { readonly kind: 'same'; readonly before: HomeworkReceived }
  | { readonly kind: 'older'; readonly before: HomeworkReceived }
  /** Two files of one homework under one number that do not say the same. */
  | { readonly kind: 'at-odds'; readonly before: HomeworkReceived };

export function arrivalOf(homework: Homework, received: readonly HomeworkReceived[]): Arrival {
  const before = latestSent(received, homework.id);
  if (!before) return { kind: 'new' };
  const { revision } = before.homework;
  if (homework.revision > revision) return { kind: 'newer', before };
  if (homework.revision < revision) return { kind: 'older', before };
  return { kind: sameHomework(homework, before.homework) ? 'same' : 'at-odds', before };
}

function sameHomework(a: Homework, b: Homework): boolean {
  return sameRule(ruleIn(a), ruleIn(b)) && inOneOrder({ ...a, rule: null }) === inOneOrder({ ...b, rule: null });
}

const ruleIn = ({ rule }: Homework) => (rule === undefined || rule === 'steady' ? ({ kind: 'steady' } as const) : rule);

/** JSON with the keys of every record in one order: two records that say the same give the same text. */
export function inOneOrder(value: unknown): string {
  return JSON.stringify(value, (_, held: unknown) => {
    if (typeof held !== 'object' || held === null || Array.isArray(held)) return held;
    return Object.fromEntries(Object.entries(held).toSorted(([a], [b]) => (a < b ? -1 : 1)));
  });
}

/** The owner's plan: the same steps under the owner's own names, so that a file can never write over a plan that is here. */
export function planOfHomework({ title, position, steps, rule }: Homework, planId: string, dogId: string): Plan {
  return { id: planId, dogId, title, position, steps, ...(rule === undefined ? {} : { rule }) };
}

/** Enough of a session to know whether it must be handed back. */
export interface Practised {
  readonly id: string;
  readonly planId: string;
  /** How many events it has: more than when it was handed back means that it was put right since. */
  readonly events: number;
}

/** What counts as practised: every session but the one that runs. */
export function practisedOf(
  heads: readonly {
    readonly id: string;
    readonly events: number;
    readonly started: { readonly body: { readonly planId: string } };
  }[],
  running: string | null,
): readonly Practised[] {
  return heads.filter(({ id }) => id !== running).map(({ id, events, started }) => ({ id, events, planId: started.body.planId }));
}

/** Sessions on this homework that the trainer has not seen as they are now. */
export function sessionsToReturn(
  homeworkId: string,
  practised: readonly Practised[],
  { received, returned }: { received: readonly HomeworkReceived[]; returned: readonly HomeworkReturned[] },
): readonly Practised[] {
  const planIds = plansOf(homeworkId, received);
  const seen = new Map<string, number>();
  for (const back of returned)
    if (back.homeworkId === homeworkId) for (const { id, events } of back.sessions) seen.set(id, events);
  return practised.filter(({ id, planId, events }) => planIds.has(planId) && seen.get(id) !== events);
}

/** Homework that was accepted here, each by its latest sending; what came back to its own giver is none. */
export function homeworkHere({ given, received }: HomeworkBook): readonly HomeworkReceived[] {
  const givenHere = new Set(given.map(({ homework }) => homework.id));
  return latestOfEach(received).filter(({ homework }) => !givenHere.has(homework.id));
}

interface HomeworkBook {
  readonly given: readonly HomeworkGiven[];
  readonly received: readonly HomeworkReceived[];
}

/** The owner's plans that this homework became: one on each device on which it was accepted. */
export function plansOf(homeworkId: string, received: readonly HomeworkReceived[]): ReadonlySet<string> {
  return new Set(received.flatMap(({ homework, planId }) => (homework.id === homeworkId ? [planId] : [])));
}

/** All plans under which this one is practised: itself, and on the trainer's device the owner's plans that it became. */
export function practisedAs(planId: string, { given, received }: HomeworkBook): ReadonlySet<string> {
  const handed = given.filter((each) => each.planId === planId);
  return new Set([planId, ...handed.flatMap(({ homework }) => [...plansOf(homework.id, received)])]);
}
