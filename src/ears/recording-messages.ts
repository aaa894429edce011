/** Types every message between the page and the thread that hears a recording. */
import type { EnrolProblem, Teaching } from '../hearing/enrol.ts';
import type { Hearing } from '../hearing/listen.ts';

/** Page → thread. Each is answered once. */
export type ToRecording =
  /** First: whose words to listen for. `weights` is the packed network; null: none could be had. */
  | { readonly kind: 'begin'; readonly teaching: Teaching; readonly weights: ArrayBuffer | null; readonly sampleRateHz: number }
  /** The next samples. The last piece may be empty. */
  | { readonly kind: 'samples'; readonly samples: Float32Array; readonly last: boolean };

/** Thread → page. Times are seconds of the recording. */
export type FromRecording =
  | { readonly kind: 'begun' }
  | { readonly kind: 'not-taught'; readonly problems: readonly EnrolProblem[] }
  | { readonly kind: 'heard'; readonly hearings: readonly Hearing[] }
  | { readonly kind: 'failed'; readonly what: string };
