/** Types every message between the page, the microphone's tap and the listener's worker, in one place. */
import type { CatchLevel, Caught } from '../hearing/catch-take.ts';
import type { Model, TakeInspection, Teaching } from '../hearing/enrol.ts';
import type { Hearing } from '../hearing/listen.ts';
import type { Change, Enrolled, Known } from './enrolled.ts';

/** Tap → worker. `contextS` is the audio time of the first sample. */
export interface TapBlock {
  readonly samples: Float32Array;
  readonly contextS: number;
  /** Blocks of 128 the processor was not given since the last message: the audio thread fell behind. */
  readonly lost: number;
}

/** What the worker is asked to do with the stream. */
export type Job =
  /** `keepSound`: 1.5 s of sound with every hearing, beside its features. */
  | { readonly kind: 'listen'; readonly model: Model; readonly keepSound: boolean }
  /** Cut out takes; nothing is recognised. */
  | { readonly kind: 'teach'; readonly longestS: number }
  | { readonly kind: 'idle' };

/** Page → worker. */
export type ToListener =
  | { readonly kind: 'stream'; readonly port: MessagePort; readonly sampleRateHz: number }
  | { readonly kind: 'job'; readonly job: Job }
  /** The app itself sounds then, in audio time, s. */
  | { readonly kind: 'own-sound'; readonly fromS: number; readonly toS: number }
  /** The words that may well come next; null: all alike. */
  | { readonly kind: 'expect'; readonly words: readonly string[] | null }
  /** The packed network, once, before the first teaching; null: none could be had. */
  | { readonly kind: 'weights'; readonly file: ArrayBuffer | null }
  | { readonly kind: 'enrol'; readonly request: number; readonly teaching: Teaching }
  | { readonly kind: 'compare'; readonly request: number; readonly compare: Comparison };

/** Stretches of a session, to be judged by the model of before and by the one of now. */
export interface Comparison {
  readonly before: Model;
  readonly after: Model;
  readonly known: readonly Known[];
}

/** A take that was cut out, and what can be said of it. */
export interface CaughtTake {
  readonly caught: Caught;
  readonly report: TakeInspection;
}

export interface EarLevel extends CatchLevel {
  /** How far the stream is worked off, audio time, s: it must keep up with the clock. */
  readonly atS: number;
  /** Blocks of 128 samples lost since the stream began: the device is too busy. */
  readonly lost: number;
}

/** Worker → page. Times are audio time, s. */
export type FromListener =
  | { readonly kind: 'hearing'; readonly hearing: Hearing }
  | { readonly kind: 'caught'; readonly take: CaughtTake }
  | { readonly kind: 'level'; readonly level: EarLevel }
  | { readonly kind: 'enrolled'; readonly request: number; readonly enrolled: Enrolled }
  /** null: it could not be told. */
  | { readonly kind: 'compared'; readonly request: number; readonly change: Change | null }
  | { readonly kind: 'failed'; readonly what: string };
