/** German: what is said by `dogs`. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_DOGS = {
  'Add your dog': 'Deinen Hund hinzufügen',
  'Your dog': 'Dein Hund',
  Name: 'Name',
  'A dog that has begun to refuse a touch, or flinches, may be in pain: ask your veterinarian before you practise there.':
    'Ein Hund, der eine Berührung neuerdings verweigert oder zusammenzuckt, hat vielleicht Schmerzen: Frag deine Tierarztpraxis, bevor du dort übst.',
  'Add, and choose a plan': 'Hinzufügen und einen Plan wählen',
  'Not now': 'Nicht jetzt',

  'Pain, or a place that is sore': 'Schmerzen, oder eine Stelle, die wehtut',
  'Your veterinarian’s advice': 'Der Rat deiner Tierarztpraxis',
  'Food: what it likes, what it must not have': 'Futter: was er mag, was er nicht bekommen darf',
  'What scares it': 'Was ihm Angst macht',
  'This dog is not on this device': 'Dieser Hund ist nicht auf diesem Gerät',
  'All dogs': 'Alle Hunde',
  'Saved.': 'Gespeichert.',
  'Worth knowing': 'Gut zu wissen',
  'Anything else': 'Was sonst noch',
  Treats: 'Futterstücke',
  Save: 'Speichern',
  'Put away#is': 'Weggelegt',
  'Put away': 'Weglegen',
  'Bring back': 'Zurückholen',
  'Not practising any more?': 'Übt ihr nicht mehr?',
  '{dog} is not shown on the first screen. Everything is kept.':
    '{dog} steht nicht auf der ersten Ansicht. Alles bleibt gespeichert.',
  'Put away, {dog} leaves the first screen. Its plans, sessions and notes are kept, and it can come back.':
    'Weggelegt verschwindet {dog} von der ersten Ansicht. Pläne, Einheiten und Notizen bleiben, und du kannst alles zurückholen.',

  'A new name shows on old sessions too. What is put away is kept whole, and comes back with one tap.':
    'Ein neuer Name steht auch auf alten Einheiten. Was weggelegt ist, bleibt ganz erhalten und kommt mit einem Tippen zurück.',
  Handlers: 'Menschen am Hund',
  'Each has taught words of their own. Who practises is chosen on the first screen.':
    'Wer übt, hat eigene beigebrachte Wörter. Wer dran ist, wählst du auf der ersten Ansicht.',
  'A step that is kept at home is not yet kept elsewhere: note where you practise.':
    'Eine Stufe, die zu Hause gehalten wird, ist anderswo noch nicht gehalten: Halte fest, wo ihr übt.',
  'To practice': 'Zum Üben',
  'Put away: {n}': 'Weggelegt: {n}',
  invented: 'erfunden',
  'About {dog}': 'Über {dog}',
  About: 'Ansehen',
  'Another handler': 'Noch jemand',
  'Another place': 'Noch ein Ort',
  Add: 'Hinzufügen',
  'New name for {name}': 'Neuer Name für {name}',
  Rename: 'Umbenennen',
  'for the next session': 'für die nächste Einheit',
  'Rename {name}': '{name} umbenennen',
  'Bring back {name}': '{name} zurückholen',
  'Put away {name}': '{name} weglegen',
  'There is one called {name} already. Choose another name.': '{name} gibt es schon. Wähle einen anderen Namen.',

  'Weight, kg': 'Gewicht, kg',
  Neutered: 'Kastriert',
  yes: 'ja',
  no: 'nein',
  'not said': 'keine Angabe',
  'kcal in one treat': 'kcal in einem Futterstück',
  'Treats in one session, at most (empty: what the day has left)':
    'Futterstücke in einer Einheit, höchstens (leer: was vom Tag übrig ist)',
  'With its weight, and the kcal printed on the bag of treats, this tells how many treats a day and a session may have.':
    'Aus dem Gewicht und den kcal, die auf der Tüte stehen, ergibt sich hier, wie viele Futterstücke ein Tag und eine Einheit haben dürfen.',
  'About {daily} a day ({resting} at rest). At most a tenth of it in treats: {treats}.':
    'Etwa {daily} am Tag ({resting} in Ruhe). Davon höchstens ein Zehntel in Futterstücken: {treats}.',
  'An estimate for a healthy adult: dogs of one weight differ up to threefold. What you pay comes off its meals. For a puppy, or a dog that is ill or should lose weight, ask your veterinarian.':
    'Eine Schätzung für einen gesunden erwachsenen Hund: Hunde gleichen Gewichts unterscheiden sich bis zum Dreifachen. Was du im Training gibst, geht vom Napf ab. Bei einem Welpen oder einem Hund, der krank ist oder abnehmen soll, frag deine Tierarztpraxis.',
  '{n} kcal': '{n} kcal',
  '{kcal} a day': '{kcal} am Tag',
  '{n} treats a day, {kcal}': '{n} Futterstücke am Tag, {kcal}',
  'Given in practice today: {given}, left: {left}.': 'Heute beim Üben gegeben: {given}, übrig: {left}.',
  'Nothing bounds the treats of a session yet: they are not counted.':
    'Noch begrenzt nichts die Futterstücke einer Einheit: Sie werden nicht gezählt.',
  'The next session counts down from {n}: that is what the day has left.':
    'Die nächste Einheit zählt von {n} herunter: So viel ist vom Tag übrig.',
  'The next session counts down from {n}: that is what you set for one session.':
    'Die nächste Einheit zählt von {n} herunter: So viel hast du für eine Einheit festgelegt.',
  'The next session counts down from {n}: that is what the settings have at hand.':
    'Die nächste Einheit zählt von {n} herunter: So viel hast du laut Einstellungen zur Hand.',
  'The least of three wins: what the day has left, what you set for one session, what the settings have at hand.':
    'Das kleinste von dreien gilt: was vom Tag übrig ist, was du für eine Einheit festgelegt hast, was du laut Einstellungen zur Hand hast.',
} as const;
