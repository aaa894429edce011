/** German: what is said by `home`, the bar, the notices and the rescue screen. Also the list of those sentences: a missing one does not compile. */
export const GERMAN_HOME = {
  Dogs: 'Hunde',
  Review: 'Rückblick',
  Progress: 'Verlauf',
  Settings: 'Einstellungen',
  Places: 'Orte',

  'Hold still, by choice': 'Stillhalten, freiwillig',
  'You say a short word when the dog settles, another when you pay, a third when the head comes up; the phone on the table listens, taps the seconds and keeps every rep. After each rep it tells you whether to go on, go back, halve the step or rest. Everything stays on this device.':
    'Du sagst ein kurzes Wort, wenn der Hund zur Ruhe kommt, ein zweites, wenn du belohnst, ein drittes, wenn der Kopf hochkommt; das Telefon auf dem Tisch hört zu, klopft die Sekunden und merkt sich jede Wiederholung. Nach jeder sagt es dir: weiter, zurück, halbe Stufe oder Pause. Alles bleibt auf diesem Gerät.',
  'A session as bars on stairs (invented): a flat bar was kept, a bar that tips up was a lift, each stair is a step of the plan.':
    'Eine (erfundene) Einheit als Balken auf einer Treppe: Flach heißt gehalten, aufgekippt abgehoben, jeder Absatz ist eine Stufe des Plans.',
  'It does not know your voice yet: practise by buttons and keys now, or {teach} (two minutes).':
    'Es kennt deine Stimme noch nicht: Übe erst mit Knöpfen und Tasten, oder {teach} (zwei Minuten).',
  'teach it your three words': 'bring ihm deine drei Wörter bei',
  'Sound check': 'Tonprobe',
  'Dogs, handlers, places': 'Hunde, Menschen, Orte',
  'Dogs, handlers, places, and who was put away': 'Hunde, Menschen, Orte, und wer weggelegt ist',
  'A session with {dog} is running': 'Eine Einheit mit {dog} läuft',
  'Back to practice': 'Zurück zum Üben',
  'A session with {dog} was closed in the middle': 'Eine Einheit mit {dog} wurde mittendrin geschlossen',
  'Everything up to your last word is kept.': 'Alles bis zu deinem letzten Wort ist gespeichert.',
  'Go on: {plan}': 'Weiter: {plan}',
  'Review it instead': 'Stattdessen ansehen',
  'an invented dog, to try things out': 'erfunden, zum Ausprobieren',
  'Pain: {what}': 'Schmerz: {what}',
  'Choose a plan for {dog}': 'Wähle einen Plan für {dog}',
  'About {dog}: notes and treats': 'Über {dog}: Notizen und Futterstücke',
  'Next: {step}.': 'Als Nächstes: {step}.',
  Practise: 'Üben',
  'The plan': 'Der Plan',
  Where: 'Wo',
  'me#the handler': 'ich',
  'at home#the place': 'zu Hause',
  'Listens for the words of': 'Hört auf die Wörter von',
  'somebody else…': 'jemand anderes …',
  'Teach their words': 'Ihre Wörter beibringen',

  'This browser keeps nothing (a private window?). What you do here is lost when you close it.':
    'Dieser Browser behält nichts (ein privates Fenster?). Was du hier machst, ist weg, sobald du es schließt.',
  'A newer Stillbeat is ready.': 'Ein neueres Stillbeat ist da.',
  'Load it now': 'Jetzt laden',
  'Try again': 'Noch einmal versuchen',
  'This device is full: the last reps are not saved yet. They are kept here while the page stays open. Free some space, then try again.':
    'Dieses Gerät ist voll: Die letzten Wiederholungen sind noch nicht gespeichert. Sie bleiben hier, solange die Seite offen ist. Schaffe Platz und versuch es dann noch einmal.',
  'Another tab wrote in between: the last reps are not saved yet. Close the other tab, then try again.':
    'Ein anderer Tab hat dazwischengeschrieben: Die letzten Wiederholungen sind noch nicht gespeichert. Schließe den anderen Tab und versuch es dann noch einmal.',
  'Two tabs wrote at once: the last reps are not saved yet. Save a copy in the settings, then load the page again.':
    'Zwei Tabs haben gleichzeitig geschrieben: Die letzten Wiederholungen sind noch nicht gespeichert. Sichere in den Einstellungen eine Kopie und lade dann die Seite neu.',
  'Something saved here cannot be read. Nothing was deleted; the rest is shown.':
    'Etwas, das hier gespeichert ist, lässt sich nicht lesen. Nichts wurde gelöscht; der Rest wird gezeigt.',
  'Saving does not work right now. The last reps are kept here while the page stays open.':
    'Speichern geht gerade nicht. Die letzten Wiederholungen bleiben hier, solange die Seite offen ist.',

  'This screen broke': 'Diese Ansicht ist kaputtgegangen',
  'What you have said so far is kept, and the keys still work. ({what})':
    'Was du bisher gesagt hast, ist gespeichert, und die Tasten gehen weiter. ({what})',
  'Load the page again': 'Die Seite neu laden',
  'Save my data': 'Meine Daten sichern',
  'Copy the report': 'Den Bericht kopieren',
  'Your data is saved as a file.': 'Deine Daten sind als Datei gesichert.',
  'Your data cannot be read right now. Nothing was deleted.':
    'Deine Daten lassen sich gerade nicht lesen. Nichts wurde gelöscht.',
  'Copied. It holds no names and no sound; read it before you give it to anyone.':
    'Kopiert. Darin stehen keine Namen und kein Ton; lies es, bevor du es jemandem gibst.',
  'Stillbeat is open in another tab': 'Stillbeat ist in einem anderen Tab offen',
  'One tab writes, so that no rep is written twice. Go on there, or close it and load this page again.':
    'Nur ein Tab schreibt, damit keine Wiederholung doppelt geschrieben wird. Mach dort weiter, oder schließe ihn und lade diese Seite neu.',
  'This browser has no sound for pages': 'Dieser Browser hat keinen Ton für Seiten',
  'Stillbeat needs it for the beats and the microphone. Use a current Chrome, Edge, Firefox or Safari.':
    'Stillbeat braucht ihn für die Schläge und das Mikrofon. Nimm ein aktuelles Chrome, Edge, Firefox oder Safari.',
  'Stillbeat could not open': 'Stillbeat ließ sich nicht öffnen',
  '{what}. Nothing was changed or deleted. Load the page again; if that does not help, restart the browser.':
    '{what}. Nichts wurde verändert oder gelöscht. Lade die Seite neu; wenn das nicht hilft, starte den Browser neu.',
} as const;
