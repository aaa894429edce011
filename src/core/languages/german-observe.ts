/** German: what is said by `observe`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_OBSERVE = {
  // The screen.
  'A session is running': 'Eine Einheit läuft',
  'Finish it first': 'Beende sie zuerst',
  'A second observer: {dog}, {plan}': 'Eine zweite Person beobachtet: {dog}, {plan}',
  'Score the session again from a recording of it, without looking at what was noted in practice. Then compare.':
    'Werte die Einheit von einer Aufnahme noch einmal aus, ohne nachzusehen, was beim Üben notiert wurde. Dann vergleiche.',
  'Back to the review': 'Zurück zum Rückblick',
  'Scored before': 'Schon ausgewertet',
  '{observer}, {n} words from {file}': '{observer}, {n} Wörter aus {file}',
  'The app’s ear': 'Das Ohr der App',
  Open: 'Öffnen',
  Scoring: 'Auswerten',
  'Press at the beginning of each word, or when you see it.': 'Drücke am Anfang jedes Wortes, oder wenn du es siehst.',
  'Being always a little late does no harm: it is taken out when the two are lined up.':
    'Immer ein wenig zu spät zu sein schadet nicht: Das wird herausgerechnet, wenn beides übereinandergelegt wird.',
  'Or let the app’s ear score the sound of it': 'Oder lass das Ohr der App den Ton auswerten',
  'It begins a scoring of its own: save yours first ({n} noted), or it is replaced.':
    'Es beginnt eine eigene Auswertung: Speichere deine zuerst ({n} notiert), sonst wird sie ersetzt.',
  'Saved beside the session. It changes nothing in it.': 'Neben der Einheit gespeichert. An ihr ändert sich nichts.',
  'Practice and second observer': 'Üben und zweite Person',
  'At this offset the recording shows nothing of the session.':
    'Bei dieser Verschiebung zeigt die Aufnahme nichts von der Einheit.',
  'Save this scoring': 'Diese Auswertung speichern',

  // The recording.
  'The recording': 'Die Aufnahme',
  'A video or a sound recording of this session': 'Ein Video oder eine Tonaufnahme dieser Einheit',
  'To look at the places again: {file}': 'Um die Stellen wieder anzusehen: {file}',
  'Or drop it here. It plays on this device and goes nowhere.':
    'Oder lege sie hier ab. Sie wird auf diesem Gerät abgespielt und geht nirgendwohin.',
  'This browser cannot play {file}. Save it as MP4, WebM, WAV or MP3, then choose it again.':
    'Dieser Browser kann {file} nicht abspielen. Speichere es als MP4, WebM, WAV oder MP3 und wähle es noch einmal.',

  // Noting.
  'No trial': 'Zählt nicht',
  'Note a word at this moment': 'Ein Wort zu diesem Moment notieren',
  'Nothing noted yet.': 'Noch nichts notiert.',
  '{n} noted': '{n} notiert',
  '; the latest: {word}': '; zuletzt: {word}',
  '{word} at {place}': '{word} bei {place}',
  'All that is noted, {n}': 'Alles Notierte, {n}',
  'Go to {place}': 'Zu {place} gehen',
  'Go there': 'Hingehen',
  'Strike out {word}': '{word} streichen',
  'Strike out': 'Streichen',

  // The ear.
  'Nobody has taught the ear a word yet, so it cannot score for you.':
    'Noch niemand hat dem Ohr ein Wort beigebracht, also kann es nicht für dich auswerten.',
  'The file is larger than {mb} MB. Save its sound alone, or cut it.':
    'Die Datei ist größer als {mb} MB. Speichere nur ihren Ton, oder kürze sie.',
  Stop: 'Anhalten',
  'Let the ear listen': 'Das Ohr hören lassen',
  'Reading the file…': 'Die Datei wird gelesen …',
  'Heard {until} of {length}': '{until} von {length} gehört',
  'It heard {n} words; {unsure} stretches were unsure and do not count.':
    'Es hat {n} Wörter gehört; {unsure} Stellen waren unsicher und zählen nicht.',
  'No sound that this browser can read is in this file.': 'In dieser Datei ist kein Ton, den dieser Browser lesen kann.',
  'The takes of this handler are not enough to listen by. Teach more in the sound check.':
    'Die Aufnahmen dieses Menschen reichen nicht, um danach zu hören. Nimm in der Tonprobe mehr auf.',
  'Stopped. What was heard so far is not used.': 'Angehalten. Was bisher gehört wurde, wird nicht verwendet.',
  'It could not be heard ({what}).': 'Es konnte nicht gehört werden ({what}).',

  // Lining up.
  'Lining up': 'Übereinanderlegen',
  'Lined up by': 'Übereinandergelegt nach',
  'the best fit': 'bester Übereinstimmung',
  'the first hold of both': 'dem ersten Halten von beiden',
  'by hand': 'Hand',
  'You two have no such word in common. Line up by hand, or note a hold that the practice noted too.':
    'Ihr habt kein solches Wort gemeinsam. Lege von Hand übereinander, oder notiere ein Halten, das auch beim Üben notiert wurde.',
  'The recording began {s} s before the session: {met} words meet, of {first} and {second}.':
    'Die Aufnahme begann {s} s vor der Einheit: {met} Wörter treffen sich, von {first} und {second}.',
  'The recording began {s} s into the session: {met} words meet, of {first} and {second}.':
    'Die Aufnahme begann {s} s nach Beginn der Einheit: {met} Wörter treffen sich, von {first} und {second}.',
  'Few words meet: is this the recording of this session?': 'Wenige Wörter treffen sich: Ist das die Aufnahme dieser Einheit?',

  // Agreement.
  Agreement: 'Übereinstimmung',
  'Neither of you noted a word in this stretch.': 'Keiner von euch hat auf dieser Strecke ein Wort notiert.',
  '{agreed} of {of} words agree to within {s} s.': '{agreed} von {of} Wörtern stimmen auf {s} s genau überein.',
  '{reps} noted in practice alone': '{reps} nur beim Üben notiert',
  '{reps} by the second observer alone': '{reps} nur von der zweiten Person',
  'Besides: {said}.': 'Außerdem: {said}.',
  'No rep was noted by both.': 'Keine Wiederholung wurde von beiden notiert.',
  'Of 1 rep that both noted, {same} ended alike: {kappa}.':
    'Von 1 Wiederholung, die beide notiert haben, endeten {same} gleich: {kappa}.',
  'Of {n} reps that both noted, {same} ended alike: {kappa}.':
    'Von {n} Wiederholungen, die beide notiert haben, endeten {same} gleich: {kappa}.',
  'every end was the same, so kappa has no value': 'jedes Ende war gleich, darum hat Kappa keinen Wert',
  'kappa {value}': 'Kappa {value}',
  'Not compared, because only one of you could see there: {n}.':
    'Nicht verglichen, weil dort nur einer von euch sehen konnte: {n}.',
  'Every measure': 'Jedes Maß',
  'Under “all” a word counts only against the same word.': 'Unter „alle“ zählt ein Wort nur gegen das gleiche Wort.',
  'The trade usually asks for 80 of 100 or more, on a fifth to a third of all sessions.':
    'Im Fach werden meist 80 von 100 oder mehr verlangt, bei einem Fünftel bis einem Drittel aller Einheiten.',
  'No difference in any word.': 'Kein Unterschied bei irgendeinem Wort.',
  'Where you differ, {n}': 'Wo ihr euch unterscheidet, {n}',
  'Look at {place}': '{place} ansehen',
  'Look#at a place in the film': 'Ansehen',
  'Measures of agreement': 'Maße der Übereinstimmung',
  Measure: 'Maß',
  'noted in practice': 'beim Üben notiert',
  'noted by the second': 'von der zweiten Person notiert',
  'total count: smaller over larger': 'Gesamtzahl: kleinere durch größere',
  'within {s} s': 'innerhalb von {s} s',
  'exact count in an interval': 'genaue Zahl in einem Abschnitt',
  'both or neither in an interval': 'beide oder keiner in einem Abschnitt',
  'mean count per interval': 'mittlere Zahl je Abschnitt',
  '{n} of {of}': '{n} von {of}',
  'From {from} to {to} of the session, 1 interval of {s} s for each word.':
    'Von {from} bis {to} der Einheit, 1 Abschnitt von {s} s für jedes Wort.',
  'From {from} to {to} of the session, {n} intervals of {s} s for each word.':
    'Von {from} bis {to} der Einheit, {n} Abschnitte von {s} s für jedes Wort.',
  '{word} in practice, nothing by the second observer': '{word} beim Üben, nichts von der zweiten Person',
  '{word} by the second observer, nothing in practice': '{word} von der zweiten Person, nichts beim Üben',
  '{word} in practice, {other} by the second observer': '{word} beim Üben, {other} von der zweiten Person',
} as const;
