/** German: what is said by `exam`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_EXAM = {} as const;
