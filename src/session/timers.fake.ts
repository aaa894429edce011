/** Timers that stand still until a test moves them on. */
import type { Milliseconds } from '../core/units.ts';
import type { Timers } from './timers.ts';

export interface FakeTimers extends Timers {
  advance(ms: Milliseconds): void;
}

interface Due {
  atMs: number;
  readonly everyMs: number | null;
  readonly work: () => void;
}

export function createFakeTimers(): FakeTimers {
  let nowMs = 0;
  const due = new Set<Due>();
  const add = (ms: number, everyMs: number | null, work: () => void) => {
    const one: Due = { atMs: nowMs + ms, everyMs, work };
    due.add(one);
    return () => {
      due.delete(one);
    };
  };
  const next = (untilMs: number) => [...due].filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)[0];
  return {
    every: (ms, work) => add(ms, ms, work),
    after: (ms, work) => add(ms, null, work),
    advance: (ms) => {
      const untilMs = nowMs + ms;
      for (let one = next(untilMs); one; one = next(untilMs)) {
        nowMs = one.atMs;
        if (one.everyMs === null) due.delete(one);
        else one.atMs += one.everyMs;
        one.work();
      }
      nowMs = untilMs;
    },
  };
}
