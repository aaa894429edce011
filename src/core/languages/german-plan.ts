/** German: what is said by `plan`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PLAN = {} as const;
