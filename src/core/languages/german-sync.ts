/** German: what is said by `sync`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_SYNC = {
  'More than one device': 'Mehr als ein Gerät',
  'Your dogs stay in step between your devices, or between you and the people you coach, over a server of your own. It is off until you switch it on.':
    'Deine Hunde bleiben auf deinen Geräten gleich, oder bei dir und den Menschen, die du anleitest, über einen eigenen Server. Es ist aus, bis du es einschaltest.',
  'What leaves this device': 'Was dieses Gerät verlässt',
  'Of each dog that you choose: the dog, its plans, examinations and sessions, the names of handlers and places in them, and what second observers made of them. Everything is sealed with the dog’s passphrase before it leaves.':
    'Von jedem Hund, den du auswählst: der Hund, seine Pläne, Untersuchungen und Einheiten, die Namen der Menschen und Orte darin und was zweite Beobachtende daraus machten. Alles wird vorher mit dem Kennsatz des Hundes verschlüsselt.',
  'The server learns your name on it, the name of the database, a random name for each device, how many entries each wrote, when they were sent, and how long each is in steps of 256 bytes. It learns nothing of what they say, and not of what kind they are.':
    'Der Server erfährt deinen Namen bei ihm, den Namen der Datenbank, für jedes Gerät einen zufälligen Namen, wie viele Einträge jedes schrieb, wann sie gesendet wurden und wie lang jeder ist, in Stufen von 256 Bytes. Er erfährt nicht, was darin steht, und nicht, von welcher Art sie sind.',
  'Never: the sounds you taught, what the ear heard and learnt, your settings, homework.':
    'Nie: die Laute, die du beigebracht hast, was das Ohr gehört und gelernt hat, deine Einstellungen, Hausaufgaben.',
  'Without the passphrase nobody can read it, and nobody can bring it back: write it down. Whoever has the server can try passphrases for as long as they like: take a long one.':
    'Ohne den Kennsatz kann es niemand lesen und niemand zurückholen: Schreib ihn auf. Wer den Server hat, kann Kennsätze durchprobieren, solange er will: Nimm einen langen.',

  'Your server': 'Dein Server',
  'Path of the server': 'Pfad des Servers',
  'A path of this page’s own address. Whoever hosts the page leads it to the server; other addresses are refused.':
    'Ein Pfad unter der Adresse dieser Seite. Wer die Seite bereitstellt, leitet ihn zum Server; andere Adressen werden abgelehnt.',
  'Your name on the server': 'Dein Name auf dem Server',
  Password: 'Passwort',
  'Keep the password and the keys of the dogs on this device. Otherwise they are asked for in each visit. Whoever opens this browser can sync then; the passphrases themselves cannot be read from it.':
    'Passwort und Schlüssel der Hunde auf diesem Gerät behalten. Sonst wird bei jedem Besuch danach gefragt. Wer diesen Browser öffnet, kann dann abgleichen; die Kennsätze selbst lassen sich nicht daraus lesen.',
  'Sign in': 'Anmelden',
  'Signing in…': 'Anmelden …',
  'Signed in as {user}.': 'Angemeldet als {user}.',
  'Sign in otherwise': 'Anders anmelden',

  'A dog of another device': 'Ein Hund von einem anderen Gerät',
  'Database: {database}': 'Datenbank: {database}',
  'In step: {when}.': 'Abgeglichen: {when}.',
  'Not in step yet.': 'Noch nicht abgeglichen.',
  'Nothing waits to be sent.': 'Nichts wartet darauf, gesendet zu werden.',
  '1 entry waits to be sent.': '1 Eintrag wartet darauf, gesendet zu werden.',
  '{n} entries wait to be sent.': '{n} Einträge warten darauf, gesendet zu werden.',
  'Here and on the server unlike': 'Hier und auf dem Server verschieden',
  'On the server, and not taken over': 'Auf dem Server und nicht übernommen',
  'Stop for {name}': 'Für {name} beenden',
  'Passphrase of {name}': 'Kennsatz von {name}',
  Unlock: 'Aufschließen',
  'Sync now': 'Jetzt abgleichen',
  'Syncing…': 'Gleicht ab …',
  'Stop syncing': 'Abgleich beenden',
  'This device forgets the server, the password and the passphrases. Your dogs stay here, and what was sent stays on the server until whoever runs it deletes it.':
    'Dieses Gerät vergisst den Server, das Passwort und die Kennsätze. Deine Hunde bleiben hier, und was gesendet wurde, bleibt auf dem Server, bis es löscht, wer ihn betreibt.',

  'Add a dog#to sync': 'Einen Hund abgleichen',
  'one that is on the server already': 'einer, der schon auf dem Server ist',
  'Database on the server': 'Datenbank auf dem Server',
  'Whoever runs the server makes it and says who is let in: one for each dog, so that an owner sees only theirs.':
    'Wer den Server betreibt, legt sie an und sagt, wer hinein darf: eine für jeden Hund, damit eine Halterin nur ihren sieht.',
  'Passphrase of this dog': 'Kennsatz dieses Hundes',
  'At least 12 characters. It never leaves this device: write it down.':
    'Mindestens 12 Zeichen. Er verlässt dieses Gerät nie: Schreib ihn auf.',
  'Make one for me': 'Denk dir einen für mich aus',
  'Keep in step': 'Abgleichen',
  'One moment…': 'Einen Moment …',
  'Added, and on its way. Every device that has this dog needs the same database and passphrase.':
    'Hinzugefügt und unterwegs. Jedes Gerät mit diesem Hund braucht dieselbe Datenbank und denselben Kennsatz.',

  'The server does not answer. A dog that was added is tried again by itself: practise meanwhile.':
    'Der Server antwortet nicht. Bei einem Hund, der hinzugefügt ist, wird es von selbst wieder versucht: Übe inzwischen.',
  'The server cannot right now ({status}). Try again later.':
    'Der Server kann gerade nicht ({status}). Versuch es später wieder.',
  'The server does not know this name with this password.': 'Der Server kennt diesen Namen mit diesem Passwort nicht.',
  'The server does not let you into this database: ask whoever runs it.':
    'Der Server lässt dich nicht in diese Datenbank: Frag, wer ihn betreibt.',
  'There is no such database on the server: whoever runs it makes it.':
    'Diese Datenbank gibt es auf dem Server nicht: Wer ihn betreibt, legt sie an.',
  'There is no CouchDB at this path ({status}): ask whoever hosts this page.':
    'Unter diesem Pfad ist keine CouchDB ({status}): Frag, wer diese Seite bereitstellt.',
  'This is not the passphrase of this dog. Nothing was read or written.':
    'Das ist nicht der Kennsatz dieses Hundes. Nichts wurde gelesen oder geschrieben.',
  'A newer Stillbeat began this database, or something else did: load the newest version here.':
    'Ein neueres Stillbeat hat diese Datenbank begonnen, oder etwas anderes: Lade hier die neueste Version.',
  'There is no dog in this database yet: add it first on the device that has the dog.':
    'In dieser Datenbank ist noch kein Hund: Gleiche ihn zuerst auf dem Gerät ab, das ihn hat.',
  'This database holds another dog.': 'In dieser Datenbank ist ein anderer Hund.',
  'This device could not read or write what it keeps ({cause}).':
    'Dieses Gerät konnte nicht lesen oder schreiben, was es aufhebt ({cause}).',
  'This page may talk to its own address alone: give a path of it, such as “sync”.':
    'Diese Seite darf nur mit ihrer eigenen Adresse reden: Gib einen Pfad davon an, etwa „sync“.',
  'Databases are named in small letters, digits, “-” and “_”, and begin with a letter.':
    'Datenbanken heißen mit Kleinbuchstaben, Ziffern, „-“ und „_“ und beginnen mit einem Buchstaben.',
  'That passphrase is too short: at least 12 characters.': 'Dieser Kennsatz ist zu kurz: mindestens 12 Zeichen.',
  'This dog, or this database, is kept in step already.': 'Dieser Hund oder diese Datenbank wird schon abgeglichen.',
  '{where}: here {here}, on the server {there}. Both are left as they are.':
    '{where}: hier {here}, auf dem Server {there}. Beide bleiben, wie sie sind.',
  '{where}: sealed with another passphrase, or changed on the server':
    '{where}: mit einem anderen Kennsatz verschlüsselt oder auf dem Server verändert',
  '{where}: it is not of this dog': '{where}: gehört nicht zu diesem Hund',

  'Over a server of your own. Off until you switch it on.': 'Über einen eigenen Server. Aus, bis du es einschaltest.',
  'Keep dogs in step': 'Hunde abgleichen',
  '1 dog is kept in step.': '1 Hund wird abgeglichen.',
  '{n} dogs are kept in step.': '{n} Hunde werden abgeglichen.',
} as const;
