/** A recogniser that behaves as badly as phones do, by script, on a clock that a test moves by hand. */
import type { Milliseconds, Seconds } from '../core/units.ts';
import type { OnDevice, Recogniser, Written } from './platform.ts';

export interface FakeAlternative {
  readonly transcript: string;
  readonly confidence: number;
}

/** One thing that it does, so long after `start()`; 0 ms: before `start()` returns. */
export type Act = { readonly atMs: Milliseconds } & (
  | { readonly does: 'start' | 'audiostart' | 'audioend' | 'soundstart' | 'speechstart' | 'end' }
  | { readonly does: 'error'; readonly error: string }
  | { readonly does: 'write'; readonly index: number; readonly isFinal: boolean; readonly says: readonly FakeAlternative[] }
);

/** What one start comes to. */
export interface Run {
  readonly acts: readonly Act[];
  /** How long after `abort()` it ends; null: it takes no notice. */
  readonly endsAfterAbortMs: Milliseconds | null;
  /** It goes on calling back after it has ended. */
  readonly talksAfterEnd?: boolean;
  /** `start()` throws an error of this name instead. */
  readonly throws?: string;
}

export interface FakePlatform {
  readonly recogniser: () => Recogniser;
  readonly nowS: () => Seconds;
  readonly after: (ms: Milliseconds, work: () => void) => () => void;
  advance(ms: Milliseconds): void;
  /** When `start()` was called, ms. */
  readonly starts: readonly Milliseconds[];
  /** How each start was asked for. */
  readonly asked: readonly { readonly lang: string; readonly local: boolean; readonly phrases: number }[];
  /** The most that ever ran at once. */
  mostAtOnce(): number;
  running(): number;
}

/** `script`: what the nth start comes to, counted from 0. */
export function createFakePlatform(script: (n: number) => Run, browser: { local?: boolean } = {}): FakePlatform {
  const time = createTime();
  const inside: Inside = { time, script, starts: [], asked: [], running: new Set(), most: 0 };
  return {
    recogniser: () => fakeRecogniser(inside, browser.local ?? false),
    nowS: () => time.nowMs() / 1000,
    ...{ after: time.after, advance: time.advance, starts: inside.starts, asked: inside.asked },
    mostAtOnce: () => inside.most,
    running: () => inside.running.size,
  };
}

/** Recognition on the device, as a browser may offer it. */
export function fakeOnDevice(status: string | Promise<string>, installs: boolean | Promise<boolean> = true): OnDevice {
  return { available: async () => status, install: async () => installs, phrase: (text) => ({ text }) };
}

const start = (atMs: Milliseconds): Act => ({ atMs, does: 'start' });
const end = (atMs: Milliseconds): Act => ({ atMs, does: 'end' });
const error = (atMs: Milliseconds, name: string): Act => ({ atMs, does: 'error', error: name });

export function write(
  atMs: Milliseconds,
  text: string,
  more: { index?: number; isFinal?: boolean; confidence?: number } = {},
): Act {
  const { index = 0, isFinal = false, confidence = 0.8 } = more;
  return { atMs, does: 'write', index, isFinal, says: [{ transcript: text, confidence }] };
}

/** It starts and listens for as long as it is left alone. */
export function listens(...acts: readonly Act[]): Run {
  return { acts: [start(100), { atMs: 110, does: 'audiostart' }, ...acts], endsAfterAbortMs: 20 };
}

/** Seen: `start()` → error → end within 17 ms, with or without a start event. */
export function failsAtOnce(name: string, withStart = true): Run {
  return { acts: [...(withStart ? [start(5)] : []), error(12, name), end(17)], endsAfterAbortMs: 1 };
}

export const endsAtOnce: Run = { acts: [start(5), end(17)], endsAfterAbortMs: 1 };
export const neverStarts: Run = { acts: [], endsAfterAbortMs: null };
export const neverEnds: Run = { acts: [start(100), { atMs: 110, does: 'audiostart' }], endsAfterAbortMs: null };
/** It says that it runs, and no sound ever comes in. */
export const startsDeaf: Run = { acts: [start(100)], endsAfterAbortMs: 20 };
export const busyAlready: Run = { acts: [], endsAfterAbortMs: null, throws: 'InvalidStateError' };

