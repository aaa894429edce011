/** German: the plan, its ladder and its editors. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_PLAN = {
  'There is no such plan on this device': 'Diesen Plan gibt es auf diesem Gerät nicht',
  'Make a plan': 'Einen Plan machen',
  'The ladder': 'Die Leiter',
  'Easiest at the bottom. Tap a step to change it. A session under way keeps the ladder it began with; the next one begins on the nearest easier step that is left.':
    'Das Leichteste steht unten. Tippe auf eine Stufe, um sie zu ändern. Eine laufende Einheit behält die Leiter, mit der sie begann; die nächste beginnt auf der nächsten leichteren Stufe, die noch da ist.',
  'Make another plan': 'Einen anderen Plan machen',

  'Steps, hardest first': 'Stufen, die schwerste zuerst',
  'half step': 'halbe Stufe',
  'next session': 'nächste Einheit',
  'with caution': 'mit Vorsicht',

  'A new plan': 'Ein neuer Plan',
  'Choose how your dog holds still and what you want to do. Every step can be changed afterwards.':
    'Wähl, wie dein Hund stillhält und was du tun möchtest. Jede Stufe lässt sich danach ändern.',
  Position: 'Position',
  'Body area': 'Körperstelle',
  '{n} steps, from {first} to {last}.': '{n} Stufen, von {first} bis {last}.',
  'Keep this plan': 'Diesen Plan behalten',

  'In a few words': 'In wenigen Worten',
  Seconds: 'Sekunden',
  'Seconds it lasts': 'Dauer in Sekunden',
  Change: 'Ändern',
  'Prepare no half': 'Keine Hälfte vorbereiten',
  'What the hand does': 'Was die Hand tut',
  Place: 'Stelle',
  'Caution, said before the step': 'Vorsicht, vor der Stufe gesagt',
  'Half of it, in a few words: less of the place, less pressure or less time':
    'Die Hälfte davon, in wenigen Worten: weniger von der Stelle, weniger Druck oder weniger Zeit',
  'What the hand does in the half': 'Was die Hand bei der Hälfte tut',
  'Seconds the half lasts': 'Dauer der Hälfte in Sekunden',
  'Move up': 'Nach oben',
  'Move down': 'Nach unten',
  'Put a step above': 'Eine Stufe darüber einfügen',
  'Put a handling above': 'Ein Anfassen darüber einfügen',
  'Take the half step out': 'Die halbe Stufe herausnehmen',
  'Put half a step before it': 'Eine halbe Stufe davor einfügen',
  '{title}, again': '{title}, noch einmal',
  'Touch: {area}': 'Berühren: {area}',
  'one finger, a touch and away': 'ein Finger, kurz berühren und weg',

  'This step': 'Diese Stufe',
  'That step is not on the ladder any more.': 'Diese Stufe ist nicht mehr auf der Leiter.',
  '{title} is the lowest step: there is nothing below to halve the rise from.':
    '{title} ist die unterste Stufe: Darunter ist nichts, von wo aus sich der Schritt halbieren ließe.',
  '{title} cannot be halved: holds lie less than a second apart, or nobody has written the half of this handling yet.':
    '{title} lässt sich nicht halbieren: Die Stufen liegen weniger als eine Sekunde auseinander, oder die Hälfte dieses Anfassens hat noch niemand aufgeschrieben.',
  'There is half a step before {title} already.': 'Vor {title} steht schon eine halbe Stufe.',
  '{title} is a whole step.': '{title} ist eine ganze Stufe.',
  'Kept and of are whole numbers; kept is at least 1 and not more than of.':
    '„Gehalten“ und „von“ sind ganze Zahlen; „gehalten“ ist mindestens 1 und nicht mehr als „von“.',
  'A ladder has {bound}.': 'Eine Leiter hat {bound}.',
  'A step needs a few words.': 'Eine Stufe braucht ein paar Worte.',
  'The half needs a few words.': 'Die Hälfte braucht ein paar Worte.',
  'Say what the hand does in the half.': 'Sag, was die Hand bei der Hälfte tut.',
  'The half is the whole: make it less of the place, less pressure or less time.':
    'Die Hälfte ist das Ganze: Nimm weniger von der Stelle, weniger Druck oder weniger Zeit.',
  'Say what the hand does.': 'Sag, was die Hand tut.',
  'Near the face a step needs its caution, and it names the veterinarian.':
    'Nahe am Gesicht braucht eine Stufe ihre Vorsicht, und die nennt die Tierarztpraxis.',
  '{title} would not lie between its two neighbours any more.': '{title} läge nicht mehr zwischen den beiden Nachbarn.',
  'Say how many seconds the half lasts; 0 is a touch and away.':
    'Sag, wie viele Sekunden die Hälfte dauert; 0 heißt kurz berühren und weg.',
  'Seconds begin at 0, a touch and away.': 'Sekunden beginnen bei 0, kurz berühren und weg.',
  'The half lasts {half} s: it cannot be longer than the whole, {whole} s.':
    'Die Hälfte dauert {half} s: Sie kann nicht länger sein als das Ganze, {whole} s.',
  'Say how many seconds; 0 is paid at once.': 'Sag, wie viele Sekunden; 0 heißt sofort belohnt.',
  'Seconds begin at 0, paid at once.': 'Sekunden beginnen bei 0, sofort belohnt.',
  '{n} s is too long: {most} s is the most.': '{n} s ist zu lang: {most} s ist das Höchste.',
  '{step} is half a step and would have to lie {bound} s.': '{step} ist eine halbe Stufe und müsste {bound} s liegen.',
  '{n} s would have to be {bound}.': '{n} s müsste {bound} sein.',
  '{n} s would be as long as the step above, {step}.': '{n} s wäre so lang wie die Stufe darüber, {step}.',
  '{n} s would be more than the step above, {step}.': '{n} s wäre mehr als die Stufe darüber, {step}.',
  '{n} s would be less than the step above, {step}.': '{n} s wäre weniger als die Stufe darüber, {step}.',
  '{n} s would be as long as the step below, {step}.': '{n} s wäre so lang wie die Stufe darunter, {step}.',
  '{n} s would be more than the step below, {step}.': '{n} s wäre mehr als die Stufe darunter, {step}.',
  '{n} s would be less than the step below, {step}.': '{n} s wäre weniger als die Stufe darunter, {step}.',
  '{title} ({n} s)': '{title} ({n} s)',
} as const;
