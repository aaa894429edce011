/** The one kind of record that is kept: an immutable event. A session is the fold of its events; a correction is one more. */
import type { Call } from './call.ts';
import type { Correction } from './correction.ts';
import type { ExamPlan } from './exam/exam.ts';
import type { HomeworkGiven, HomeworkReceived, HomeworkReturned } from './handover/homework.ts';
import type { KeyBindings } from './key-bindings.ts';
import type { LanguageTag } from './language.ts';
import type { Limits } from './limits.ts';
import type { Carried } from './next-start.ts';
import type { Observation } from './observe/observation.ts';
import type { Plan, Step } from './plan.ts';
import type { StoredRule } from './rule.ts';
import type { Stretch } from './stretch.ts';
import type { IsoTime, Milliseconds, Seconds } from './units.ts';
import type { Heard, Unsure } from './word.ts';

interface Stored<Type extends string, Body> {
  /** `<device>:<seq>`: two logs merge by union. */
  readonly id: string;
  readonly device: string;
  /** Counts up by one per device. */
  readonly seq: number;
  /** The session it belongs to; null for what outlives sessions (dogs, plans, taught words). */
  readonly session: string | null;
  readonly type: Type;
  readonly version: 1;
  readonly at: IsoTime;
  /** The monotonic clock of the page that wrote it: orders events when the wall clock jumps. */
  readonly monoMs: Milliseconds;
  readonly body: Body;
}

export interface SessionStart {
  readonly dogId: string;
  readonly dogName: string;
  readonly planId: string;
  readonly planTitle: string;
  readonly position: string;
  /** The ladder as it stood, half steps included: a session can be read without its plan. */
  readonly steps: readonly Step[];
  readonly startStepId: string;
  /** 'steady' in one word: a session from before there was a choice. */
  readonly rule: StoredRule;
  readonly carried: Carried;
  readonly limits: Limits;
  readonly handler: string;
  readonly place: string;
  /** An examination is no training: nothing is called, nothing is asked of the dog, and progress leaves it out. Absent: practice. */
  readonly kind?: 'exam';
}

/** What an ear says of itself; kept, so that a review can tell "nothing happened" from "nothing was heard". */
export const EAR_STATES = ['off', 'arming', 'listening', 'restarting', 'degraded', 'blocked', 'suspended'] as const;
export type EarState = (typeof EAR_STATES)[number];

export type PauseReason = 'handler' | 'hidden' | 'closed';

export type SessionEvent =
  | Stored<'session-started', SessionStart>
  | Stored<'word-heard', Heard>
  | Stored<'word-unsure', Unsure>
  | Stored<'called', Call & { readonly because: string }>
  | Stored<'undone', { readonly of: string }>
  | Stored<'corrected', Correction>
  | Stored<'paused', { readonly atS: Seconds; readonly why: PauseReason }>
  | Stored<'resumed', { readonly atS: Seconds }>
  | Stored<'ear-changed', { readonly atS: Seconds; readonly ear: string; readonly state: EarState }>
  | Stored<'session-ended', { readonly atS: Seconds; readonly why: 'handler' | 'abandoned' }>;

/** A dog as the handler names it. */
export interface Dog {
  readonly id: string;
  readonly name: string;
  /** What fits none of the four below; all of it in a dog saved before they stood apart. */
  readonly notes: string;
  /** True for the invented dog of the first screen. */
  readonly invented: boolean;
  readonly pain?: string;
  /** The veterinarian's advice. */
  readonly advice?: string;
  readonly food?: string;
  /** What scares it. */
  readonly scares?: string;
  /** How this dog shows that it is not well with something: "licks its nose, then turns away". */
  readonly signs?: string;
  /** Whom an examiner calls: a name and a number. */
  readonly callWhom?: string;
  readonly weightKg?: number;
  /** Absent: not said. */
  readonly neutered?: boolean;
  readonly kcalPerTreat?: number;
  /** As many as the handler wants to give in one session. Absent: as many as the day has left. */
  readonly treatsPerSession?: number;
  /** Put away: shown apart, and nothing of it is deleted. */
  readonly archived?: boolean;
  /** Whose dog it is, where it is not the handler's own: it stands on the desk. */
  readonly owner?: string;
}

