/** The screen stays on while it is practised, and may sleep after. */
import { afterEach, expect, test, vi } from 'vitest';
import { createWakeLock } from '../../src/session/wake-lock.ts';

afterEach(() => {
  Reflect.deleteProperty(navigator, 'wakeLock');
});

/** A system that answers when it is told to, and counts what is held. */
function system() {
  let held = 0;
  const waiting: (() => void)[] = [];
  const request = vi.fn(
    () =>
      new Promise((resolve) => {
        waiting.push(() => {
          held++;
          const sentinel = {
            released: false,
            release: async () => {
              sentinel.released = true;
              held--;
            },
          };
          resolve(sentinel);
        });
      }),
  );
  Object.defineProperty(navigator, 'wakeLock', { value: { request }, configurable: true });
  return { request, answer: () => waiting.splice(0).map((each) => each()), held: () => held };
}

test('asked twice at once it asks the system once', async () => {
  const { request, answer, held } = system();
  const lock = createWakeLock();
  const both = Promise.all([lock.hold(), lock.hold()]);
  answer();
  expect(await both).toEqual([true, true]);
  expect(request).toHaveBeenCalledTimes(1);
  expect(held()).toBe(1);
});

test('a session that ends while the system is still being asked leaves no screen on', async () => {
  const { answer, held } = system();
  const lock = createWakeLock();
  const asked = lock.hold();
  lock.release();
  answer();
  await asked;
  expect(held()).toBe(0);
});

test('where there is no such thing the answer is no', async () => {
  expect(await createWakeLock().hold()).toBe(false);
});