/** A phone: one phrase, an interim that is right, a final that is late and empty, then it ends. */
export function phrase(text: string, saidMs: Milliseconds = 1000): Run {
  const acts: Act[] = [
    { atMs: saidMs, does: 'speechstart' },
    write(saidMs + 300, text),
    write(saidMs + 2600, '', { isFinal: true }),
  ];
  return listens(...acts, end(saidMs + 2700));
}

interface Inside {
  readonly time: Time;
  readonly script: (n: number) => Run;
  readonly starts: Milliseconds[];
  readonly asked: { lang: string; local: boolean; phrases: number }[];
  readonly running: Set<object>;
  most: number;
}

function fakeRecogniser(inside: Inside, offersLocal: boolean): Recogniser {
  let run: Run | null = null;
  let written: Written['results'][number][] = [];
  const isRunning = () => inside.running.has(recogniser);
  const ends = () => {
    if (!isRunning()) return;
    inside.running.delete(recogniser);
    recogniser.onend?.({});
  };
  const act = (of: Run, each: Act) => {
    // What an earlier run of this recogniser had in mind is over, unless it is one that talks on.
    if ((run !== of || !isRunning()) && !of.talksAfterEnd) return;
    if (each.does === 'end') return isRunning() ? ends() : recogniser.onend?.({});
    if (each.does === 'error') return recogniser.onerror?.({ error: each.error });
    if (each.does !== 'write') return recogniser[`on${each.does}`]?.({});
    written = Object.assign([...written], { [each.index]: Object.assign([...each.says], { isFinal: each.isFinal }) });
    recogniser.onresult?.({ resultIndex: each.index, results: written });
  };
  const recogniser: Recogniser = {
    ...{ lang: '', continuous: false, interimResults: false, maxAlternatives: 1 },
    ...(offersLocal ? { processLocally: false, phrases: [] } : {}),
    ...{ onstart: null, onaudiostart: null, onaudioend: null, onsoundstart: null, onspeechstart: null },
    ...{ onresult: null, onerror: null, onend: null },
    start: () => {
      const { lang, processLocally: local = false, phrases = [] } = recogniser;
      const next = inside.script(inside.starts.length);
      inside.starts.push(inside.time.nowMs());
      inside.asked.push({ lang, local, phrases: phrases.length });
      if (isRunning() || next.throws) throw named(next.throws ?? 'InvalidStateError');
      run = next;
      written = [];
      inside.running.add(recogniser);
      inside.most = Math.max(inside.most, inside.running.size);
      for (const each of next.acts) {
        if (each.atMs === 0) act(next, each);
        else inside.time.after(each.atMs, () => act(next, each));
      }
    },
    abort: () => {
      const of = run;
      if (!of || !isRunning() || of.endsAfterAbortMs === null) return;
      inside.time.after(of.endsAfterAbortMs, () => {
        if (run !== of || !isRunning()) return;
        recogniser.onerror?.({ error: 'aborted' });
        ends();
      });
    },
  };
  return recogniser;
}

function named(name: string): Error {
  return Object.assign(new Error(name), { name });
}

interface Time {
  nowMs(): Milliseconds;
  after(ms: Milliseconds, work: () => void): () => void;
  advance(ms: Milliseconds): void;
}

function createTime(): Time {
  let nowMs = 0;
  const due = new Set<{ readonly atMs: Milliseconds; readonly work: () => void }>();
  const next = (untilMs: Milliseconds) => [...due].filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)[0];
  return {
    nowMs: () => nowMs,
    after: (ms, work) => {
      const one = { atMs: nowMs + ms, work };
      due.add(one);
      return () => due.delete(one);
    },
    advance: (ms) => {
      const untilMs = nowMs + ms;
      for (let one = next(untilMs); one; one = next(untilMs)) {
        due.delete(one);
        nowMs = one.atMs;
        one.work();
      }
      nowMs = untilMs;
    },
  };
}
