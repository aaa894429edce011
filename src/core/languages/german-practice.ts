/** German: what is said by `practice`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PRACTICE = {
  'The microphone is not allowed. Allow it in the browser’s settings for this page; keys and buttons work meanwhile.':
    'Das Mikrofon ist nicht erlaubt. Erlaube es für diese Seite in den Einstellungen des Browsers; Tasten und Knöpfe gehen derweil.',
  'No microphone is connected. Keys and buttons work.': 'Kein Mikrofon ist angeschlossen. Tasten und Knöpfe gehen.',
  'A page needs HTTPS to be given a microphone; the README says how. Keys and buttons work.':
    'Eine Seite bekommt das Mikrofon nur über HTTPS; wie, steht in der README. Tasten und Knöpfe gehen.',
  'Another app has the microphone. Close it; it is tried again.':
    'Eine andere App hat das Mikrofon. Schließe sie; es wird wieder versucht.',
  'The microphone could not be opened; it is tried again. Keys and buttons work.':
    'Das Mikrofon ließ sich nicht öffnen; es wird wieder versucht. Tasten und Knöpfe gehen.',
  'The microphone went away; it is tried again.': 'Das Mikrofon ist weg; es wird wieder versucht.',
  'The microphone gives no sound at all. Is it muted or covered? Keys and buttons work.':
    'Das Mikrofon gibt gar keinen Ton. Ist es stumm oder verdeckt? Tasten und Knöpfe gehen.',
  'The microphone was unplugged or taken; it is tried again.':
    'Das Mikrofon wurde abgezogen oder weggenommen; es wird wieder versucht.',
  'The system muted the microphone. Keys and buttons work.':
    'Das System hat das Mikrofon stumm geschaltet. Tasten und Knöpfe gehen.',
  'The page was hidden, and heard nothing meanwhile.': 'Die Seite war verdeckt und hat so lange nichts gehört.',
  'A call or another app has the sound. Tap to go on.': 'Ein Anruf oder eine andere App hat den Ton. Tippe, damit es weitergeht.',
  'The listener stopped; it is started again.': 'Das Ohr ist stehen geblieben; es wird neu gestartet.',
  'This browser has no recogniser of its own. Use your taught words, keys or buttons.':
    'Dieser Browser hat keine eigene Spracherkennung. Nimm deine beigebrachten Wörter, Tasten oder Knöpfe.',
  'This browser’s recogniser cannot work on the device, and you did not allow sound to leave it.':
    'Die Spracherkennung dieses Browsers kann nicht auf dem Gerät arbeiten, und du hast nicht erlaubt, dass Ton es verlässt.',
  'The browser does not allow its recogniser here. Use your taught words, keys or buttons.':
    'Der Browser erlaubt seine Spracherkennung hier nicht. Nimm deine beigebrachten Wörter, Tasten oder Knöpfe.',
  'The browser’s recogniser does not know this language: choose another in the settings.':
    'Die Spracherkennung des Browsers kann diese Sprache nicht: Wähle in den Einstellungen eine andere.',
  'The browser’s recogniser needs a network, and there is none; it is tried again.':
    'Die Spracherkennung des Browsers braucht ein Netz, und es gibt keins; es wird wieder versucht.',
  'The recogniser gets no sound; it is tried again.': 'Die Spracherkennung bekommt keinen Ton; es wird wieder versucht.',
  'Another page or app took the recogniser; it is tried again.':
    'Eine andere Seite oder App hat die Spracherkennung genommen; es wird wieder versucht.',
  'The recogniser stops at once; it is tried again.': 'Die Spracherkennung hört gleich wieder auf; es wird wieder versucht.',
  'The recogniser does not start; it is tried again.': 'Die Spracherkennung startet nicht; es wird wieder versucht.',
  'The recogniser does not answer. Close the app and open it again; keys and buttons work.':
    'Die Spracherkennung antwortet nicht. Schließe die App und öffne sie neu; Tasten und Knöpfe gehen.',
  'Another tab listens. Tap to listen here.': 'Ein anderer Tab hört zu. Tippe, damit dieser zuhört.',
  'The browser fetches its language; this can take a minute.': 'Der Browser holt seine Sprache; das kann eine Minute dauern.',
  Listening: 'Hört zu',
  'Opening the microphone': 'Öffnet das Mikrofon',
  'Cannot hear': 'Hört nichts',
  Paused: 'Pause',
  'Not listening': 'Hört nicht zu',
  Unsure: 'Unsicher',
  'No words taught yet: use the buttons or keys, or teach it in the sound check.':
    'Noch keine Wörter beigebracht: Nimm Knöpfe oder Tasten, oder geh zur Tonprobe.',
  'Listen again': 'Wieder zuhören',

  '“{word}”': '„{word}“',
  '“{word}” taken back': '„{word}“ zurückgenommen',
  Stay: 'Bleiben',
  'Undo#in practice': 'Doch nicht',
  'go on': 'weiter',

  'No session is running': 'Gerade läuft keine Einheit',
  'A session begins with a tap: browsers open the microphone for nothing less.':
    'Eine Einheit beginnt mit einem Tippen: Ohne das öffnet kein Browser das Mikrofon.',
  'Choose a dog': 'Einen Hund wählen',
  'Go on': 'Weiter',
  Pause: 'Pause',
  Finish: 'Schluss',
  'Warm-up, not counted: {n} to go': 'Aufwärmen, zählt nicht: noch {n}',
  'Easier step': 'Leichtere Stufe',
  'Harder step': 'Schwerere Stufe',
  'Seconds held': 'Gehaltene Sekunden',
  Hold: 'Halten',
  Mark: 'Marker',
  Lifted: 'Abgehoben',
  'Not a trial': 'Zählt nicht',
  'Not offered': 'Nicht angeboten',

  paused: 'Pause',
  'Nothing you say counts now. Tap “Go on” when you are ready.':
    'Was du jetzt sagst, zählt nicht. Tippe auf „Weiter“, wenn du so weit bist.',
  'hm?': 'hm?',
  'say it again': 'sag es noch einmal',
  'Unsure: {words}?': 'Unsicher: {words}?',
  ready: 'bereit',
  'Say your hold word when the dog settles.': 'Sag dein Wort für Halten, wenn der Hund zur Ruhe kommt.',
  'Tap Hold, or press its key, when the dog settles.': 'Tippe auf Halten oder drücke seine Taste, wenn der Hund zur Ruhe kommt.',
  'Paid at {paid} of {criterion} s: not counted.': 'Belohnt bei {paid} von {criterion} s: zählt nicht.',

  'no trials on this step yet': 'hier noch kein Versuch',
  '{kept} of {of} kept on this step': '{kept} von {of} hier gehalten',
  '{n} of {of} reps': '{n} von {of} Wdh.',
  '{n} of {of} min': '{n} von {of} min',
  '1 treat left': 'noch 1 Futterstück',
  '{n} treats left': 'noch {n} Futterstücke',
  'Criterion {s} s': 'Kriterium {s} s',
  'Criterion {s} s, of the rep that is over': 'Kriterium {s} s, des beendeten Versuchs',
} as const;
