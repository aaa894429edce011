/** German: what is said by `exam`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_EXAM = {
  'This examination is not on this device.': 'Diese Untersuchung ist nicht auf diesem Gerät.',
  'Nothing is on its list yet.': 'Auf ihrer Liste steht noch nichts.',
  Examination: 'Untersuchung',
  'For an examination': 'Für eine Untersuchung',
  'Card for the examiner': 'Karte für die Untersuchung',
  'Plan an examination': 'Eine Untersuchung planen',
  'Signs that something is too much for it': 'Zeichen, dass ihm etwas zu viel wird',
  'Whom to call: a name and a number': 'Wen man anruft: Name und Nummer',

  '{kept} of {of} on 1 day, {last}': '{kept} von {of} an 1 Tag, {last}',
  '{kept} of {of} on {days} days, last {last}': '{kept} von {of} an {days} Tagen, zuletzt {last}',
  'well: {places}': 'gut: {places}',
  'not yet: {places}': 'noch nicht: {places}',
  'a place without a name': 'ein Ort ohne Namen',
  '{n} other places': '{n} andere Orte',
  'Nothing was practised with this app yet.': 'Mit dieser App wurde noch nichts geübt.',
  '1 session, {day}.': '1 Einheit, {day}.',
  '{n} sessions, {from} to {to}.': '{n} Einheiten, {from} bis {to}.',
  'Examination of {day}: {n} of {of} done.': 'Untersuchung vom {day}: {n} von {of} gemacht.',
  'Head up at: {what}.': 'Kopf hoch bei: {what}.',
  'as of {day}': 'Stand: {day}',
  '{n} more': 'noch {n}',
  'A head that comes up is a no: everybody stops': 'Ein Kopf, der hochkommt, heißt Nein: Alle hören auf',
  'Hands off at once, whoever is touching, whatever is half done. Nobody ever holds the head down.':
    'Hände sofort weg, wer auch gerade anfasst, was auch halb fertig ist. Niemand hält je den Kopf fest.',
  'You hear {word}: it means the same.': 'Du hörst {word}: Das heißt dasselbe.',
  'Go on when the head lies down again by itself. Twice no to one thing: leave that thing for today.':
    'Mach weiter, wenn der Kopf von selbst wieder liegt. Zweimal Nein zu einer Sache: Lass sie für heute.',
  'Whom to call': 'Anrufen',
  'not filled in yet': 'noch nicht ausgefüllt',
  'the handler': 'der Mensch am Hund',
  'Words that {who} says': 'Was {who} sagt',
  'None was taught yet: {who} taps on the phone instead.':
    'Noch kein Wort ist beigebracht: Stattdessen tippt {who} auf das Telefon.',
  'no word, a tap': 'kein Wort, ein Tippen',
  'the head is down: you may begin': 'der Kopf liegt: Du darfst anfangen',
  'done and paid: hands off': 'geschafft und belohnt: Hände weg',
  'the head came up: everybody stops': 'der Kopf kam hoch: Alle hören auf',
  'Kept for good': 'Bleibend gehalten',
  'Nothing yet.': 'Noch nichts.',
  'Practised, not kept for good yet': 'Geübt, noch nicht bleibend gehalten',
  'And {n} more: {areas}.': 'Und noch {n}: {areas}.',
  'Never practised': 'Nie geübt',
  'Steps of its plans: {areas}.': 'Stufen seiner Pläne: {areas}.',
  'Not practised at all: {areas}.': 'Gar nicht geübt: {areas}.',
  'When it is too much': 'Wenn es zu viel wird',
  'Not noted for this dog. In general: licks its lips, yawns, turns away, lowers itself, goes stiff; then growls, snaps, bites.':
    'Für diesen Hund nicht notiert. Allgemein: leckt sich die Lefzen, gähnt, dreht sich weg, duckt sich, wird steif; dann knurrt, schnappt, beißt er.',
  'Pain, or a sore place': 'Schmerzen oder eine wunde Stelle',
  'Veterinary advice so far': 'Bisheriger Rat der Tierarztpraxis',
  'Ask before you give any.': 'Frag, bevor du welche gibst.',
  'About {n} of its treats a day at most, all together.': 'Höchstens etwa {n} seiner Futterstücke am Tag, alles zusammen.',
  'Last time': 'Letztes Mal',
  '(more in the app)': '(mehr in der App)',
  'With care': 'Mit Vorsicht',
  'Keep your face away from the dog’s face, and do not bend over it.':
    'Bleib mit deinem Gesicht weg vom Gesicht des Hundes und beug dich nicht über ihn.',
  'A flinch, or a no to what was given before, can be pain: stop there.':
    'Zusammenzucken, oder ein Nein zu etwas, das er sonst gab, kann Schmerz sein: Hör dort auf.',
  'What has to be done in spite of a no, and how, the veterinarian decides.':
    'Was trotz eines Neins sein muss, und wie, entscheidet die Tierarztpraxis.',
  'Kept for good: 9 in 10 in three sessions running, on two days at least, in two places. Counted are the latest three sessions of each step; half steps and warm-ups are left out. Of every place of the body the hardest steps are named first. This card tells what was practised and promises nothing of today.':
    'Bleibend gehalten: 9 von 10 in drei Einheiten hintereinander, an mindestens zwei Tagen, an zwei Orten. Gezählt sind die letzten drei Einheiten jeder Stufe, ohne halbe Stufen und Aufwärmen. Von jeder Körperstelle stehen die schwersten Stufen zuerst. Diese Karte sagt, was geübt wurde, und verspricht nichts für heute.',
  'Sessions that cannot be read and are not counted here: {n}.':
    'Einheiten, die sich nicht lesen lassen und hier nicht zählen: {n}.',
  'Fill in': 'Ausfüllen',

  Ready: 'Bereit',
  Nearly: 'Fast',
  Begun: 'Begonnen',
  'A step of “{plan}”, not tried yet.': 'Eine Stufe von „{plan}“, noch nicht versucht.',
  'On no plan of this dog.': 'In keinem Plan dieses Hundes.',
  'Lacking: {what}.': 'Es fehlt: {what}.',
  'practised for {practised} s, asked for {asked} s': 'geübt für {practised} s, gebraucht werden {asked} s',
  'not practised for {days} days': 'seit {days} Tagen nicht geübt',
  'a session at 9 in 10': 'eine Einheit mit 9 von 10',
  '{n} of 3 sessions running at 9 in 10, in one place of two':
    '{n} von 3 Einheiten hintereinander mit 9 von 10, an einem Ort statt an zwei',
  '{n} of 3 sessions running at 9 in 10': '{n} von 3 Einheiten hintereinander mit 9 von 10',
  'Everything on the list is kept for good. Rehearse it in this order, and keep it easy.':
    'Alles auf der Liste wird bleibend gehalten. Probt es in dieser Reihenfolge, und haltet es leicht.',
  'This day is over.': 'Dieser Tag ist vorbei.',
  'Nothing is on the list yet: ask the practice what will be done, and for how long.':
    'Auf der Liste steht noch nichts: Frag die Praxis, was gemacht wird und wie lange es dauert.',
  'Every step on the list is reached. What is lacking is keeping it: lately, long enough, and in two places.':
    'Jede Stufe auf der Liste ist erreicht. Es fehlt noch, dass sie gehalten wird: in letzter Zeit, lange genug und an zwei Orten.',
  'Steps missing: {missing}. From so few sessions no pace can be told: tell the practice what is not practised yet.':
    'Fehlende Stufen: {missing}. Aus so wenigen Einheiten lässt sich kein Tempo sagen: Sag der Praxis, was noch nicht geübt ist.',
  'No step more before the day; missing: {missing}.': 'Bis dahin kommt keine Stufe mehr dazu; es fehlen: {missing}.',
  'At this dog’s pace, {low} to {high} steps by the day; missing: {missing}.':
    'In seinem Tempo bis dahin {low} bis {high} Stufen; es fehlen: {missing}.',
  'They are likely to be reached; keeping them takes three good sessions more.':
    'Sie werden wahrscheinlich erreicht; bis sie gehalten werden, braucht es drei gute Einheiten mehr.',
  'It may not be ready. Tell the practice now, so that both of you can plan.':
    'Vielleicht ist er nicht so weit. Sag es der Praxis jetzt, damit ihr beide planen könnt.',
  'It will not be ready: tell the practice, ask for a shorter list or another way.':
    'Er wird nicht so weit sein: Sag es der Praxis, bitte um eine kürzere Liste oder einen anderen Weg.',
  '{n} sessions in the last 12 weeks: a pace is told from {need} on.':
    '{n} Einheiten in den letzten 12 Wochen: Ein Tempo lässt sich ab {need} sagen.',
  'In the last 12 weeks: {steps} steps first reached in {sessions} sessions, {rate} sessions a week; {pace} steps a week ({low} to {high}).':
    'In den letzten 12 Wochen: {steps} Stufen zum ersten Mal erreicht in {sessions} Einheiten, {rate} Einheiten in der Woche; {pace} Stufen in der Woche ({low} bis {high}).',
  '{from} to {to}': '{from} bis {to}',
  'What is reached, in other places: another room, the car, another person’s hands. Nothing new.':
    'Was erreicht ist, an anderen Orten: ein anderes Zimmer, das Auto, die Hände von jemand anderem. Nichts Neues.',
  'Short and easy, then rest. Nothing new.': 'Kurz und leicht, dann Pause. Nichts Neues.',
  'Practise as you do, one step after the other, as the calls say.':
    'Übt wie bisher, eine Stufe nach der anderen, wie es die Ansagen sagen.',
  'About 1 session, as until now. By then {low} to {high} steps.':
    'Etwa 1 Einheit, wie bisher. Bis dahin {low} bis {high} Stufen.',
  'About {n} sessions, as until now. By then {low} to {high} steps.':
    'Etwa {n} Einheiten, wie bisher. Bis dahin {low} bis {high} Stufen.',
  'A shorter list: what is ready, and the rest on another day.':
    'Eine kürzere Liste: was bereit ist, und der Rest an einem anderen Tag.',
  'Two visits: first what is ready, so that it ends well.': 'Zwei Termine: zuerst, was bereit ist, damit es gut endet.',
  'Another way to the same answer: less touch, half of the place, another position.':
    'Einen anderen Weg zur selben Antwort: weniger Berührung, die halbe Stelle, eine andere Position.',
  'Whether what cannot wait is kinder under sedation. The veterinarian decides.':
    'Ob das, was nicht warten kann, mit Beruhigung schonender ist. Das entscheidet die Tierarztpraxis.',
  'Whether something hurts: pain comes before practice, and the veterinarian looks first.':
    'Ob etwas wehtut: Schmerz geht vor Üben, und die Tierarztpraxis schaut zuerst.',
  'A visit without an examination, to rehearse there: your dog never practised in this place ({place}).':
    'Einen Besuch ohne Untersuchung, um dort zu proben: An diesem Ort hat dein Hund noch nie geübt ({place}).',
  today: 'heute',
  tomorrow: 'morgen',
  yesterday: 'gestern',
  'in {n} days': 'in {n} Tagen',
  '{n} days ago': 'vor {n} Tagen',
  '{dog}: an examination': '{dog}: eine Untersuchung',
  'Ask the practice what will be done, in which order and for how long. Here it is laid beside what your dog has practised; what is not ready is better told to the practice than asked of the dog.':
    'Frag die Praxis, was gemacht wird, in welcher Reihenfolge und wie lange. Hier liegt es neben dem, was dein Hund geübt hat; was nicht bereit ist, sagt man besser der Praxis, als es vom Hund zu verlangen.',
  'Plan it': 'Planen',
  'What is to be done, in this order': 'Was gemacht wird, in dieser Reihenfolge',
  'Another day, another place, or called off': 'Ein anderer Tag, ein anderer Ort, oder abgesagt',
  'It is called off': 'Sie ist abgesagt',
  'Begin the examination': 'Untersuchung beginnen',
  'Rehearse it as on the day': 'Proben wie an dem Tag',
  'Other examinations': 'Andere Untersuchungen',
  'Plan another': 'Noch eine planen',
  'The day': 'Der Tag',
  '{s} s': '{s} s',
  'Earlier: {what}': 'Früher: {what}',
  'Later: {what}': 'Später: {what}',
  'Take off the list: {what}': 'Von der Liste nehmen: {what}',
  'Take off': 'Wegnehmen',
  'The list is full: {n} items.': 'Die Liste ist voll: {n} Einträge.',
  'Add to the list': 'Auf die Liste setzen',
  'Place of the body': 'Körperstelle',
  'What is done': 'Was gemacht wird',
  'On its plans': 'In seinen Plänen',
  'Common handlings': 'Übliche Berührungen',
  'something else…': 'etwas anderes …',
  'Seconds it takes': 'Sekunden, die es dauert',
  'Ask the practice for': 'Bitte die Praxis um',
  'On no plan yet': 'Noch in keinem Plan',
  'How many steps these need is not known, so they count in no forecast: {what}.':
    'Wie viele Stufen das braucht, ist nicht bekannt, darum zählt es in keiner Vorhersage: {what}.',
  'Make a plan for them': 'Einen Plan dafür machen',
  'The way there': 'Der Weg dorthin',
  'At its own pace, not faster: a dog that is hurried lifts more, and what is missing on the day is no fault of its own.':
    'In seinem Tempo, nicht schneller: Ein Hund, der gedrängt wird, hebt öfter ab, und was an dem Tag fehlt, ist nicht seine Schuld.',
  'How this is counted': 'Wie das gezählt ist',
  'Whole steps that were tried for the first time; the range a week is exact for steps that come at a steady pace (Garwood 1936), and so is that of the steps to come (Nelson 1970). Sessions as many as until now, one a day at most. Reaching a step is not keeping it: that takes three sessions at 9 in 10, on two days, in two places.':
    'Ganze Stufen, die zum ersten Mal versucht wurden; die Spanne je Woche ist exakt für Stufen, die in gleichmäßigem Tempo kommen (Garwood 1936), ebenso die der kommenden Stufen (Nelson 1970). So viele Einheiten wie bisher, höchstens eine am Tag. Eine Stufe zu erreichen heißt nicht, sie zu halten: Das braucht drei Einheiten mit 9 von 10, an zwei Tagen, an zwei Orten.',

  'takes {s} s': 'dauert {s} s',
  'Everybody stops. Go on when you are ready.': 'Alle hören auf. Weiter, wenn du so weit bist.',
  'Unsure: say it again.': 'Unsicher: Sag es noch einmal.',
  'Twice no: leave this one, and ask the veterinarian for another way.':
    'Zweimal Nein: Lass das, und frag die Tierarztpraxis nach einem anderen Weg.',
  'Lifted: hands off. Wait until the head lies down by itself.': 'Abgehoben: Hände weg. Warte, bis der Kopf von selbst liegt.',
  'All of it is done.': 'Alles ist gemacht.',
  'Done. Next when the dog is ready.': 'Gemacht. Das Nächste, wenn der Hund so weit ist.',
  'Say hold when the head is down, then it may begin.': 'Sag dein Wort für Halten, wenn der Kopf liegt, dann kann es losgehen.',
  Back: 'Zurück',
  'Done: next': 'Gemacht: weiter',
  Next: 'Nächstes',
  'The list': 'Die Liste',
  done: 'gemacht',
  'head up': 'Kopf hoch',
  'not begun': 'nicht begonnen',
  'The list: {n} of {of} done': 'Die Liste: {n} von {of} gemacht',
  'head up: {n}': 'Kopf hoch: {n}',
  'An examination is no training: progress and the next start leave it out. Held on its day, the card tells it as the last time; before it, it was a rehearsal.':
    'Eine Untersuchung ist kein Training: Verlauf und nächster Beginn lassen sie weg. An ihrem Tag nennt die Karte sie als letztes Mal; davor war es eine Probe.',
} as const;
