/** German: what is said by `settings`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SETTINGS = {
  Language: 'Sprache',
  'as the browser wishes': 'wie der Browser es wünscht',

  'Beats and calls': 'Schläge und Ansagen',
  'How cues reach you': 'Wie Signale zu dir kommen',
  Sound: 'Ton',
  'A flash of the screen’s edge, no sound': 'Ein Blitz am Bildschirmrand, kein Ton',
  Both: 'Beides',
  Volume: 'Lautstärke',
  'Say the calls in words, with a voice of this device': 'Ansagen in Worten, mit einer Stimme dieses Geräts',
  'Let your dog meet each sound first, paired with food.': 'Mach deinen Hund erst mit jedem Ton bekannt, zusammen mit Futter.',
  'a second': 'eine Sekunde',
  'criterion reached': 'Kriterium erreicht',
  'rest#the sound': 'Pause machen',
  'cannot hear': 'hört nichts',

  'Stop while ahead': 'Aufhören, solange es gut läuft',
  'Rest after so many reps (1 to 100)': 'Pause nach so vielen Wiederholungen (1 bis 100)',
  'Rest after so many minutes (1 to 60)': 'Pause nach so vielen Minuten (1 bis 60)',
  'Treats at hand (empty: not counted)': 'Futterstücke zur Hand (leer: nicht gezählt)',
  'A dog may have limits of its own, for a day and for a session: of all of them the least wins. The dog’s screen tells which.':
    'Ein Hund kann eigene Grenzen haben, für den Tag und für die Einheit: Von allen gilt die kleinste. Welche das ist, steht auf der Seite des Hundes.',

  'Who and where': 'Wer und wo',
  'The next session: {handler}, {place}.': 'Die nächste Einheit: {handler}, {place}.',

  'hold: the dog has settled': 'Halten: der Hund ist zur Ruhe gekommen',
  'mark: paid': 'Marker: belohnt',
  'lifted: the head came up': 'Abgehoben: der Kopf kam hoch',
  'not a trial, or not offered': 'zählt nicht, oder nicht angeboten',
  'undo the last word': 'das letzte Wort zurücknehmen',
  'easier step': 'leichtere Stufe',
  'harder step': 'schwerere Stufe',
  'stay: the call is not followed': 'bleiben: der Ansage wird nicht gefolgt',
  'Keys, pedals and remotes': 'Tasten, Pedale und Fernbedienungen',
  'They are keyboards to the phone. Tap the box beside a word, then press what you want to use for it; a word has two at most.':
    'Für das Telefon sind sie Tastaturen. Tippe auf das Feld neben einem Wort und drücke dann, was du dafür nehmen willst; ein Wort hat höchstens zwei.',
  'Without a key now: {words}. A key means one word only.': 'Jetzt ohne Taste: {words}. Eine Taste bedeutet nur ein Wort.',
  'The usual keys again': 'Wieder die üblichen Tasten',
  '{word}: press to choose a key': '{word}: drücken, um eine Taste zu wählen',
  'Press it now…': 'Jetzt drücken …',
  'none#no key': 'keine',

  'Another ear: the browser’s own recogniser': 'Ein anderes Ohr: die Spracherkennung des Browsers',
  'For words that need no teaching. It is coarser than your taught words: it hears later and tells no exact moment, so seconds held are less exact. Only one of the two listens.':
    'Für Wörter, die niemand beibringen muss. Sie ist gröber als deine beigebrachten Wörter: Sie hört später und nennt keinen genauen Moment, darum sind die gehaltenen Sekunden weniger genau. Nur eines von beiden hört zu.',
  'Listen with the browser’s recogniser instead of my taught words':
    'Mit der Spracherkennung des Browsers zuhören statt mit meinen beigebrachten Wörtern',
  'Sound may leave this device: this browser’s recogniser may send what the microphone hears to its maker':
    'Ton darf dieses Gerät verlassen: Die Spracherkennung dieses Browsers schickt womöglich an ihren Hersteller, was das Mikrofon hört',
  'Without that, it is asked to work on the device, where the browser can; it may fetch its language for that.':
    'Ohne das soll sie auf dem Gerät arbeiten, wo der Browser es kann; dafür holt sie vielleicht ihre Sprache.',
  'Type what you say for each word: it knows none yet.': 'Schreib, was du für jedes Wort sagst: Noch kennt sie keins.',
  '“{said}” ({word}) would be taken for {other}.': '„{said}“ ({word}) würde für {other} gehalten.',
  'What you say for {word} (several: with commas)': 'Was du für {word} sagst (mehrere: mit Komma)',
  'Language, as in en-GB': 'Sprache, etwa de-DE',
  'Keep these': 'Diese merken',
  'Choose other words; nothing was changed.': 'Nimm andere Wörter; nichts wurde verändert.',

  Privacy: 'Datenschutz',
  'Of every heard word the ear keeps numbers for a month, so that a correction can teach it. They are no sound, and nobody can play them.':
    'Von jedem gehörten Wort behält das Ohr einen Monat lang Zahlen, damit es aus einer Korrektur lernen kann. Sie sind kein Ton, und niemand kann sie abspielen.',
  'Keep the sound of words too: 1.5 s each, on this device, for 30 days. You can play them in the review.':
    'Auch den Ton der Wörter behalten: je 1,5 s, auf diesem Gerät, 30 Tage lang. Im Rückblick kannst du ihn abspielen.',
  'Delete the kept sounds': 'Den behaltenen Ton löschen',
  'What others made that this app is built on, and their terms':
    'Was andere gemacht haben und worauf diese App gebaut ist, mit ihren Bedingungen',
  '1 sound is kept.': '1 Tonstück ist behalten.',
  '{n} sounds are kept.': '{n} Tonstücke sind behalten.',

  'Your data': 'Deine Daten',
  'Everything is on this device, and only here.': 'Alles ist auf diesem Gerät, und nur hier.',
  'Add from a copy': 'Aus einer Kopie hinzufügen',
  '{file} is handed out. It holds the recordings of your words too: give it only to whom you trust.':
    '{file} ist übergeben. Darin sind auch die Aufnahmen deiner Wörter: Gib sie nur jemandem, dem du vertraust.',
  'Reading…': 'Liest …',
  'Nothing was changed. {why}': 'Nichts wurde verändert. {why}',
  'Adding…': 'Fügt hinzu …',
  'Added: {records}.': 'Hinzugefügt: {records}.',
  '1 record': '1 Eintrag',
  '{n} records': '{n} Einträge',
  '1 dog': '1 Hund',
  '{n} dogs': '{n} Hunde',
  '1 plan': '1 Plan',
  '{n} plans': '{n} Pläne',
  '1 session': '1 Einheit',
  '{n} sessions': '{n} Einheiten',
  '1 take of a word': '1 Aufnahme eines Worts',
  '{n} takes of words': '{n} Aufnahmen von Wörtern',
  '1 other entry': '1 anderer Eintrag',
  '{n} other entries': '{n} andere Einträge',
  'In this copy of {day}': 'In dieser Kopie vom {day}',
  'New: {what}': 'Neu: {what}',
  'nothing#new': 'nichts',
  'Here already: {what}': 'Schon hier: {what}',
  'Refused: {what}': 'Abgelehnt: {what}',
  'and {n} more': 'und {n} weitere',
  'Add what is new': 'Das Neue hinzufügen',
  'Leave it': 'Lieber nicht',

  Delete: 'Löschen',
  'Deleted is deleted: there is no way back but a copy you saved.':
    'Gelöscht ist gelöscht: Zurück führt nur eine Kopie, die du gesichert hast.',
  'Delete {name}…': '{name} löschen …',
  'Delete everything…': 'Alles löschen …',
  'Nothing was deleted. {why}': 'Nichts wurde gelöscht. {why}',
  '{dog} is deleted from this device.': '{dog} ist von diesem Gerät gelöscht.',
  'Delete for good?': 'Endgültig löschen?',
  'Keep it': 'Behalten',
  '{dog}, with every plan and 1 session will be gone from this device.':
    '{dog}, mit allen Plänen und 1 Einheit, ist dann von diesem Gerät verschwunden.',
  '{dog}, with every plan and {n} sessions will be gone from this device.':
    '{dog}, mit allen Plänen und {n} Einheiten, ist dann von diesem Gerät verschwunden.',
  'Everything: dogs, plans, taught words, settings and 1 session will be gone from this device.':
    'Alles ist dann von diesem Gerät verschwunden: Hunde, Pläne, beigebrachte Wörter, Einstellungen und 1 Einheit.',
  'Everything: dogs, plans, taught words, settings and {n} sessions will be gone from this device.':
    'Alles ist dann von diesem Gerät verschwunden: Hunde, Pläne, beigebrachte Wörter, Einstellungen und {n} Einheiten.',
} as const;
