/** Events for the tests of this room: a real session from the engine, everything a library holds, and a store to put them in. */
import * as fake from 'fake-indexeddb';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import { events, feed, open, sessionStart, type } from '../../demo/typed-session.ts';
import type { Dog, LibraryEvent, SessionEvent, Settings, StoredEvent } from '../../src/core/event.ts';
import type { ExamPlan } from '../../src/core/exam/exam.ts';
import { USUAL_LIMITS } from '../../src/core/limits.ts';
import type { Observation } from '../../src/core/observe/observation.ts';
import type { Stretch } from '../../src/core/stretch.ts';
import type { After, DatabaseOptions } from '../../src/store/database.ts';
import type { Result } from '../../src/store/problem.ts';
import { HOMEWORK } from '../core/handover/homework-sample.ts';

export const DEVICE = 'dev-a';

/** Never calls: for tests in which nothing is late. */
export const never: After = () => () => {};

/** Options for a database of its own in a storage of its own. */
export function freshDatabase(name = 'test'): DatabaseOptions & { newId: () => string } {
  return { name, after: never, newId: () => DEVICE, from: { indexedDB: new fake.IDBFactory(), IDBKeyRange: fake.IDBKeyRange } };
}

/** A session with kept, lifted, short and void reps, an undo, a pause, and its end, as the engine writes it. */
export function playedSession(session: string, firstSeq = 1, device = DEVICE, reps = 'kklks vnkuke'): readonly SessionEvent[] {
  const opened = open(sessionStart(DEMO_PLAN), { session, device, seq: firstSeq });
  const played = type(opened, reps);
  const paused = feed(played, { kind: 'pause', atS: played.atS + 1, why: 'hidden' });
  const resumed = feed(paused, { kind: 'resume', atS: played.atS + 9 });
  return events(feed(resumed, { kind: 'end', atS: played.atS + 10, why: 'handler' }));
}

const EXAM: ExamPlan = {
  ...{ id: 'e1', dogId: DEMO_DOG.id, date: '2026-03-20', place: 'practice', calledOff: false },
  items: [
    { id: 'i1', area: 'ears', what: 'look into the left ear', forS: 10 },
    { id: 'i2', area: 'paws', what: 'Steady one claw 3 s', forS: 3, step: { planId: DEMO_PLAN.id, stepId: 'claw-hold' } },
  ],
};

type LibraryDraft = LibraryEvent extends infer E ? (E extends LibraryEvent ? Pick<E, 'type' | 'body'> : never) : never;

const SETTINGS: Settings = {
  ...{ volume: 0.5, mode: 'both', speakCalls: true, keys: { PageDown: 'mark' }, handler: 'Noor', place: 'kitchen' },
  limits: USUAL_LIMITS,
};

export const takeOf = (word: string, handler = 'Noor', samples = [0, 1, -1, 32767, -32768]): LibraryDraft => ({
  type: 'sound-taught',
  body: { word, handler, said: word, sampleRateHz: 16_000, samples: Int16Array.from(samples) },
});

/** Features of two dimensions and four steps. */
export const STRETCH: Stretch = {
  ...{ features: 'cepstra', dims: 2, steps: 4, from: 1, to: 4 },
  bytes: Uint8Array.of(0, 255, 10, 20, 30, 40, 255, 0),
  ...{ base: Float32Array.of(-1.5, 0.25), scale: Float32Array.of(0.01, 0.002) },
};

const learnedOf = (of: string): LibraryDraft => ({
  type: 'take-learned',
  body: { of, session: 'evening', word: 'hold', handler: 'Noor', stretch: STRETCH },
});

/** A dog with everything that can be known of it. */
const WHOLE_DOG: Dog = {
  ...DEMO_DOG,
  ...{ pain: 'left hip', advice: 'no stairs', food: 'no chicken', scares: 'clippers' },
  ...{ weightKg: 10, neutered: true, kcalPerTreat: 3, treatsPerSession: 12, archived: true },
  ...{ signs: 'licks her nose, then turns away', callWhom: 'Noor, 555 0100' },
  ...{ weightKg: 10, neutered: true, kcalPerTreat: 3, treatsPerSession: 12, archived: true, owner: 'Kim' },
};

const OBSERVATION: Observation = {
  ...{ id: 'o1', sessionId: 'evening', observer: 'Sam', by: 'keys', fileName: 'evening.mp4', lengthS: 90.5, offsetS: -2.25 },
  words: [
    { word: 'hold', atS: 3 },
    { word: 'mark', atS: 4.5 },
  ],
};

export function libraryEvents(
  drafts: readonly LibraryDraft[],
  firstSeq = 1,
  device = DEVICE,
  atMs = 1_772_000_000_000,
): readonly LibraryEvent[] {
  return drafts.map((draft, nth) => {
    const seq = firstSeq + nth;
    const at = new Date(atMs + 1000 * nth).toISOString();
    const stamp = { id: `${device}:${seq}`, device, seq, session: null, version: 1, at, monoMs: 1000 * nth } as const;
    return { ...stamp, ...draft } as LibraryEvent;
  });
}

/** Everything a library can hold, once. */
export function wholeLibrary(firstSeq = 1, device = DEVICE): readonly LibraryEvent[] {
  return libraryEvents(
    [
      { type: 'dog-saved', body: DEMO_DOG },
      { type: 'plan-saved', body: DEMO_PLAN },
      takeOf('hold'),
      takeOf('mark'),
      { type: 'sound-removed', body: { of: `${device}:${firstSeq + 2}` } },
      { type: 'settings-saved', body: SETTINGS },
      learnedOf(`${device}:${firstSeq + 8}`),
      { type: 'dog-saved', body: WHOLE_DOG },
      { type: 'handler-saved', body: { id: 'Noor', name: 'Noor A.', archived: false } },
      { type: 'place-saved', body: { id: 'kitchen', name: 'kitchen', archived: true } },
      { type: 'observation-saved', body: OBSERVATION },
      { type: 'copy-saved', body: { sessions: 3 } },
      { type: 'exam-planned', body: EXAM },
      { type: 'homework-given', body: { homework: HOMEWORK, dogId: DEMO_DOG.id, planId: DEMO_PLAN.id } },
      { type: 'homework-received', body: { homework: HOMEWORK, dogId: DEMO_DOG.id, planId: DEMO_PLAN.id } },
      { type: 'homework-returned', body: { homeworkId: HOMEWORK.id, sessions: [{ id: 'evening', events: 20 }] } },
    ],
    firstSeq,
    device,
  );
}

/** A library and a session, numbered through: what a device has written after its first evening. */
export function firstEvening(): readonly StoredEvent[] {
  const library = wholeLibrary();
  return [...library, ...playedSession('evening', library.length + 1)];
}

export async function value<T>(result: Promise<Result<T>> | Result<T>): Promise<T> {
  const settled = await result;
  if (!settled.ok) throw new Error(`the store said ${JSON.stringify(settled.problem)}`);
  return settled.value;
}

/** The kind of problem, or "fine". */
export async function kindOf(result: Promise<Result<unknown>>): Promise<string> {
  const settled = await result;
  return settled.ok ? 'fine' : settled.problem.kind;
}
