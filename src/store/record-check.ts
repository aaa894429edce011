/** Checks that a record from storage or from a file is an event as the core knows it, and names path, value and bound when not. */
import * as v from 'valibot';
import type { Reason } from '../core/call.ts';
import { type Correction, REP_WORDS } from '../core/correction.ts';
import {
  type Dog,
  EAR_STATES,
  type LibraryEvent,
  type PauseReason,
  type SessionEvent,
  type Settings,
  type StoredEvent,
} from '../core/event.ts';
import { type ExamItem, type ExamPlan, isIsoDate, MOST_ITEMS, MOST_LETTERS } from '../core/exam/exam.ts';
import { HOMEWORK_BOUNDS, type Homework } from '../core/handover/homework.ts';
import { type PlainMessage, t } from '../core/language.ts';
import { BODY_AREAS, type BodyArea, type HandlingStep, indexOfStep, LONGEST_S, type Plan, type Step } from '../core/plan.ts';
import type { StoredRule } from '../core/rule.ts';
import { isStoredRule } from '../core/stored-rule.ts';
import type { Stretch } from '../core/stretch.ts';
import { type EarName, WORDS } from '../core/word.ts';
import type { Damage } from './problem.ts';

export type Checked = { readonly ok: true; readonly event: StoredEvent } | { readonly ok: false; readonly damage: Damage };

/** `where` stands in front of the path in a message; without it the record names itself. */
export function checkEvent(record: unknown, where?: string): Checked {
  const checked = v.safeParse(EVENT, record, { abortEarly: true });
  // The record itself, not valibot's copy: fields that only a newer version knows must survive.
  if (checked.success) return { ok: true, event: record as StoredEvent };
  return { ok: false, damage: damageOf(checked.issues[0], record, where ?? nameOf(record)) };
}

/** What is expected, said when it is missed: schemas are made once, before it is known which language is spoken. */
type Bound = () => string;

const say =
  (bound: PlainMessage): Bound =>
  () =>
    t(bound);

/** Every name of a union, so that one added to the core and forgotten here does not compile. */
function oneOf<T extends string>(names: Readonly<Record<T, true>>): v.GenericSchema<unknown, T> {
  return picked(Object.keys(names) as T[]);
}

function picked<T extends string>(names: readonly T[]): v.GenericSchema<unknown, T> {
  return v.picklist(names, () => t('one of {names}', { names: names.join(', ') }));
}

function record<E extends v.ObjectEntries>(entries: E): v.ObjectSchema<E, v.ErrorMessage<v.ObjectIssue>> {
  return v.object(entries, bound);
}

/** The same schema says "not a record at all" and "this field is missing". */
function bound(issue: v.ObjectIssue): string {
  return issue.expected === 'Object' ? t('a record') : t('a value');
}

const list = <S extends v.GenericSchema>(item: S) => v.array(item, say('a list'));

function number(says: Bound, least = -Number.MAX_VALUE, most = Number.MAX_VALUE) {
  return v.pipe(v.number(says), v.minValue(least, says), v.maxValue(most, says));
}

function whole(says: Bound, least: number) {
  return v.pipe(v.number(says), v.safeInteger(says), v.minValue(least, says));
}

const TEXT = v.string(say('text'));
const FINITE = number(say('a finite number'));
const AT_LEAST_0 = number(say('a finite number of at least 0'), 0);
const RATE = number(say('a number of at least 1'), 1);
const SHARE = number(say('a number from 0 to 1'), 0, 1);
const COUNT = whole(say('a whole number of at least 0'), 0);
const SEQ = whole(say('a whole number of at least 1'), 1);
const YES_OR_NO = v.boolean(say('true or false'));
const ISO = v.pipe(v.string(say('an ISO time with its offset')), v.check(isIsoTime, say('an ISO time with its offset')));

function isIsoTime(text: string): boolean {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/.test(text) && !Number.isNaN(Date.parse(text));
}

const EAR_NAME = oneOf<EarName>({ 'own-words': true, platform: true, key: true, button: true, recording: true, review: true });
const HANDLED_AREA = picked(BODY_AREAS.filter((area): area is HandlingStep['area'] => area !== 'position'));

