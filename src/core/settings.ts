/** What a handler has set, or what stands until they do. */
import type { Settings } from './event.ts';
import { USUAL_KEYS } from './key-bindings.ts';
import type { Library } from './library.ts';
import { USUAL_LIMITS } from './limits.ts';

export const USUAL_SETTINGS: Settings = {
  volume: 0.8,
  mode: 'sound',
  speakCalls: false,
  keys: USUAL_KEYS,
  handler: 'me',
  place: 'at home',
  limits: USUAL_LIMITS,
};

export function settingsOf(library: Library): Settings {
  return library.settings ?? USUAL_SETTINGS;
}
