/** Owns the wall clock and chance of the page: ISO times with their offset, the monotonic clock, new ids. */
import type { IsoTime, Milliseconds } from '../core/units.ts';

export interface WallClock {
  now(): Date;
  monoMs(): Milliseconds;
  newId(): string;
}

export const pageClock: WallClock = {
  now: () => new Date(),
  monoMs: () => performance.now(),
  newId: () => crypto.randomUUID(),
};

/** `2026-03-01T18:04:05.123+01:00`: the handler's own time of day, and the instant. */
export function isoWithOffset(date: Date, offsetMinutes: number = -date.getTimezoneOffset()): IsoTime {
  const local = new Date(date.getTime() + 60_000 * offsetMinutes).toISOString().slice(0, -1);
  const pad = (n: number) => String(n).padStart(2, '0');
  const size = Math.abs(offsetMinutes);
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${pad(Math.floor(size / 60))}:${pad(size % 60)}`;
}

/** Days between two moments, not rounded; never negative, whatever a clock did. */
export function daysBetween(earlier: IsoTime, later: Date): number {
  return Math.max(0, (later.getTime() - Date.parse(earlier)) / 86_400_000);
}
