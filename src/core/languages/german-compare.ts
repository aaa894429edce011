/** German: what is said by `compare`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_COMPARE = {} as const;
