/** German: what `session` says of itself: why something could not begin, be added or be deleted. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SESSION = {
  'This plan is not on this device.': 'Dieser Plan ist nicht auf diesem Gerät.',
  'The last session on this plan cannot be read, so where to start is not known. Nothing was deleted: save a copy in the settings, then load the page again.':
    'Die letzte Einheit zu diesem Plan lässt sich nicht lesen, darum ist unbekannt, wo es losgeht. Nichts wurde gelöscht: Sichere in den Einstellungen eine Kopie und lade dann die Seite neu.',
  'This session cannot be read right now. Nothing was deleted: load the page again.':
    'Diese Einheit lässt sich gerade nicht lesen. Nichts wurde gelöscht: Lade die Seite neu.',
  'This session cannot go on: its records do not fit together. They are kept; begin a new session.':
    'Diese Einheit kann nicht weitergehen: Ihre Einträge passen nicht zusammen. Sie bleiben gespeichert; beginne eine neue Einheit.',
  'This session cannot be read right now.': 'Diese Einheit lässt sich gerade nicht lesen.',
  'There is no such word in this session ({what}).': 'So ein Wort gibt es in dieser Einheit nicht ({what}).',
  'No rep ends with this word ({what}).': 'Mit diesem Wort endet keine Wiederholung ({what}).',
  'The time must lie within the session, got {s} s.': 'Die Zeit muss in der Einheit liegen, angegeben sind {s} s.',
  'It holds no handler’s words. A copy of everything is added in the settings.':
    'Darin sind keine Wörter eines Menschen. Eine Kopie von allem fügst du in den Einstellungen hinzu.',
  'event {id}: expected a take of {handler}, got {type}':
    'Ereignis {id}: erwartet war eine Aufnahme von {handler}, da ist {type}',
  'A session is running: finish it first.': 'Eine Einheit läuft: Beende sie zuerst.',
  'Some reps are not saved yet: make room on this device first.':
    'Einige Wiederholungen sind noch nicht gespeichert: Schaffe zuerst Platz auf diesem Gerät.',
  'Event {id} is here already with other content; nothing was changed.':
    'Ereignis {id} ist mit anderem Inhalt schon hier; nichts wurde verändert.',
  'This device did not answer in time: whether it was done is not known. Load the page again and look.':
    'Dieses Gerät hat nicht rechtzeitig geantwortet: Ob es geschehen ist, ist unbekannt. Lade die Seite neu und sieh nach.',
  'It could not be saved ({kind}); nothing was changed.': 'Es ließ sich nicht speichern ({kind}); nichts wurde verändert.',
  'The app is not open.': 'Die App ist nicht offen.',
  'the app is not open': 'die App ist nicht offen',
  'what is kept on this device cannot be read ({kind})': 'Was auf diesem Gerät gespeichert ist, lässt sich nicht lesen ({kind})',
} as const;