/**
 * A handler or a place. Sessions, takes and settings hold the id, which is the name first given to it: so what was written
 * before there were lists needs no change, and a new name shows on old sessions too.
 */
export interface Named {
  readonly id: string;
  readonly name: string;
  readonly archived: boolean;
}

/** One taught take: 16 kHz mono, kept on the device only. */
export interface TaughtSound {
  readonly word: string;
  readonly handler: string;
  /** What was said, as the handler writes it: "chin". For talk: the phrase. */
  readonly said: string;
  readonly sampleRateHz: number;
  readonly samples: Int16Array;
}

/** A take that a correction made of something heard in practice: its features, not its sound. `sound-removed` takes it back. */
export interface LearnedTake {
  /** The event that was corrected, and its session. */
  readonly of: string;
  readonly session: string;
  /** As in a taught sound: one of the words, or the name under which talk is kept. */
  readonly word: string;
  readonly handler: string;
  readonly stretch: Stretch;
}

/** The browser's own recogniser as an ear. Off until the handler switches it on. */
export interface PlatformSettings {
  readonly on: boolean;
  /** The handler allows that sound leaves the device. */
  readonly mayLeave: boolean;
  /** BCP 47: "en-GB". */
  readonly language: string;
  /** What is said for each word, by the word. */
  readonly sayings: Readonly<Record<string, readonly string[]>>;
}

export interface Settings {
  readonly volume: number;
  readonly mode: 'sound' | 'flash' | 'both';
  readonly speakCalls: boolean;
  readonly keys: KeyBindings;
  readonly handler: string;
  readonly place: string;
  readonly limits: Limits;
  /** Absent: on. The app does not hear itself then; some phones distort by it. */
  readonly echoCancellation?: boolean;
  /** Keeps 1.5 s of sound with every heard word, for a month. Absent: no. */
  readonly keepSounds?: boolean;
  /** Absent: off. */
  readonly platformEar?: PlatformSettings;
  /** Null or absent: as the browser wishes. */
  readonly language?: LanguageTag | null;
}

export interface CopySaved {
  /** How many sessions were in it. */
  readonly sessions: number;
}

export type LibraryEvent =
  | Stored<'dog-saved', Dog>
  | Stored<'handler-saved', Named>
  | Stored<'place-saved', Named>
  | Stored<'observation-saved', Observation>
  | Stored<'plan-saved', Plan>
  | Stored<'exam-planned', ExamPlan>
  | Stored<'sound-taught', TaughtSound>
  | Stored<'take-learned', LearnedTake>
  | Stored<'sound-removed', { readonly of: string }>
  | Stored<'homework-given', HomeworkGiven>
  | Stored<'homework-received', HomeworkReceived>
  | Stored<'homework-returned', HomeworkReturned>
  | Stored<'settings-saved', Settings>
  /** A copy of everything was handed out; this comes after it and is not in it. */
  | Stored<'copy-saved', CopySaved>;

export type StoredEvent = SessionEvent | LibraryEvent;

/** What the core hands out to be kept: everything but the stamp. */
export type Draft<E extends StoredEvent = StoredEvent> = E extends StoredEvent ? Pick<E, 'type' | 'body'> : never;

/** Who writes, and when. The caller owns clock and counter; the core only copies them. */
export interface Stamp {
  readonly device: string;
  /** The number of the next event of this device. */
  readonly seq: number;
  readonly session: string | null;
  readonly at: IsoTime;
  readonly monoMs: Milliseconds;
}

/** Makes a draft an event, and moves the stamp on by one. */
export function stampEvent<D extends Draft>(
  draft: D,
  stamp: Stamp,
): { event: Extract<StoredEvent, { type: D['type'] }>; next: Stamp } {
  const { device, seq, session, at, monoMs } = stamp;
  const event = { id: `${device}:${seq}`, device, seq, session, type: draft.type, version: 1, at, monoMs, body: draft.body };
  return { event: event as unknown as Extract<StoredEvent, { type: D['type'] }>, next: { ...stamp, seq: seq + 1 } };
}

/** Belongs to a session; the others outlive sessions. */
export function isSessionEvent(event: StoredEvent): event is SessionEvent {
  return event.session !== null;
}
