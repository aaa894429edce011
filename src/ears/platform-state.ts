/**
 * The states of the platform's recogniser, and what moves it from one to the next. Pure: time is an argument, the shell starts
 * and aborts. Whatever the recogniser does, it is started at most once a back-off and never before the last run has ended.
 * Long because it is one machine: events and states that cannot be understood apart.
 */
import type { EarState } from '../core/event.ts';
import type { Seconds } from '../core/units.ts';

/** One sentence, to stand beside the switch that sets `mayLeave`. */
export const MAY_LEAVE_SENTENCE =
  'This browser’s own recogniser may send what the microphone hears to its maker; nothing of ours does.';

/** Only the handler mends these: never tried again without a tap. */
export type BlockedWhy =
  | 'no-recogniser'
  /** The handler did not allow sound to leave the device, and the browser cannot do without. */
  | 'not-on-device'
  | 'not-allowed'
  | 'service-not-allowed'
  | 'language-not-supported';

export type LostWhy =
  | 'network'
  | 'audio-capture'
  /** Taken away by another page or app: we did not abort it. */
  | 'aborted'
  /** Ended as if done, with nothing heard, sooner than anybody can speak. */
  | 'ended'
  | 'no-start'
  /** It says that it runs, but not that any sound comes in. */
  | 'no-sound'
  /** It does not end when told to. */
  | 'stuck'
  | 'unknown';

export type AwayWhy = 'hidden' | 'interrupted' | 'other-tab';

export type PlatformWhy = BlockedWhy | LostWhy | AwayWhy | 'installing';

/** How it is asked to listen. `phrases`: told beforehand which words to expect; only where it works on the device. */
export interface How {
  readonly local: boolean;
  readonly phrases: boolean;
}

/** What the recogniser is doing, as far as it has told us. */
export type Engine =
  | { readonly is: 'idle' }
  /** `again`: one that was stuck. */
  | { readonly is: 'asked'; readonly sinceS: Seconds; readonly again: boolean }
  | {
      readonly is: 'running';
      readonly sinceS: Seconds;
      readonly lastSignS: Seconds;
      readonly audio: boolean;
      readonly speech: boolean;
    }
  | { readonly is: 'stopping'; readonly sinceS: Seconds }
  /** Told to stop and did not end in time: only this same one may be started again, so that never two run. */
  | { readonly is: 'stuck' };

export interface PlatformState {
  readonly state: EarState;
  readonly why: PlatformWhy | null;
  readonly engine: Engine;
  /** Counts the starts. Every callback carries the number of its start; those of another are ignored. */
  readonly generation: number;
  /** Counts what was asked of the ear from outside: an answer to an earlier question is ignored. */
  readonly asks: number;
  /** What was asked when the latest start was made. */
  readonly startedAsks: number;
  readonly preparing: { readonly sinceS: Seconds; readonly installing: boolean } | null;
  /** Null until it is known what the browser offers. */
  readonly how: How | null;
  /** How the latest start was made: what its errors are about. */
  readonly startedHow: How | null;
  /** The handler allows that sound leaves the device. */
  readonly mayLeave: boolean;
  /** The n of restarting(n): failures running, with nothing heard between. */
  readonly tries: number;
  readonly retryAtS: Seconds | null;
  readonly lastStartS: Seconds | null;
}

export type Sign = 'audio' | 'no-audio' | 'sound' | 'speech';
export type ThrowWhy = 'already-running' | 'not-allowed' | 'no-recogniser' | 'unknown';

/** What the recogniser says; `generation` is that of the start it belongs to. */
export type Told = { readonly generation: number; readonly atS: Seconds } & (
  | { readonly kind: 'started' }
  | { readonly kind: 'sign'; readonly sign: Sign }
  | { readonly kind: 'result'; readonly hasText: boolean }
  | { readonly kind: 'error'; readonly error: string }
  | { readonly kind: 'ended' }
  /** There is none, or `start()` itself threw. */
  | { readonly kind: 'threw'; readonly why: ThrowWhy }
);

