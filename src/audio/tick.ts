/** Gives the page a pulse from a worker, whose timers keep time where those of a hidden page are slowed. Owns that worker. */

/** How often the beats look ahead, ms. */
export const TICK_MS = 25;

export interface Tick {
  /** Calls the listener on every tick; returns the way to stop that. */
  listen(listener: () => void): () => void;
  dispose(): void;
}

export function createWorkerTick(): Tick {
  const worker = new Worker(new URL('./tick.worker.ts', import.meta.url), { type: 'module' });
  const listeners = new Set<() => void>();
  worker.onmessage = () => {
    for (const listener of listeners) listener();
  };
  worker.postMessage(TICK_MS);
  return {
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    dispose: () => {
      listeners.clear();
      worker.terminate();
    },
  };
}
