/** Copies out and in: all, or one session. What comes in is looked at first, and nothing is replaced. */
import type { StoredEvent } from '../core/event.ts';
import { exportText } from '../store/export.ts';
import { type ImportPreview, previewImport } from '../store/import.ts';
import { type StoreProblem, sayDamage } from '../store/problem.ts';
import { isLive } from './live.ts';
import { showHeads } from './read-back.ts';
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

export async function exportAll({ store, use, parts, writer }: Rooms): Promise<SavedFile | null> {
  const all = await store.all();
  if (!all.ok) {
    use.setState({ writeProblem: all.problem });
    return null;
  }
  const at = isoWithOffset(parts.wall.now());
  return {
    name: `stillbeat-${at.slice(0, 10)}.json`,
    text: exportText({ ...all.value, events: [...all.value.events, ...writer.waiting()] }, at),
  };
}

/** One session with the dog and the plan it belongs to and what second observers made of it: enough for another device to review it. */
export async function exportSession({ store, use, parts }: Rooms, sessionId: string): Promise<SavedFile | null> {
  const all = await store.all();
  if (!all.ok) {
    use.setState({ writeProblem: all.problem });
    return null;
  }
  const { events } = all.value;
  const started = events.find((event) => event.session === sessionId && event.type === 'session-started');
  if (started?.type !== 'session-started') return null;
  const { dogId, planId } = started.body;
  const belongs = (event: StoredEvent) =>
    event.session === sessionId ||
    (event.type === 'observation-saved' && event.body.sessionId === sessionId) ||
    (event.type === 'dog-saved' && event.body.id === dogId) ||
    (event.type === 'plan-saved' && event.body.id === planId);
  const at = isoWithOffset(parts.wall.now());
  return {
    name: `stillbeat-session-${started.at.slice(0, 10)}.json`,
    text: exportText({ events: events.filter(belongs), damaged: [] }, at),
  };
}

export async function lookAtImport(rooms: Rooms, text: string): Promise<Looked> {
  const preview = await previewImport(rooms.store, text);
  if (!preview.ok) return { ok: false, why: sayProblem(preview.problem) };
  const { exportedAt, fresh, known, refused, conflicts } = preview.value;
  const offer: ImportOffer = {
    ...{ exportedAt, known, freshRecords: fresh.length, fresh: countsOf(fresh) },
    refused: [
      ...refused.map(sayDamage),
      ...conflicts.map(({ id }) => `event ${id}: it is here already with other content; both are left as they are`),
    ],
    add: () => add(rooms, preview.value),
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

async function add(rooms: Rooms, { fresh }: ImportPreview): Promise<ImportResult> {
  if (isLive(rooms.practice.state())) return { ok: false, why: 'A session is running: finish it first.' };
  const merged = await rooms.store.merge(fresh);
  if (!merged.ok) return { ok: false, why: sayProblem(merged.problem) };
  await readAnew(rooms);
  return { ok: true, added: merged.value.added };
}

/** What is kept has changed under the app: everything that is shown is read again. */
export async function readAnew(rooms: Rooms): Promise<void> {
  const { store, keeper, use, teaching } = rooms;
  const library = await store.library();
  if (library.ok) keeper.replace(library.value.events);
  use.setState({ library: keeper.library() });
  applySettings(rooms);
  await showHeads(rooms);
  await teaching.refresh();
}

/** Deletes a dog, its plans and its sessions from this device for good. Null, or why it could not. */
export async function eraseDog(rooms: Rooms, dogId: string): Promise<string | null> {
  if (isLive(rooms.practice.state())) return 'A session is running: finish it first.';
  const sessions = new Set(rooms.use.getState().heads.flatMap(({ id, started }) => (started.body.dogId === dogId ? [id] : [])));
  const erased = await rooms.store.erase(
    (event) =>
      (event.session !== null && sessions.has(event.session)) ||
      (event.type === 'observation-saved' && sessions.has(event.body?.sessionId)) ||
      (event.type === 'dog-saved' && event.body?.id === dogId) ||
      (event.type === 'plan-saved' && event.body?.dogId === dogId),
  );
  if (!erased.ok) return sayProblem(erased.problem);
  rooms.use.setState({ reviewed: null });
  await readAnew(rooms);
  return null;
}

/** Deletes everything this app keeps on this device, then begins anew. Null, or why it could not. */
export async function eraseEverything(rooms: Rooms): Promise<string | null> {
  if (isLive(rooms.practice.state())) return 'A session is running: finish it first.';
  const erased = await rooms.store.erase(() => true);
  if (!erased.ok) return sayProblem(erased.problem);
  rooms.parts.reload();
  return null;
}

export function sayProblem(problem: StoreProblem): string {
  switch (problem.kind) {
    case 'damaged':
      return problem.damaged.map(sayDamage).join('\n');
    case 'conflict':
      return `Event ${problem.id} is here already with other content; nothing was changed.`;
    default:
      return `It could not be saved (${problem.kind}); nothing was changed.`;
  }
}
