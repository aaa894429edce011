/** Keys, pedals and remotes: what a press means, and what is none of our business. */
import { afterEach, expect, test } from 'vitest';
import { bindKey, keysFor, USUAL_KEYS } from '../../src/core/key-bindings.ts';
import type { Heard } from '../../src/core/word.ts';
import { listenToKeys, nextKey } from '../../src/ears/keys.ts';

let stop = () => {};
afterEach(() => stop());

function listening(bindings = USUAL_KEYS): Heard[] {
  const heard: Heard[] = [];
  stop = listenToKeys(window, { bindings: () => bindings, atS: (ms) => ms / 1000, onHeard: (word) => heard.push(word) });
  return heard;
}

function press(key: string, init: KeyboardEventInit = {}, target: EventTarget = document.body): boolean {
  return target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...init }));
}

test('H, M and L are hold, mark and lifted, shifted or not', () => {
  const heard = listening();
  for (const key of ['h', 'M', 'l']) press(key);
  expect(heard.map(({ word }) => word)).toEqual(['hold', 'mark', 'lifted']);
  expect(heard.every(({ by, confidence }) => by === 'key' && confidence === 1)).toBe(true);
});

test('a pedal that sends PageDown can be hold, beside the key', () => {
  const heard = listening(bindKey(USUAL_KEYS, 'PageDown', 'hold'));
  expect(press('PageDown')).toBe(false);
  press('h');
  expect(heard.map(({ word }) => word)).toEqual(['hold', 'hold']);
});

test('a held key is one word, a shortcut of the browser is none', () => {
  const heard = listening();
  press('h');
  press('h', { repeat: true });
  press('l', { ctrlKey: true });
  press('m', { metaKey: true });
  expect(heard).toHaveLength(1);
});

test('what is typed into a note is not a word', () => {
  const heard = listening();
  const note = document.body.appendChild(document.createElement('textarea'));
  press('h', {}, note);
  note.remove();
  expect(heard).toEqual([]);
});

test('binding a key takes it from the word that had it', () => {
  const bound = bindKey(USUAL_KEYS, 'm', 'hold');
  expect(keysFor(bound, 'hold')).toEqual(['h', 'm']);
  expect(keysFor(bound, 'mark')).toEqual([]);
});

test('a word has two keys at most: a third takes the place of the first', () => {
  const bound = bindKey(bindKey(USUAL_KEYS, 'PageDown', 'hold'), 'ArrowUp', 'hold');
  expect(keysFor(bound, 'hold')).toEqual(['PageDown', 'ArrowUp']);
});

test('pressing what one wants to use binds it; Escape gives up, and the press means nothing else', () => {
  const heard = listening();
  const pressed: (string | null)[] = [];
  nextKey(window, (key) => pressed.push(key));
  press('Shift');
  press('H');
  nextKey(window, (key) => pressed.push(key));
  press('Escape');
  expect(pressed).toEqual(['h', null]);
  expect(heard).toEqual([]);
});
