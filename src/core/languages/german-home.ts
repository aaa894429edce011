/** German: what is said by `home`, the bar, the notices and the rescue screen. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_HOME = {
  Dogs: 'Hunde',
  Review: 'Rückblick',
  Progress: 'Verlauf',
  Settings: 'Einstellungen',
  Places: 'Orte',
} as const;
