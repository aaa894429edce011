/** German: what is said by `progress`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PROGRESS = {
  // How many.
  '1 trial': '1 Versuch',
  '{n} trials': '{n} Versuche',
  '1 hold': '1-mal gehalten',
  '{n} holds': '{n}-mal gehalten',
  '1 lift': '1-mal abgehoben',
  '{n} lifts': '{n}-mal abgehoben',
  '1 place': '1 Ort',
  '{n} places': '{n} Orte',
  '1 row': '1 Zeile',
  '{n} rows': '{n} Zeilen',
  '{kept} of {of}': '{kept} von {of}',
  '{value} ({lower} to {upper})': '{value} ({lower} bis {upper})',

  // Where, with whom, what changed.
  '{n} days between': '{n} Tage dazwischen',
  'plan: {title}': 'Plan: {title}',
  'rule: {rule}': 'Regel: {rule}',
  'place not named': 'Ort nicht genannt',
  somebody: 'jemand',
  'with somebody': 'mit jemandem',
  'with {name}': 'mit {name}',

  // What the charts find.
  'between {lower} and {upper} of 100': 'zwischen {lower} und {upper} von 100',
  'no trials': 'keine Versuche',
  '{kept} of 1 trial kept': '{kept} von 1 Versuch gehalten',
  '{kept} of {n} trials kept': '{kept} von {n} Versuchen gehalten',
  '{counts}, in the long run {range}': '{counts}, auf lange Sicht {range}',
  'No trials here yet.': 'Hier noch keine Versuche.',
  'No clear rise or fall over the latest {n} sessions.':
    'Über die letzten {n} Einheiten geht es weder deutlich aufwärts noch abwärts.',
  'less than 1': 'weniger als 1',
  'about {n}': 'etwa {n}',
  'Over the latest {n} sessions it rises, by {size} of 100 a session.':
    'Über die letzten {n} Einheiten steigt es, um {size} von 100 je Einheit.',
  'Over the latest {n} sessions it falls, by {size} of 100 a session.':
    'Über die letzten {n} Einheiten fällt es, um {size} von 100 je Einheit.',
  'A trend is told from {need} sessions on that may be joined; since the latest change there is 1.':
    'Wohin es geht, zeigt sich ab {need} Einheiten, die verbunden werden dürfen; seit der letzten Änderung gibt es 1.',
  'A trend is told from {need} sessions on that may be joined; since the latest change there are {n}.':
    'Wohin es geht, zeigt sich ab {need} Einheiten, die verbunden werden dürfen; seit der letzten Änderung gibt es {n}.',
  'Session {n}, {day}, {where}. {counts}; mostly {step}.': 'Einheit {n}, {day}, {where}. {counts}; meist {step}.',
  'New here: {changes}.': 'Neu hier: {changes}.',
  'week of {day}': 'Woche vom {day}',
  'week of {day}#in a chart, short': 'ab {day}',
  'not reached': 'nicht erreicht',
  'not reached, at least {lower}': 'nicht erreicht, mindestens {lower}',
  'No week here has five holds yet.': 'Noch keine Woche hier, in der fünfmal gehalten wurde.',
  'More than half of the holds would outlast what you asked for, so half is not reached':
    'Mehr als die Hälfte würde länger halten, als du verlangst, darum wird die Hälfte nicht erreicht',
  'Half of the holds would last longer than {s}': 'Die Hälfte würde länger als {s} halten',
  'In the {week}: {half} ({holds}, {lifts}).': 'In der {week}: {half} ({holds}, {lifts}).',
  'No time was counted here yet.': 'Hier wurde noch keine Zeit gezählt.',
  '{kept} kept a minute, {lifted} lifted, over {sessions}.': '{kept} gehalten je Minute, {lifted} abgehoben, über {sessions}.',
  'No session yet.': 'Noch keine Einheit.',
  'No practice in the latest 1 day.': 'Am letzten Tag nicht geübt.',
  'No practice in the latest {n} days.': 'In den letzten {n} Tagen nicht geübt.',
  'At most {n} days of practice ran without rest.': 'Höchstens {n} Übungstage folgten ohne Ruhetag aufeinander.',
  'No two days of practice ran on.': 'Nie folgten zwei Übungstage aufeinander.',
  '1 day of practice': '1 Übungstag',
  '{n} days of practice': '{n} Übungstage',
  '1 rest day': '1 Ruhetag',
  '{n} rest days': '{n} Ruhetage',
  'The first day of practice.': 'Der erste Übungstag.',
  '{practised} and {rested} in the latest {n} days.': '{practised} und {rested} in den letzten {n} Tagen.',

  // The next best thing.
  'Practise a first session.': 'Übe eine erste Einheit.',
  'Check “{title}”: it was kept for good, and not practised for {n} days.':
    'Prüfe „{title}“: Es saß und wurde seit {n} Tagen nicht geübt.',
  'Try “{title}” in a new place: {place}, {with}.': 'Versuche „{title}“ an einem neuen Ort: {place}, {with}.',
  'Let somebody try “{title}”: {place}.': 'Lass jemand anderen „{title}“ versuchen: {place}.',
  'Let {name} try “{title}”: {place}.': 'Lass {name} „{title}“ versuchen: {place}.',
  '“{title}” is good in one place, {place}. Try it once in another.':
    '„{title}“ klappt an einem Ort: {place}. Versuche es einmal an einem anderen.',
  '“{title}” is the hardest practised step that is not kept for good yet.':
    '„{title}“ ist die schwerste geübte Stufe, die noch nicht sitzt.',
  'Next on the ladder, not practised yet: “{title}”.': 'Als Nächstes auf der Leiter, noch nicht geübt: „{title}“.',
  '“{title}” lifted {lifted} of {of} times in one place, {place}. Practise it in another, where it is good: {better}.':
    '„{title}“ an einem Ort, {place}: {lifted} von {of} abgehoben. Übe es an einem anderen, wo es klappt: {better}.',
  '“{title}” lifted {lifted} of {of} times in one place, {place}, and nothing easier is on the ladder. Put a step under it.':
    '„{title}“ an einem Ort, {place}: {lifted} von {of} abgehoben, und die Leiter hat nichts Leichteres. Setze eine Stufe darunter.',
  'Half of it, or a quieter place, is where the dog can win. Does a dog that knew it lift now? Ask your veterinarian: it may hurt.':
    'Die Hälfte davon oder ein ruhigerer Ort: Dort kann der Hund gewinnen. Hebt ein Hund jetzt ab, der es schon konnte? Frag deine Tierarztpraxis: Es kann wehtun.',
  'Every step is kept for good. Check each now and then.': 'Jede Stufe sitzt. Prüfe jede ab und zu.',
  'It was never tried there. Begin a step or two lower: in a new place an old step is new again.':
    'Dort wurde es nie versucht. Fang ein, zwei Stufen tiefer an: An einem neuen Ort ist eine alte Stufe wieder neu.',
  'Choose the other place before you practise, so that it is counted there.':
    'Wähle den anderen Ort, bevor du übst, damit es dort gezählt wird.',
  'A few reps are enough. If the head lifts, practise it again for a while.':
    'Ein paar Wiederholungen reichen. Wenn der Kopf hochgeht, übe es wieder eine Weile.',
  'not tried': 'nicht versucht',
  'on the way': 'auf dem Weg',
  '{n} of 3 sessions at 9 in 10, {places}': '{n} von 3 Einheiten mit 9 von 10, {places}',
  'kept for good since {day}': 'sitzt seit {day}',
  'never tried': 'nie versucht',
  '{title}: last practised {day}, {n} days ago': '{title}: zuletzt geübt am {day}, vor {n} Tagen',
  'The next best thing': 'Das Nächste, was sich lohnt',
  'Due for a check': 'Zu prüfen',

  // The screen.
  '1 session cannot be read and is not counted here. Nothing of it was deleted.':
    '1 Einheit kann nicht gelesen werden und zählt hier nicht mit. Nichts von ihr wurde gelöscht.',
  '{n} sessions cannot be read and are not counted here. Nothing of them was deleted.':
    '{n} Einheiten können nicht gelesen werden und zählen hier nicht mit. Nichts von ihnen wurde gelöscht.',
  Dog: 'Hund',
  'To practise': 'Zum Üben',
  'Compare two': 'Zwei vergleichen',
  'Choose one plan to see its places and people.': 'Wähle einen Plan, um seine Orte und Menschen zu sehen.',
  'dog#in the name of a file': 'Hund',
  'No sessions yet.': 'Noch keine Einheiten.',
  'After your first session this page shows what your dog keeps, where and with whom, and the next thing to try.':
    'Nach deiner ersten Einheit zeigt diese Seite, was dein Hund hält, wo und mit wem, und was als Nächstes dran ist.',
  'Invented, to show how it is read': 'Erfunden, um zu zeigen, wie man es liest',
  'twelve sessions of a dog that learns to lie flat.': 'zwölf Einheiten eines Hundes, der flach liegen lernt.',
  'Lie flat {n} s': 'Flach liegen {n} s',
  'File one claw': 'Eine Kralle feilen',
  bathroom: 'Badezimmer',
  garden: 'Garten',
  // Also after “mit”.
  you: 'Halterin',
  'a friend': 'Freundin',
  Earlier: 'Früher',
  'Sessions {from} to {to} of {of}': 'Einheiten {from} bis {to} von {of}',

  // What is asked about.
  'A dog that is not on this device': 'Ein Hund, der nicht auf diesem Gerät ist',
  Plan: 'Plan',
  'all plans': 'alle Pläne',
  What: 'Was',
  'all steps': 'alle Stufen',
  everywhere: 'überall',
  With: 'Mit',
  everybody: 'allen',
  position: 'Position',

  // The charts.
  none: 'keine',
  half: 'Hälfte',
  '9 in 10': '9/10',
  all: 'alle',
  'Kept, session by session': 'Gehalten, Einheit für Einheit',
  'A dot is a session, its line the range that such counts fit (95 %). An open dot has fewer than 5 trials. Lines never cross a change or 14 days without practice.':
    'Ein Punkt ist eine Einheit, sein Strich der Bereich, zu dem solche Zahlen passen (95 %). Ein offener Punkt hat weniger als 5 Versuche. Linien gehen nie über eine Änderung oder 14 Tage ohne Übung hinweg.',
  'Pick a session to read it.': 'Wähle eine Einheit, um sie zu lesen.',
  'Its review': 'Ihr Rückblick',
  'Reps a minute': 'Wiederholungen je Minute',
  'Equal steps up are equal factors: from 1 to 2 is as far as from 5 to 10. Dots are kept, crosses lifted. In brackets: the range that such counts fit (95 %).':
    'Gleich weit nach oben ist gleich viel Mal so oft: von 1 bis 2 so weit wie von 5 bis 10. Punkte sind gehalten, Kreuze abgehoben. In Klammern: der Bereich, zu dem solche Zahlen passen (95 %).',
  '{kept} kept and {lifted} lifted a minute.': '{kept} gehalten und {lifted} abgehoben je Minute.',
  'How long the head stays down': 'Wie lange der Kopf unten bleibt',
  'Up: the share of holds that last longer. A marker ends the looking, not the hold (small ticks), so the curve falls at lifts only. The latest week is the solid line.':
    'Nach oben: welcher Teil länger gehalten wird. Ein Marker beendet das Zusehen, nicht das Halten (kleine Striche), darum fällt die Kurve nur, wo abgehoben wurde. Die letzte Woche ist die durchgezogene Linie.',
  'Pick a week to read it.': 'Wähle eine Woche, um sie zu lesen.',
  '{week}: {holds} in {sessions}, {lifts}. Median {median}.': '{week}: {holds} in {sessions}, {lifts}. Median {median}.',
  'Practice and rest': 'Üben und Ruhen',
  'A filled square is a day of practice with its trials, a ring a rest day. Dogs learn well with rest between: one or two sessions a week beat daily ones (44 Beagles; Meyer & Ladewig 2008, Demant et al. 2011).':
    'Ein volles Quadrat ist ein Übungstag mit seinen Versuchen, ein Ring ein Ruhetag. Hunde lernen gut mit Ruhe dazwischen: Ein oder zwei Einheiten in der Woche sind besser als tägliche (44 Beagles; Meyer & Ladewig 2008, Demant et al. 2011).',
  'Pick a day to read it.': 'Wähle einen Tag, um ihn zu lesen.',
  '{day}: before your first session, or still ahead.': '{day}: vor deiner ersten Einheit, oder noch nicht da.',
  '{day}: a rest day.': '{day}: ein Ruhetag.',
  'Save as': 'Speichern als',
  '{title}, as a table': '{title}, als Tabelle',

  // The heads of tables.
  session: 'Einheit',
  day: 'Tag',
  trials: 'Versuche',
  from: 'von',
  to: 'bis',
  step: 'Stufe',
  place: 'Ort',
  with: 'mit',
  rule: 'Regel',
  plan: 'Plan',
  'new here': 'neu hier',
  minutes: 'Minuten',
  'kept a minute': 'gehalten je Minute',
  'lifted a minute': 'abgehoben je Minute',
  'week of': 'Woche vom',
  sessions: 'Einheiten',
  holds: 'gehalten (Anzahl)',
  lifts: 'abgehoben (Anzahl)',
  median: 'Median',
  'after, s': 'nach, s',
  'still down, share': 'noch unten, Anteil',
  'holds watched': 'noch beobachtet',
  rest: 'Ruhe',
  practice: 'geübt',
  what: 'was',
  'over all': 'insgesamt',

  // The grid.
  'Places and people': 'Orte und Menschen',
  'Steps by places and people': 'Stufen nach Orten und Menschen',
  'Where and with whom each step was tried, and where it is kept':
    'Wo und mit wem jede Stufe versucht wurde und wo sie gehalten wird',
  'How to read the grid': 'Wie man die Tafel liest',
  '9 in 10 in the latest session there': '9 von 10 in der letzten Einheit dort',
  tried: 'versucht',
  'Kept for good: 9 in 10 in three sessions running, on two days at least, and once in another place.':
    'Es sitzt: 9 von 10 in drei Einheiten hintereinander, an mindestens zwei Tagen und einmal an einem anderen Ort.',
  'A session with fewer than 5 trials on the step proves nothing either way.':
    'Eine Einheit mit weniger als 5 Versuchen auf der Stufe beweist weder das eine noch das andere.',
  'Nothing was tried yet.': 'Noch nichts wurde versucht.',
  '{good} of {of} steps kept for good. {never} of {squares} squares were never tried.':
    '{good} von {of} Stufen sitzen. {never} von {squares} Feldern wurden nie versucht.',
} as const;
