/** German: what is said by `sound-check`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SOUND_CHECK = {
  'Put the phone where it will stand, then teach it your three words. Say them as you will in practice, each followed by a short pause. Short and unlike each other is best: other vowels, other lengths. The takes stay on this device.':
    'Stell das Telefon dorthin, wo es stehen wird, und bring ihm dann deine drei Wörter bei. Sag sie so wie später beim Üben, jedes gefolgt von einer kurzen Pause. Am besten sind sie kurz und einander unähnlich: andere Vokale, andere Längen. Die Aufnahmen bleiben auf diesem Gerät.',
  'A page needs HTTPS to be given a microphone: the README says how. Recordings from files work.':
    'Eine Seite bekommt das Mikrofon nur über HTTPS: Wie, steht in der README. Aufnahmen aus Dateien gehen.',
  'The microphone cannot be opened. Allow it for this page in the browser’s settings and try again, or add recordings from files.':
    'Das Mikrofon lässt sich nicht öffnen. Erlaube es für diese Seite in den Einstellungen des Browsers und versuch es noch einmal, oder füge Aufnahmen aus Dateien hinzu.',

  '1 · Your words': '1 · Deine Wörter',
  'the dog has settled, the hold begins': 'der Hund ist zur Ruhe gekommen, das Halten beginnt',
  steady: 'ruhig',
  'paid: this ends the hold': 'belohnt: damit endet das Halten',
  'yes#said when paid': 'fein',
  'oh well': 'macht nichts',
  'the head came up: the dog said no': 'der Kopf kam hoch: der Hund sagte nein',
  'what you say': 'was du sagst',
  'Record more': 'Mehr aufnehmen',
  Record: 'Aufnehmen',
  'from files': 'aus Dateien',
  'Recordings of “{what}” from files': 'Aufnahmen von „{what}“ aus Dateien',
  'No sound in {files}: use WAV, MP3 or M4A.': 'Kein Ton in {files}: Nimm WAV, MP3 oder M4A.',
  'Forget take {n} of “{word}”, which is unlike the others':
    'Aufnahme {n} von „{word}“ vergessen, die anders ist als die übrigen',
  'Forget take {n} of “{word}”': 'Aufnahme {n} von „{word}“ vergessen',
  'Forget take {n}': 'Aufnahme {n} vergessen',
  '{n} of {of} takes': '{n} von {of} Aufnahmen',
  'Take {n} is forgotten.': 'Aufnahme {n} ist vergessen.',
  'Bring it back': 'Zurückholen',
  'Say “{what}” now, then a short pause, then again.': 'Sag jetzt „{what}“, dann eine kurze Pause, dann noch einmal.',

  'More words (optional)': 'Weitere Wörter (freiwillig)',
  'taught: {words}': 'beigebracht: {words}',
  'Every one of these has a button and a key. Teach only what you will say: each word more is one more that talk can be taken for. Long ones are safest.':
    'Für jedes davon gibt es einen Knopf und eine Taste. Bring nur bei, was du sagen wirst: Jedes weitere Wort ist eins mehr, mit dem sich verwechseln lässt, was du sonst sagst. Lange sind am sichersten.',
  'the last word did not happen': 'das letzte Wort gab es nicht',
  'scratch that': 'vergiss das',
  'nothing counts until you go on; teach “resume” with it': 'nichts zählt, bis du weitermachst; bring „weiter“ mit bei',
  'break time': 'kleine Pause',
  'goes on after a pause; in a pause it is the only word that counts':
    'macht nach einer Pause weiter; in der Pause zählt nur dieses Wort',
  'here we go': 'jetzt geht’s weiter',
  'the session ends': 'die Einheit endet',
  'all done': 'alles fertig',
  'one step down, between reps': 'eine Stufe tiefer, zwischen zwei Wiederholungen',
  lower: 'runter',
  'one step up, between reps': 'eine Stufe höher, zwischen zwei Wiederholungen',
  higher: 'höher hinauf',
  'the call just made is not followed': 'der letzten Ansage wird nicht gefolgt',
  'same again': 'nochmal das Gleiche',
  'does not count': 'das gilt nicht',

  '2 · What else you say': '2 · Was du sonst sagst',
  'The more of your ordinary talk it knows, the seldomer it takes talk for a word. Twice each is enough.':
    'Je mehr es von dem kennt, was du sonst so sagst, desto seltener hält es so etwas für ein Wort. Zweimal jedes genügt.',
  '1 piece of talk is kept.': '1 Äußerung ist gemerkt.',
  '{n} pieces of talk are kept.': '{n} Äußerungen sind gemerkt.',
  '{n} pieces of talk are kept: enough to begin with.': '{n} Äußerungen sind gemerkt: für den Anfang genug.',
  'your dog’s name': 'der Name deines Hundes',
  'your praise': 'dein Lob',
  'another cue you use': 'ein anderes Signal von dir',
  'Anything else you say': 'Was du sonst noch sagst',
  'anything else you say': 'was du sonst noch sagst',
  'Tell the dog about your day for ten seconds, or add recordings from files, one saying each.':
    'Erzähl dem Hund zehn Sekunden lang von deinem Tag, oder füge Aufnahmen aus Dateien hinzu, je eine Äußerung.',
  'Talk now…': 'Rede jetzt …',
  'Talk for ten seconds': 'Zehn Sekunden reden',
  'talk#what else is said': 'was du sonst sagst',

  'What to expect': 'Was zu erwarten ist',
  'Working out what it can tell apart…': 'Rechnet aus, was es unterscheiden kann …',
  'It is worked out anew when you are done recording.': 'Es wird neu ausgerechnet, sobald du mit dem Aufnehmen fertig bist.',
  'the recording is broken': 'die Aufnahme ist kaputt',
  'the recording has an unusual rate': 'die Aufnahme hat eine ungewöhnliche Rate',
  'it was too short: say it a little longer': 'es war zu kurz: sag es ein wenig länger',
  'it was long for a word: leave a pause after it': 'es war lang für ein Wort: lass danach eine Pause',
  'it was too quiet: come closer or speak up': 'es war zu leise: komm näher oder sprich lauter',
  'the room is loud: switch off what hums, or come closer': 'der Raum ist laut: schalte aus, was brummt, oder komm näher',
  'it was too loud for the microphone: move the phone away a little':
    'es war zu laut für das Mikrofon: rück das Telefon ein wenig weg',
  'its beginning is cut off: wait a moment before you speak': 'der Anfang fehlt: warte einen Moment, bevor du sprichst',
  'its end is cut off: wait a moment after you spoke': 'das Ende fehlt: warte einen Moment, nachdem du gesprochen hast',
  'That was long for a word: leave a pause after it.': 'Das war lang für ein Wort: Lass danach eine Pause.',
  'Heard, but {fault}.': 'Gehört, aber {fault}.',
  'Kept: a click. If that was only the table, forget it.': 'Gemerkt: ein Klick. War das nur der Tisch, vergiss es wieder.',
  'Kept. Again, the same way.': 'Gemerkt. Noch einmal, genauso.',
  'Kept, and that is enough: tap Done.': 'Gemerkt, und das genügt: auf Fertig tippen.',
  'Kept, but long for one word. If it was more than the word, or something else, tap its number: that forgets it.':
    'Gemerkt, aber lang für ein Wort. War es mehr als das Wort, oder etwas anderes: auf seine Nummer tippen, dann ist es vergessen.',
  'Kept, but much longer than the ones before. If it was something else, tap its number: that forgets it.':
    'Gemerkt, aber viel länger als die davor. War es etwas anderes: auf seine Nummer tippen, dann ist es vergessen.',
  'Kept, but much shorter than the ones before. If it was something else, tap its number: that forgets it.':
    'Gemerkt, aber viel kürzer als die davor. War es etwas anderes: auf seine Nummer tippen, dann ist es vergessen.',
  'In a moment: it works out what it was taught.': 'Gleich: Es rechnet aus, was es gelernt hat.',
  'Saved as {file}.': 'Gesichert als {file}.',
  '{n} of 20 may need saying again': '{n} von 20 musst du vielleicht noch einmal sagen',
  '{n} of 20 other words may be taken for it': '{n} von 20 anderen Wörtern könnten dafür gehalten werden',
  '(rehearsed on {takes} and {pieces} of talk)': '(geprobt an {takes} und {pieces})',
  '1 take#rehearsed on': '1 Aufnahme',
  '{n} takes#rehearsed on': '{n} Aufnahmen',
  '1 piece#rehearsed on': '1 anderen Äußerung',
  '{n} pieces#rehearsed on': '{n} anderen Äußerungen',
  'Heard as a click. About {misses} {rested}. A hard knock close by, or another clicker, can pass for it: try it with “Listen”.':
    'Als Klick gehört. Etwa {misses} {rested}. Ein hartes Klopfen in der Nähe oder ein anderer Klicker kann dafür durchgehen: Probier es mit „Zuhören“.',
  'About {misses}, about {wrong} {rested}.': 'Etwa {misses}, etwa {wrong} {rested}.',
  'Too loud for the microphone: move the phone away a little.': 'Zu laut für das Mikrofon: Rück das Telefon ein wenig weg.',
  'Something short: say the word a little longer, or click harder.':
    'Etwas Kurzes: Sag das Wort ein wenig länger, oder klick kräftiger.',
  'The room is loud: switch off what hums, or put the phone closer.':
    'Der Raum ist laut: Schalte aus, was brummt, oder stell das Telefon näher heran.',
  'Another take or two would help.': 'Eine oder zwei Aufnahmen mehr würden helfen.',
  'Takes {list} and {last} are unlike the others and would be missed: tap their numbers to forget them, and say it again the usual way.':
    'Die Aufnahmen {list} und {last} sind anders als die übrigen und würden überhört: Auf die Nummer tippen, dann ist sie vergessen, und noch einmal sagen wie sonst.',
  'Take {n} is unlike the others and would be missed: tap its number to forget it, and say it again the usual way.':
    'Aufnahme {n} ist anders als die übrigen und würde überhört: Auf die Nummer tippen, dann ist sie vergessen, und noch einmal sagen wie sonst.',
  'About {n} of 20 of your “{word}” would be taken for it: choose one with another vowel or another length.':
    'Etwa {n} von 20 deiner „{word}“ würden dafür gehalten: Wähle eins mit anderem Vokal oder anderer Länge.',
  'Let it hear more of what else you say: it will be taken for a word less often.':
    'Lass es mehr von dem hören, was du sonst sagst: Dann wird das seltener für ein Wort gehalten.',
  'No word is taught yet.': 'Noch ist kein Wort beigebracht.',
  'There is no take of “{word}” that can be used yet.': 'Von „{word}“ gibt es noch keine brauchbare Aufnahme.',
  'Take {n} of “{word}” is no click as the others are: it is left out.':
    'Aufnahme {n} von „{word}“ ist kein Klick wie die anderen: Sie wird weggelassen.',
  'Take {n} of “{word}”: {fault}.': 'Aufnahme {n} von „{word}“: {fault}.',
  'Take {n} of your talk: {fault}.': 'Aufnahme {n} deiner anderen Äußerungen: {fault}.',

  '3 · Try it': '3 · Probier es aus',
  'Say your words, and say anything else. What it takes for a word shows here.':
    'Sag deine Wörter, und sag irgendetwas anderes. Was es für ein Wort hält, steht dann hier.',
  'Stop listening': 'Nicht mehr zuhören',
  Listen: 'Zuhören',
  'Cancel the app’s own sounds (switch it off with headphones, or if words come out cut; then listen again)':
    'Die eigenen Töne der App herausrechnen (mit Kopfhörern ausschalten, oder wenn Wörter abgeschnitten ankommen; danach wieder zuhören)',
  'unsure: {word}?': 'unsicher: {word}?',

  '4 · The beats': '4 · Die Schläge',
  'A tap a second from the hold on, a double tap when it is enough: then you mark. Let your dog hear them with food first.':
    'Ein Klopfen je Sekunde, sobald der Hund hält, ein doppeltes, wenn es genug ist: Dann gibst du den Marker. Lass deinen Hund sie erst zusammen mit Futter hören.',
  'A second': 'Eine Sekunde',
  Enough: 'Genug',
  'Volume, flashes instead of sounds': 'Lautstärke, Blitze statt Tönen',
  'Ready: to practice': 'Bereit: zum Üben',

  '5 · On another device': '5 · Auf einem anderen Gerät',
  'Your takes, your talk, what corrections taught and your keys go into one file. It holds recordings of your voice.':
    'Deine Aufnahmen, was du sonst sagst, was Korrekturen gelehrt haben und deine Tasten kommen in eine Datei. Darin sind Aufnahmen deiner Stimme.',
  'Save my words': 'Meine Wörter sichern',
  'Add words from a file': 'Wörter aus einer Datei hinzufügen',
  'They cannot be read right now. Nothing was changed.': 'Sie lassen sich gerade nicht lesen. Nichts wurde verändert.',
  'Added. The ear listens to {name} now.': 'Hinzugefügt. Das Ohr hört jetzt auf {name}.',
  'Words of {name}, saved {day}': 'Wörter von {name}, gesichert am {day}',
  '{n} learnt': '{n} gelernt',
  'Here already: {n}, of which 1 was forgotten here and stays so': 'Schon hier: {n}, davon 1 hier vergessen, und das bleibt so',
  'Here already: {n}, of which {forgotten} were forgotten here and stay so':
    'Schon hier: {n}, davon {forgotten} hier vergessen, und das bleibt so',
  '{name} has 1 other take here, and these would join them. If this is somebody else, leave it.':
    '{name} hat hier schon 1 andere Aufnahme, und diese kämen dazu. Ist das jemand anderes, dann lieber nicht.',
  '{name} has {n} other takes here, and these would join them. If this is somebody else, leave it.':
    '{name} hat hier schon {n} andere Aufnahmen, und diese kämen dazu. Ist das jemand anderes, dann lieber nicht.',
  'Use its keys, cues and volume here too': 'Auch ihre Tasten, Signale und Lautstärke hier verwenden',
  'Listen to {name}': 'Auf {name} hören',
} as const;
