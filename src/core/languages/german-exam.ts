/** German: what is said by `exam`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_EXAM = {
  'This examination is not on this device.': 'Diese Untersuchung ist nicht auf diesem Gerät.',
  'Nothing is on its list yet.': 'Auf ihrer Liste steht noch nichts.',
  Examination: 'Untersuchung',
} as const;
