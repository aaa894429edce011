/** How long a window of a free rule may be. */

/** Longest window of a free rule; 2^10 outcomes are the most that the exact chain is asked to look at. */
export const LONGEST_SLIDING = 10;

/** Longest block of a free rule; a block needs only its counts, so it may be longer than a sliding window. */
export const LONGEST_BLOCK = 20;
