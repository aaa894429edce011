/** The ear for the handler's own words: microphone → tap → worker. Owns the worker; keeps the ear's state; mends what it can. */

import weightsUrl from 'virtual:ear-weights';
import type { EarState } from '../core/event.ts';
import type { Seconds } from '../core/units.ts';
import type { Model, Teaching } from '../hearing/enrol.ts';
import type { Hearing } from '../hearing/listen.ts';
import { EAR_OFF, type Ear, type EarEvent, nextEar } from './ear-state.ts';
import type { Change, Enrolled } from './enrolled.ts';
import type { CaughtTake, Comparison, EarLevel, FromListener, Job, ToListener } from './messages.ts';
import { type Microphone, openMicrophone } from './microphone.ts';
import tapUrl from './tap.worklet.ts?worker&url';

export interface OwnWordsEvents {
  /** Times are page time (the sound room's clock), s. */
  readonly onHearing: (hearing: Hearing) => void;
  readonly onCaught: (take: CaughtTake) => void;
  readonly onLevel: (level: EarLevel) => void;
  readonly onState: (ear: Ear) => void;
}

export interface OwnWordsParts extends OwnWordsEvents {
  /** Asked at each opening. */
  readonly echoCancellation: () => boolean;
  /** Asked each time: the sound room may replace it. */
  readonly context: () => AudioContext;
  readonly clock: { now(): Seconds; toContextS(atS: Seconds): Seconds; fromContextS(contextS: Seconds): Seconds };
}

export interface OwnWords {
  /** From a tap: asks for the microphone and begins to take sound in. */
  open(): Promise<EarState>;
  /** @param keepSound hands out 1.5 s of sound with every hearing. */
  listen(model: Model, keepSound: boolean): void;
  teach(longestS: Seconds): void;
  enrol(teaching: Teaching): Promise<Enrolled>;
  /** What became of a session's stretches by another model; null: it could not be told. */
  compare(compare: Comparison): Promise<Change | null>;
  expectOwnSound(fromS: Seconds, toS: Seconds): void;
  /** The taught words that may well come next; null: all alike. */
  expect(words: readonly string[] | null): void;
  /** Call it a few times a second: notices what sends no event, and asks again when it is time. */
  look(): void;
  away(why: 'hidden' | 'interrupted'): void;
  back(): void;
  ear(): Ear;
  close(): void;
}

interface Inside {
  readonly parts: OwnWordsParts;
  /** Replaced when it fails. */
  worker: Worker;
  /** What it was last asked to do; a new worker is asked the same. */
  job: Job;
  readonly waiting: Map<number, (enrolled: Enrolled) => void>;
  readonly comparing: Map<number, (change: Change | null) => void>;
  readonly tapped: WeakSet<AudioContext>;
  ear: Ear;
  microphone: Microphone | null;
  nodes: readonly AudioNode[];
  tapPort: MessagePort | null;
  /** A callback of an earlier opening is told by its number, and ignored. */
  generation: number;
  requests: number;
  /** Teaching waits for the network: a model belongs to the ear that it was taught to. */
  weighed: Promise<void>;
}

export function createOwnWords(parts: OwnWordsParts): OwnWords {
  const inside: Inside = {
    ...{
      parts,
      worker: newWorker(),
      job: { kind: 'idle' },
      waiting: new Map(),
      comparing: new Map(),
      tapped: new WeakSet(),
      ear: EAR_OFF,
    },
    ...{ microphone: null, nodes: [], tapPort: null, generation: 0, requests: 0, weighed: Promise.resolve() },
  };
  employ(inside);
  const job = (next: Job) => {
    inside.job = next;
    send(inside, { kind: 'job', job: next });
  };
  return {
    open: () => open(inside),
    listen: (model, keepSound) => job({ kind: 'listen', model, keepSound }),
    teach: (longestS) => job({ kind: 'teach', longestS }),
    enrol: (teaching) => enrol(inside, teaching),
    compare: (compare) => ask(inside, inside.comparing, (request) => ({ kind: 'compare', request, compare })),
    expectOwnSound: (fromS, toS) => send(inside, ownSound(parts, fromS, toS)),
    expect: (words) => send(inside, { kind: 'expect', words }),
    look: () => look(inside),
    away: (why) => tell(inside, { kind: 'away', why }),
    back: () => tell(inside, { kind: 'back', atS: parts.clock.now() }),
    ear: () => inside.ear,
    close: () => {
      release(inside);
      job({ kind: 'idle' });
      tell(inside, { kind: 'closed' });
    },
  };
}

function newWorker(): Worker {
  return new Worker(new URL('./listener.worker.ts', import.meta.url), { type: 'module' });
}

/** Gives the worker the network, listens to it, and asks it for what the one before it was asked. */
function employ(inside: Inside): void {
  const { worker, parts } = inside;
  worker.onmessage = ({ data }: MessageEvent<FromListener>) => take(inside, data);
  worker.onerror = () => {
    // Nobody may wait for ever for what it will not answer.
    for (const answer of inside.waiting.values()) answer({ ok: false, problems: [] });
    inside.waiting.clear();
    for (const answer of inside.comparing.values()) answer(null);
    inside.comparing.clear();
    tell(inside, { kind: 'lost', why: 'worker-failed', atS: parts.clock.now() });
  };
  inside.weighed = fetchWeights().then((file) =>
    worker.postMessage({ kind: 'weights', file } satisfies ToListener, file ? [file] : []),
  );
  send(inside, { kind: 'job', job: inside.job });
}

