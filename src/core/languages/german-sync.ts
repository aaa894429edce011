/** German: what is said by `sync`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SYNC = {} as const;
