/**
 * The ear that the browser brings: owns SpeechRecognition, carries out what platform-state.ts decides, and turns what is written
 * into words. Only one ear owns the microphone: the session closes the ear for own words before it opens this one, and back.
 */
import type { EarState } from '../core/event.ts';
import type { Milliseconds, Seconds } from '../core/units.ts';
import {
  type AwayWhy,
  dueAtS,
  type How,
  isPlainRestart,
  nextPlatform,
  PLATFORM_OFF,
  type PlatformEffect,
  type PlatformEvent,
  type PlatformState,
  type Sign,
  type ThrowWhy,
  wordsCount,
} from './platform-state.ts';
import {
  foldText,
  type HeardByPlatform,
  type Listening,
  NOTHING_SPOKEN,
  nextSpoken,
  type Sayings,
  type Spoken,
} from './platform-words.ts';

type Handler<E = unknown> = ((event: E) => unknown) | null;

/** What a `result` event carries: every result of the run so far. */
export interface Written {
  readonly resultIndex: number;
  readonly results: ArrayLike<
    { readonly isFinal: boolean } & ArrayLike<{ readonly transcript: string; readonly confidence: number }>
  >;
}

/** As much of SpeechRecognition as is used, so that a fake can be one. */
export interface Recogniser {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  maxAlternatives: number;
  processLocally?: boolean;
  phrases?: readonly object[];
  onstart: Handler;
  onaudiostart: Handler;
  onaudioend: Handler;
  onsoundstart: Handler;
  onspeechstart: Handler;
  onresult: Handler<Written>;
  onerror: Handler<{ readonly error: string }>;
  onend: Handler;
  start(): void;
  abort(): void;
}

/** Recognition on the device itself, where the browser offers it. */
export interface OnDevice {
  available(language: string): Promise<string>;
  /** Fetches what is missing; false: it cannot. */
  install(language: string): Promise<boolean>;
  /** A phrase to expect; null: the browser takes none. */
  readonly phrase: ((text: string) => object) | null;
}

export interface PlatformEarParts {
  /** A new recogniser; null: this browser has none. */
  readonly recogniser: () => Recogniser | null;
  readonly onDevice: OnDevice | null;
  readonly after: (ms: Milliseconds, work: () => void) => () => void;
  /** Page time, s. */
  readonly nowS: () => Seconds;
  /** Asked at each start and each result. */
  readonly sayings: () => Sayings;
  /** BCP 47: "en-GB". */
  readonly language: () => string;
  /** The handler allows that sound leaves the device; asked when the ear is opened. */
  readonly mayLeave: () => boolean;
  readonly onHeard: (heard: HeardByPlatform) => void;
  /** `lasting`: not the short gap after each phrase, which is shown at most, never sounded and never kept. */
  readonly onState: (ear: PlatformState, lasting: boolean) => void;
}

export interface PlatformEar {
  /** From a tap, when no other ear has the microphone. */
  open(): EarState;
  /** It looks by itself when it is time; more often does no harm. */
  look(): void;
  away(why: AwayWhy): void;
  back(): void;
  ear(): PlatformState;
  close(): void;
}

interface Inside {
  readonly parts: PlatformEarParts;
  ear: PlatformState;
  listening: Listening;
  recogniser: Recogniser | null;
  /** Some recognisers answer before `start()` has returned: one event at a time, in their order. */
  readonly queue: PlatformEvent[];
  busy: boolean;
  lastingState: EarState;
  callOff: () => void;
}

/** A wake-up is never nearer, whatever the clock says: a clock that stands still must not make it spin, ms. */
const LEAST_WAKE_MS = 50;
/** More than the best: a short word is often the second guess. */
const ALTERNATIVES = 3;

export function createPlatformEar(parts: PlatformEarParts): PlatformEar {
  const inside: Inside = {
    ...{ parts, ear: PLATFORM_OFF, listening: NOTHING_SPOKEN, recogniser: null },
    ...{ queue: [], busy: false, lastingState: 'off', callOff: () => {} },
  };
  const now = parts.nowS;
  return {
    open: () => {
      tell(inside, { kind: 'asked', mayLeave: parts.mayLeave(), atS: now() });
      return inside.ear.state;
    },
    look: () => tell(inside, { kind: 'looked', atS: now() }),
    away: (why) => tell(inside, { kind: 'away', why, atS: now() }),
    back: () => tell(inside, { kind: 'back', atS: now() }),
    ear: () => inside.ear,
    close: () => tell(inside, { kind: 'closed', atS: now() }),
  };
}

