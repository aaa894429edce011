/** German: the rules, named, said and explained. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_RULES = {
  Steady: 'Stetig',
  'Steady, halving ahead': 'Stetig, vorab halbiert',
  Cautious: 'Vorsichtig',
  'Sequential test': 'Sequenzieller Test',
  Percentile: 'Perzentil',
  '{kept} of {of}, in blocks': '{kept} von {of}, in Blöcken',
  '{kept} of {of}, sliding': '{kept} von {of}, gleitend',

  'Nine of ten held: next step; two lifts running, or three in five: back, every time by half a rise; and where two of three steps needed it, the next is halved ahead.':
    'Neun von zehn gehalten: eine Stufe höher; zweimal hintereinander abgehoben oder dreimal in fünf: zurück, jedes Mal um einen halben Schritt; und wo zwei von drei Stufen das brauchten, wird die nächste vorab halbiert.',
  'Nine of ten held: next step; two lifts running, or three in five: back, and the first time the rise is halved.':
    'Neun von zehn gehalten: eine Stufe höher; zweimal hintereinander abgehoben oder dreimal in fünf: zurück, und beim ersten Mal wird der Schritt nach oben halbiert.',
  'Nine of ten held: next step; two lifts in four: back, and the first time the rise is halved.':
    'Neun von zehn gehalten: eine Stufe höher; zweimal in vier abgehoben: zurück, und beim ersten Mal wird der Schritt nach oben halbiert.',
  'Kept reps add up and lifts weigh four times as much: next step when the sum is sure, back when it is sure of the opposite.':
    'Gehaltenes summiert sich, und jedes Abheben wiegt viermal so viel: eine Stufe höher, wenn die Summe sicher ist, zurück, wenn sie des Gegenteils sicher ist.',
  "The next hold is to beat the middle of your dog's last {n} holds.":
    'Das nächste Halten soll länger sein als die Mitte der letzten {n} Male, die dein Hund gehalten hat.',
  '{kept} of a block of {of} held: next step; two lifts running, or three in five: back, and the first time the rise is halved.':
    '{kept} in einem Block von {of} gehalten: eine Stufe höher; zweimal hintereinander abgehoben oder dreimal in fünf: zurück, und beim ersten Mal wird der Schritt nach oben halbiert.',
  '{kept} of the last {of} held: next step; two lifts running, or three in five: back, and the first time the rise is halved.':
    '{kept} der letzten {of} gehalten: eine Stufe höher; zweimal hintereinander abgehoben oder dreimal in fünf: zurück, und beim ersten Mal wird der Schritt nach oben halbiert.',

  'It raises when at most 1 of the last 10 trials on the step was a lift and 9 were kept, so after 9 straight at the earliest. Holding still alone may also rise when the first 5 of 5 trials on a step are kept; handling gets no such short cut. It goes back on 2 lifts running or 3 in the last 5. {halving} Every step is earned again in full. Nine of ten does not promise nine of ten for ever: how sure your dog is, is counted over all trials on the step.':
    'Sie geht höher, wenn höchstens 1 der letzten 10 Versuche auf der Stufe ein Abheben war und 9 gehalten wurden, also frühestens nach 9 hintereinander. Nur reines Stillhalten darf auch steigen, wenn auf einer Stufe die ersten 5 von 5 Versuchen gehalten wurden; für das Anfassen gibt es diese Abkürzung nicht. Sie geht zurück, wenn 2-mal hintereinander oder 3-mal in den letzten 5 abgehoben wurde. {halving} Jede Stufe wird wieder ganz neu verdient. Neun von zehn verspricht nicht neun von zehn für immer: Wie sicher dein Hund ist, wird über alle Versuche auf der Stufe gezählt.',
  'It raises as steady does, on 9 kept of the last 10, but with no short cut for holding still: 9 trials at the least on every step. It goes back on 2 lifts in the last 4. It takes more reps and asks for fewer lifts: for a dog with a history, or a place that was sore.':
    'Sie geht höher wie die stetige, bei 9 gehaltenen der letzten 10, aber ohne Abkürzung für das Stillhalten: mindestens 9 Versuche auf jeder Stufe. Sie geht zurück, wenn in den letzten 4 2-mal abgehoben wurde. Sie braucht mehr Wiederholungen und führt zu weniger Abheben: für einen Hund mit Vorgeschichte oder eine Stelle, die wund war.',
  'A sequential test of 7 in 10 against 9 in 10. Each kept trial adds 8, each lift takes 35 away; at 45 it raises, at -45 it goes back. So 6 of 6 raise, 1 lift asks for 4 or 5 kept to make up for it, and 2 lifts at the start return.':
    'Ein sequenzieller Test von 7 in 10 gegen 9 in 10. Jeder gehaltene Versuch zählt 8 dazu, jedes Abheben nimmt 35 weg; bei 45 geht sie höher, bei -45 zurück. 6 von 6 führen also höher, 1 Abheben verlangt 4 oder 5 gehaltene zum Ausgleich, und 2-mal Abheben am Anfang führt zurück.',
  'It ranks the last {n} holds and asks for one longer than the middle, so that about half of all holds are paid while nothing changes. It is not offered for marked holds: the marker ends a hold, so its length is what you chose and not what your dog would have given. Use it only where you let your dog end every hold.':
    'Sie ordnet die letzten {n} Male Halten und verlangt eines, das länger ist als die Mitte, sodass etwa die Hälfte belohnt wird, solange sich nichts ändert. Für Halten mit Marker wird sie nicht angeboten: Der Marker beendet das Halten, seine Länge hast also du gewählt, und sie ist nicht, was dein Hund gegeben hätte. Nimm sie nur, wo dein Hund jedes Halten selbst beendet.',
  'It halves the rise at every return for as long as a half can be had, and where 2 of the last 3 steps had to be returned from it meets the next new one through its half at once.':
    'Sie halbiert den Schritt nach oben bei jedem Zurück, solange es eine Hälfte gibt, und wo es von 2 der letzten 3 Stufen zurückging, beginnt sie die nächste neue gleich mit ihrer Hälfte.',
  'The first time it goes back from a step it puts half a step in before it, where a half can be had.':
    'Geht sie von einer Stufe zum ersten Mal zurück, so setzt sie eine halbe Stufe davor, wo es eine Hälfte gibt.',
  'It counts in blocks of {of}: with {kept} kept or more at the end of a block it raises, else a fresh block begins.':
    'Sie zählt in Blöcken von {of}: Sind am Ende eines Blocks {kept} oder mehr gehalten, geht sie höher, sonst beginnt ein neuer Block.',
  'It raises as soon as {kept} of the last {of} trials were kept, wherever those {of} lie, so a lucky stretch is enough.':
    'Sie geht höher, sobald {kept} der letzten {of} Versuche gehalten wurden, wo immer diese {of} liegen, also reicht eine Glückssträhne.',
  'It goes back on 2 lifts running or 3 in the last 5, and halves the rise as steady does.':
    'Sie geht zurück, wenn 2-mal hintereinander oder 3-mal in den letzten 5 abgehoben wurde, und halbiert den Schritt nach oben wie die stetige.',
} as const;
