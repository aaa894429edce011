/** Tells a frozen audio clock: after an interruption a context can say "running" while its time stands still (PITFALLS). */
import type { Milliseconds, Seconds } from '../core/units.ts';

/** The last movement seen, and how often nothing moved since. */
export interface ClockWatch {
  readonly audioS: Seconds;
  readonly movedAtMs: Milliseconds;
  readonly stillLooks: number;
}

/** A wireless loudspeaker may need some tenths of a second to start; a clock that stands for longer has stopped. */
const FROZEN_AFTER_MS: Milliseconds = 1000;

/** A page that was busy sees old readings: only several looks in a row that find it still are proof. */
const STILL_LOOKS = 8;

export function beginWatch(audioS: Seconds, nowMs: Milliseconds): ClockWatch {
  return { audioS, movedAtMs: nowMs, stillLooks: 0 };
}

export function lookAtClock(watch: ClockWatch, audioS: Seconds, nowMs: Milliseconds): ClockWatch {
  return audioS === watch.audioS ? { ...watch, stillLooks: watch.stillLooks + 1 } : beginWatch(audioS, nowMs);
}

export function isFrozen(watch: ClockWatch, nowMs: Milliseconds): boolean {
  return watch.stillLooks >= STILL_LOOKS && nowMs - watch.movedAtMs > FROZEN_AFTER_MS;
}
