/**
 * Takes the decoded samples out of a loaded Howl. Howler plays at once and cannot be given a time, so beats need the samples
 * themselves; it does not hand them out, hence this one look inside (howler 2.2.4; a browser test notices if it moves).
 */
import type { Howl } from 'howler';

interface LoadedSound {
  readonly _node?: { readonly bufferSource?: AudioBufferSourceNode | null };
}

interface HowlInside {
  readonly _sounds?: readonly LoadedSound[];
  readonly _refreshBuffer?: (sound: LoadedSound) => unknown;
}

/** Null when howler fell back to an audio element, which happens when the file could not be fetched. */
export function decodedBuffer(howl: Howl): AudioBuffer | null {
  const inside = howl as unknown as HowlInside;
  const sound = inside._sounds?.[0];
  if (!sound || !inside._refreshBuffer) return null;
  // Makes a fresh, unstarted source around the decoded buffer; nothing sounds.
  inside._refreshBuffer.call(howl, sound);
  return sound._node?.bufferSource?.buffer ?? null;
}
