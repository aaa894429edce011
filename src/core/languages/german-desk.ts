/** German: what is said at the trainer's desk. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_DESK = {
  'Could it hurt?': 'Tut es weh?',
  'Lifts rise': 'Immer mehr Abheben',
  Stuck: 'Kommt nicht weiter',
  'Too many reps': 'Zu viele Wiederholungen',
  'Too many sessions': 'Zu viele Einheiten',
  'Nothing came back': 'Nichts kam zurück',
  'Lifts gathered at {place} in the latest session, so that the veterinarian was named.':
    'In der letzten Einheit häufte sich das Abheben ({place}), sodass die Tierarztpraxis genannt wurde.',
  'Lifts gathered at {place} in {sessions} of the latest {of} sessions, so that the veterinarian was named.':
    'In {sessions} der letzten {of} Einheiten häufte sich das Abheben ({place}), sodass die Tierarztpraxis genannt wurde.',
  'Stop handling there until one has looked.': 'Dort nichts mehr anfassen, bis eine nachgesehen hat.',
  'Lifted in {lifted} of {of} trials of the latest {sessions} sessions; in {liftedBefore} of {ofBefore} in the {sessionsBefore} before.':
    'In den letzten {sessions} Einheiten bei {lifted} von {of} Versuchen abgehoben; in den {sessionsBefore} davor bei {liftedBefore} von {ofBefore}.',
  '{sessions} sessions and no step higher: mostly “{title}”, {kept} of {of} kept in the latest 5.':
    '{sessions} Einheiten und keine Stufe höher: meist „{title}“, {kept} von {of} gehalten in den letzten 5.',
  'More than {bound} reps in {sessions} of the latest {of} sessions, up to {most}; 20 are enough.':
    'Mehr als {bound} Wiederholungen in {sessions} der letzten {of} Einheiten, bis zu {most}; 20 genügen.',
  '{most} sessions on one day of the latest 7; one a day teaches more.':
    '{most} Einheiten an einem der letzten 7 Tage; eine am Tag lehrt mehr.',
  'Up to {most} sessions a day, on {days} of the latest 7 days; one a day teaches more.':
    'Bis zu {most} Einheiten am Tag, an {days} der letzten 7 Tage; eine am Tag lehrt mehr.',
  '{sessions} sessions in the latest 7 days; rest days teach, too.':
    '{sessions} Einheiten in den letzten 7 Tagen; auch Ruhetage lehren.',
  '{sessions} sessions in the latest 7 days, asked for: {asked}.':
    '{sessions} Einheiten in den letzten 7 Tagen, erbeten waren {asked}.',
  'No session for {days} days.': 'Keine Einheit seit {days} Tagen.',
  'Given {days} days ago, asked for: {asked} a week; no session has come back.':
    'Vor {days} Tagen gegeben, erbeten {asked} in der Woche; noch keine Einheit kam zurück.',
  'No session for {days} days, asked for: {asked} a week.': 'Keine Einheit seit {days} Tagen, erbeten {asked} in der Woche.',

  'The desk': 'Der Schreibtisch',
  'Who needs help first': 'Wer zuerst Hilfe braucht',
  'Nothing calls for you': 'Nichts ruft nach dir',
  'Nothing calls for you.': 'Nichts ruft nach dir.',
  'First what may hurt, then what a dog says more and more often, then where only you can help, then what a sentence mends. The bounds are common practice; each reason tells its counts. Only what owners have sent is known here.':
    'Zuerst, was wehtun kann, dann, was ein Hund immer öfter sagt, dann, wo nur du helfen kannst, dann, was ein Satz in Ordnung bringt. Die Grenzen sind übliche Praxis; jeder Grund nennt seine Zahlen. Bekannt ist hier nur, was geschickt wurde.',
  '1 dog; nothing calls for you.': '1 Hund; nichts ruft nach dir.',
  '{n} dogs; nothing calls for you.': '{n} Hunde; nichts ruft nach dir.',
  '1 dog; it needs you.': '1 Hund; er braucht dich.',
  '{n} dogs; {calling} need you.': '{n} Hunde; {calling} brauchen dich.',
  'Nothing lies on it yet. Open a plan, give it as homework, and what owners send back is sorted here: who needs help first, and why.':
    'Noch liegt nichts darauf. Öffne einen Plan, gib ihn als Hausaufgabe, und was zurückkommt, wird hier sortiert: wer zuerst Hilfe braucht, und warum.',
  'To the plans': 'Zu den Plänen',
  'no session yet': 'noch keine Einheit',
  'last on {day}': 'zuletzt am {day}',
  '{n} in seven days': '{n} in sieben Tagen',
  '{n} in seven days, asked for: {asked}': '{n} in sieben Tagen, erbeten: {asked}',
  'Pain: {pain}': 'Schmerzen: {pain}',

  'Nothing was changed.': 'Nichts wurde verändert.',
  'Added. The desk is sorted anew.': 'Hinzugefügt. Der Schreibtisch ist neu sortiert.',
  'What an owner sent': 'Was geschickt wurde',
  'Add sessions from a file': 'Einheiten aus einer Datei hinzufügen',
  'Refused: {n}': 'Abgelehnt: {n}',
  'Add it': 'Hinzufügen',
  'All of it is here already.': 'Alles davon ist schon da.',
  'No new session; something was put right or noted.': 'Keine neue Einheit; etwas wurde berichtigt oder notiert.',
  '1 new session with {dogs}': '1 neue Einheit mit {dogs}',
  '{n} new sessions with {dogs}': '{n} neue Einheiten mit {dogs}',

  'This dog is not on the desk': 'Dieser Hund liegt nicht auf dem Schreibtisch',
  'None was given yet.': 'Noch keine gegeben.',
  'Give “{plan}” as homework': '„{plan}“ als Hausaufgabe geben',
  '“{plan}”, version {n}, given on {day}.': '„{plan}“, Fassung {n}, gegeben am {day}.',
  'Change the plan': 'Den Plan ändern',
  'Practice put in: {steps}. An answer without them takes them out again.':
    'Beim Üben kam dazu: {steps}. Eine Antwort ohne sie nimmt sie wieder heraus.',
  'Take them over into the plan': 'In den Plan übernehmen',
  'Latest sessions': 'Die letzten Einheiten',
  'None has come back yet.': 'Noch keine kam zurück.',
} as const;
