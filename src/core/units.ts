/** Names the units that numbers carry. Aliases, not brands: arithmetic stays plain, the name tells the unit. */

/** A length of time or a moment on the session clock, in seconds. */
export type Seconds = number;

/** Milliseconds of a monotonic clock (`performance.now`), never of the wall clock. */
export type Milliseconds = number;

/** A moment on the wall clock: ISO 8601 with its offset, as in `2026-03-01T18:04:05.123+01:00`. */
export type IsoTime = string;

/** A share between 0 and 1. Never shown without its n. */
export type Share = number;

/** Frequency in hertz. */
export type Hertz = number;

/** Level in decibels relative to full scale (1.0 = 0 dB). */
export type Decibels = number;
