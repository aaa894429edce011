/** Sounds, says or flashes the calls between reps. One of a sort waits at most: the latest is the one that is true. */
import type { Seconds } from '../core/units.ts';
import type { AudioClock } from './clock.ts';
import { CLEAR_OF_WORD_S, whenMayCall } from './may-call.ts';
import { type CallKind, type CueMode, type FlashListener, flashes, type OwnSoundListener, sounds } from './names.ts';
import type { Schedule } from './schedule.ts';
import type { Speaker } from './speaker.ts';
import type { Tick } from './tick.ts';

/** "Say it again" makes sense only while the word is still in mind (judgement; no source). */
const UNSURE_GOOD_FOR_S: Seconds = 2;

/** These speak of the rep just done: once the next hold has begun they would be taken for news about that one. */
const ABOUT_LAST_REP: readonly CallKind[] = ['raise', 'return', 'split', 'unsure'];

/** What a call is about. Of one sort the latest is true; of several, this is the order in which they are called. */
const SORTS = ['deafness', 'move', 'rest', 'word'] as const;
type Sort = (typeof SORTS)[number];
const SORT_OF: Readonly<Record<CallKind, Sort>> = {
  lost: 'deafness',
  ...{ raise: 'move', return: 'move', split: 'move' },
  rest: 'rest',
  unsure: 'word',
};

/** How long a flash alone stands before the next call, s (tried by eye, no source). */
const FLASH_S: Seconds = 0.8;

export interface Calls {
  /** Calls as soon as it may; `words` are said instead of the sound when spoken calls are on and a voice is there. */
  call(kind: CallKind, words?: string): void;
  holdBegan(): void;
  holdEnded(): void;
  /** The handler spoke at `atS`; tell it at the end of every word, and at its start if the ear knows. */
  voice(atS: Seconds): void;
  setSpoken(on: boolean): void;
  /** Drops what waits and fades what sounds. */
  silence(): void;
  dispose(): void;
}

export interface CallsParts {
  readonly clock: AudioClock;
  readonly schedule: Schedule;
  readonly tick: Pick<Tick, 'listen'>;
  readonly onOwnSound: OwnSoundListener;
  readonly onFlash?: FlashListener;
  /** Asked at each call; 'sound' when left out. */
  readonly mode?: () => CueMode;
  readonly speaker?: Speaker;
}

interface Waiting {
  readonly kind: CallKind;
  readonly words: string | undefined;
  readonly askedAtS: Seconds;
}

/** What is under way, sounded or said. */
interface UnderWay {
  readonly call: Waiting;
  readonly fromS: Seconds;
  readonly toS: Seconds;
  withdraw(): void;
}

interface State {
  holding: boolean;
  lastVoiceS: Seconds | null;
  lastCallToS: Seconds | null;
  /** At most one of each sort, in the order of SORTS. */
  waiting: readonly Waiting[];
  underWay: UnderWay | null;
  spoken: boolean;
}

export function createCalls(parts: CallsParts): Calls {
  const { clock } = parts;
  const state: State = {
    holding: false,
    lastVoiceS: null,
    lastCallToS: null,
    waiting: [],
    underWay: null,
    spoken: false,
  };
  const unlisten = parts.tick.listen(() => look(parts, state));
  const silence = (): void => {
    state.waiting = [];
    cutOff(state, clock.now());
  };
  return {
    call: (kind, words) => {
      state.waiting = withCall(state.waiting, { kind, words, askedAtS: clock.now() });
      look(parts, state);
    },
    holdBegan: () => beginHold(state, clock.now()),
    holdEnded: () => {
      state.holding = false;
    },
    voice: (atS) => giveWay(state, atS, clock.now()),
    setSpoken: (on) => {
      state.spoken = on;
    },
    silence,
    dispose: () => {
      silence();
      unlisten();
    },
  };
}

