/** German: what is said by `practice`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PRACTICE = {} as const;
