/** German: what is said by `compare`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_COMPARE = {
  // The difference.
  'A {a}, B {b}.': 'A {a}, B {b}.',
  'kept {kept} of {of}': '{kept} von {of} gehalten',
  'Below 5 trials on one side there is nothing to hold against each other yet.':
    'Unter 5 Versuchen auf einer Seite gibt es noch nichts zu vergleichen.',
  'Both keep the same': 'Beide halten gleich viel',
  'B keeps {more}': 'B hält {more}',
  '{found}; such counts fit anything from {low} to {high}.': '{found}; zu solchen Zahlen passt alles von {low} bis {high}.',
  'So they do not tell which is better.': 'Sie sagen also nicht, was besser ist.',
  'no more and no fewer': 'nicht mehr und nicht weniger',
  '{n} of 100 more': '{n} von 100 mehr',
  '{n} of 100 fewer': '{n} von 100 weniger',
  'They share no step with trials: there is nothing to hold against each other.':
    'Sie haben keine Stufe mit Versuchen gemeinsam: Es gibt nichts zu vergleichen.',
  'On the one step that both practised: {said}': 'Auf der einen Stufe, die beide geübt haben: {said}',
  'On the {n} steps that both practised: {said}': 'Auf den {n} Stufen, die beide geübt haben: {said}',
  'Only in A, so not weighed: {steps}.': 'Nur in A, darum nicht gewogen: {steps}.',
  'Only in B, so not weighed: {steps}.': 'Nur in B, darum nicht gewogen: {steps}.',
  '{names} and {n} more steps': '{names} und {n} weitere Stufen',
  '{name}: {sessions}, {kept} of 1 trial kept on all steps.':
    '{name}: {sessions}, {kept} von 1 Versuch gehalten, alle Stufen zusammen.',
  '{name}: {sessions}, {kept} of {n} trials kept on all steps.':
    '{name}: {sessions}, {kept} von {n} Versuchen gehalten, alle Stufen zusammen.',
  'More than half of its 1 hold would outlast what was asked for.':
    '1-mal gehalten; mehr als die Hälfte würde länger halten, als verlangt war.',
  'More than half of its {n} holds would outlast what was asked for.':
    '{n}-mal gehalten; mehr als die Hälfte würde länger halten, als verlangt war.',
  'Half of its 1 hold would last longer than {median}.': '1-mal gehalten; die Hälfte würde länger als {median} halten.',
  'Half of its {n} holds would last longer than {median}.': '{n}-mal gehalten; die Hälfte würde länger als {median} halten.',
  'All of these': 'Alle zusammen',

  // The screen.
  Compare: 'Vergleichen',
  'All of progress': 'Der ganze Verlauf',
  'Two sessions with trials can be held against each other. Practise a second one, in another place or with another person.':
    'Zwei Einheiten mit Versuchen lassen sich vergleichen. Übe eine zweite, an einem anderen Ort oder mit einem anderen Menschen.',
  'A is one session in a garden, B four in a bathroom.': 'A ist eine Einheit in einem Garten, B vier in einem Badezimmer.',
  'What to compare': 'Was verglichen wird',
  'two sessions': 'zwei Einheiten',
  'two weeks': 'zwei Wochen',
  'two places': 'zwei Orte',
  'two people': 'zwei Menschen',
  'This plan has one session with trials so far. Practise a second one.':
    'Dieser Plan hat bisher eine Einheit mit Versuchen. Übe eine zweite.',
  'All sessions of this plan lie in one week so far.': 'Alle Einheiten dieses Plans liegen bisher in einer Woche.',
  'All sessions of this plan were in one place so far. Try an easy step in another one, and name that place before you practise.':
    'Alle Einheiten dieses Plans waren bisher an einem Ort. Versuche eine leichte Stufe an einem anderen, und nenne den Ort, bevor du übst.',
  'One person practised this plan so far. Let somebody else try an easy step, under their own name.':
    'Bisher hat ein Mensch diesen Plan geübt. Lass jemand anderen eine leichte Stufe versuchen, unter dem eigenen Namen.',
  'A (dot)': 'A (Punkt)',
  'B (diamond)': 'B (Raute)',
  'A and B are the same. Choose another for one of them.': 'A und B sind gleich. Wähle für eines etwas anderes.',
  'Side by side': 'Nebeneinander',
  'A is the dot, B the diamond; their lines are the ranges that such counts fit (95 %). Under them is the difference: left of the dotted line A keeps more, right of it B does. A line that crosses it does not tell.':
    'A ist der Punkt, B die Raute; ihre Striche sind die Bereiche, zu denen solche Zahlen passen (95 %). Darunter steht der Unterschied: Links der gepunkteten Linie hält A mehr, rechts davon B. Ein Strich, der sie kreuzt, sagt nichts.',
  'compared#the name of a file': 'Vergleich',
  'Days, places and people differ in more than you chose. A difference is a question, not a cause.':
    'Tage, Orte und Menschen unterscheiden sich in mehr, als du gewählt hast. Ein Unterschied ist eine Frage, keine Ursache.',

  // The chart and its table.
  'too few trials': 'zu wenige Versuche',
  'none kept, A more': 'keine; A mehr',
  'all kept, B more': 'alle; B mehr',
  'A kept': 'A gehalten',
  'A trials': 'A Versuche',
  'B kept': 'B gehalten',
  'B trials': 'B Versuche',
  'B less A': 'B minus A',
} as const;
