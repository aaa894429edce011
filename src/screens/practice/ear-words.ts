/** Says in words what the ear is doing, and what would help. */
import { type Message, t } from '../../core/language.ts';
import type { Ear } from '../../session/app-state.ts';

export type EarShape = 'hears' | 'waits' | 'deaf';

export interface EarSaying {
  readonly shape: EarShape;
  /** Two or three words, for two metres. */
  readonly short: string;
  /** What to do about it; empty when nothing is wrong. */
  readonly help: string;
}

const HELP = {
  'not-allowed':
    'The microphone is not allowed. Allow it in the browser’s settings for this page; keys and buttons work meanwhile.',
  'no-microphone': 'No microphone is connected. Keys and buttons work.',
  'not-secure': 'A page needs HTTPS to be given a microphone; the README says how. Keys and buttons work.',
  'in-use': 'Another app has the microphone. Close it; it is tried again.',
  unknown: 'The microphone could not be opened; it is tried again. Keys and buttons work.',
  'no-sound': 'The microphone went away; it is tried again.',
  silence: 'The microphone gives no sound at all. Is it muted or covered? Keys and buttons work.',
  unplugged: 'The microphone was unplugged or taken; it is tried again.',
  muted: 'The system muted the microphone. Keys and buttons work.',
  hidden: 'The page was hidden, and heard nothing meanwhile.',
  interrupted: 'A call or another app has the sound. Tap to go on.',
  'worker-failed': 'The listener stopped; it is started again.',
  'no-recogniser': 'This browser has no recogniser of its own. Use your taught words, keys or buttons.',
  'not-on-device': 'This browser’s recogniser cannot work on the device, and you did not allow sound to leave it.',
  'service-not-allowed': 'The browser does not allow its recogniser here. Use your taught words, keys or buttons.',
  'language-not-supported': 'The browser’s recogniser does not know this language: choose another in the settings.',
  network: 'The browser’s recogniser needs a network, and there is none; it is tried again.',
  'audio-capture': 'The recogniser gets no sound; it is tried again.',
  aborted: 'Another page or app took the recogniser; it is tried again.',
  ended: 'The recogniser stops at once; it is tried again.',
  'no-start': 'The recogniser does not start; it is tried again.',
  stuck: 'The recogniser does not answer. Close the app and open it again; keys and buttons work.',
  'other-tab': 'Another tab listens. Tap to listen here.',
  installing: 'The browser fetches its language; this can take a minute.',
} as const satisfies Readonly<Record<NonNullable<Ear['why']>, Message>>;

export function sayEar(ear: Ear, taught: boolean): EarSaying {
  const help = ear.why ? t(HELP[ear.why]) : '';
  switch (ear.state) {
    case 'listening':
      return { shape: 'hears', short: t('Listening'), help: '' };
    case 'arming':
      return { shape: 'waits', short: t('Opening the microphone'), help: '' };
    case 'restarting':
      return { shape: 'deaf', short: t('Cannot hear'), help };
    case 'degraded':
    case 'blocked':
      return { shape: 'deaf', short: t('Cannot hear'), help };
    case 'suspended':
      return { shape: 'deaf', short: t('Paused'), help };
    case 'off':
      return {
        shape: 'waits',
        short: t('Not listening'),
        help: taught ? '' : t('No words taught yet: use the buttons or keys, or teach it in the sound check.'),
      };
  }
}
