/** Looks at a file before anything of it is kept: what is new, what is here already, what is refused and why. */
import type { StoredEvent } from '../core/event.ts';
import { type Message, t } from '../core/language.ts';
import type { EventStore } from './event-store.ts';
import { parseExport } from './export.ts';
import { type Damage, failure, type Result, sayPath, success } from './problem.ts';
import { shorten } from './record-check.ts';
import { firstDifference } from './same-content.ts';

/** An event that is here already with other content. It is shown; neither of the two is changed. */
export interface Conflict {
  readonly id: string;
  readonly kept: unknown;
  readonly offered: StoredEvent;
}

/** `event phone:12 › body › word: it is here already with other content, "hold"; in the file "mark". Both are left as they are` */
export function sayConflict({ id, kept, offered }: Conflict): string {
  const { path, a, b } = firstDifference(kept, offered) ?? { path: [], a: kept, b: offered };
  return t('{where}: it is here already with other content, {kept}; in the file {offered}. Both are left as they are', {
    ...{ where: sayPath([`event ${id}`, ...path].join(' › ')), kept: shorten(a), offered: shorten(b) },
  });
}

export interface ImportPreview {
  readonly exportedAt: string;
  /** In the order in which they count. */
  readonly fresh: readonly StoredEvent[];
  readonly known: number;
  readonly refused: readonly Damage[];
  readonly conflicts: readonly Conflict[];
}

/**
 * Bounds of a file, far above any real one: twenty years of two sessions a day are some 900,000 events. `characters` keeps the page from
 * running out of memory, `depth` (ours needs 7) the checks from running out of stack.
 */
export const IMPORT_LIMITS = { characters: 300_000_000, events: 1_000_000, depth: 32 } as const;

/** Reads and sorts out a file; writes nothing. Fails when the file as a whole is of no use. */
export async function previewImport(store: Pick<EventStore, 'compare'>, text: string): Promise<Result<ImportPreview>> {
  const tooMuch = beyondLimits(text);
  if (tooMuch) return failure({ kind: 'damaged', damaged: [tooMuch] });
  const parsed = parseExport(text);
  if (!parsed.ok) return parsed;
  const { exportedAt, events, damaged } = parsed.value;
  if (events.length + damaged.length > IMPORT_LIMITS.events)
    return failure({ kind: 'damaged', damaged: [beyond('file › events', 'events', events.length + damaged.length)] });
  const compared = await store.compare(events);
  return compared.ok ? success({ exportedAt, refused: damaged, ...compared.value }) : compared;
}

function beyondLimits(text: string): Damage | null {
  if (text.length > IMPORT_LIMITS.characters) return beyond('file', 'characters', text.length);
  return isTooDeep(text) ? beyond('file', 'depth', t('more#than that')) : null;
}

const AT_MOST = {
  characters: 'at most {n} characters',
  events: 'at most {n} events',
  depth: 'at most {n} depth',
} as const satisfies Readonly<Record<keyof typeof IMPORT_LIMITS, Message>>;

function beyond(path: string, what: keyof typeof IMPORT_LIMITS, got: unknown): Damage {
  return { path, expected: t(AT_MOST[what], { n: String(IMPORT_LIMITS[what]) }), got: shorten(got), record: null };
}

/** Counts brackets outside of text, before the parser does. */
export function isTooDeep(text: string): boolean {
  let depth = 0;
  let inText = false;
  for (let at = 0; at < text.length; at++) {
    const char = text[at];
    if (inText) {
      if (char === '\\') at++;
      else if (char === '"') inText = false;
    } else if (char === '"') inText = true;
    else if (char === '{' || char === '[') depth++;
    else if (char === '}' || char === ']') depth--;
    if (depth > IMPORT_LIMITS.depth) return true;
  }
  return false;
}
