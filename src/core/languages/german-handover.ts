/** German: what is said by `handover`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_HANDOVER = {
  Homework: 'Hausaufgabe',
  'All homework': 'Alle Hausaufgaben',
  'Homework, version {n}': 'Hausaufgabe, Fassung {n}',
  'Homework from {trainer}, version {n}': 'Hausaufgabe von {trainer}, Fassung {n}',
  'for {dog}': 'für {dog}',
  'for {dog} and {owner}': 'für {dog} und {owner}',
  'from {trainer}': 'von {trainer}',
  'version {n}': 'Fassung {n}',
  '{dog}, {owner}': '{dog}, {owner}',
  'Another dog…': 'Ein anderer Hund …',

  'The app is not open': 'Die App ist nicht offen',
  'Load the page again, then open it once more.': 'Lade die Seite neu und öffne sie dann noch einmal.',
  'This homework was not taken': 'Diese Hausaufgabe wurde nicht angenommen',
  'Nothing was kept or changed.': 'Nichts wurde gespeichert oder verändert.',
  'You gave this homework': 'Diese Hausaufgabe hast du gegeben',
  'It is for the owner’s phone: open it there.': 'Sie ist für das Telefon des Menschen am Hund: Öffne sie dort.',
  'It is here already. Nothing was changed.': 'Sie ist schon da. Nichts wurde verändert.',
  'You practise version {n} already, which is newer. Nothing was changed.':
    'Du übst schon Fassung {n}, die ist neuer. Nichts wurde verändert.',
  'Version {n} is here already and says something else. Both cannot be right: ask your trainer for a new version. Nothing was changed.':
    'Fassung {n} ist schon da und sagt etwas anderes. Beide können nicht stimmen: Bitte um eine neue Fassung. Nichts wurde verändert.',
  'What is new since version {n}': 'Was seit Fassung {n} neu ist',
  'Nothing: the same plan again.': 'Nichts: derselbe Plan noch einmal.',
  'Your sessions so far stay with it, and the next one begins where you stand.':
    'Deine Einheiten bis jetzt bleiben dabei, und die nächste beginnt, wo ihr steht.',
  'Go on with version {n}': 'Mit Fassung {n} weitermachen',
  'Which of your dogs is it for?': 'Für welchen deiner Hunde ist sie?',
  'Your dog’s name': 'Name deines Hundes',
  'Accept it': 'Annehmen',
  'It becomes a plan of yours. A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.':
    'Sie wird ein Plan von dir. Ein Hund, der eine Berührung neuerdings verweigert oder zusammenzuckt, hat vielleicht Schmerzen: Frag deine Tierarztpraxis, bevor du dort übst.',

  'Give as homework': 'Als Hausaufgabe geben',
  'Answer with an adjusted plan': 'Mit einem angepassten Plan antworten',
  'change the plan': 'den Plan ändern',
  Owner: 'Halterin oder Halter',
  'Owner, where the dog is not your own': 'Halterin oder Halter, wenn es nicht dein eigener Hund ist',
  'Your name, as the owner knows you': 'Dein Name, wie man dich kennt',
  'Sessions a week': 'Einheiten in der Woche',
  'Words to use; left empty, the owner chooses': 'Wörter dafür; leer gelassen, wird selbst gewählt',
  'What to mind, beside the cautions of the steps': 'Was zu beachten ist, neben den Hinweisen der Stufen',
  'Make version {n}': 'Fassung {n} machen',
  'Hand out version {n} once more': 'Fassung {n} noch einmal herausgeben',
  'Make the homework': 'Die Hausaufgabe machen',
  'One session a day teaches more than three in a row, and rest days teach, too: {often} is a good beginning. Where a dog has begun to refuse a touch, its veterinarian comes before any homework.':
    'Eine Einheit am Tag lehrt mehr als drei hintereinander, und auch Ruhetage lehren: {often} ist ein guter Anfang. Wo ein Hund eine Berührung neuerdings verweigert, kommt vor jeder Hausaufgabe die Tierarztpraxis.',
  'For which dog': 'Für welchen Hund',
  'The dog’s name': 'Name des Hundes',

  '{file} is handed out. The owner opens it in Stillbeat, under Homework.':
    '{file} ist herausgegeben. Geöffnet wird sie in Stillbeat unter Hausaufgabe.',
  'Version {n} for {dog} is ready': 'Fassung {n} für {dog} ist fertig',
  'Version {n} for {dog}, given on {day}': 'Fassung {n} für {dog}, gegeben am {day}',
  'Save or share the file': 'Die Datei sichern oder teilen',
  'A sheet of paper': 'Ein Blatt Papier',
  'To the desk': 'Zum Schreibtisch',
  'A digest in it shows damage on the way. It is no signature: that it is from you, the owner knows only by the way it comes. Nothing of it goes to a server: the link carries it in its last part, which browsers keep to themselves.':
    'Eine Prüfsumme darin zeigt Schäden unterwegs. Sie ist keine Unterschrift: Dass die Hausaufgabe von dir ist, zeigt am anderen Ende nur der Weg, auf dem sie kommt. Nichts davon geht an einen Server: Der Link trägt sie in seinem letzten Teil, den Browser für sich behalten.',
  'This browser cannot pack it into a code: use the file.': 'Dieser Browser kann sie nicht in einen Code packen: Nimm die Datei.',
  'The link is copied.': 'Der Link ist kopiert.',
  'This browser does not let a page copy. Use the file.': 'Dieser Browser lässt eine Seite nicht kopieren. Nimm die Datei.',
  'QR code of the homework for {dog}': 'QR-Code der Hausaufgabe für {dog}',
  'The owner points the phone’s camera at it: Stillbeat opens there and shows this homework first.':
    'Die Kamera des anderen Telefons darauf richten: Dort öffnet sich Stillbeat und zeigt zuerst diese Hausaufgabe.',
  'It is too much for a code that a camera reads easily. Use the file or the link, or shorten the plan or the note.':
    'Für einen Code, den eine Kamera leicht liest, ist es zu viel. Nimm die Datei oder den Link, oder kürze den Plan oder die Notiz.',
  'This page’s address is only known to this computer: another phone cannot open its links. Use the file.':
    'Die Adresse dieser Seite kennt nur dieser Computer: Ein anderes Telefon kann ihre Links nicht öffnen. Nimm die Datei.',
  'Copy the link': 'Den Link kopieren',

  'Practise as your trainer asked, then send your sessions back.':
    'Übe, wie es dir aufgegeben ist, und schick deine Einheiten dann zurück.',
  'A trainer sends you a plan as a file or as a code. Point your phone’s camera at the code, or open the file here.':
    'Wer dich anleitet, schickt dir einen Plan als Datei oder als Code. Richte die Kamera deines Telefons auf den Code, oder öffne die Datei hier.',
  'Accepted. It is the first in this list, and on the first screen.':
    'Angenommen. Sie steht zuoberst in dieser Liste und auf der ersten Seite.',
  'Open homework from a file': 'Hausaufgabe aus einer Datei öffnen',
  'Are you the trainer? To the desk': 'Leitest du an? Zum Schreibtisch',
  '1 in the latest seven days.': '1 in den letzten sieben Tagen.',
  '{n} in the latest seven days.': '{n} in den letzten sieben Tagen.',
  'Open homework from a trainer': 'Hausaufgabe öffnen',
  'Homework: {title}': 'Hausaufgabe: {title}',
  'Homework: {n} plans': 'Hausaufgaben: {n} Pläne',
  '1 session not sent back': '1 Einheit nicht zurückgeschickt',
  '{n} sessions not sent back': '{n} Einheiten nicht zurückgeschickt',
  'For trainers: the desk': 'Wenn du anleitest: der Schreibtisch',
  'The desk: 1 dog': 'Der Schreibtisch: 1 Hund',
  'The desk: {n} dogs': 'Der Schreibtisch: {n} Hunde',
  'Say: {words}.': 'Sag: {words}.',
  'Teach the app these words': 'Bring der App diese Wörter bei',
  'Read it again': 'Noch einmal lesen',

  'There is nothing to send yet.': 'Noch ist nichts zu schicken.',
  'Send back to your trainer': 'Zurückschicken',
  'Send what is new': 'Neues schicken',
  'Send all of it once more': 'Alles noch einmal schicken',
  'The file holds these sessions, this plan, and what you noted of this dog, its pain too. No recordings of your words, no other dog.':
    'In der Datei stehen diese Einheiten, dieser Plan und was du zu diesem Hund notiert hast, auch seine Schmerzen. Keine Aufnahmen deiner Wörter, kein anderer Hund.',
  'Nothing new since you last sent.': 'Nichts Neues, seit du zuletzt geschickt hast.',
  'After your first session it can be sent from here.': 'Nach deiner ersten Einheit kann sie von hier geschickt werden.',
  '1 session that your trainer has not seen yet.': '1 Einheit, die noch nicht angesehen werden konnte.',
  '{n} sessions that your trainer has not seen yet.': '{n} Einheiten, die noch nicht angesehen werden konnten.',
  '{file} is handed out, with 1 session. Send it to your trainer.': '{file} ist herausgegeben, mit 1 Einheit. Schick sie weiter.',
  '{file} is handed out, with {n} sessions. Send it to your trainer.':
    '{file} ist herausgegeben, mit {n} Einheiten. Schick sie weiter.',

  'This homework is not on this device': 'Diese Hausaufgabe ist nicht auf diesem Gerät',
  Print: 'Drucken',
  'On A4 or Letter, as your printer is set.': 'Auf A4 oder Letter, wie dein Drucker eingestellt ist.',
  'How often': 'Wie oft',
  'Words to use': 'Wörter dafür',
  'How a step is earned': 'Wie eine Stufe verdient wird',
  'From your trainer': 'Notiz für dich',
  'What to mind': 'Was zu beachten ist',
  'A head that lifts is information, never disobedience: stop, and make the step smaller; never hold the head down. A dog that begins to refuse a touch it gave before may be in pain: stop handling there and ask your veterinarian. Keep your face away from the dog’s face.':
    'Ein Kopf, der hochgeht, ist eine Auskunft und nie Ungehorsam: Hör auf und mach die Stufe kleiner; halte den Kopf nie nieder. Ein Hund, der eine Berührung verweigert, die er vorher gab, hat vielleicht Schmerzen: Fass dort nichts mehr an und frag deine Tierarztpraxis. Bleib mit dem Gesicht weg vom Gesicht des Hundes.',
  Step: 'Stufe',
  'A tick: kept. A cross: lifted.': 'Haken: gehalten. Kreuz: abgehoben.',
  '{n} steps, the easiest first': '{n} Stufen, die leichteste zuerst',

  'Mind the same as on the step before.': 'Dasselbe beachten wie auf der Stufe davor.',
  'paid at once': 'sofort bezahlt',
  'hold for {n} s': '{n} s halten',
  '{extent}; a touch and away': '{extent}; berühren und weg',
  '{extent}, for {n} s': '{extent}, {n} s lang',
  '1 session a week': '1 Einheit in der Woche',
  '{n} sessions a week': '{n} Einheiten in der Woche',
  'the dog has settled': 'der Hund ist zur Ruhe gekommen',
  paid: 'bezahlt',
  'the head came up': 'der Kopf ging hoch',

  'Taken out: “{step}”, a half step that practice had put in.':
    'Herausgenommen: „{step}“, eine halbe Stufe, die beim Üben dazukam.',
  'Taken out: “{step}”.': 'Herausgenommen: „{step}“.',
  'Another rule judges the steps: {rule}.': 'Eine andere Regel beurteilt die Stufen: {rule}.',
  'Sessions a week: {to} instead of {from}.': 'Einheiten in der Woche: {to} statt {from}.',
  'Your own word for: {meaning}.': 'Dein eigenes Wort für: {meaning}.',
  'The word for “{meaning}” is now “{word}”.': 'Das Wort für „{meaning}“ ist jetzt „{word}“.',
  'It is called “{title}” now.': 'Sie heißt jetzt „{title}“.',
  'The position is now: {position}.': 'Die Position ist jetzt: {position}.',
  'The caution beside the steps is gone.': 'Der Hinweis neben den Stufen ist weg.',
  'A new caution: {caution}': 'Ein neuer Hinweis: {caution}',
  'The note is gone.': 'Die Notiz ist weg.',
  'A new note: {note}': 'Eine neue Notiz: {note}',
  'New: “{step}” ({what}), after “{below}”.': 'Neu: „{step}“ ({what}), nach „{below}“.',
  'New: “{step}” ({what}), the easiest.': 'Neu: „{step}“ ({what}), die leichteste.',
  'Moved: “{step}” comes after “{below}” now.': 'Verschoben: „{step}“ kommt jetzt nach „{below}“.',
  'Moved: “{step}” is the easiest now.': 'Verschoben: „{step}“ ist jetzt die leichteste.',
  '“{step}” is {to} s long instead of {from} s.': '„{step}“ dauert {to} s statt {from} s.',
  '“{was}” is called “{step}” now.': '„{was}“ heißt jetzt „{step}“.',
  '“{step}” is changed: {parts}. Now: {what}.': '„{step}“ ist geändert: {parts}. Jetzt: {what}.',
  'its name': 'der Name',
  'its seconds': 'die Sekunden',
  'the place': 'die Stelle',
  'what the hand does': 'was die Hand tut',
  'the caution': 'der Hinweis',
  'its half-way': 'der halbe Weg',

  'This is no homework: {path}: expected {expected}, got {got}. Ask your trainer for the file or the code again.':
    'Das ist keine Hausaufgabe: {path}: erwartet {expected}, bekommen {got}. Bitte noch einmal um die Datei oder den Code.',
  'It was made by a newer Stillbeat than this one. Load the newest version here, then open it again.':
    'Sie wurde von einem neueren Stillbeat gemacht. Lade hier die neueste Fassung und öffne sie dann noch einmal.',
  'It does not say any more what the trainer’s app wrote: it was damaged or changed on the way. Ask for it again.':
    'Sie sagt nicht mehr, was beim Geben geschrieben wurde: Sie wurde unterwegs beschädigt oder verändert. Bitte noch einmal darum.',
  'It cannot be practised as it is: {path}: expected {expected}, got {got}. Tell your trainer.':
    'So lässt sie sich nicht üben: {path}: erwartet {expected}, bekommen {got}. Sag es weiter.',
  'This browser cannot unpack a code. Ask your trainer for the file instead.':
    'Dieser Browser kann einen Code nicht auspacken. Bitte stattdessen um die Datei.',
} as const;
