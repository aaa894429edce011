/** The browser's own recogniser, the real one, which has no service here: it is not spun, and closing is off. */
import { expect, test } from 'vitest';
import { browserRecogniser, createPlatformEar } from '../../src/ears/platform.ts';
import type { PlatformState } from '../../src/ears/platform-state.ts';

test('a browser that cannot reach its recogniser is tried again after a second and says why', async () => {
  const own = browserRecogniser();
  const states: PlatformState[] = [];
  const startedMs: number[] = [];
  const recogniser = () => {
    startedMs.push(performance.now());
    return own.recogniser();
  };
  const after = (ms: number, work: () => void) => {
    const id = setTimeout(work, ms);
    return () => clearTimeout(id);
  };
  const ear = createPlatformEar({
    ...{ recogniser, onDevice: own.onDevice, after, nowS: () => performance.now() / 1000 },
    ...{ sayings: () => ({ mark: ['yes'] }), language: () => 'en-GB', mayLeave: () => true, onHeard: () => {} },
    onState: (now) => states.push(now),
  });
  ear.open();
  // Which error depends on the machine: no microphone, no network, no leave. Fetching the language may take its three seconds.
  await expect
    .poll(() => states.find(({ state }) => state === 'restarting' || state === 'blocked')?.why, { timeout: 8_000 })
    .toBeTruthy();
  await new Promise((ready) => setTimeout(ready, 1_500));
  ear.close();
  expect(startedMs.length).toBeLessThanOrEqual(2);
  expect(ear.ear().state).toBe('off');
  await expect.poll(() => ear.ear().engine.is, { timeout: 5_000 }).toBe('idle');
});
