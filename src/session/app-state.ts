/** Everything a screen may read, in one place; only `app.ts` writes it. */

import type { SoundName } from '../audio/names.ts';
import type { RoomState } from '../audio/sound-room.ts';
import type { CorrectedSession } from '../core/correct.ts';
import type { SessionState } from '../core/fold.ts';
import type { HomeworkWord } from '../core/handover/homework.ts';
import type { LanguageTag } from '../core/language.ts';
import type { Library } from '../core/library.ts';
import type { NextStart } from '../core/next-start.ts';
import type { Ear } from '../ears/ear-state.ts';
import type { EarLevel } from '../ears/messages.ts';
import type { Persistence } from '../store/persist.ts';
import type { StoreProblem } from '../store/problem.ts';
import type { SessionHead } from '../store/session-heads.ts';
import type { SyncShown } from './sync-shown.ts';
import type { Taught, TeachingState } from './teaching.ts';

export type Opening =
  | { readonly kind: 'opening' }
  /** `visit-only`: the browser keeps nothing (a private window); said on every screen. */
  | { readonly kind: 'ready'; readonly kept: 'on-device' | 'visit-only' }
  | { readonly kind: 'another-tab' }
  | { readonly kind: 'no-web-audio' }
  /** Something it cannot do without did not open; nothing was written. */
  | { readonly kind: 'failed'; readonly what: string };

/** A session that was read back for review. */
export interface Reviewed {
  readonly sessionId: string;
  /** As it was put right. */
  readonly state: SessionState;
  /** As it was heard. */
  readonly original: SessionState;
  readonly session: CorrectedSession;
  readonly next: NextStart;
}

/** What was typed of homework that is not made yet, field by field; a field that was not touched is not in it. */
export type HomeworkDraft = Readonly<
  Partial<Record<'dogId' | 'dogName' | 'ownerName' | 'trainer' | 'sessionsAWeek' | 'caution' | 'note' | HomeworkWord, string>>
>;

export interface AppState {
  /** What is drawn and said: a new one draws everything anew. */
  readonly language: LanguageTag;
  readonly opening: Opening;
  readonly library: Library;
  readonly heads: readonly SessionHead[];
  /** The session being practised. */
  readonly live: SessionState | null;
  /** A session that was closed in the middle: it can go on. */
  readonly unfinished: SessionHead | null;
  readonly reviewed: Reviewed | null;
  readonly ear: Ear;
  readonly level: EarLevel | null;
  readonly room: RoomState;
  /** The latest cue, counted, so that two equal ones are two flashes. */
  readonly flash: { readonly name: SoundName; readonly n: number } | null;
  readonly teaching: TeachingState;
  readonly taught: Taught;
  /** Takes have come or gone since `taught`: what the ear makes of them is being worked out. */
  readonly isWorkingOut: boolean;
  /** Words heard while trying the ear out, newest first. */
  readonly tried: readonly { readonly word: string; readonly sure: boolean; readonly n: number }[];
  readonly writeProblem: StoreProblem | null;
  readonly screenStaysOn: boolean;
  /** Whether the browser promised to keep what is kept; asked after the first session. */
  readonly persistence: Persistence;
  /** Why the session that was asked for could not begin; null: nothing stood in the way. */
  readonly refusal: string | null;
  /** Null: sync is switched off. */
  readonly sync: SyncShown | null;
  /** By the plan that they are for; for this visit. */
  readonly homeworkDrafts: Readonly<Record<string, HomeworkDraft>>;
  /** A newer app is ready; call it to load the page anew. Never offered during a session. */
  readonly update: (() => void) | null;
}

export type { CueMode, SoundName } from '../audio/names.ts';
export type { Refused, Unlike } from '../core/sync/exchange.ts';
export type { Ear } from '../ears/ear-state.ts';
export type { Enrolled } from '../ears/enrolled.ts';
export type { CaughtTake, EarLevel } from '../ears/messages.ts';
export type { StoreProblem } from '../store/problem.ts';
export type { SessionHead } from '../store/session-heads.ts';
export type { RecordingHeard } from './observing.ts';
export type { StorageStatus } from './storage.ts';
export type { DogShown } from './sync-shown.ts';
export type { Syncing, SyncRefusal } from './syncing.ts';
export type { UnlikeTake } from './teaching.ts';
