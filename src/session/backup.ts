/** Copies out and in: all, or one session. What comes in is looked at first, and nothing is replaced. */
import { dogsThatCameBack } from '../core/desk/dogs.ts';
import { isSessionEvent, type SessionStart, type StoredEvent } from '../core/event.ts';
import { t } from '../core/language.ts';
import { EXPORT_VERSION, exportText } from '../store/export.ts';
import { previewImport, sayConflict } from '../store/import.ts';
import { type Damage, type StoreProblem, sayDamage } from '../store/problem.ts';
import type { Reading } from '../store/reading.ts';
import { fileName } from './file-name.ts';
import { showHeads } from './heads.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';
import { applySettings } from './sound-check.ts';
import { isoWithOffset } from './wall-clock.ts';

/** A file for the handler. */
export interface SavedFile {
  readonly name: string;
  readonly text: string;
}

/** What a file holds, told before anything is kept. */
export interface ImportOffer {
  readonly exportedAt: string;
  /** How many new ones of each kind, zeros left out. */
  readonly fresh: readonly { readonly what: 'dog' | 'plan' | 'session' | 'take' | 'other'; readonly count: number }[];
  readonly freshRecords: number;
  readonly known: number;
  /** Path, bound and value of each record that cannot be used, and each that is here with other content. */
  readonly refused: readonly string[];
  /** Adds the new records, all or none. */
  add(): Promise<ImportResult>;
}

export type ImportResult = { readonly ok: true; readonly added: number } | { readonly ok: false; readonly why: string };
export type Looked = { readonly ok: true; readonly offer: ImportOffer } | { readonly ok: false; readonly why: string };

export async function exportAll(rooms: Rooms): Promise<SavedFile | null> {
  const all = await everything(rooms);
  if (!all) return null;
  const at = isoWithOffset(rooms.parts.wall.now());
  return { name: fileName([], at.slice(0, 10), 'json'), text: exportText(all, at) };
}

/** What is kept and what waits to be: a copy is wanted most when the device is full. Null, and shown, when it cannot be read. */
async function everything({ store, use, writer }: Rooms): Promise<Reading<StoredEvent> | null> {
  const all = await store.all();
  if (all.ok) return { ...all.value, events: [...all.value.events, ...writer.waiting()] };
  use.setState({ writeProblem: all.problem });
  return null;
}

/**
 * One session with the dog, the plan, the handler and the place it names and what second observers made of it: enough for another device
 * to review it.
 */
export async function exportSession(rooms: Rooms, sessionId: string): Promise<SavedFile | null> {
  const all = await everything(rooms);
  const started = all?.events.find((event) => event.session === sessionId && event.type === 'session-started');
  if (started?.type !== 'session-started') return null;
  const at = isoWithOffset(rooms.parts.wall.now());
  return {
    name: fileName(['session'], started.at.slice(0, 10), 'json'),
    text: exportText({ events: (all?.events ?? []).filter(belongsTo(sessionId, started.body)), damaged: [] }, at),
  };
}

function belongsTo(sessionId: string, { dogId, planId, handler, place }: SessionStart): (event: StoredEvent) => boolean {
  const named: Partial<Record<StoredEvent['type'], string>> = {
    ...{ 'dog-saved': dogId, 'plan-saved': planId, 'handler-saved': handler, 'place-saved': place },
  };
  return (event) =>
    event.session === sessionId ||
    (event.type === 'observation-saved' && event.body.sessionId === sessionId) ||
    (named[event.type] !== undefined && (event.body as { id?: string }).id === named[event.type]);
}

/** A plan as it stands, with its dog as it stands. Null: it is not here, or cannot be read. */
export async function exportPlan(rooms: Rooms, planId: string): Promise<SavedFile | null> {
  const events = (await everything(rooms))?.events ?? [];
  const plan = events.findLast((event) => event.type === 'plan-saved' && event.body.id === planId);
  if (plan?.type !== 'plan-saved') return null;
  const dog = events.findLast((event) => event.type === 'dog-saved' && event.body.id === plan.body.dogId);
  const at = isoWithOffset(rooms.parts.wall.now());
  return {
    name: fileName(['plan', plan.body.title], at.slice(0, 10), 'json'),
    text: exportText({ events: dog ? [dog, plan] : [plan], damaged: [] }, at),
  };
}

/** @param isWanted whether a new record is to be added; all are, unless told otherwise. */
export async function lookAtImport(
  rooms: Rooms,
  text: string,
  isWanted: (event: StoredEvent) => boolean = () => true,
): Promise<Looked> {
  const preview = await previewImport(rooms.store, text);
  if (!preview.ok) return { ok: false, why: sayProblem(preview.problem) };
  const { exportedAt, known, refused, conflicts } = preview.value;
  const fresh = preview.value.fresh.filter(isWanted);
  const offer: ImportOffer = {
    ...{ exportedAt, known, freshRecords: fresh.length, fresh: countsOf(fresh) },
    refused: [...refused.map(sayDamage), ...conflicts.map(sayConflict)],
    add: () => add(rooms, fresh),
  };
  return { ok: true, offer };
}

const KINDS: Partial<Record<StoredEvent['type'], ImportOffer['fresh'][number]['what']>> = {
  'dog-saved': 'dog',
  'plan-saved': 'plan',
  'session-started': 'session',
  'sound-taught': 'take',
};