export type PlatformEvent =
  | Told
  /** The handler tapped. */
  | { readonly kind: 'asked'; readonly mayLeave: boolean; readonly atS: Seconds }
  | { readonly kind: 'installing'; readonly asks: number }
  | { readonly kind: 'prepared'; readonly asks: number; readonly how: How; readonly atS: Seconds }
  | { readonly kind: 'refused'; readonly asks: number; readonly why: BlockedWhy }
  | { readonly kind: 'looked'; readonly atS: Seconds }
  | { readonly kind: 'away'; readonly why: AwayWhy; readonly atS: Seconds }
  | { readonly kind: 'back'; readonly atS: Seconds }
  | { readonly kind: 'closed'; readonly atS: Seconds };

export type PlatformEffect =
  | { readonly do: 'prepare'; readonly asks: number; readonly mayLeave: boolean }
  /** `again`: the same recogniser, which never said that it ended; otherwise a new one. */
  | { readonly do: 'start'; readonly generation: number; readonly how: How; readonly again: boolean }
  | { readonly do: 'abort' };

export interface PlatformStep {
  readonly ear: PlatformState;
  readonly effects: readonly PlatformEffect[];
}

export const PLATFORM_OFF: PlatformState = {
  ...{ state: 'off', why: null, engine: { is: 'idle' }, generation: 0, asks: 0, startedAsks: 0, preparing: null, how: null },
  ...{ startedHow: null, mayLeave: false, tries: 0, retryAtS: null, lastStartS: null },
};

/** From a plain end to the next start, s (PITFALLS, platform speech recognition); never are two starts nearer. */
export const PLAIN_END_S: Seconds = 0.25;
/** Longest wait after failures, s (PITFALLS): 1, 2, 4 … 30. */
const LONGEST_WAIT_S: Seconds = 30;
/** After so many failures running it is called degraded, and goes on trying slowly (PITFALLS). */
const DEGRADED_AFTER = 3;
/** No start event for so long, s (PITFALLS); an end or an answer that is as late is as suspicious. */
export const NO_START_S: Seconds = 3;
/** Running, without a sign that sound comes in, for so long, s (PITFALLS). */
export const NO_SOUND_S: Seconds = 10;
/**
 * Sound comes in but nothing is said for so long: begun anew, in case it went deaf without a word. Long, because a handler is
 * silent through a hold and every start costs up to a second of deafness, and a beep on phones. Tried by nobody, no source.
 */
export const DEAF_S: Seconds = 60;
/** A run that lives so long after failures is shown as listening; `network` came within 17 ms when seen (PITFALLS). */
const SETTLED_S: Seconds = 1;
/** A plain end sooner than this is no failure if somebody spoke, s: a phone ends after each phrase. No source. */
const SHORTEST_PHRASE_S: Seconds = 0.5;
/** A plain end sooner than this, with nobody speaking, is a failure, s: phones wait about 5 s for speech. No source. */
const SHORTEST_SILENCE_S: Seconds = 3;

const ELSEWHERE: How = { local: false, phrases: false };
const FINAL: readonly string[] = ['not-allowed', 'service-not-allowed', 'language-not-supported'] satisfies BlockedWhy[];
const KNOWN_LOSSES: readonly string[] = ['network', 'audio-capture', 'aborted'] satisfies LostWhy[];

/** Switched on and not put aside: something will happen by itself. */
export function isOn({ state }: PlatformState): boolean {
  return state !== 'off' && state !== 'blocked' && state !== 'suspended';
}

/** What the latest run writes is meant: nobody closed, hid or blocked the ear since it was started. */
export function wordsCount(ear: PlatformState): boolean {
  return isOn(ear) && ear.startedAsks === ear.asks;
}

/** The short gap after a plain end: too short and too common to be sounded or written down. */
export function isPlainRestart({ state, tries }: PlatformState): boolean {
  return state === 'restarting' && tries === 0;
}