const STEP_COMMON = {
  id: TEXT,
  title: TEXT,
  caution: v.exactOptional(TEXT),
  halfOf: v.exactOptional(record({ belowId: TEXT, aboveId: TEXT })),
};
const STEP: v.GenericSchema<unknown, Step> = v.variant(
  'kind',
  [
    record({ ...STEP_COMMON, kind: v.literal('duration'), holdForS: AT_LEAST_0 }),
    record({
      ...STEP_COMMON,
      kind: v.literal('handling'),
      area: HANDLED_AREA,
      extent: TEXT,
      forS: AT_LEAST_0,
      halfway: v.exactOptional(record({ title: TEXT, extent: TEXT, forS: AT_LEAST_0 })),
    }),
  ],
  () => t('one of {names}', { names: 'duration, handling' }),
);
const STEPS = v.pipe(list(STEP), v.minLength(1, say('at least one step')));
const RULE = v.custom<StoredRule>(isStoredRule, say('a rule that a session can run'));
const PLAN: v.GenericSchema<unknown, Plan> = record({
  ...{ id: TEXT, dogId: TEXT, title: TEXT, position: TEXT, steps: STEPS },
  rule: v.exactOptional(RULE),
});

const TRIALS = record({ last: list(YES_OR_NO), count: COUNT, kept: COUNT });
const ALARMS = v.custom<Readonly<Partial<Record<BodyArea, number>>>>(areAlarms, say('finite numbers by body area'));
const CARRIED = record({
  trials: TRIALS,
  returns: v.record(TEXT, COUNT, say('counts by step')),
  passed: list(TEXT),
  alarms: ALARMS,
});
const PLATFORM = record({
  ...{ on: YES_OR_NO, mayLeave: YES_OR_NO, language: TEXT },
  sayings: v.record(TEXT, list(TEXT), say('sayings by word')),
});
const LIMITS = record({ reps: AT_LEAST_0, minutes: AT_LEAST_0, treats: v.nullable(AT_LEAST_0) });

function areAlarms(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(value).every(
    ([area, score]) => (BODY_AREAS as readonly string[]).includes(area) && Number.isFinite(score),
  );
}

const REP_WORD = picked(REP_WORDS);
const CORRECTION: v.GenericSchema<unknown, Correction> = v.variant(
  'do',
  [
    record({ do: v.literal('confirm'), of: TEXT }),
    record({ do: v.literal('relabel'), of: TEXT, as: v.nullable(REP_WORD) }),
    record({ do: v.literal('move'), of: TEXT, startedAtS: FINITE }),
    record({ do: v.literal('insert'), word: REP_WORD, startedAtS: FINITE }),
    record({ do: v.literal('void'), of: TEXT, reason: TEXT }),
    record({ do: v.literal('note'), of: v.nullable(TEXT), text: TEXT }),
  ],
  () => t('one of {names}', { names: 'confirm, relabel, move, insert, void, note' }),
);

/** Reasons are for reading: rules come and go, and an old reason must not cost an old session. */
const REASON = v.custom<Reason>(
  (value) => typeof (value as { kind?: unknown } | null)?.kind === 'string',
  say('a reason with its kind'),
);

// `satisfies`: every type of event has its body here, and no other has.
const SESSION_BODIES = {
  'session-started': v.pipe(
    record({
      ...{ dogId: TEXT, dogName: TEXT, planId: TEXT, planTitle: TEXT, position: TEXT, steps: STEPS, startStepId: TEXT },
      ...{ rule: RULE, carried: CARRIED, limits: LIMITS, handler: TEXT, place: TEXT },
      kind: v.exactOptional(v.literal('exam', 'exam')),
    }),
    v.forward(
      v.check(({ steps, startStepId }) => indexOfStep(steps, startStepId) >= 0, say('the id of one of its steps')),
      ['startStepId'],
    ),
  ),
  'word-heard': record({
    ...{ word: picked(WORDS), startedAtS: FINITE, endedAtS: FINITE, decidedAtS: FINITE, confidence: SHARE, by: EAR_NAME },
  }),
  'word-unsure': record({
    ...{ startedAtS: FINITE, endedAtS: FINITE, decidedAtS: FINITE, by: EAR_NAME },
    nearest: list(record({ word: TEXT, confidence: SHARE })),
  }),
  called: record({
    kind: oneOf({ raise: true, return: true, split: true, rest: true, stay: true, begin: true, remain: true }),
    ...{ fromStepId: TEXT, toStepId: TEXT, inserted: v.nullable(STEP), reasons: list(REASON), because: TEXT },
  }),
  undone: record({ of: TEXT }),
  corrected: CORRECTION,
  paused: record({ atS: FINITE, why: oneOf<PauseReason>({ handler: true, hidden: true, closed: true }) }),
  resumed: record({ atS: FINITE }),
  'ear-changed': record({ atS: FINITE, ear: TEXT, state: picked(EAR_STATES) }),
  'session-ended': record({ atS: FINITE, why: oneOf({ handler: true, abandoned: true }) }),
} satisfies { [T in SessionEvent['type']]: v.GenericSchema<unknown, Extract<SessionEvent, { type: T }>['body']> };

