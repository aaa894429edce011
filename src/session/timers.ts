/** Owns the page's timers; everything else takes them as an argument, so that tests advance time by hand. */
import type { Milliseconds } from '../core/units.ts';

export interface Timers {
  /** Calls again and again; returns the way to stop. */
  every(ms: Milliseconds, work: () => void): () => void;
  /** Calls once; returns the way to call it off. */
  after(ms: Milliseconds, work: () => void): () => void;
}

export const pageTimers: Timers = {
  every: (ms, work) => {
    const id = setInterval(work, ms);
    return () => clearInterval(id);
  },
  after: (ms, work) => {
    const id = setTimeout(work, ms);
    return () => clearTimeout(id);
  },
};