export function nextPlatform(ear: PlatformState, event: PlatformEvent): PlatformStep {
  if ('generation' in event) return event.generation === ear.generation ? hearTold(ear, event) : same(ear);
  if ('asks' in event && (event.asks !== ear.asks || !ear.preparing)) return same(ear);
  switch (event.kind) {
    case 'asked':
      return ask(ear, event.mayLeave, event.atS);
    case 'installing':
      return same({ ...ear, why: 'installing', preparing: { sinceS: ear.preparing?.sinceS ?? 0, installing: true } });
    case 'prepared':
      return look({ ...ear, how: event.how, preparing: null, why: null, retryAtS: event.atS }, event.atS);
    case 'refused':
      return same(block(ear, event.why));
    case 'looked':
      return look(ear, event.atS);
    case 'away':
      return goAway(ear, event.why, event.atS);
    case 'back':
      return comeBack(ear, event.atS);
    case 'closed': {
      const off = { ...ear, state: 'off', why: null, tries: 0, how: null } as const;
      return stop(putAside(off), event.atS);
    }
  }
}

/** When it must be looked at again although nothing happens; null: not before something does. */
export function dueAtS(ear: PlatformState): Seconds | null {
  if (!isOn(ear)) return null;
  const { preparing, engine } = ear;
  if (preparing) return preparing.installing && !ear.mayLeave ? null : preparing.sinceS + NO_START_S;
  switch (engine.is) {
    case 'idle':
    case 'stuck':
      return ear.retryAtS;
    case 'asked':
    case 'stopping':
      return engine.sinceS + NO_START_S;
    case 'running':
      return Math.min(
        engine.lastSignS + (engine.audio ? DEAF_S : NO_SOUND_S),
        ear.state === 'listening' ? Infinity : engine.sinceS + SETTLED_S,
        ear.tries === 0 ? Infinity : engine.sinceS + NO_SOUND_S,
      );
  }
}

function same(ear: PlatformState): PlatformStep {
  return { ear, effects: [] };
}

function ask(ear: PlatformState, mayLeave: boolean, atS: Seconds): PlatformStep {
  // A tap on an ear that listens, or is about to, changes nothing.
  if (isOn(ear) && (ear.preparing || ear.engine.is === 'asked' || ear.engine.is === 'running')) return same(ear);
  const fresh = { state: 'arming', why: null, tries: 0, how: null, mayLeave, retryAtS: atS, asks: ear.asks + 1 } as const;
  return look({ ...ear, ...fresh }, atS);
}

function goAway(ear: PlatformState, why: AwayWhy, atS: Seconds): PlatformStep {
  if (ear.state === 'off' || ear.state === 'blocked') return same(ear);
  // Another tab has it: that this page was hidden and shown meanwhile is no reason to take it back.
  if (ear.why === 'other-tab') return same(ear);
  return stop(putAside({ ...ear, state: 'suspended', why }), atS);
}

function comeBack(ear: PlatformState, atS: Seconds): PlatformStep {
  if (ear.state !== 'suspended' || ear.why === 'other-tab') return same(ear);
  return look({ ...ear, state: waiting(ear.tries), why: null, retryAtS: atS }, atS);
}

function putAside(ear: PlatformState): PlatformState {
  return { ...ear, retryAtS: null, preparing: null, asks: ear.asks + 1 };
}

function block(ear: PlatformState, why: BlockedWhy): PlatformState {
  return { ...putAside(ear), state: 'blocked', why };
}

/** Tells a recogniser that was started to end; then it is waited for. */
function stop(ear: PlatformState, atS: Seconds): PlatformStep {
  if (ear.engine.is !== 'asked' && ear.engine.is !== 'running') return same(ear);
  return { ear: { ...ear, engine: { is: 'stopping', sinceS: atS } }, effects: [{ do: 'abort' }] };
}

/** Everything that happens because time has passed. */
function look(ear: PlatformState, atS: Seconds): PlatformStep {
  const due = dueAtS(ear);
  if (due === null || atS < due) return same(ear);
  if (ear.preparing) return lookAtPreparation(ear, atS);
  switch (ear.engine.is) {
    case 'idle':
    case 'stuck':
      return begin(ear, atS);
    case 'asked':
      return stop(lose(ear, 'no-start', atS), atS);
    case 'running':
      return lookAtRun(ear, ear.engine, atS);
    case 'stopping':
      return { ear: { ...lose(ear, 'stuck', atS), engine: { is: 'stuck' } }, effects: [{ do: 'abort' }] };
  }
}

