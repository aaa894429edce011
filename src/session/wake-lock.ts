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
  let wanted = false;
  let asking: Promise<boolean> | null = null;
  const letGo = () => {
    void sentinel?.release().catch(() => undefined);
    sentinel = null;
  };
  const askOnce = async () => {
    sentinel = await ask();
    // Released while it was being asked for: one that nobody knows of would never be let go.
    if (!wanted) letGo();
    return sentinel !== null;
  };
  return {
    hold: () => {
      wanted = true;
      if (sentinel && !sentinel.released) return Promise.resolve(true);
      asking ??= askOnce().finally(() => {
        asking = null;
      });
      return asking;
    },
    release: () => {
      wanted = false;
      letGo();
    },
  };
}

/** Null where there is none, or where a low battery or a hidden page forbids it. */
async function ask(): Promise<Sentinel | null> {
  const { wakeLock } = navigator as Partial<Navigator>;
  return (await wakeLock?.request('screen').catch(() => null)) ?? null;
}
