/** German: what is said by `observe`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_OBSERVE = {} as const;
