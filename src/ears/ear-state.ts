/** The states of an ear that listens by microphone, and what moves it from one to the next. Pure: time is an argument. */
import type { EarState } from '../core/event.ts';
import type { Seconds } from '../core/units.ts';
import type { MicProblem } from './microphone.ts';
import type { PlatformWhy } from './platform-state.ts';

/** Why the ear is not simply listening; words for it are in the screens. */
export type EarWhy =
  | MicProblem['kind']
  | 'no-sound'
  | 'silence'
  | 'unplugged'
  | 'muted'
  | 'hidden'
  | 'interrupted'
  | 'worker-failed'
  | PlatformWhy;

export interface Ear {
  readonly state: EarState;
  readonly why: EarWhy | null;
  /** When the last block of sound came, and the last that was more than digital silence. */
  readonly lastBlockS: Seconds;
  readonly lastSoundS: Seconds;
  /** Times the microphone was asked for again, running. */
  readonly tries: number;
  /** When to ask again; null: not before the handler taps. */
  readonly retryAtS: Seconds | null;
}

export type EarEvent =
  | { readonly kind: 'asked'; readonly atS: Seconds }
  | { readonly kind: 'refused'; readonly why: MicProblem['kind']; readonly atS: Seconds }
  | { readonly kind: 'block'; readonly levelDb: number; readonly atS: Seconds }
  | { readonly kind: 'lost'; readonly why: EarWhy; readonly atS: Seconds }
  | { readonly kind: 'away'; readonly why: 'hidden' | 'interrupted' }
  | { readonly kind: 'back'; readonly atS: Seconds }
  | { readonly kind: 'looked'; readonly atS: Seconds }
  | { readonly kind: 'closed' };

export const EAR_OFF: Ear = { state: 'off', why: null, lastBlockS: 0, lastSoundS: 0, tries: 0, retryAtS: null };

/** No block for so long means that the microphone is gone, s (PITFALLS, sound listener). */
export const NO_BLOCK_S: Seconds = 3;
/** Digital silence for so long means a muted or dead microphone, s (PITFALLS, sound listener). */
export const NO_SOUND_S: Seconds = 10;
/** Level of digital silence, dB re full scale: quieter than any microphone's own hiss. */
export const DIGITAL_SILENCE_DB = -95;
/** After so many tries running it is called degraded, and goes on trying slowly. */
const DEGRADED_AFTER = 3;
const LONGEST_WAIT_S: Seconds = 30;

/** What asking again cannot mend: only the handler can. */
const FINAL: readonly EarWhy[] = ['not-allowed', 'not-secure', 'no-microphone'];

export function nextEar(ear: Ear, event: EarEvent): Ear {
  switch (event.kind) {
    case 'asked':
      return {
        ...ear,
        state: ear.tries === 0 ? 'arming' : ear.state,
        lastBlockS: event.atS,
        lastSoundS: event.atS,
        retryAtS: null,
      };
    case 'refused':
      return FINAL.includes(event.why)
        ? { ...ear, state: 'blocked', why: event.why, retryAtS: null }
        : lose(ear, event.why, event.atS);
    case 'block':
      return ear.state === 'suspended' ? ear : hearBlock(ear, event.levelDb, event.atS);
    case 'lost':
      return ear.state === 'off' || ear.state === 'blocked' ? ear : lose(ear, event.why, event.atS);
    case 'away':
      return ear.state === 'off' || ear.state === 'blocked'
        ? ear
        : { ...ear, state: 'suspended', why: event.why, retryAtS: null };
    case 'back':
      return ear.state === 'suspended' ? { ...ear, state: 'restarting', retryAtS: event.atS } : ear;
    case 'looked':
      return look(ear, event.atS);
    case 'closed':
      return EAR_OFF;
  }
}

function hearBlock(ear: Ear, levelDb: number, atS: Seconds): Ear {
  if (levelDb > DIGITAL_SILENCE_DB)
    return { state: 'listening', why: null, lastBlockS: atS, lastSoundS: atS, tries: 0, retryAtS: null };
  return { ...ear, lastBlockS: atS };
}

function look(ear: Ear, atS: Seconds): Ear {
  if (ear.state === 'off' || ear.state === 'blocked' || ear.state === 'suspended' || ear.retryAtS !== null) return ear;
  // Asked for again and nothing came: that try has failed too.
  if (atS - ear.lastBlockS > NO_BLOCK_S) return lose(ear, ear.why ?? 'no-sound', atS);
  if (ear.state !== 'listening' && ear.state !== 'arming') return ear;
  // Asking again seldom brings a muted microphone back, and never at once: tell the handler first.
  return atS - ear.lastSoundS > NO_SOUND_S ? { ...ear, state: 'degraded', why: 'silence' } : ear;
}

/** 1, 2, 4 … 30 s between tries; degraded after the third, so that the handler is told while it goes on trying. */
function lose(ear: Ear, why: EarWhy, atS: Seconds): Ear {
  const tries = ear.tries + 1;
  const waitS = Math.min(LONGEST_WAIT_S, 2 ** (tries - 1));
  return { ...ear, state: tries > DEGRADED_AFTER ? 'degraded' : 'restarting', why, tries, retryAtS: atS + waitS };
}

/** Can a word be heard right now? */
export function hears(ear: Ear): boolean {
  return ear.state === 'listening';
}
