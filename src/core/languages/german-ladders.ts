/** German: the ready ladders, with their cautions. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_LADDERS = {
  'Chin on your lap': 'Kinn auf deinem Schoß',
  'chin on your lap': 'Kinn auf deinem Schoß',
  'Chin resting on your lap, you sitting': 'Das Kinn liegt auf deinem Schoß, du sitzt',
  'Chin on lap': 'Kinn auf Schoß',
  'Chin on a rolled towel': 'Kinn auf gerolltem Handtuch',
  'chin on a rolled towel': 'Kinn auf gerolltem Handtuch',
  'Chin resting on a rolled towel': 'Das Kinn liegt auf einem gerollten Handtuch',
  'Chin on towel': 'Kinn auf Handtuch',
  'Standing on a mat': 'Stehen auf der Matte',
  'standing on a mat': 'Stehen auf der Matte',
  'Standing still with four feet on a mat': 'Ruhig stehen, alle vier Pfoten auf der Matte',
  'Stand on mat': 'Stehen auf Matte',
  'Lying on the side': 'Auf der Seite liegen',
  'lying on the side': 'auf der Seite liegen',
  'Lying flat on the side, head down': 'Flach auf der Seite liegen, Kopf unten',
  'Lie flat': 'Flach liegen',
  '{position}, paid at once': '{position}, sofort belohnt',
  '{position} {n} s': '{position} {n} s',

  Ears: 'Ohren',
  ears: 'Ohren',
  Eyes: 'Augen',
  eyes: 'Augen',
  Mouth: 'Maul',
  mouth: 'Maul',
  Paws: 'Pfoten',
  paws: 'Pfoten',
  'Collar and neck': 'Halsband und Hals',
  'collar and neck': 'Halsband und Hals',
  'Coat and tail': 'Fell und Rute',
  'coat and tail': 'Fell und Rute',

  'Nothing goes into the ear canal, and an ear that is red, smells or hurts is for your veterinarian, not for practice.':
    'In den Gehörgang kommt nichts, und ein Ohr, das rot ist, riecht oder wehtut, gehört in die Tierarztpraxis und nicht ins Training.',
  'Sit beside your dog and never bend over the face; an eye that is red, half shut or weeping is for your veterinarian.':
    'Sitz neben deinem Hund und beug dich nie über sein Gesicht; ein Auge, das rot ist, halb zu ist oder tränt, gehört in die Tierarztpraxis.',
  'Keep your own face away and stop when your dog stiffens or pulls back: sore teeth and gums are for your veterinarian, not for practice.':
    'Halt dein eigenes Gesicht fern und hör auf, wenn dein Hund steif wird oder sich zurückzieht: Wunde Zähne und wundes Zahnfleisch gehören in die Tierarztpraxis und nicht ins Training.',
  'If a paw that was given before is pulled away, stop: a sore paw can be pain, and that is a question for your veterinarian.':
    'Wird eine Pfote weggezogen, die früher gegeben wurde, hör auf: Das kann Schmerz sein, und danach fragst du deine Tierarztpraxis.',
  'A stiff neck or a yelp at a touch can be pain: stop, and ask your veterinarian before you go on.':
    'Ein steifer Hals oder ein Aufjaulen bei Berührung kann Schmerz sein: Hör auf, und frag deine Tierarztpraxis, bevor du weitermachst.',
  'A flinch at the back, the hips or the tail can be pain: stop, and ask your veterinarian before you go on.':
    'Ein Zucken am Rücken, an der Hüfte oder an der Rute kann Schmerz sein: Hör auf, und frag deine Tierarztpraxis, bevor du weitermachst.',
} as const;
