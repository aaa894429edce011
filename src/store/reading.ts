/** Parts what was read into good events and damage. */
import type { StoredEvent } from '../core/event.ts';
import { inOrder } from '../core/library.ts';
import type { Damage } from './problem.ts';
import { checkEvent } from './record-check.ts';

/**
 * What was read. One damaged record costs neither the others nor itself: the good events stand in `events`,
 * in the order in which they count, and every other record of the same reading is told in `damaged`.
 */
export interface Reading<E extends StoredEvent> {
  readonly events: readonly E[];
  readonly damaged: readonly Damage[];
}

/** Parts records into good events, in order, and damage. */
export function sortOut(records: readonly unknown[]): Reading<StoredEvent> {
  const checked = records.map((record) => checkEvent(record));
  return {
    events: inOrder(checked.flatMap((one) => (one.ok ? [one.event] : []))),
    damaged: checked.flatMap((one) => (one.ok ? [] : [one.damage])),
  };
}
