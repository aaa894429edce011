/** Types every message between the page, the microphone's tap and the listener's worker, in one place. */
import type { CatchLevel, Caught } from '../hearing/catch-take.ts';
import type { Model, TakeInspection, Teaching } from '../hearing/enrol.ts';
import type { Hearing } from '../hearing/listen.ts';
import type { Enrolled } from './enrolled.ts';

/** Tap → worker. `contextS` is the audio time of the first sample. */
export interface TapBlock {
  readonly samples: Float32Array;
  readonly contextS: number;
  /** Blocks of 128 the processor was not given since the last message: the audio thread fell behind. */
  readonly lost: number;
}

/** What the worker is asked to do with the stream. */
export type Job =
  | { readonly kind: 'listen'; readonly model: Model }
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
  | { readonly kind: 'enrol'; readonly request: number; readonly teaching: Teaching };

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
  | { readonly kind: 'failed'; readonly what: string };
