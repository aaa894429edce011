/** German: what is said by `picture`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PICTURE = {} as const;
