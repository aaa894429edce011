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
} as const;
