/** German: the picture, bars on stairs, its key and its table. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PICTURE = {
  'How to read the bars': 'So liest man die Balken',
  'warm-up': 'Aufwärmen',
  'put right': 'berichtigt',
  'Put right.': 'Berichtigt.',
  call: 'Ansage',
  'a step': 'eine Stufe',
  'rest#the call': 'Pause machen',
  'not called out, or your own word': 'nicht angesagt, oder dein eigenes Wort',
  'Every rep: time, step, held, outcome, what was called':
    'Jede Wiederholung: Zeit, Stufe, Haltezeit, Ergebnis, was angesagt wurde',
  time: 'Zeit',
  held: 'gehalten',
  outcome: 'Ergebnis',
  called: 'Ansage',
  '{outcome}, warm-up': '{outcome}, zum Aufwärmen',
  '{outcome} (put right)': '{outcome} (berichtigt)',
  'Before rep 1: {call}': 'Vor Wiederholung 1: {call}',
  'After rep {n}: {call}': 'Nach Wiederholung {n}: {call}',
  'Lying on her side on the bath mat': 'Liegt auf der Seite auf der Badematte',
} as const;
