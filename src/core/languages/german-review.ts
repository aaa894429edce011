/** German: what is said by `review` and the list of sessions, and what the words are called. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_REVIEW = {
  // What can be said, pressed or tapped.
  'hold#the word': 'Halten',
  'mark#the word': 'Marker',
  'lifted#the word': 'Abgehoben',
  'void#the word': 'zählt nicht',
  'undo#the word': 'zurücknehmen',
  'pause#the word': 'Pause',
  'resume#the word': 'weiter',
  'finish#the word': 'Schluss',
  'easier#the word': 'leichter',
  'harder#the word': 'schwerer',
  'stay#the word': 'bleiben',
  'unsure#a stretch': 'unsicher',

  // One rep, one call.
  'Pick a bar to see what was heard, a flag to see why.':
    'Wähle einen Balken, um zu sehen, was gehört wurde, eine Fahne, um zu sehen, warum.',
  'Rep {n}': 'Wiederholung {n}',
  'Rep {n}, warm-up': 'Wiederholung {n}, zum Aufwärmen',
  'Put right. {heard}': 'Berichtigt. {heard}',
  'Kept on this step so far: {kept} of {of}.': 'Auf dieser Stufe bisher gehalten: {kept} von {of}.',
  'Put right, it would have called {calls}.': 'Berichtigt wäre die Ansage gewesen: {calls}.',
  'The step was {title}.': 'Die Stufe war {title}.',
  'held {held} of {asked} s': '{held} von {asked} s gehalten',
  'held {held}, paid at once': '{held} gehalten, sofort belohnt',
  'Hold was said again once; the last one counts.': 'Halten wurde noch einmal gesagt; das letzte zählt.',
  'Hold was said again {n} times; the last one counts.': 'Halten wurde noch {n}-mal gesagt; das letzte zählt.',
  'Offered again after a pause.': 'Nach einer Pause wieder angeboten.',
  'Latency: offered again {latency} after the end of the rep before.':
    'Latenz: {latency} nach dem Ende der vorigen Wiederholung wieder angeboten.',
  '{word}, by key': '{word}, mit der Taste',
  '{word}, by button': '{word}, mit dem Knopf',
  '{word}, confidence {sure}': '{word}, Sicherheit {sure}',
  'unsure: {near}. It did not count.': 'unsicher: {near}. Es hat nicht gezählt.',
  'unsure. It did not count.': 'unsicher. Es hat nicht gezählt.',
  'It is no trial, so the rule does not count it.': 'Das ist kein gültiger Versuch, also zählt die Regel ihn nicht.',
  'A warm-up: the rule does not count it.': 'Zum Aufwärmen: die Regel zählt es nicht.',
  'Nothing was called: the step stayed.': 'Keine Ansage: die Stufe blieb.',

  // What was put right.
  'What was put right': 'Was berichtigt wurde',
  '1 correction.': '1 Berichtigung.',
  '{n} corrections.': '{n} Berichtigungen.',
  'As heard: {trials}': 'Wie gehört: {trials}',
  'Show it as it was heard': 'Zeigen, wie es gehört wurde',
  'After rep {rep} it called {called}; put right, it would have called {wouldCall}.':
    'Nach Wiederholung {rep} war die Ansage: {called}; berichtigt wäre sie gewesen: {wouldCall}.',
  'nothing#was called': 'keine',
  'As heard: no rep.': 'Wie gehört: keine Wiederholung.',
  'As heard: {reps}.': 'Wie gehört: {reps}.',
  '; then ': '; dann ',
  '{outcome}, held {held}': '{outcome}, {held} gehalten',
  Undo: 'Zurücknehmen',
  Redo: 'Wiederherstellen',

  // Pain.
  'Could something hurt?': 'Könnte etwas wehtun?',
  'If you cannot tell, ask your veterinarian.': 'Wenn du es nicht sagen kannst, frage deine Tierarztpraxis.',
  'Healthy dogs lift this often, too: it is a reason to ask, not an answer.':
    'Auch gesunde Hunde heben so oft ab: Es ist ein Grund zu fragen, keine Antwort.',

  // Calls and notes.
  'What was called, and why': 'Was angesagt wurde und warum',
  'Nothing was called: the step stayed as it was.': 'Keine Ansage: die Stufe blieb, wie sie war.',
  'at the start': 'am Anfang',
  'after rep {n}': 'nach Wiederholung {n}',
  'No trial: {reason}': 'Zählt nicht: {reason}',
  'rep {n}': 'Wiederholung {n}',
  'Your notes': 'Deine Notizen',
  'A note on this session': 'Eine Notiz zu dieser Einheit',

  // One thing that was heard.
  'Right#the ear was': 'Richtig',
  'It was {word}': 'Es war „{word}“',
  'Take it out': 'Herausnehmen',
  'Not a word': 'Kein Wort',
  '{s} s earlier': '{s} s früher',
  '{s} s later': '{s} s später',
  'It began, in seconds of the session': 'Es begann, in Sekunden der Einheit',
  'Move it': 'Verschieben',
  'not a word': 'kein Wort',
  'right#the ear was': 'richtig',
  'moved#a word, in time': 'verschoben',
  'put in#a word, by hand': 'eingesetzt',
  'by ear': 'vom Ohr',
  'by the browser’s ear': 'vom Ohr des Browsers',
  'by a recording': 'aus einer Aufnahme',
  'by key': 'mit der Taste',
  'by button': 'mit dem Knopf',
  'by review': 'im Rückblick',
  'heard as {word}': 'gehört als {word}',
  'confidence {sure}': 'Sicherheit {sure}',
  'Hear it': 'Anhören',

  // A rep put right.
  'Put rep {n} right': 'Wiederholung {n} berichtigen',
  'Put right what was heard after the last rep': 'Berichtigen, was nach der letzten Wiederholung gehört wurde',
  'Was it heard right?': 'War es richtig gehört?',
  'Nothing was heard here.': 'Hier wurde nichts gehört.',
  'A word is missing': 'Ein Wort fehlt',
  Word: 'Wort',
  'Put it in': 'Einsetzen',
  'It was no trial': 'Das war kein gültiger Versuch',
  Why: 'Warum',
  'a door bell, my slip': 'die Türklingel, mein Versehen',
  'Do not count it': 'Nicht zählen',
  'A note': 'Eine Notiz',
  'A note on rep {n}': 'Eine Notiz zu Wiederholung {n}',
  'Keep the note': 'Notiz behalten',
  'Heard after the last rep': 'Nach der letzten Wiederholung gehört',

  // Next time.
  'Next time': 'Nächstes Mal',
  'Practise again': 'Noch einmal üben',
  Done: 'Fertig',
  'Before it, {n} warm-ups on {step}.': 'Davor {n} zum Aufwärmen auf {step}.',
  '{kept} of {of} kept there carry over.': '{kept} von {of} dort gehalten zählen weiter.',

  // What the ear learns.
  'What the ear learns': 'Was das Ohr lernt',
  'Teaching the ear…': 'Das Ohr lernt …',
  'Teach the ear': 'Das Ohr lernen lassen',
  'Forget what this session taught': 'Vergessen, was diese Einheit gelehrt hat',
  'These are words of {handler}. Choose {handler} in the sound check, and what you put right can teach that ear.':
    'Das sind Wörter von {handler}. Wähle in der Tonprobe {handler}, dann kann jenes Ohr aus deinen Berichtigungen lernen.',
  '1 correction can teach the ear to hear you better.': 'Aus 1 Berichtigung kann das Ohr lernen, dich besser zu hören.',
  '{n} corrections can teach the ear to hear you better.': 'Aus {n} Berichtigungen kann das Ohr lernen, dich besser zu hören.',
  'The ear learnt 1 thing from this session.': 'Das Ohr hat aus dieser Einheit 1 Beispiel gelernt.',
  'The ear learnt {n} things from this session.': 'Das Ohr hat aus dieser Einheit {n} Beispiele gelernt.',
  '1 correction cannot teach it: by key or click, or heard more than a month ago.':
    'Aus 1 Berichtigung kann es nicht lernen: mit Taste oder Klick, oder vor mehr als einem Monat gehört.',
  '{n} corrections cannot teach it: by key or click, or heard more than a month ago.':
    'Aus {n} Berichtigungen kann es nicht lernen: mit Taste oder Klick, oder vor mehr als einem Monat gehört.',
  'Kept. What it changes cannot be told here; it counts from the next session on.':
    'Gemerkt. Was es ändert, lässt sich hier nicht sagen; es gilt ab der nächsten Einheit.',
  'Kept. On this session it makes no difference yet; it counts when the same comes again.':
    'Gemerkt. In dieser Einheit macht es noch keinen Unterschied; es zählt, wenn das Gleiche wiederkommt.',
  'Each sound of this session was judged as if it were new: {words}, {others}.':
    'Jeder Laut dieser Einheit wurde beurteilt, als wäre er neu: {words}, {others}.',
  '1 word': '1 Wort',
  '{n} words': '{n} Wörter',
  '1 other sound': '1 anderer Laut',
  '{n} other sounds': '{n} andere Laute',
  'no word lost': 'kein Wort verloren',
  '1 word lost': '1 Wort verloren',
  '{n} words lost': '{n} Wörter verloren',
  '1 word more heard': '1 Wort mehr gehört',
  '{n} words more heard': '{n} Wörter mehr gehört',
  'no false trigger': 'kein falsch gehörtes Wort',
  '1 false trigger as before': '1 falsch gehörtes Wort wie zuvor',
  '{n} false triggers as before': '{n} falsch gehörte Wörter wie zuvor',
  '1 false trigger fewer ({before} before)': '1 falsch gehörtes Wort weniger (zuvor {before})',
  '{n} false triggers fewer ({before} before)': '{n} falsch gehörte Wörter weniger (zuvor {before})',
  '1 false trigger more ({before} before)': '1 falsch gehörtes Wort mehr (zuvor {before})',
  '{n} false triggers more ({before} before)': '{n} falsch gehörte Wörter mehr (zuvor {before})',

  // Nothing yet, and what stands above and below.
  'What happened': 'Was war',
  'No reps yet.': 'Noch keine Wiederholung.',
  'A session becomes a picture like this one. Say hold when the dog settles, and your marker when it has earned it.':
    'Aus einer Einheit wird so ein Bild. Sag Halten, wenn der Hund ruhig liegt, und deinen Marker, wenn er ihn verdient hat.',
  'An invented session as bars on stairs': 'Eine erfundene Einheit als Balken auf Stufen',
  'Invented, to show how it is read:': 'Erfunden, um zu zeigen, wie man es liest:',
  'What the ear was not sure of': 'Wobei das Ohr nicht sicher war',
  '{n} of {of} answered.': '{n} von {of} beantwortet.',
  'The session as bars on stairs': 'Die Einheit als Balken auf Stufen',
  'What it rests on': 'Worauf das beruht',
  'The same as a table, {rows}': 'Dasselbe als Tabelle, {rows}',
  '1 rep': '1 Wiederholung',
  '{n} reps': '{n} Wiederholungen',

  // All sessions.
  'This session is not on this device': 'Diese Einheit ist nicht auf diesem Gerät',
  'All sessions': 'Alle Einheiten',
  'Score it again from a video: a second observer': 'Von einem Video noch einmal auswerten: eine zweite Person beobachtet',
  Sessions: 'Einheiten',
  'Nothing to review yet. After a session its picture, its table and where to start next time are kept here.':
    'Noch nichts zum Zurückblicken. Nach einer Einheit stehen hier ihr Bild, ihre Tabelle und womit es nächstes Mal losgeht.',
  'Practise a first session': 'Die erste Einheit üben',
  'Older sessions, {n} more': 'Ältere Einheiten, {n} weitere',
  'not ended': 'nicht beendet',
} as const;
