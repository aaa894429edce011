/** German: what is said by `settings`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SETTINGS = {
  Language: 'Sprache',
  'as the browser wishes': 'wie der Browser es wünscht',
} as const;
