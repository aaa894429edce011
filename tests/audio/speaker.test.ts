/** Calls said by a voice of the device, with voices made up here. */
import { afterEach, expect, test, vi } from 'vitest';
import { createSpeaker } from '../../src/audio/speaker.ts';
import { speak } from '../../src/core/language.ts';
import { callWords } from '../../src/core/sentences.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  return speak('en');
});

/** Those are on the device; one more speaks from a server. */
function device(...langs: readonly string[]) {
  const said: { readonly text: string; readonly lang: string }[] = [];
  const voices = langs.map((lang) => ({ lang, localService: true }));
  vi.stubGlobal('speechSynthesis', {
    getVoices: () => [{ lang: 'de-DE', localService: false }, ...voices],
    speak: ({ text, lang }: { text: string; lang: string }) => said.push({ text, lang }),
    cancel: () => {},
  });
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      readonly text: string;
      constructor(text: string) {
        this.text = text;
      }
    },
  );
  return said;
}

test('a German call is said by a German voice, also where the device has an English one first', async () => {
  const said = device('en-GB', 'de-AT');
  await speak('de');
  createSpeaker(
    () => 1,
    () => 'de',
  ).say(callWords('raise'));
  expect(said).toEqual([{ text: 'eine Stufe höher', lang: 'de-AT' }]);
});

test('an English voice never reads German, nor does one from a server: the sound takes over', () => {
  const said = device('en-GB');
  const speaker = createSpeaker(
    () => 1,
    () => 'de',
  );
  expect(speaker.say('eine Stufe höher')).toBeNull();
  expect(said).toEqual([]);
});