/** The browser does not say in time what it offers, or takes long to fetch its words. */
function lookAtPreparation(ear: PlatformState, atS: Seconds): PlatformStep {
  if (!ear.mayLeave) return same(block(ear, 'not-on-device'));
  return look({ ...ear, how: ELSEWHERE, preparing: null, why: null, retryAtS: atS }, atS);
}

function lookAtRun(ear: PlatformState, run: Engine & { is: 'running' }, atS: Seconds): PlatformStep {
  if (!run.audio && atS >= run.lastSignS + NO_SOUND_S) return stop(lose(ear, 'no-sound', atS), atS);
  if (run.audio && atS >= run.lastSignS + DEAF_S) return stop(soon(ear, atS), atS);
  const proven = atS >= run.sinceS + NO_SOUND_S;
  return same({ ...ear, state: 'listening', why: null, tries: proven ? 0 : ear.tries });
}

function begin(ear: PlatformState, atS: Seconds): PlatformStep {
  if (ear.how) return start(ear, ear.how, atS);
  const { asks, mayLeave } = ear;
  return {
    ear: { ...ear, retryAtS: null, preparing: { sinceS: atS, installing: false } },
    effects: [{ do: 'prepare', asks, mayLeave }],
  };
}

/** The one place that starts, and only a recogniser that is idle or stuck. */
function start(ear: PlatformState, how: How, atS: Seconds): PlatformStep {
  const soonestS = ear.lastStartS === null ? atS : ear.lastStartS + PLAIN_END_S;
  if (atS < soonestS) return same({ ...ear, retryAtS: soonestS });
  const generation = ear.generation + 1;
  const again = ear.engine.is === 'stuck';
  const started = { generation, startedHow: how, startedAsks: ear.asks, retryAtS: null, lastStartS: atS };
  return {
    ear: { ...ear, ...started, engine: { is: 'asked', sinceS: atS, again } },
    effects: [{ do: 'start', generation, how, again }],
  };
}

function hearTold(ear: PlatformState, told: Told): PlatformStep {
  switch (told.kind) {
    case 'started':
      return hearStart(ear, told.atS);
    case 'sign':
      return same(hearSign(ear, told.sign, told.atS));
    case 'result':
      return same(hearResult(ear, told.hasText, told.atS));
    case 'error':
      return same(hearError(ear, told.error, told.atS));
    case 'ended':
      return hearEnd(ear, told.atS);
    case 'threw':
      return hearThrow(ear, told.why, told.atS);
  }
}

function hearStart(ear: PlatformState, atS: Seconds): PlatformStep {
  if (ear.engine.is === 'running') return same(ear);
  if (wordsCount(ear) && (ear.engine.is === 'asked' || ear.engine.is === 'stuck')) return same(run(ear, atS));
  // It starts although it was told to stop, or after it said that it had ended, or in a way that the handler chose anew since.
  return { ear: { ...ear, engine: { is: 'stopping', sinceS: atS } }, effects: [{ do: 'abort' }] };
}

function run(ear: PlatformState, atS: Seconds): PlatformState {
  const engine: Engine = { is: 'running', sinceS: atS, lastSignS: atS, audio: false, speech: false };
  // After failures a start proves nothing: without a network it starts, too, and ends within 17 ms.
  return ear.tries === 0 ? { ...ear, engine, state: 'listening', why: null } : { ...ear, engine };
}

function hearSign(ear: PlatformState, sign: Sign, atS: Seconds): PlatformState {
  // Some say that they hear without ever having said that they started.
  const running = ear.engine.is === 'asked' && isOn(ear) ? run(ear, atS) : ear;
  const { engine } = running;
  if (engine.is !== 'running') return running;
  const speech = engine.speech || sign === 'speech';
  return { ...running, engine: { ...engine, lastSignS: atS, audio: sign !== 'no-audio', speech } };
}