/** From the smallest of grown dogs to above the heaviest known, with room for a puppy. */
const WEIGHT_KG = number(say('a weight from 0.1 to 150 kg'), 0.1, 150);
const NOTE = v.exactOptional(TEXT);
const DOG: v.GenericSchema<unknown, Dog> = record({
  ...{ id: TEXT, name: TEXT, notes: TEXT, invented: YES_OR_NO, pain: NOTE, advice: NOTE, food: NOTE, scares: NOTE },
  ...{ weightKg: v.exactOptional(WEIGHT_KG), neutered: v.exactOptional(YES_OR_NO), archived: v.exactOptional(YES_OR_NO) },
  kcalPerTreat: v.exactOptional(number(say('kcal a treat from 0.1 to 500'), 0.1, 500)),
  treatsPerSession: v.exactOptional(whole(say('a whole number of at least 1'), 1)),
  ...{ signs: NOTE, callWhom: NOTE, owner: NOTE },
});
const NAMED = record({ id: TEXT, name: TEXT, archived: YES_OR_NO });

const EXAM_ITEM: v.GenericSchema<unknown, ExamItem> = record({
  id: TEXT,
  area: picked(BODY_AREAS),
  what: v.pipe(
    TEXT,
    v.trim(),
    v.minLength(1, say('some words')),
    v.maxLength(MOST_LETTERS, () => t('at most {n} letters', { n: MOST_LETTERS })),
  ),
  forS: number(() => t('0 to {n} s', { n: LONGEST_S }), 0, LONGEST_S),
  step: v.exactOptional(record({ planId: TEXT, stepId: TEXT })),
});
const EXAM: v.GenericSchema<unknown, ExamPlan> = record({
  ...{ id: TEXT, dogId: TEXT, place: TEXT, calledOff: v.exactOptional(YES_OR_NO) },
  date: v.pipe(TEXT, v.check(isIsoDate, say('a day such as 2026-03-01'))),
  items: v.pipe(
    list(EXAM_ITEM),
    v.maxLength(MOST_ITEMS, () => t('at most {n} items', { n: MOST_ITEMS })),
    v.check((items) => new Set(items.map(({ id }) => id)).size === items.length, say('items with ids of their own')),
  ),
});

const textOf = (most: number) =>
  v.pipe(
    TEXT,
    v.maxLength(most, () => t('text of at most {n} characters', { n: String(most) })),
  );
const [SHORT, LINE, LONG] = [textOf(HOMEWORK_BOUNDS.name), textOf(HOMEWORK_BOUNDS.title), textOf(HOMEWORK_BOUNDS.text)];
const A_WEEK = HOMEWORK_BOUNDS.sessionsAWeek;
const TIMES_A_WEEK: Bound = () => t('a whole number from 1 to {n}', { n: A_WEEK });
const HOMEWORK: v.GenericSchema<unknown, Homework> = record({
  ...{ id: v.pipe(LINE, v.minLength(1, say('a name of its own'))), revision: SEQ, givenAt: ISO },
  ...{ trainer: SHORT, ownerName: SHORT, dogName: SHORT, title: LINE, position: LINE, steps: STEPS },
  rule: v.exactOptional(RULE),
  words: record({ hold: SHORT, mark: SHORT, lifted: SHORT }),
  ...{ caution: LONG, note: LONG },
  sessionsAWeek: v.pipe(whole(TIMES_A_WEEK, 1), v.maxValue(A_WEEK, TIMES_A_WEEK)),
});
const HOMEWORK_KEPT = record({ homework: HOMEWORK, dogId: TEXT, planId: TEXT });

const LIBRARY_BODIES = {
  'dog-saved': DOG,
  'handler-saved': NAMED,
  'place-saved': NAMED,
  'observation-saved': record({
    ...{ id: TEXT, sessionId: TEXT, observer: TEXT, by: oneOf({ keys: true, ear: true }), fileName: TEXT },
    ...{ lengthS: AT_LEAST_0, words: list(record({ word: REP_WORD, atS: AT_LEAST_0 })), offsetS: FINITE },
  }),
  'plan-saved': PLAN,
  'exam-planned': EXAM,
  'sound-taught': record({
    ...{ word: TEXT, handler: TEXT, said: TEXT, sampleRateHz: RATE },
    samples: v.custom<Int16Array>(isInt16Array, say('16-bit samples')),
  }),
  'take-learned': record({
    ...{ of: TEXT, session: TEXT, word: TEXT, handler: TEXT },
    stretch: v.custom<Stretch>(isStretch, say('features whose lengths agree')),
  }),
  'sound-removed': record({ of: TEXT }),
  'homework-given': HOMEWORK_KEPT,
  'homework-received': HOMEWORK_KEPT,
  'homework-returned': record({ homeworkId: TEXT, sessions: list(record({ id: TEXT, events: COUNT })) }),
  'settings-saved': record({
    ...{ volume: SHARE, mode: oneOf({ sound: true, flash: true, both: true }), speakCalls: YES_OR_NO },
    ...{ keys: v.record(TEXT, picked(WORDS), say('words by key')), handler: TEXT, place: TEXT, limits: LIMITS },
    echoCancellation: v.exactOptional(YES_OR_NO),
    keepSounds: v.exactOptional(YES_OR_NO),
    platformEar: v.exactOptional(PLATFORM),
    language: v.exactOptional(v.nullable(v.picklist(['en', 'de']))),
  }),
  'copy-saved': record({ sessions: COUNT }),
} satisfies { [T in LibraryEvent['type']]: v.GenericSchema<unknown, Extract<LibraryEvent, { type: T }>['body']> };

