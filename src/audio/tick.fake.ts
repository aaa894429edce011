/** A tick that a test gives by hand. */
import type { Tick } from './tick.ts';

export interface FakeTick extends Tick {
  tick(): void;
}

export function createFakeTick(): FakeTick {
  const listeners = new Set<() => void>();
  return {
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    tick: () => {
      for (const listener of listeners) listener();
    },
    dispose: () => listeners.clear(),
  };
}
