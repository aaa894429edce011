/** The classic survival example: weeks in remission under 6-MP and placebo (Freireich et al. 1963, flag M), read as holds. */
import type { Hold } from '../../../src/core/statistics/hold-time.ts';

/** `6+` is censored at 6, which for us is a hold marked at 6 s. */
function holds(text: string): Hold[] {
  return text.split(' ').map((word) => ({ heldForS: Number.parseFloat(word), end: word.endsWith('+') ? 'marked' : 'lifted' }));
}

export const SIX_MP = holds('6 6 6 6+ 7 9+ 10 10+ 11+ 13 16 17+ 19+ 20+ 22 23 25+ 32+ 32+ 34+ 35+');
export const PLACEBO = holds('1 1 2 2 3 4 4 5 5 8 8 8 8 11 11 12 12 15 17 22 23');
