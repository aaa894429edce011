/** Locks for tests: one object stands for a browser, each claim on it for a tab. */
import type { Locks } from './one-writer.ts';

export function createFakeLocks(): Locks {
  const holders = new Map<string, (stolen: Error) => void>();

  async function request(name: string, options: LockOptions, hold: (lock: Lock | null) => Promise<unknown>): Promise<unknown> {
    if (options.ifAvailable && holders.has(name)) return hold(null);
    holders.get(name)?.(Object.assign(new Error('The lock was stolen.'), { name: 'AbortError' }));
    let lose: (stolen: Error) => void = () => {};
    const stolen = new Promise<never>((_, reject) => {
      lose = reject;
    });
    holders.set(name, lose);
    try {
      return await Promise.race([hold({ name, mode: 'exclusive' }), stolen]);
    } finally {
      if (holders.get(name) === lose) holders.delete(name);
    }
  }

  return { request: request as Locks['request'] };
}
