/** German: how fast a rule is, drawn and in figures. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_RULE_FIGURES = {
  'When the step goes up': 'Wann es eine Stufe höher geht',
  Rule: 'Regel',
  '{rule} (usual)': '{rule} (üblich)',
  '{rule}: too fast': '{rule}: zu schnell',
  'k of m, in your own numbers': 'k von m, in eigenen Zahlen',
  'Your own: {rule}': 'Deine eigene: {rule}',
  'Percentile: not for marked holds (below: why)': 'Perzentil: nicht für Halten mit Marker (unten: warum)',
  Kept: 'Gehalten',
  'of#kept _ of _': 'von',
  counted: 'gezählt',
  'in blocks': 'in Blöcken',
  anywhere: 'irgendwo',

  'How fast it is, drawn and in figures': 'Wie schnell: Bild und Zahlen',
  Raised: 'Höher',
  'before it goes back': 'bevor es zurückgeht',
  'within 10 trials': 'in 10 Versuchen',
  'within 20 trials': 'in 20 Versuchen',
  '{n} of 100': '{n} von 100',
  'Too fast: a dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.':
    'Zu schnell: Ein Hund, der wirklich 7 von 10 hält, kommt in {at7} Fällen höher, bevor es zurückgeht; einer, der 9 von 10 hält, in {at9}.',
  'Patient: a dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.':
    'Geduldig: Ein Hund, der wirklich 7 von 10 hält, kommt in {at7} Fällen höher, bevor es zurückgeht; einer, der 9 von 10 hält, in {at9}.',
  'A dog that truly keeps 7 of 10 is raised in {at7} visits before it goes back; one that keeps 9 of 10 in {at9}.':
    'Ein Hund, der wirklich 7 von 10 hält, kommt in {at7} Fällen höher, bevor es zurückgeht; einer, der 9 von 10 hält, in {at9}.',
  'At 9 of 10 the raise comes after {raise} trials on average, within 10 trials in {in10} visits and within 20 in {in20}. At 7 of 10 the return comes after {back}.':
    'Bei 9 von 10 geht es im Mittel nach {raise} Versuchen höher, in {in10} Fällen binnen 10 Versuchen und in {in20} binnen 20. Bei 7 von 10 geht es nach {back} zurück.',
  'A dog that never learned anything more would keep {kept} trials in the long run on these {n} steps, and spend most time, {time} trials, where it keeps {there}.':
    'Ein Hund, der nichts mehr dazulernte, würde auf diesen {n} Stufen auf die Dauer {kept} Versuchen halten und die meiste Zeit, {time} Versuchen, dort verbringen, wo er {there} hält.',
  'No rep on the step that comes next counts yet, so nothing is known of it.':
    'Auf der Stufe, die als Nächstes kommt, zählt noch kein Versuch, also ist von ihr nichts bekannt.',
  '{kept} of {of} kept on the step that comes next: too few to say more.':
    '{kept} von {of} gehalten auf der Stufe, die als Nächstes kommt: zu wenige, um mehr zu sagen.',
  '{kept} of {of} kept on the step that comes next: in the long run that can mean anything from {lower} to {upper} of 10.':
    '{kept} von {of} gehalten auf der Stufe, die als Nächstes kommt: Auf die Dauer kann das alles zwischen {lower} und {upper} von 10 bedeuten.',
  'The table below says the same.': 'Die Tabelle darunter sagt dasselbe.',
  'too early to raise': 'zu früh für höher',
  'raised, of 100 visits': 'höher, von 100 Fällen',
  'truly kept of 10': 'wirklich gehalten von 10',
  'time on each step, of 100 trials': 'Zeit auf jeder Stufe, von 100 Versuchen',
  'kept there, of 100': 'dort gehalten, von 100',
  handling: 'Anfassen',
  'holding still and handling': 'Stillhalten und Anfassen',
  'holding still': 'Stillhalten',
  'steady, for comparison': 'stetig, zum Vergleich',
  'raised too early': 'zu früh höher',

  'The same as a table': 'Dasselbe als Tabelle',
  Handling: 'Anfassen',
  'Holding still and handling': 'Stillhalten und Anfassen',
  'Holding still': 'Stillhalten',
  'Exact, by trying all outcomes. “To raise” and “to return”: mean trials of the visits that end so.':
    'Genau, aus allen möglichen Verläufen. „In 10“ und „in 20“: binnen so vieler Versuche. „Bis höher“ und „bis zurück“: mittlere Zahl der Versuche in den Fällen, die so enden.',
  '{title}: raised, of 100 visits': '{title}: höher, von 100 Fällen',
  'truly kept': 'hält wirklich',
  'in 10 trials': 'in 10',
  'in 20': 'in 20',
  ever: 'je',
  'trials to raise': 'bis höher',
  'to return': 'bis zurück',
  '{n} of 10': '{n} von 10',
  'The rules side by side': 'Die Regeln nebeneinander',
  'raised at 7 of 10': 'höher bei 7 von 10',
  'at 9 of 10': 'bei 9 von 10',
  'lifts a dog': 'Abheben je Hund',
  'early raises': 'zu früh höher',
  '{n} too fast': '{n} zu schnell',
  'Raised: of 100 visits to a handling step by a dog that truly keeps so many, exact. Lifts up to the goal, and raises of 100 that came too early: on 2000 invented dogs trained by this app; they rank rules and say nothing about yours.':
    'Höher: von 100 Fällen auf einer Stufe mit Anfassen, bei einem Hund, der wirklich so viele hält, genau. Abheben bis zum Ziel, und wie oft von 100 es zu früh höher ging: an 2000 erfundenen Hunden, die diese App trainiert hat; sie ordnen Regeln und sagen nichts über deinen.',
  'Which hold the next one would have to beat, counted from the shortest':
    'Welches Halten das nächste übertreffen müsste, gezählt vom kürzesten an',
  'of the last': 'von den letzten',
  'to pay {n} of 10': 'um {n} von 10 zu belohnen',

  'How it counts, and what speaks for it': 'Wie sie zählt und was für sie spricht',
  'Nobody has compared this rule on invented dogs. The chart is exact all the same.':
    'Diese Regel hat noch niemand an erfundenen Hunden verglichen. Das Diagramm ist trotzdem genau.',
  'Invented dogs rank rules; they say nothing about yours.': 'Erfundene Hunde ordnen Regeln; sie sagen nichts über deinen.',
  'Of {dogs} invented dogs trained by this app {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.':
    'Von {dogs} erfundenen Hunden, die diese App trainiert hat, kommen {top} von 100 ganz nach oben, im Mittel nach {reps} Wiederholungen und {lifts}-mal Abheben; {early} von 100 Malen geht es zu früh höher.',
  'Of {dogs} other invented dogs {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.':
    'Von {dogs} anderen erfundenen Hunden kommen {top} von 100 ganz nach oben, im Mittel nach {reps} Wiederholungen und {lifts}-mal Abheben; {early} von 100 Malen geht es zu früh höher.',
  'Of {dogs} or more invented dogs of an earlier comparison {top} of 100 reach the top, after {reps} reps and {lifts} lifts on average; {early} of 100 raises come too early.':
    'Von {dogs} oder mehr erfundenen Hunden eines früheren Vergleichs kommen {top} von 100 ganz nach oben, im Mittel nach {reps} Wiederholungen und {lifts}-mal Abheben; {early} von 100 Malen geht es zu früh höher.',
} as const;
