/** German: what is said by `review`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_REVIEW = {} as const;
