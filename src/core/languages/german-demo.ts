/** German: the invented dog and her plan. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_DEMO = {
  'Invented.': 'Erfunden.',
  'Likes dried sprats.': 'Mag getrocknete Sprotten.',
  'The sound of clippers worries her.': 'Das Geräusch der Krallenzange beunruhigt sie.',
  'Lie flat, paid at once': 'Flach liegen, sofort belohnt',
  'If she pulls a paw away that she gave before, stop: a sore paw can be pain, and that is a question for your veterinarian.':
    'Zieht sie eine Pfote weg, die sie früher gab, hör auf: Eine wunde Pfote kann Schmerz sein, und danach fragst du deine Tierarztpraxis.',
  'two fingers on the top of the front paw': 'zwei Finger oben auf der Vorderpfote',
  'Touch the leg above the paw': 'Das Bein über der Pfote berühren',
  'Rest a hand on the paw 2 s': 'Eine Hand auf die Pfote legen 2 s',
  'Rest a hand on the paw 1 s': 'Eine Hand auf die Pfote legen 1 s',
  'Lift the paw a finger high 2 s': 'Die Pfote einen Finger hoch heben 2 s',
  'the paw lies on the fingers, a finger off the mat': 'die Pfote liegt auf den Fingern, einen Finger über der Matte',
  'Slide fingers under the paw': 'Finger unter die Pfote schieben',
  'one light stroke of the nail file on the steadied claw': 'ein leichter Strich der Feile auf der gehaltenen Kralle',
  'Lay the file on the claw': 'Die Feile auf die Kralle legen',
  'the file lies on the claw and does not move': 'die Feile liegt auf der Kralle und bewegt sich nicht',
} as const;
