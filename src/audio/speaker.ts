/** Says a call with a voice of the device. Owns speechSynthesis. Voices that speak from a server are never used. */
import type { Seconds, Share } from '../core/units.ts';

export interface Speaker {
  /** Begins to speak; returns for how long at most, or null when this device has no voice of its own for it. */
  say(words: string): Seconds | null;
  hush(): void;
}

/** Slow speech is about ten letters a second; on top, what a voice takes to wake. Generous: the ear stays closed for it. */
const A_LETTER_S: Seconds = 0.1;
const WAKING_S: Seconds = 0.6;

export function longestSpeechS(words: string): Seconds {
  return WAKING_S + A_LETTER_S * words.length;
}

export function createSpeaker(volume: () => Share, language: () => string): Speaker {
  // Asked for early: most browsers give an empty list at first, and fetch the voices only then.
  localVoice(language());
  return {
    say: (words) => {
      const voice = localVoice(language());
      if (!voice) return null;
      const utterance = new SpeechSynthesisUtterance(words);
      utterance.voice = voice;
      utterance.lang = voice.lang;
      utterance.volume = volume();
      speechSynthesis.speak(utterance);
      return longestSpeechS(words);
    },
    hush: () => speechSynthesis.cancel(),
  };
}

function localVoice(language: string): SpeechSynthesisVoice | undefined {
  if (typeof speechSynthesis === 'undefined') return undefined;
  const own = speechSynthesis.getVoices().filter((voice) => voice.localService);
  const primary = language.split('-')[0] ?? language;
  return own.find((voice) => voice.lang === language) ?? own.find((voice) => voice.lang.startsWith(primary));
}