function ownSound({ clock }: OwnWordsParts, fromS: Seconds, toS: Seconds): ToListener {
  return { kind: 'own-sound', fromS: clock.toContextS(fromS), toS: clock.toContextS(toS) };
}

function send(inside: Inside, message: ToListener, transfer: Transferable[] = []): void {
  inside.worker.postMessage(message, transfer);
}

function tell(inside: Inside, event: EarEvent): void {
  const before = inside.ear;
  inside.ear = nextEar(before, event);
  if (inside.ear.state !== before.state || inside.ear.why !== before.why) inside.parts.onState(inside.ear);
}

async function open(inside: Inside): Promise<EarState> {
  release(inside);
  const generation = inside.generation;
  const now = inside.parts.clock.now;
  tell(inside, { kind: 'asked', atS: now() });
  const mine = () => generation === inside.generation;
  const opened = await openMicrophone(inside.parts.echoCancellation(), {
    onLost: (why) => mine() && tell(inside, { kind: 'lost', why: why === 'muted' ? 'muted' : 'unplugged', atS: now() }),
    onBack: () => mine() && tell(inside, { kind: 'back', atS: now() }),
  });
  if (!mine()) {
    if (opened.ok) opened.microphone.close();
    return inside.ear.state;
  }
  if (!opened.ok) {
    tell(inside, { kind: 'refused', why: opened.problem.kind, atS: now() });
    return inside.ear.state;
  }
  inside.microphone = opened.microphone;
  await connect(inside, opened.microphone, mine);
  return inside.ear.state;
}

/** Source → tap → nowhere: the tap must be pulled, and must not be heard. */
async function connect(inside: Inside, microphone: Microphone, mine: () => boolean): Promise<void> {
  const context = inside.parts.context();
  if (!inside.tapped.has(context)) await context.audioWorklet.addModule(tapUrl);
  inside.tapped.add(context);
  if (!mine()) return;
  const source = context.createMediaStreamSource(microphone.stream);
  const tap = new AudioWorkletNode(context, 'tap', {
    numberOfInputs: 1,
    numberOfOutputs: 1,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  const silence = new GainNode(context, { gain: 0 });
  const { port1, port2 } = new MessageChannel();
  tap.port.postMessage(port1, [port1]);
  send(inside, { kind: 'stream', port: port2, sampleRateHz: context.sampleRate }, [port2]);
  source.connect(tap).connect(silence).connect(context.destination);
  inside.nodes = [source, tap, silence];
  inside.tapPort = tap.port;
}

function release(inside: Inside): void {
  inside.generation++;
  for (const node of inside.nodes) node.disconnect();
  inside.nodes = [];
  // Null ends the processor: left alone it would run for as long as the context.
  inside.tapPort?.postMessage(null);
  inside.tapPort = null;
  inside.microphone?.close();
  inside.microphone = null;
}

function take(inside: Inside, message: FromListener): void {
  const { parts } = inside;
  const shift = parts.clock.fromContextS(0);
  switch (message.kind) {
    case 'hearing':
      return parts.onHearing(moved(message.hearing, shift));
    case 'caught':
      return parts.onCaught(message.take);
    case 'level':
      tell(inside, { kind: 'block', levelDb: message.level.nowDb, atS: parts.clock.now() });
      return parts.onLevel(message.level);
    case 'enrolled':
      inside.waiting.get(message.request)?.(message.enrolled);
      inside.waiting.delete(message.request);
      return;
    case 'compared':
      inside.comparing.get(message.request)?.(message.change);
      inside.comparing.delete(message.request);
      return;
    case 'failed':
      return tell(inside, { kind: 'lost', why: 'worker-failed', atS: parts.clock.now() });
  }
}

function moved(hearing: Hearing, byS: Seconds): Hearing {
  const { startedAtS, endedAtS, decidedAtS } = hearing;
  return { ...hearing, startedAtS: startedAtS + byS, endedAtS: endedAtS + byS, decidedAtS: decidedAtS + byS };
}

/** It comes from the device or from next door; longer than this it is not coming, ms. */
const WEIGHTS_MS = 15_000;

/** Null when there is none or it cannot be fetched: the ear works on cepstra then, and the forecast says so. */
export async function fetchWeights(): Promise<ArrayBuffer | null> {
  if (weightsUrl === null) return null;
  const response = await fetch(weightsUrl, { signal: AbortSignal.timeout(WEIGHTS_MS) }).catch(() => null);
  return response?.ok ? response.arrayBuffer() : null;
}

async function enrol(inside: Inside, teaching: Teaching): Promise<Enrolled> {
  await inside.weighed;
  return ask(inside, inside.waiting, (request) => ({ kind: 'enrol', request, teaching }));
}

function ask<T>(inside: Inside, waiting: Map<number, (answer: T) => void>, message: (request: number) => ToListener): Promise<T> {
  const request = inside.requests++;
  return new Promise((resolve) => {
    waiting.set(request, resolve);
    send(inside, message(request));
  });
}

function replaceWorker(inside: Inside): void {
  inside.worker.terminate();
  inside.worker = newWorker();
  employ(inside);
}

function look(inside: Inside): void {
  const atS = inside.parts.clock.now();
  tell(inside, { kind: 'looked', atS });
  const { retryAtS } = inside.ear;
  if (retryAtS === null || atS < retryAtS) return;
  if (inside.ear.why === 'worker-failed') replaceWorker(inside);
  void open(inside);
}