/** The browser's own, under either name; for `createPlatformEar`. */
export function browserRecogniser(): Pick<PlatformEarParts, 'recogniser' | 'onDevice'> {
  const Constructor = globalThis.SpeechRecognition ?? globalThis.webkitSpeechRecognition ?? null;
  if (!Constructor) return { recogniser: () => null, onDevice: null };
  return { recogniser: () => new Constructor() as unknown as Recogniser, onDevice: onDeviceOf(Constructor) };
}

function onDeviceOf(Constructor: typeof SpeechRecognition): OnDevice | null {
  // The typings say that every browser has these; phones have not (PITFALLS).
  const { available, install } = Constructor as Partial<typeof SpeechRecognition>;
  if (!available || !install) return null;
  const options = (language: string) => ({ langs: [language], processLocally: true });
  return {
    available: (language) => available.call(Constructor, options(language)),
    install: (language) => install.call(Constructor, options(language)),
    phrase: phraseMaker(),
  };
}

function phraseMaker(): OnDevice['phrase'] {
  const { SpeechRecognitionPhrase: Phrase } = globalThis as {
    SpeechRecognitionPhrase?: new (text: string, boost: number) => object;
  };
  return Phrase ? (text) => new Phrase(text, PHRASE_BOOST) : null;
}

/** How much likelier an expected word is, 0 to 10 in the specification. Tried by nobody, no source. */
const PHRASE_BOOST = 5;

function tell(inside: Inside, event: PlatformEvent): void {
  inside.queue.push(event);
  if (inside.busy) return;
  inside.busy = true;
  try {
    for (let next = inside.queue.shift(); next; next = inside.queue.shift()) take(inside, next);
  } finally {
    inside.busy = false;
    wakeWhenDue(inside);
  }
}

function take(inside: Inside, event: PlatformEvent): void {
  const before = inside.ear;
  const { ear, effects } = nextPlatform(before, event);
  inside.ear = ear;
  for (const effect of effects) carryOut(inside, effect);
  const isOther = ear.state !== before.state || ear.why !== before.why;
  if (isOther || (ear.state === 'restarting' && ear.tries !== before.tries)) show(inside, ear);
}

function show(inside: Inside, ear: PlatformState): void {
  const lasting = !isPlainRestart(ear) && ear.state !== inside.lastingState;
  if (lasting) inside.lastingState = ear.state;
  inside.parts.onState(ear, lasting);
}

function wakeWhenDue(inside: Inside): void {
  inside.callOff();
  inside.callOff = () => {};
  const { parts, ear } = inside;
  const due = dueAtS(ear);
  if (due === null) return;
  const ms = Math.max(LEAST_WAKE_MS, Math.ceil((due - parts.nowS()) * 1000));
  inside.callOff = parts.after(ms, () => tell(inside, { kind: 'looked', atS: parts.nowS() }));
}

function carryOut(inside: Inside, effect: PlatformEffect): void {
  switch (effect.do) {
    case 'prepare':
      return prepare(inside, effect.asks, effect.mayLeave);
    case 'start':
      return start(inside, effect.generation, effect.how, effect.again);
    case 'abort':
      return abort(inside.recogniser);
  }
}

/** At once where the browser offers no choice: some give the microphone only while the tap lasts. */
function prepare(inside: Inside, asks: number, mayLeave: boolean): void {
  const { onDevice, nowS } = inside.parts;
  const settle = (how: How | null) =>
    how
      ? tell(inside, { kind: 'prepared', asks, how, atS: nowS() })
      : tell(inside, { kind: 'refused', asks, why: 'not-on-device' });
  const otherwise = mayLeave ? { local: false, phrases: false } : null;
  if (!onDevice) return settle(otherwise);
  const installing = () => tell(inside, { kind: 'installing', asks });
  void offered(onDevice, inside.parts.language(), installing).then((local) =>
    settle(local ? { local: true, phrases: onDevice.phrase !== null } : otherwise),
  );
}

