/** When a copy is asked for, and what its age says. */
import { describe, expect, test } from 'vitest';
import { ageOfCopy, COPY_AFTER } from '../../src/core/copies.ts';
import type { LibraryEvent } from '../../src/core/event.ts';
import { foldLibrary } from '../../src/core/library.ts';

const on = (day: number, hour = 18) => `2026-03-${String(day).padStart(2, '0')}T${hour}:00:00.000+01:00`;
const begun = (seq: number, day: number, device = 'phone') => ({ device, seq, at: on(day) });
const copied = (seq: number, day: number, device = 'phone'): LibraryEvent => ({
  ...{ id: `${device}:${seq}`, device, seq, session: null, type: 'copy-saved', version: 1, at: on(day), monoMs: 0 },
  body: { sessions: 1 },
});
const NONE = foldLibrary([]).copies;

describe('the age of a copy', () => {
  test('counts the sessions that were begun after it', () => {
    const { copies } = foldLibrary([copied(10, 2)]);
    const age = ageOfCopy(copies, [begun(1, 1), begun(20, 3), begun(30, 14)], 'phone', on(14, 20));
    expect(age).toEqual({ daysAgo: 12, sessionsSince: 2, isDue: false });
  });

  test('of several copies the latest counts', () => {
    const { copies } = foldLibrary([copied(10, 2), copied(25, 5)]);
    expect(ageOfCopy(copies, [begun(20, 3), begun(30, 6)], 'phone', on(6))).toMatchObject({ daysAgo: 1, sessionsSince: 1 });
  });

  test('a clock that was set back makes no session older than the copy, and no copy younger than today', () => {
    const { copies } = foldLibrary([copied(10, 20)]);
    expect(ageOfCopy(copies, [begun(20, 3)], 'phone', on(3))).toEqual({ daysAgo: 0, sessionsSince: 1, isDue: false });
  });

  test('a copy made on another phone is none of this one, and its sessions are on two devices already', () => {
    const { copies } = foldLibrary([copied(10, 2, 'old-phone')]);
    const sessions = [begun(1, 1, 'old-phone'), begun(20, 3, 'old-phone'), begun(1, 4)];
    expect(ageOfCopy(copies, sessions, 'phone', on(5))).toEqual({ daysAgo: null, sessionsSince: 1, isDue: false });
  });
});

describe('a copy is asked for', () => {
  test('after five sessions, whether there ever was a copy or not', () => {
    const sessions = Array.from({ length: COPY_AFTER.sessions }, (_, nth) => begun(20 + nth, 3));
    const { copies } = foldLibrary([copied(10, 2)]);
    for (const held of [copies, NONE]) {
      expect(ageOfCopy(held, sessions, 'phone', on(3)).isDue).toBe(true);
      expect(ageOfCopy(held, sessions.slice(1), 'phone', on(3)).isDue).toBe(false);
    }
  });

  test('after fourteen days with one session in them, and not after fourteen days of rest', () => {
    const { copies } = foldLibrary([copied(10, 2)]);
    expect(ageOfCopy(copies, [begun(20, 3)], 'phone', on(16)).isDue).toBe(true);
    expect(ageOfCopy(copies, [begun(20, 3)], 'phone', on(15)).isDue).toBe(false);
    expect(ageOfCopy(copies, [begun(1, 1)], 'phone', on(30)).isDue).toBe(false);
    expect(ageOfCopy(NONE, [begun(1, 1)], 'phone', on(15)).isDue).toBe(true);
  });
});
