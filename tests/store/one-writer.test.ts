/** Two tabs: one writes, the other is told. */
import { expect, test, vi } from 'vitest';
import { createFakeLocks } from '../../src/store/one-writer.fake.ts';
import { claimWriter } from '../../src/store/one-writer.ts';

const nobody = () => {
  throw new Error('nobody took the lock');
};

test('the first tab writes, the second is told that another tab does', async () => {
  const locks = createFakeLocks();
  expect(await claimWriter('log', nobody, { locks })).toBe('writer');
  expect(await claimWriter('log', nobody, { locks })).toBe('another-tab');
  expect(await claimWriter('another log', nobody, { locks })).toBe('writer');
});

test('when the first tab is closed, the next may write', async () => {
  const locks = createFakeLocks();
  let close = () => {};
  const until = new Promise<void>((resolve) => {
    close = resolve;
  });
  await claimWriter('log', nobody, { locks, until });
  close();
  await vi.waitFor(async () => expect(await claimWriter('log', nobody, { locks })).toBe('writer'));
});

test('a tab that the handler chooses takes over, and the other hears of it', async () => {
  const locks = createFakeLocks();
  const lost = vi.fn();
  await claimWriter('log', lost, { locks });
  expect(await claimWriter('log', nobody, { locks, takeOver: true })).toBe('writer');
  await vi.waitFor(() => expect(lost).toHaveBeenCalledOnce());
  expect(await claimWriter('log', nobody, { locks })).toBe('another-tab');
});

test('a browser that refuses locks does not keep anyone from practising', async () => {
  const locks = { request: () => Promise.reject(new Error('no locks here')) };
  expect(await claimWriter('log', nobody, { locks })).toBe('writer');
});
