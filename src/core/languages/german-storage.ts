/** German: what is said of copies, room and broken screens. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_STORAGE = {
  'Last copy: {when}, {since}.': 'Letzte Kopie: {when}, {since}.',
  'No copy was saved yet.': 'Noch keine Kopie gesichert.',
  'No copy was saved yet: 1 session is on this device alone.': 'Noch keine Kopie gesichert: 1 Einheit ist nur auf diesem Gerät.',
  'No copy was saved yet: {n} sessions are on this device alone.':
    'Noch keine Kopie gesichert: {n} Einheiten sind nur auf diesem Gerät.',
  'no session since': 'seitdem keine Einheit',
  '1 session since': 'seitdem 1 Einheit',
  '{n} sessions since': 'seitdem {n} Einheiten',
  'It is time for one.': 'Es ist Zeit für eine.',
  'Ask it to keep everything': 'Bitte ihn, alles zu behalten',
  'This browser has promised to keep it.': 'Dieser Browser hat versprochen, es zu behalten.',
  'This browser may clear it when room is short, or after weeks unused: keep a copy.':
    'Dieser Browser darf es löschen, wenn der Platz knapp wird oder nach Wochen ohne Gebrauch: Bewahre eine Kopie auf.',
  'Keep a copy: a browser may clear what it keeps.': 'Bewahre eine Kopie auf: Ein Browser darf löschen, was er aufhebt.',
  'This browser does not tell how much room is left.': 'Dieser Browser sagt nicht, wie viel Platz noch ist.',
  'It uses {used} here; the browser allows about {left} more.': 'Es braucht hier {used}; der Browser erlaubt noch etwa {left}.',
  'Save a copy of your sessions': 'Sichere eine Kopie deiner Einheiten',
  'Save a copy': 'Kopie sichern',
  Later: 'Später',
  'The copy is handed out. Keep it where this device is not.':
    'Die Kopie ist übergeben. Bewahre sie dort auf, wo dieses Gerät nicht ist.',
  'A newer Stillbeat made this file: load the newest version here, then add it again.':
    'Ein neueres Stillbeat hat diese Datei gemacht: Lade hier die neueste Version und füge sie dann noch einmal hinzu.',
  'It is cut off, or it is no file of Stillbeat: save it again where it comes from.':
    'Sie ist abgeschnitten oder keine Datei von Stillbeat: Sichere sie dort, wo sie herkommt, noch einmal.',
  'It cannot be read right now. Nothing was deleted.': 'Das lässt sich gerade nicht lesen. Nichts wurde gelöscht.',
  '{file} is handed out. Another device adds it in the settings, under Your data.':
    '{file} ist übergeben. Ein anderes Gerät fügt sie in den Einstellungen hinzu, unter Deine Daten.',
  'Save this plan as a file': 'Diesen Plan als Datei sichern',
  'Save this session as a file': 'Diese Einheit als Datei sichern',
  'Its reps as a table (CSV)': 'Ihre Wiederholungen als Tabelle (CSV)',
  'Add a plan from a file: in the settings, under Your data':
    'Einen Plan aus einer Datei hinzufügen: in den Einstellungen, unter Deine Daten',
} as const;
