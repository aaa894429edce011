/** What can go wrong with what is kept, as values: nothing in this room throws for it, and each kind says what can be done. */
import { t } from '../core/language.ts';

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: StoreProblem };

/** A record that cannot be used as it stands. It stays where it is; it is told, never dropped and never mended in silence. */
export interface Damage {
  /** `session 3f2 › event 9ab:12 › body › startedAtS` */
  readonly path: string;
  /** The bound: `a finite number`. */
  readonly expected: string;
  /** The value, shortened: `NaN`. */
  readonly got: string;
  /** The record itself, for an export or a later, wiser version. */
  readonly record: unknown;
}

export type StoreProblem =
  /** No storage here (private window, switched off), or no answer in time: offer "this visit only". */
  | { readonly kind: 'unavailable'; readonly cause: string }
  /** Another tab of an older version holds the storage: close it. */
  | { readonly kind: 'blocked' }
  /** A newer version of the app has changed the records: reload the page. */
  | { readonly kind: 'outdated' }
  /** The device is full: nothing of this was written; make room and try again. */
  | { readonly kind: 'quota'; readonly cause: string }
  /** The connection broke, was opened again and broke again. Whether it was written is not known; the same events may be appended again. */
  | { readonly kind: 'severed'; readonly cause: string }
  /** Someone else wrote, or the storage was emptied: `writer()` tells the new turn. `merge` saves what is only in memory. */
  | { readonly kind: 'out-of-turn'; readonly device: string; readonly nextSeq: number; readonly got: string }
  /** An event with this id and other content is kept already; it is left as it is. */
  | { readonly kind: 'conflict'; readonly id: string; readonly kept: unknown; readonly offered: unknown }
  /** What was handed in cannot be used. Never empty. */
  | { readonly kind: 'damaged'; readonly damaged: readonly Damage[] }
  | { readonly kind: 'unknown'; readonly cause: string };

export function success<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function failure(problem: StoreProblem): { readonly ok: false; readonly problem: StoreProblem } {
  return { ok: false, problem };
}

/** `session 3f2 › event 9ab:12 › body › startedAtS: expected a finite number, got NaN` */
export function sayDamage({ path, expected, got }: Damage): string {
  return t('{path}: expected {expected}, got {got}', { path: sayPath(path), expected, got });
}

export const sayPath = (path: string): string => path.split(' › ').map(sayPlace).join(' › ');

/** Fields are called what they are called in the file; what stands around them is said. */
function sayPlace(place: string): string {
  const [, what, id = ''] = /^(session|event) (\S+)$/.exec(place) ?? [];
  if (what === 'session') return t('session {id}', { id });
  if (what === 'event') return t('event {id}', { id });
  if (place === 'event without an id') return t('event without an id');
  return place === 'file' ? t('file') : place;
}
