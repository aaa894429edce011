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
};

/** The bindings with one word moved to another key; that key loses what it meant, the word keeps no other key. */
export function bindKey(bindings: KeyBindings, key: string, word: Word): KeyBindings {
  const others = Object.entries(bindings).filter(([each, means]) => each !== key && means !== word);
  return Object.fromEntries([...others, [key, word]]);
}

export function keyFor(bindings: KeyBindings, word: Word): string | null {
  return Object.entries(bindings).find(([, means]) => means === word)?.[0] ?? null;
}
