/** German: what is said by `sound-check`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SOUND_CHECK = {} as const;