export const SESSION_TYPES: readonly string[] = Object.keys(SESSION_BODIES);

export function isSettings(value: unknown): value is Settings {
  return v.safeParse(LIBRARY_BODIES['settings-saved'], value).success;
}

/** Homework from a file or a link: itself, or what is wrong with it. Not a copy: fields that only a newer version knows must survive. */
export function checkHomework(value: unknown, where: string): Homework | Damage {
  const checked = v.safeParse(HOMEWORK, value, { abortEarly: true });
  return checked.success ? (value as Homework) : damageOf(checked.issues[0], value, where);
}

/** What storage gives back as features may come from another version, or from a file. */
export function isStretch(value: unknown): value is Stretch {
  const { features, dims = -1, steps = -1, from = -1, to = -1, bytes, base, scale } = (value ?? {}) as Partial<Stretch>;
  const whole = [dims, steps, from, to].every((count) => Number.isSafeInteger(count) && count >= 0);
  const holds = (array: unknown, tag: string, length: number) =>
    tagOf(array) === tag && (array as Float32Array).length === length && (array as Float32Array).every(Number.isFinite);
  const lengths =
    holds(bytes, 'Uint8Array', dims * steps) && holds(base, 'Float32Array', dims) && holds(scale, 'Float32Array', dims);
  return typeof features === 'string' && whole && dims > 0 && from < to && to <= steps && lengths;
}

const tagOf = (value: unknown): string => Object.prototype.toString.call(value).slice('[object '.length, -1);

// By its tag, not by its class: records cross windows and workers.
export function isInt16Array(value: unknown): value is Int16Array {
  return Object.prototype.toString.call(value) === '[object Int16Array]';
}

const STAMP = { id: TEXT, device: TEXT, seq: SEQ, version: v.literal(1, '1'), at: ISO, monoMs: FINITE };

function events(bodies: Readonly<Record<string, v.GenericSchema>>, session: v.GenericSchema): readonly v.GenericSchema[] {
  return Object.entries(bodies).map(([type, body]) => record({ ...STAMP, type: v.literal(type), session, body }));
}

const TYPES: Bound = () => t('one of {names}', { names: [...SESSION_TYPES, ...Object.keys(LIBRARY_BODIES)].join(', ') });
const EVENT = v.pipe(
  v.variant(
    'type',
    [...events(SESSION_BODIES, TEXT), ...events(LIBRARY_BODIES, v.null('null'))] as unknown as v.VariantOptions<'type'>,
    TYPES,
  ),
  v.rawCheck(({ dataset, addIssue }) => {
    if (!dataset.typed) return;
    const { id, device, seq } = dataset.value as StoredEvent;
    if (id !== `${device}:${seq}`)
      addIssue({
        message: `${device}:${seq}`,
        path: [{ type: 'unknown', origin: 'value', input: dataset.value, key: 'id', value: id }],
      });
  }),
);

function nameOf(record: unknown): string {
  const { session, id } = (record ?? {}) as { session?: unknown; id?: unknown };
  const event = typeof id === 'string' ? `event ${id}` : 'event without an id';
  return typeof session === 'string' ? `session ${session} › ${event}` : event;
}

function damageOf(issue: v.BaseIssue<unknown>, record: unknown, where: string): Damage {
  const keys = (issue.path ?? []).map(({ key }) => key);
  const path = keys.reduce<string>((so, key) => (typeof key === 'number' ? `${so}[${key}]` : `${so} › ${String(key)}`), where);
  const value = keys.reduce<unknown>((held, key) => (held as Record<PropertyKey, unknown> | null)?.[key as string], record);
  return { path, expected: issue.message, got: shorten(value), record };
}

/** A value as a message shows it; long ones are cut. */
export function shorten(value: unknown): string {
  if (value === undefined) return t('nothing#no value');
  if (typeof value === 'number' || typeof value === 'bigint') return String(value);
  const text = inJson(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}

// Storage can hold what JSON cannot: circles and big integers.
function inJson(value: unknown): string {
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    return typeof value;
  }
}
