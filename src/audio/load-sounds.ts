/** Loads the sounds through howler. Building the first Howl may replace howler's context: read `Howler.ctx` only afterwards. */
import { Howl } from 'howler';
import { decodedBuffer } from './howl-buffer.ts';
import { SOUND_NAMES, type SoundName } from './names.ts';
import { SOUND_URLS } from './sound-files.ts';

export type Buffers = Map<SoundName, AudioBuffer>;

export interface Loading {
  /** Fills up as files arrive. */
  readonly buffers: Buffers;
  /** Settles when every file has arrived or failed; names those that failed. */
  readonly missing: Promise<readonly SoundName[]>;
}

export function loadSounds(): Loading {
  const buffers: Buffers = new Map();
  const all = SOUND_NAMES.map((name) => loadSound(name, buffers));
  const missing = Promise.all(all).then(() => SOUND_NAMES.filter((name) => !buffers.has(name)));
  return { buffers, missing };
}

function loadSound(name: SoundName, into: Buffers): Promise<void> {
  return new Promise((settled) => {
    const howl: Howl = new Howl({
      src: SOUND_URLS[name],
      format: 'wav',
      html5: false,
      onload: () => {
        const buffer = decodedBuffer(howl);
        if (buffer) into.set(name, buffer);
        settled();
      },
      onloaderror: () => settled(),
    });
  });
}
