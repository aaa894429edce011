/** The ear for keys, pedals and remotes: they are keyboards. Owns the key listener; the handler says which key is which word. */
import type { KeyBindings } from '../core/key-bindings.ts';
import type { Seconds } from '../core/units.ts';
import { type Heard, isWord, type Word } from '../core/word.ts';

export interface KeysParts {
  /** The bindings at this moment. */
  readonly bindings: () => KeyBindings;
  /** Page time of a moment of the event clock (`event.timeStamp`, ms), s. */
  readonly atS: (timeStampMs: number) => Seconds;
  readonly onHeard: (heard: Heard) => void;
}

/** A key press lasts no time at all, as words go; the screen shows it as long as any other, s. */
const PRESS_S: Seconds = 0.05;

/** Listens until the returned function is called. */
export function listenToKeys(target: EventTarget, { bindings, atS, onHeard }: KeysParts): () => void {
  const press = (event: Event): void => {
    const word = wordOf(event as KeyboardEvent, bindings());
    if (!word) return;
    event.preventDefault();
    onHeard(pressed(word, atS(event.timeStamp), 'key'));
  };
  target.addEventListener('keydown', press);
  return () => target.removeEventListener('keydown', press);
}

/** Waits for one key to bind; Escape gives up. Returns the way to stop waiting. */
export function nextKey(target: EventTarget, onKey: (key: string | null) => void): () => void {
  const press = (event: Event): void => {
    const { key, repeat } = event as KeyboardEvent;
    if (repeat || MODIFIERS.includes(key)) return;
    event.preventDefault();
    event.stopPropagation();
    stop();
    onKey(key === 'Escape' ? null : keyName(key));
  };
  const stop = () => target.removeEventListener('keydown', press, { capture: true });
  target.addEventListener('keydown', press, { capture: true });
  return stop;
}

const MODIFIERS = ['Shift', 'Control', 'Alt', 'Meta', 'CapsLock', 'Tab'];

/** What a press means, or null: a held key repeats, a typed note is a note, a shortcut belongs to the browser. */
export function wordOf(
  event: Pick<KeyboardEvent, 'key' | 'repeat' | 'ctrlKey' | 'metaKey' | 'altKey' | 'target'>,
  bindings: KeyBindings,
): Word | null {
  if (event.repeat || event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return null;
  const word = bindings[keyName(event.key)];
  return word !== undefined && isWord(word) ? word : null;
}

/** One letter is one key, shifted or not. */
function keyName(key: string): string {
  return key.length === 1 ? key.toLowerCase() : key;
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName));
}

/** A word that was pressed or tapped, at one moment. */
export function pressed(word: Word, atS: Seconds, by: 'key' | 'button'): Heard {
  return { word, startedAtS: atS, endedAtS: atS + PRESS_S, decidedAtS: atS + PRESS_S, confidence: 1, by };
}
