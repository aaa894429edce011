/** One handler's words as a file: their takes, their talk, what corrections taught, and their settings. Merged by id, nothing replaced. */
import type { Settings, StoredEvent } from '../core/event.ts';
import { t } from '../core/language.ts';
import { nameOf } from '../core/named.ts';
import { settingsOf } from '../core/settings.ts';
import { TALK } from '../core/word.ts';
import { exportText, parseExport, wordsHeadOf } from '../store/export.ts';
import { previewImport, sayConflict } from '../store/import.ts';
import { sayDamage } from '../store/problem.ts';
import { readAnew, type SavedFile, sayProblem } from './backup.ts';
import { fileName } from './file-name.ts';
import { isLive } from './live.ts';
import type { Rooms } from './rooms.ts';
import { saveSettings } from './sound-check.ts';
import { isoWithOffset } from './wall-clock.ts';

type TakeEvent = StoredEvent & { readonly type: 'sound-taught' | 'take-learned' };
/** A take of theirs, or the name they go by. */
type WordsEvent = TakeEvent | (StoredEvent & { readonly type: 'handler-saved' });

/** What a file of words holds, told before anything is kept. */
export interface WordsOffer {
  readonly name: string;
  readonly exportedAt: string;
  /** New takes, by word; talk under the name it is kept by. */
  readonly fresh: readonly { readonly word: string; readonly takes: number; readonly learned: number }[];
  readonly freshTakes: number;
  /** Here already; and of these the ones that were forgotten here, and stay so. */
  readonly known: number;
  readonly forgotten: number;
  /** Why each record that is refused is. */
  readonly refused: readonly string[];
  /** Takes under this name that are here and not in the file: it may be somebody else. */
  readonly others: number;
  /** All of the new takes or none; from then on the ear listens to this handler. */
  add(withSettings: boolean): Promise<{ readonly ok: true } | { readonly ok: false; readonly why: string }>;
}

export type LookedAtWords = { readonly ok: true; readonly offer: WordsOffer } | { readonly ok: false; readonly why: string };

/** Null: they cannot be read right now. */
export async function exportWords({ store, keeper, parts, writer }: Rooms): Promise<SavedFile | null> {
  const kept = await store.library();
  if (!kept.ok) return null;
  const { sounds, learned } = keeper.library();
  const settings = settingsOf(keeper.library());
  const standing = new Set([...sounds, ...learned].filter(({ handler }) => handler === settings.handler).map(({ id }) => id));
  const events = [...kept.value.events, ...writer.waiting()].filter(
    (event) => standing.has(event.id) || isNameOf(event, settings.handler),
  );
  const at = isoWithOffset(parts.wall.now());
  const name = nameOf(keeper.library().handlers, settings.handler);
  return {
    name: fileName(['words', name], at.slice(0, 10), 'json'),
    text: exportText({ events, damaged: [] }, at, { handler: settings.handler, settings }),
  };
}

export async function lookAtWords(rooms: Rooms, text: string): Promise<LookedAtWords> {
  const preview = await previewImport(rooms.store, text);
  if (!preview.ok) return { ok: false, why: sayProblem(preview.problem) };
  const head = wordsHeadOf(text);
  if (!head) return { ok: false, why: t('It holds no handler’s words. A copy of everything is added in the settings.') };
  const { exportedAt, fresh, known, refused, conflicts } = preview.value;
  const isOurs = (event: StoredEvent): event is WordsEvent =>
    isTake(event) ? event.body.handler === head.handler : isNameOf(event, head.handler);
  const ours = fresh.filter(isOurs);
  const takes = ours.filter(isTake);
  const names = [...ours].flatMap((event) => (event.type === 'handler-saved' ? event.body : []));
  const offer: WordsOffer = {
    name: names.at(-1)?.name ?? nameOf(rooms.keeper.library().handlers, head.handler),
    ...{ exportedAt, known, fresh: countsOf(takes), freshTakes: takes.length },
    ...standingOf(rooms, text, head.handler, new Set([...fresh, ...conflicts].map(({ id }) => id))),
    refused: [
      ...refused.map(sayDamage),
      ...conflicts.map(sayConflict),
      ...fresh
        .filter((event) => !isOurs(event))
        .map(({ id, type }) => t('event {id}: expected a take of {handler}, got {type}', { id, handler: head.handler, type })),
    ],
    add: (withSettings) => add(rooms, ours, { ...head, settings: withSettings ? head.settings : null }),
  };
  return { ok: true, offer };
}

/** How the takes that stand here under this name lie to those of the file. */
function standingOf(
  { keeper }: Rooms,
  text: string,
  handler: string,
  notHere: ReadonlySet<string>,
): Pick<WordsOffer, 'forgotten' | 'others'> {
  const parsed = parseExport(text);
  const inFile = (parsed.ok ? parsed.value.events : []).filter(isTake).filter(({ id }) => !notHere.has(id));
  const { sounds, learned } = keeper.library();
  const here = new Set([...sounds, ...learned].filter((take) => take.handler === handler).map(({ id }) => id));
  const both = inFile.filter(({ id }) => here.has(id)).length;
  return { forgotten: inFile.length - both, others: here.size - both };
}

const isNameOf = (event: StoredEvent, handler: string): event is StoredEvent & { readonly type: 'handler-saved' } =>
  event.type === 'handler-saved' && event.body.id === handler;
const isTake = (event: StoredEvent): event is TakeEvent => event.type === 'sound-taught' || event.type === 'take-learned';

function countsOf(takes: readonly TakeEvent[]): WordsOffer['fresh'] {
  const words = [...new Set(takes.map(({ body }) => body.word))].sort((a, b) => Number(a === TALK) - Number(b === TALK));
  const count = (word: string, type: TakeEvent['type']) =>
    takes.filter((take) => take.type === type && take.body.word === word).length;
  return words.map((word) => ({ word, takes: count(word, 'sound-taught'), learned: count(word, 'take-learned') }));
}

async function add(
  rooms: Rooms,
  events: readonly WordsEvent[],
  { handler, settings }: { handler: string; settings: Settings | null },
): ReturnType<WordsOffer['add']> {
  if (isLive(rooms.practice.state())) return { ok: false, why: t('A session is running: finish it first.') };
  const merged = await rooms.store.merge(events);
  if (!merged.ok) return { ok: false, why: sayProblem(merged.problem) };
  await readAnew(rooms);
  const { keys, mode, volume, speakCalls, echoCancellation } = settings ?? settingsOf(rooms.keeper.library());
  await saveSettings(rooms, {
    ...{ handler, keys, mode, volume, speakCalls },
    ...(echoCancellation !== undefined && { echoCancellation }),
  });
  return { ok: true };
}
