/** What the browser promises about what is kept. */
import { expect, test } from 'vitest';
import { askToPersist, persistence, roomLeft } from '../../src/store/persist.ts';

const refuse = () => Promise.reject(new Error('not here'));

test('the browser promises, declines or does not say', async () => {
  expect(await askToPersist({ persist: async () => true })).toBe('kept');
  expect(await askToPersist({ persist: async () => false })).toBe('may-be-cleared');
  expect(await askToPersist({})).toBe('not-told');
  expect(await askToPersist({ persist: refuse })).toBe('not-told');
  expect(await persistence({ persisted: async () => true })).toBe('kept');
});

test('room left is told in bytes, or not at all', async () => {
  expect(await roomLeft({ estimate: async () => ({ usage: 5, quota: 100 }) })).toEqual({ usedBytes: 5, quotaBytes: 100 });
  expect(await roomLeft({ estimate: async () => ({}) })).toBeNull();
  expect(await roomLeft({ estimate: refuse })).toBeNull();
  expect(await roomLeft({})).toBeNull();
});