function look(parts: CallsParts, state: State): void {
  const nowS = parts.clock.now();
  if (state.underWay && state.underWay.toS <= nowS) state.underWay = null;
  state.waiting = state.waiting.filter((call) => !isStale(call, nowS));
  const [call, ...others] = state.waiting;
  if (!call) return;
  // Deaf in mid-hold, it would wait for an end that it cannot hear: that one call does not wait.
  const holding = state.holding && call.kind !== 'lost';
  const mayS = whenMayCall({ ...state, holding }, nowS);
  if (mayS === null || mayS > nowS) return;
  state.waiting = others;
  begin(parts, state, call);
}

/** "Say it again" never takes the place of what the engine decided, nor is it asked after it: by then nobody knows which word is meant. */
function withCall(waiting: readonly Waiting[], call: Waiting): readonly Waiting[] {
  if (call.kind === 'unsure' && waiting.some(({ kind }) => kind !== 'unsure')) return waiting;
  const kept = waiting.filter(({ kind }) => kind !== 'unsure' && SORT_OF[kind] !== SORT_OF[call.kind]);
  return SORTS.flatMap((sort) => [...kept, call].filter(({ kind }) => SORT_OF[kind] === sort));
}

function isStale({ kind, askedAtS }: Waiting, nowS: Seconds): boolean {
  return kind === 'unsure' && nowS - askedAtS > UNSURE_GOOD_FOR_S;
}

function begin(parts: CallsParts, state: State, call: Waiting): void {
  const mode = parts.mode?.() ?? 'sound';
  if (flashes(mode)) parts.onFlash?.(call.kind);
  // Two flashes in a row stay two flashes, too.
  if (!sounds(mode)) state.lastCallToS = parts.clock.now() + FLASH_S;
  if (!sounds(mode)) return;
  state.underWay = (state.spoken ? saidAloud(parts, call) : null) ?? sounded(parts, call);
  if (!state.underWay) return;
  state.lastCallToS = state.underWay.toS;
  parts.onOwnSound(state.underWay.fromS, state.underWay.toS);
}

function sounded({ schedule }: CallsParts, call: Waiting): UnderWay | null {
  const sounding = schedule.play(call.kind, schedule.soonestS());
  return sounding && { call, fromS: sounding.fromS, toS: sounding.toS, withdraw: sounding.withdraw };
}

/** Null when there is no voice or nothing to say: the sound takes over. */
function saidAloud({ speaker, clock }: CallsParts, call: Waiting): UnderWay | null {
  const lengthS = call.words === undefined ? null : (speaker?.say(call.words) ?? null);
  if (lengthS === null) return null;
  const fromS = clock.now();
  return { call, fromS, toS: fromS + lengthS, withdraw: () => speaker?.hush() };
}

function beginHold(state: State, nowS: Seconds): void {
  state.holding = true;
  cutOff(state, nowS);
  state.waiting = state.waiting.filter(({ kind }) => !ABOUT_LAST_REP.includes(kind));
}

/** The handler speaks: a call under way falls silent. One that had not begun waits again; a half-heard one is not repeated. */
function giveWay(state: State, atS: Seconds, nowS: Seconds): void {
  state.lastVoiceS = Math.max(state.lastVoiceS ?? atS, atS);
  const { underWay } = state;
  if (!underWay || underWay.toS <= nowS || underWay.fromS >= atS + CLEAR_OF_WORD_S) return;
  if (underWay.fromS > nowS) state.waiting = waitingAgain(state.waiting, underWay.call);
  cutOff(state, nowS);
}

/** A later call of the same sort is the truer one. */
function waitingAgain(waiting: readonly Waiting[], call: Waiting): readonly Waiting[] {
  return waiting.some(({ kind }) => SORT_OF[kind] === SORT_OF[call.kind]) ? waiting : withCall(waiting, call);
}

function cutOff(state: State, nowS: Seconds): void {
  if (state.underWay && state.underWay.toS > nowS) {
    state.underWay.withdraw();
    state.lastCallToS = nowS;
  }
  state.underWay = null;
}
