/** German: what is said by `dogs`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_DOGS = {} as const;
