/** Decides when a call may sound: between reps, and clear of the handler's words. */
import type { Seconds } from '../core/units.ts';

/** Distance kept from the handler's voice (DESIGN, Sound). */
export const CLEAR_OF_WORD_S: Seconds = 0.5;

/** Two calls in a row stay two figures. */
const CLEAR_OF_CALL_S: Seconds = 0.3;

export interface CallState {
  readonly holding: boolean;
  /** The latest moment at which the handler is known to have spoken. */
  readonly lastVoiceS: Seconds | null;
  /** End of the last call that was sounded. */
  readonly lastCallToS: Seconds | null;
}

/** The first moment from `nowS` on at which a call may begin; null while a hold lasts, since nobody knows how long. */
export function whenMayCall({ holding, lastVoiceS, lastCallToS }: CallState, nowS: Seconds): Seconds | null {
  if (holding) return null;
  const clearOfVoiceS = lastVoiceS === null ? nowS : lastVoiceS + CLEAR_OF_WORD_S;
  const clearOfCallS = lastCallToS === null ? nowS : lastCallToS + CLEAR_OF_CALL_S;
  return Math.max(nowS, clearOfVoiceS, clearOfCallS);
}
