/** German: what is said by `core`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_CORE = {} as const;
