/** The rate at which the ear works, and at which what it hears is kept. */
import type { Hertz } from './units.ts';

/**
 * 16 kHz: speech holds what tells words apart below 7 kHz (ITU-T G.722 samples wideband speech, 50 to 7000 Hz, at this rate; from memory).
 * The recipe of the ear and the weights of its network were made at it: another rate needs both anew.
 */
export const EAR_RATE_HZ: Hertz = 16_000;
