/** Names the words that can be said, pressed or tapped, in the handler's language; and the list of those an unsure stretch was near to. */
import { fixed, localeSpoken, type Message, t } from '../../core/language.ts';

const NAMES: Readonly<Record<string, Message>> = {
  hold: 'hold#the word',
  mark: 'mark#the word',
  lifted: 'lifted#the word',
  void: 'void#the word',
  undo: 'undo#the word',
  pause: 'pause#the word',
  resume: 'resume#the word',
  finish: 'finish#the word',
  easier: 'easier#the word',
  harder: 'harder#the word',
  stay: 'stay#the word',
  unsure: 'unsure#a stretch',
};

/** In English a word is called what the program calls it. A name that no word has is shown as it stands. */
export function wordName(word: string): string {
  const name = Object.hasOwn(NAMES, word) ? NAMES[word] : undefined;
  return name ? t(name as 'hold#the word') : word;
}

/** "mark 0.61 or hold 0.55". */
export function sayNearest(nearest: readonly { readonly word: string; readonly confidence: number }[]): string {
  return listOr(nearest.map(({ word, confidence }) => `${wordName(word)} ${fixed(confidence, 2)}`));
}

/** "a or b". */
export function listOr(words: readonly string[]): string {
  return new Intl.ListFormat(localeSpoken(), { type: 'disjunction' }).format(words);
}