async function offered(onDevice: OnDevice, language: string, installing: () => void): Promise<boolean> {
  try {
    const status = await onDevice.available(language);
    if (status === 'available') return true;
    if (status !== 'downloadable' && status !== 'downloading') return false;
    installing();
    return await onDevice.install(language);
  } catch {
    // A browser that offers it and then fails at it offers nothing.
    return false;
  }
}

function start(inside: Inside, generation: number, how: How, again: boolean): void {
  const threw = (why: ThrowWhy) => tell(inside, { kind: 'threw', why, generation, atS: inside.parts.nowS() });
  try {
    // A new one for each run: what the last one still calls back carries its own number.
    if (!again || !inside.recogniser) inside.recogniser = inside.parts.recogniser();
    if (!inside.recogniser) return threw('no-recogniser');
    configure(inside.recogniser, how, inside.parts);
    listenTo(inside.recogniser, inside, generation);
    inside.recogniser.start();
  } catch (error) {
    threw(threwWhy(error));
  }
}

function threwWhy(error: unknown): ThrowWhy {
  const name = (error as { name?: unknown } | null)?.name;
  if (name === 'InvalidStateError') return 'already-running';
  return name === 'NotAllowedError' ? 'not-allowed' : 'unknown';
}

function configure(recogniser: Recogniser, how: How, { language, onDevice, sayings }: PlatformEarParts): void {
  recogniser.lang = language();
  recogniser.continuous = true;
  recogniser.interimResults = true;
  recogniser.maxAlternatives = ALTERNATIVES;
  // Where the switch is missing, setting it would promise what is not kept.
  if (how.local && !('processLocally' in recogniser)) throw new Error('on the device: not offered');
  if ('processLocally' in recogniser) recogniser.processLocally = how.local;
  const { phrase } = onDevice ?? { phrase: null };
  if ('phrases' in recogniser) recogniser.phrases = how.phrases && phrase ? spoken(sayings()).map(phrase) : [];
}

function spoken(sayings: Sayings): readonly string[] {
  const texts = Object.values(sayings).flatMap((each) => each ?? []);
  return [...new Set(texts.map((text) => foldText(text).join(' ')))].filter((text) => text !== '');
}

function listenTo(recogniser: Recogniser, inside: Inside, generation: number): void {
  const stamp = () => ({ generation, atS: inside.parts.nowS() });
  const sign = (which: Sign) => () => tell(inside, { ...stamp(), kind: 'sign', sign: which });
  recogniser.onstart = () => {
    if (generation !== inside.ear.generation) abort(recogniser);
    else tell(inside, { ...stamp(), kind: 'started' });
  };
  recogniser.onaudiostart = sign('audio');
  recogniser.onaudioend = sign('no-audio');
  recogniser.onsoundstart = sign('sound');
  recogniser.onspeechstart = () => {
    hear(inside, { ...stamp(), kind: 'speech-started' });
    tell(inside, { ...stamp(), kind: 'sign', sign: 'speech' });
  };
  recogniser.onresult = (event) => takeWriting(inside, event, stamp());
  recogniser.onerror = ({ error }) => tell(inside, { ...stamp(), kind: 'error', error });
  recogniser.onend = () => tell(inside, { ...stamp(), kind: 'ended' });
}

function abort(recogniser: Recogniser | null): void {
  try {
    recogniser?.abort();
  } catch {
    // Some throw when they do not run. Whether it ended is told by its end, and watched.
  }
}

function takeWriting(inside: Inside, { resultIndex, results }: Written, stamp: { generation: number; atS: Seconds }): void {
  const written: Spoken[] = [];
  for (let index = Math.max(0, resultIndex); index < results.length; index++) {
    const result = results[index];
    if (!result) continue;
    const alternatives = Array.from(result, ({ transcript, confidence }) => ({ text: transcript, confidence }));
    written.push({ ...stamp, kind: 'written', index, alternatives, isFinal: result.isFinal });
  }
  const hasText = written.some((each) => each.kind === 'written' && each.alternatives.some(({ text }) => text.trim() !== ''));
  tell(inside, { ...stamp, kind: 'result', hasText });
  for (const each of written) hear(inside, each);
}

function hear(inside: Inside, what: Spoken): void {
  if (what.generation !== inside.ear.generation || !wordsCount(inside.ear)) return;
  const { listening, heard } = nextSpoken(inside.listening, what, inside.parts.sayings());
  inside.listening = listening;
  for (const each of heard) inside.parts.onHeard(each);
}
