/** German: what is said by `progress`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PROGRESS = {} as const;
