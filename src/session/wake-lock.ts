/** Owns the wake lock: keeps the screen on during practice. The system may refuse or take it back; the next tap asks again. */

export interface WakeLock {
  /** From a tap, and again whenever the page becomes visible. True when the screen will stay on. */
  hold(): Promise<boolean>;
  release(): void;
}

interface Sentinel {
  readonly released: boolean;
  release(): Promise<void>;
}

export function createWakeLock(): WakeLock {
  let sentinel: Sentinel | null = null;
  return {
    hold: async () => {
      if (sentinel && !sentinel.released) return true;
      sentinel = await ask();
      return sentinel !== null;
    },
    release: () => {
      void sentinel?.release().catch(() => undefined);
      sentinel = null;
    },
  };
}

/** Null where there is none, or where a low battery or a hidden page forbids it. */
async function ask(): Promise<Sentinel | null> {
  const { wakeLock } = navigator as Partial<Navigator>;
  return (await wakeLock?.request('screen').catch(() => null)) ?? null;
}
