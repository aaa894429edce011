/** Folds what outlives sessions (dogs, plans, taught words, settings) into what stands now, and says in which order any events count. */
import type { Dog, LearnedTake, LibraryEvent, Named, Settings, StoredEvent, TaughtSound } from './event.ts';
import type { ExamPlan } from './exam/exam.ts';
import type { HomeworkGiven, HomeworkReceived, HomeworkReturned } from './handover/homework.ts';
import type { Observation } from './observe/observation.ts';
import type { Plan } from './plan.ts';
import type { IsoTime } from './units.ts';

/** A taught take, and the event that taught it: `sound-removed` names it. */
export interface Take extends TaughtSound {
  readonly id: string;
}

/** A take that came of a correction, and the event that made it. */
export interface Learnt extends LearnedTake {
  readonly id: string;
}

/** A copy that was handed out: when, and the number that its event has on its device. */
export interface Copy {
  readonly at: IsoTime;
  readonly seq: number;
}

/** Every sending of homework, in the order written: what this device gave, what it accepted, and what it handed back. */
export interface HomeworkBook {
  readonly given: readonly HomeworkGiven[];
  readonly received: readonly HomeworkReceived[];
  readonly returned: readonly HomeworkReturned[];
}

export interface Library {
  /** In the order in which each was first saved. */
  readonly dogs: readonly Dog[];
  readonly plans: readonly Plan[];
  /** What veterinarians mean to do, each as last saved; those called off too. */
  readonly exams: readonly ExamPlan[];
  /** Those that were saved by name; `named.ts` adds those that are only used. */
  readonly handlers: readonly Named[];
  readonly places: readonly Named[];
  /** What second observers made of sessions, each as last saved. */
  readonly observations: readonly Observation[];
  /** Every take that was not removed, in the order taught. */
  readonly sounds: readonly Take[];
  /** What corrections taught and nobody took back, oldest first. */
  readonly learned: readonly Learnt[];
  readonly homework: HomeworkBook;
  /** null: never saved on any device. */
  readonly settings: Settings | null;
  /** The latest copy of everything that each device handed out, by device. */
  readonly copies: ReadonlyMap<string, Copy>;
}

/** One handler's takes by word, in the order taught. */
export function takesOf(library: Library, handler: string): ReadonlyMap<string, readonly Take[]> {
  const takes = new Map<string, readonly Take[]>();
  for (const take of library.sounds) if (take.handler === handler) takes.set(take.word, [...(takes.get(take.word) ?? []), take]);
  return takes;
}

/** The library as it stands after these events, in whatever order they come. */
export function foldLibrary(events: readonly LibraryEvent[]): Library {
  const ordered = inOrder(events);
  const dogs = new Map<string, Dog>();
  const plans = new Map<string, Plan>();
  const exams = new Map<string, ExamPlan>();
  const handlers = new Map<string, Named>();
  const places = new Map<string, Named>();
  const observations = new Map<string, Observation>();
  const sounds = new Map<string, Take>();
  const learned = new Map<string, Learnt>();
  const copies = new Map<string, Copy>();
  const homework = bookOf(ordered);
  let settings: Settings | null = null;
  for (const { type, body, id, device, seq, at } of ordered) {
    if (type === 'dog-saved') dogs.set(body.id, body);
    else if (type === 'plan-saved') plans.set(body.id, body);
    else if (type === 'exam-planned') exams.set(body.id, body);
    else if (type === 'handler-saved') handlers.set(body.id, body);
    else if (type === 'place-saved') places.set(body.id, body);
    else if (type === 'observation-saved') observations.set(body.id, body);
    else if (type === 'sound-taught') sounds.set(id, { ...body, id });
    else if (type === 'take-learned') learned.set(id, { ...body, id });
    else if (type === 'settings-saved') settings = body;
    else if (type === 'copy-saved') copies.set(device, { at, seq });
  }
  // After all else: on merged logs a removal can stand before what it removes.
  for (const { type, body } of ordered) {
    if (type !== 'sound-removed') continue;
    sounds.delete(body.of);
    learned.delete(body.of);
  }
  const values = { dogs: [...dogs.values()], plans: [...plans.values()], sounds: [...sounds.values()] };
  const named = { handlers: [...handlers.values()], places: [...places.values()], observations: [...observations.values()] };
  return { ...values, ...named, exams: [...exams.values()], learned: [...learned.values()], homework, settings, copies };
}

function bookOf(ordered: readonly LibraryEvent[]): HomeworkBook {
  return {
    given: ordered.flatMap(({ type, body }) => (type === 'homework-given' ? [body] : [])),
    received: ordered.flatMap(({ type, body }) => (type === 'homework-received' ? [body] : [])),
    returned: ordered.flatMap(({ type, body }) => (type === 'homework-returned' ? [body] : [])),
  };
}

/**
 * The one order in which events count: by the moment written, then device, then number. Two logs merged either way come out alike.
 * A device's events keep the order of their numbers: an event counts as no earlier than the one before it on its device,
 * so that a wall clock set back cannot bring an old save to the top.
 */
export function inOrder<E extends Pick<StoredEvent, 'at' | 'device' | 'seq'>>(events: readonly E[]): readonly E[] {
  const momentMs = moments(events);
  return events.toSorted(
    (a, b) => (momentMs.get(a) as number) - (momentMs.get(b) as number) || compareText(a.device, b.device) || a.seq - b.seq,
  );
}

/** Wall-clock moment of each event, ms, never falling along one device. */
function moments<E extends Pick<StoredEvent, 'at' | 'device' | 'seq'>>(events: readonly E[]): ReadonlyMap<E, number> {
  const latestMs = new Map<string, number>();
  const momentMs = new Map<E, number>();
  for (const event of events.toSorted((a, b) => a.seq - b.seq)) {
    const ms = Math.max(latestMs.get(event.device) ?? 0, Date.parse(event.at) || 0);
    latestMs.set(event.device, ms);
    momentMs.set(event, ms);
  }
  return momentMs;
}

// Not localeCompare: the order must not hang on the language of the device.
function compareText(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