function countsOf(events: readonly StoredEvent[]): ImportOffer['fresh'] {
  const found = new Map<ImportOffer['fresh'][number]['what'], Set<string>>();
  for (const event of events) {
    const what = KINDS[event.type] ?? (event.session === null ? 'other' : null);
    if (!what) continue;
    // A dog saved three times is one dog.
    const name = event.type === 'dog-saved' || event.type === 'plan-saved' ? event.body.id : event.id;
    found.set(what, (found.get(what) ?? new Set()).add(name));
  }
  return [...found].map(([what, names]) => ({ what, count: names.size }));
}

async function add(rooms: Rooms, fresh: readonly StoredEvent[]): Promise<ImportResult> {
  if (isLive(rooms.practice.state())) return { ok: false, why: t('A session is running: finish it first.') };
  const merged = await rooms.store.merge(fresh);
  if (!merged.ok) return { ok: false, why: sayProblem(merged.problem) };
  await readAnew(rooms);
  return { ok: true, added: merged.value.added };
}

/** What is kept has changed under the app: everything that is shown is read again. */
export async function readAnew(rooms: Rooms): Promise<void> {
  const { store, keeper, use, teaching, writer } = rooms;
  const library = await store.library();
  // What waits to be written is part of the library too.
  if (library.ok) keeper.replace([...library.value.events, ...writer.waiting().filter((event) => !isSessionEvent(event))]);
  use.setState({ library: keeper.library() });
  applySettings(rooms);
  await showHeads(rooms);
  await teaching.refresh();
}

/** Deletes a dog, its plans and its sessions from this device for good. Null, or why it could not. */
export async function eraseDog(rooms: Rooms, dogId: string): Promise<string | null> {
  const hindrance = await hindranceToErase(rooms);
  if (hindrance) return hindrance;
  const all = await rooms.store.all();
  if (!all.ok) return sayProblem(all.problem);
  // From the records, not from the list: a session whose beginning is damaged is not in the list.
  const records = [...all.value.events, ...all.value.damaged.map(({ record }) => record)] as readonly Partial<StoredEvent>[];
  const ids = recordsOf(rooms, dogId);
  const ofDog = (record: Partial<StoredEvent>) => ids.has(String((record?.body as { dogId?: unknown } | undefined)?.dogId));
  const sessions = new Set(records.flatMap((record) => (record?.session && ofDog(record) ? [record.session] : [])));
  const erased = await rooms.store.erase(
    (event) =>
      (event.session !== null && sessions.has(event.session)) ||
      (event.type === 'observation-saved' && sessions.has(event.body?.sessionId)) ||
      (event.type === 'dog-saved' && ids.has(event.body?.id)) ||
      (OF_A_DOG.has(event.type) && ofDog(event)),
  );
  if (!erased.ok) return sayProblem(erased.problem);
  // What was typed for its homework goes with it.
  rooms.use.setState({ reviewed: null, homeworkDrafts: {} });
  await readAnew(rooms);
  return null;
}

const OF_A_DOG: ReadonlySet<string> = new Set<StoredEvent['type']>([
  ...(['plan-saved', 'exam-planned', 'homework-given', 'homework-received'] as const),
]);

/** The dog, and what came back of it with homework under another name. */
function recordsOf({ keeper }: Rooms, dogId: string): ReadonlySet<string> {
  const back = [...dogsThatCameBack(keeper.library())].flatMap(([id, of]) => (of === dogId ? [id] : []));
  return new Set([dogId, ...back]);
}

/** Deletes everything this app keeps on this device, then begins anew. Null, or why it could not. */
export async function eraseEverything(rooms: Rooms): Promise<string | null> {
  const hindrance = await hindranceToErase(rooms);
  if (hindrance) return hindrance;
  const erased = await rooms.store.erase(() => true);
  if (!erased.ok) return sayProblem(erased.problem);
  await rooms.store.keepSyncNotes(undefined);
  rooms.parts.reload();
  return null;
}

/** What waits to be written would be written after the deletion. */
async function hindranceToErase({ practice, writer }: Rooms): Promise<string | null> {
  if (isLive(practice.state())) return t('A session is running: finish it first.');
  return (await writer.tryAgain()) ? null : t('Some reps are not saved yet: make room on this device first.');
}

/** What a person can do about a file that is refused as a whole. */
function sayFile(damage: Damage | undefined): readonly string[] {
  if (damage?.path === 'file › version' && Number(damage.record) > EXPORT_VERSION)
    return [t('A newer Stillbeat made this file: load the newest version here, then add it again.')];
  if (damage?.path === 'file' && damage.expected === 'JSON')
    return [t('It is cut off, or it is no file of Stillbeat: save it again where it comes from.')];
  return [];
}

export function sayProblem(problem: StoreProblem): string {
  switch (problem.kind) {
    case 'damaged':
      return [...sayFile(problem.damaged[0]), ...problem.damaged.map(sayDamage)].join('\n');
    case 'conflict':
      return t('Event {id} is here already with other content; nothing was changed.', { id: problem.id });
    case 'severed':
      return t('This device did not answer in time: whether it was done is not known. Load the page again and look.');
    default:
      return t('It could not be saved ({kind}); nothing was changed.', { kind: problem.kind });
  }
}
