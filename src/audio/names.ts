/** Names what can sound, and in which ways a cue can reach the handler. */
import type { Seconds } from '../core/units.ts';

/** Sounds within a hold: a tap a second, and a doubled tap when the criterion is reached. */
export type BeatKind = 'beat' | 'enough';

/** Sounds between reps. */
export const CALL_KINDS = ['raise', 'return', 'split', 'rest', 'lost', 'unsure'] as const;
export type CallKind = (typeof CALL_KINDS)[number];

export const SOUND_NAMES = ['beat', 'enough', ...CALL_KINDS] as const satisfies readonly (BeatKind | CallKind)[];
export type SoundName = (typeof SOUND_NAMES)[number];

/** How cues reach the handler. Everything can be a flash alone, for dogs that mind sounds. */
export type CueMode = 'sound' | 'flash' | 'both';

/** Told as soon as a sound is scheduled, so that the ear can close for it. A sound later withdrawn was told too: harmless. */
export type OwnSoundListener = (fromS: Seconds, toS: Seconds) => void;

/** Told at the moment at which the screen is to flash. */
export type FlashListener = (kind: SoundName) => void;

export function sounds(mode: CueMode): boolean {
  return mode !== 'flash';
}

export function flashes(mode: CueMode): boolean {
  return mode !== 'sound';
}
