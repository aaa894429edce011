/** German: what the calls, the outcomes and their reasons are called. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_CORE = {
  'the position': 'die Position',
  'the ears': 'die Ohren',
  'the eyes': 'die Augen',
  'the mouth': 'das Maul',
  'the paws': 'die Pfoten',
  'the collar and neck': 'Halsband und Hals',
  'the coat and tail': 'Fell und Rute',

  'next step': 'eine Stufe höher',
  'one step back': 'eine Stufe zurück',
  'half a step': 'halbe Stufe',
  'rest now': 'Pause machen',
  'make it easier': 'mach es leichter',
  'warm-up over': 'Aufwärmen vorbei',
  stay: 'hierbleiben',

  'I cannot hear': 'ich höre nichts',

  kept: 'gehalten',
  lifted: 'abgehoben',
  short: 'kurz',
  'not a trial': 'zählt nicht',
  'not offered': 'nicht angeboten',
  'a slip or a distraction': 'ein Versehen oder eine Ablenkung',
  'broken off by a pause': 'durch eine Pause abgebrochen',
  'broken off by the end': 'durch das Ende abgebrochen',

  'A marker, but no hold was heard. Say hold when the dog settles.':
    'Ein Marker, aber kein Halten wurde gehört. Sag dein Wort für Halten, wenn der Hund zur Ruhe kommt.',
  'The step stays as it is during a hold. Say it again between reps.':
    'Während der Hund hält, bleibt die Stufe, wie sie ist. Sag es zwischen zwei Wiederholungen noch einmal.',

  'Next step: {to}.': 'Eine Stufe höher: {to}.',
  'One step back: {to}.': 'Eine Stufe zurück: {to}.',
  'Half a step: {to}.': 'Halbe Stufe: {to}.',
  'Stop while ahead.': 'Hör auf, solange es gut läuft.',
  'Rest now.': 'Jetzt Pause machen.',
  'This is the easiest step: make it easier yourself, or stop.':
    'Das ist die leichteste Stufe: Mach es selbst noch leichter, oder hör auf.',
  'Warm-up over: {to}.': 'Aufwärmen vorbei: {to}.',
  'Stay: {to}.': 'Hierbleiben: {to}.',

  '{kept} of {of} held.': '{kept} von {of} gehalten.',
  'The first {kept} of {of} on this step held.': 'Die ersten {kept} von {of} auf dieser Stufe gehalten.',
  '{kept} of the last {of} held.': '{kept} der letzten {of} gehalten.',
  '{kept} of a block of {of} held.': '{kept} in einem Block von {of} gehalten.',
  '{kept} of {of} held so far.': 'Bisher {kept} von {of} gehalten.',
  '{kept} kept and {lifts} lifted of {of}: the evidence is enough.':
    '{kept} gehalten und {lifts} abgehoben von {of}: Das ist deutlich genug.',
  'The head lifted: the step was too big.': 'Der Kopf ging hoch: Die Stufe war zu groß.',
  '2 lifts running: the step was too big.': '2-mal hintereinander abgehoben: Die Stufe war zu groß.',
  '{lifts} lifts running: the step was too big.': '{lifts}-mal hintereinander abgehoben: Die Stufe war zu groß.',
  '{lifts} lifts in the last {of}: the step was too big.': '{lifts}-mal abgehoben bei den letzten {of}: Die Stufe war zu groß.',
  '{lifts} lifts in the last {of}.': '{lifts}-mal abgehoben bei den letzten {of}.',
  '{lifts} lifts in a block of {of}.': '{lifts}-mal abgehoben in einem Block von {of}.',

  'The goal of the plan is reached.': 'Das Ziel des Plans ist erreicht.',
  'The second return today: enough for now.': 'Heute zum zweiten Mal eine Stufe zurück: genug für jetzt.',
  'Not offered {n} times running: the dog would rather not, for now.':
    '{n}-mal hintereinander nicht angeboten: Der Hund möchte gerade lieber nicht.',
  '{n} reps are done.': '{n} Wiederholungen sind geschafft.',
  '{n} minutes are up.': '{n} Minuten sind um.',
  '1 treat is spent.': '1 Futterstück ist verbraucht.',
  '{n} treats are spent.': '{n} Futterstücke sind verbraucht.',
  'A step gained and {n} reps left: a good moment to end.':
    'Eine Stufe gewonnen, und es bleiben {n} Wiederholungen: ein guter Moment zum Aufhören.',
  'The rise is halved.': 'Der Schritt nach oben wird halbiert.',
  '{n} of the last {of} steps had to be halved, so this one is halved at once.':
    '{n} der letzten {of} Stufen mussten halbiert werden, darum wird diese gleich halbiert.',
  'No half step is prepared here.': 'Hier ist keine halbe Stufe vorbereitet.',
  'There is no easier step in the plan.': 'Im Plan gibt es keine leichtere Stufe.',
  'Two easy reps are done.': 'Zwei leichte Wiederholungen sind geschafft.',
  'Both warm-ups lifted: start here today.': 'Bei beiden zum Aufwärmen abgehoben: Fang heute hier an.',
  'You said so.': 'Du hast es so gesagt.',
  'The call “{call}” is not followed: the count begins afresh.':
    'Der Ansage „{call}“ wird nicht gefolgt: Das Zählen beginnt von vorn.',
  'Many lifts at {place}: leave it for today and look. Is something sore?':
    'Oft abgehoben, wenn es um {place} geht: Lass es für heute und sieh nach. Tut etwas weh?',
  'Lifts keep coming at {place}. A change like this can be pain: stop handling this place and ask your veterinarian.':
    'Immer wieder abgehoben, wenn es um {place} geht. So eine Veränderung kann Schmerz sein: Fass dort nicht mehr hin und frag deine Tierarztpraxis.',

  'The first session begins on the first step.': 'Die erste Einheit beginnt auf der ersten Stufe.',
  'You go on from the step you reached.': 'Du machst auf der Stufe weiter, die du erreicht hast.',
  'The session ended on a lift, so one step lower.': 'Die Einheit endete mit einem Abheben, darum eine Stufe tiefer.',
  'The session ended on a lift, and there is no easier step: ask for less of it, or put an easier step into the plan.':
    'Die Einheit endete mit einem Abheben, und es gibt keine leichtere Stufe: Verlang weniger davon, oder nimm eine leichtere Stufe in den Plan auf.',
  '{n} days without practice, so lower.': '{n} Tage ohne Training, darum tiefer.',

  'Hold {n} s': 'Halten {n} s',

  '{path}: expected {bound}; got {value}': '{path}: erwartet: {bound}; gefunden: {value}',
  'a rule, with 1 <= kept <= of and a window that can be counted':
    'eine Regel mit 1 <= gehalten <= von und einem Fenster, das sich zählen lässt',
  '1 to {n} steps': '1 bis {n} Stufen',
  'some words': 'ein paar Worte',
  'an id of its own, not that of steps[{n}]': 'eine eigene Kennung, nicht die von Nummer {n}',
  '0 to {n} s': '0 bis {n} s',
  'more than {n}, the step below': 'mehr als {n}, die Stufe darunter',
  'one of {areas}': 'eines von {areas}',
  'a sentence that names the veterinarian': 'ein Satz, der die Tierarztpraxis nennt',
  'less of the handling than the whole': 'weniger von der Handlung als das Ganze',
  '0 to {n} s, not more than the whole': '0 bis {n} s, nicht mehr als das Ganze',
  'a step below it and a step above it': 'eine Stufe darunter und eine Stufe darüber',
  'between {low} and {high}': 'zwischen {low} und {high}',
} as const;
