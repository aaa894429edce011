/** Which key means which word. Remotes and pedals are keyboards: they send letters, arrows or page keys. */
import type { Word } from './word.ts';

/** From the name of a key (`KeyboardEvent.key`, letters in lower case) to the word it means. */
export type KeyBindings = Readonly<Record<string, Word>>;

export const USUAL_KEYS: KeyBindings = {
  h: 'hold',
  m: 'mark',
  l: 'lifted',
  v: 'void',
  u: 'undo',
  p: 'pause',
  g: 'resume',
  f: 'finish',
  '-': 'easier',
  '+': 'harder',
  s: 'stay',
};

/** Keys a word may have at once: a pedal, and the keyboard too. */
const KEYS_A_WORD = 2;

/** The bindings with one more key for a word; that key loses what it meant, and of the word's other keys the latest stays. */
export function bindKey(bindings: KeyBindings, key: string, word: Word): KeyBindings {
  const kept = keysFor(bindings, word)
    .filter((each) => each !== key)
    .slice(1 - KEYS_A_WORD);
  const others = Object.entries(bindings).filter(([each, means]) => each !== key && (means !== word || kept.includes(each)));
  return Object.fromEntries([...others, [key, word]]);
}

/** In the order in which they were bound. */
export function keysFor(bindings: KeyBindings, word: Word): readonly string[] {
  return Object.entries(bindings).flatMap(([key, means]) => (means === word ? [key] : []));
}
