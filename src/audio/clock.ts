/** The one clock of a session: the time of the audio hardware, the only one that neither a busy page nor a throttled timer bends. */
import type { Seconds } from '../core/units.ts';

export interface AudioClock {
  now(): Seconds;
}

/** The audio clock of a page, which goes on when its AudioContext has to be replaced. */
export interface ContextClock extends AudioClock {
  /** Session time → the time of the present context, as `start(when)` wants it. */
  toContextS(atS: Seconds): Seconds;
  /** Time of the present context → session time; for the microphone's frames, which carry context time. */
  fromContextS(contextS: Seconds): Seconds;
  /** Call after the context was replaced: the clock reads `nowS` and runs on from there. */
  goOnFrom(nowS: Seconds): void;
}

/** `context` is asked each time and never kept: howler replaces its context. */
export function createContextClock(context: () => Pick<BaseAudioContext, 'currentTime'>): ContextClock {
  let originS: Seconds = 0;
  return {
    now: () => originS + context().currentTime,
    toContextS: (atS) => atS - originS,
    fromContextS: (contextS) => originS + contextS,
    goOnFrom: (nowS) => {
      originS = nowS - context().currentTime;
    },
  };
}
