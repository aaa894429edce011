/** German: what is said by `handover`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_HANDOVER = {} as const;