function hearResult(ear: PlatformState, hasText: boolean, atS: Seconds): PlatformState {
  if (!isOn(ear)) return ear;
  const heard = hearSign(ear, hasText ? 'speech' : 'sound', atS);
  return hasText && heard.engine.is === 'running' ? { ...heard, state: 'listening', why: null, tries: 0 } : heard;
}

/** An error is followed by an end; only that allows another start. */
function hearError(ear: PlatformState, error: string, atS: Seconds): PlatformState {
  if (!isOn(ear)) return ear;
  const { is } = ear.engine;
  const started = is === 'asked' || is === 'running';
  const ending: PlatformState = started ? { ...ear, engine: { is: 'stopping', sinceS: atS } } : ear;
  if (FINAL.includes(error)) return hearFinal(ending, error as BlockedWhy, atS);
  // A second error of the same run, or the "aborted" that answers our own abort.
  if (!started) return ear;
  if (error === 'no-speech') return { ...endPlainly(ear, atS), engine: ending.engine };
  if (error === 'phrases-not-supported' && ear.startedHow?.phrases)
    return soon({ ...ending, how: { ...ear.startedHow, phrases: false } }, atS);
  return lose(ending, KNOWN_LOSSES.includes(error) ? (error as LostWhy) : 'unknown', atS);
}

function hearFinal(ear: PlatformState, why: BlockedWhy, atS: Seconds): PlatformState {
  if (why !== 'language-not-supported' || !ear.startedHow?.local) return block(ear, why);
  // Not this language on this device. Another way only if the handler allowed it.
  return ear.mayLeave ? soon({ ...ear, how: ELSEWHERE }, atS) : block(ear, 'not-on-device');
}

function hearEnd(ear: PlatformState, atS: Seconds): PlatformStep {
  const { is } = ear.engine;
  if (is === 'idle') return same(ear);
  const started = is === 'asked' || is === 'running';
  const ended: PlatformState = { ...(started && isOn(ear) ? endPlainly(ear, atS) : ear), engine: { is: 'idle' } };
  return look(ended, atS);
}

function endPlainly(ear: PlatformState, atS: Seconds): PlatformState {
  const { engine } = ear;
  const shortest = engine.is === 'running' && engine.speech ? SHORTEST_PHRASE_S : SHORTEST_SILENCE_S;
  const wasOfUse = engine.is === 'running' && atS >= engine.sinceS + shortest;
  return wasOfUse ? soon(ear, atS) : lose(ear, 'ended', atS);
}

function hearThrow(ear: PlatformState, why: ThrowWhy, atS: Seconds): PlatformStep {
  if (why === 'already-running') {
    const stuck: PlatformState = { ...ear, engine: { is: 'stuck' } };
    return { ear: isOn(ear) ? lose(stuck, 'stuck', atS) : stuck, effects: [{ do: 'abort' }] };
  }
  // One that was stuck and cannot even be started has still not ended.
  const wasStuck = ear.engine.is === 'asked' && ear.engine.again;
  const still: PlatformState = { ...ear, engine: { is: wasStuck ? 'stuck' : 'idle' } };
  if (!isOn(ear)) return same(still);
  return same(why === 'unknown' ? lose(still, why, atS) : block(still, why));
}

/** No failure: on with it after the shortest wait. */
function soon(ear: PlatformState, atS: Seconds): PlatformState {
  return { ...ear, state: waiting(ear.tries), why: null, retryAtS: atS + PLAIN_END_S };
}

function lose(ear: PlatformState, why: LostWhy, atS: Seconds): PlatformState {
  const tries = ear.tries + 1;
  return { ...ear, state: waiting(tries), why, tries, retryAtS: atS + waitS(why, tries) };
}

/** 1, 2, 4 … 30 s; the first end that came too soon may be chance and costs no more than a plain one. */
function waitS(why: LostWhy, tries: number): Seconds {
  const doublings = why === 'ended' ? tries - 2 : tries - 1;
  return doublings < 0 ? PLAIN_END_S : Math.min(LONGEST_WAIT_S, 2 ** doublings);
}

function waiting(tries: number): EarState {
  return tries > DEGRADED_AFTER ? 'degraded' : 'restarting';
}
