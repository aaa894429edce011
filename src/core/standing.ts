/** Tells which events of a log stand, which were taken back, and which came afterwards in the review. Knows nothing of what they do. */
import type { SessionEvent } from './event.ts';

/** Events whose effect stands: neither taken back nor caused by one that was. */
export function standingEvents(log: readonly SessionEvent[]): readonly SessionEvent[] {
  const undone = undoneIds(log);
  return log.filter((event) => !undone.has(event.id) && !(event.type === 'called' && undone.has(event.body.because)));
}

/** Later takes back earlier: an undo that is itself undone no longer counts. */
export function undoneIds(log: readonly SessionEvent[]): ReadonlySet<string> {
  const undone = new Set<string>();
  for (const event of log.toReversed()) if (event.type === 'undone' && !undone.has(event.id)) undone.add(event.body.of);
  return undone;
}

/** Corrections, and the undos and redos of corrections: what does not belong to the time of the session. */
export function writtenInReview(log: readonly SessionEvent[]): ReadonlySet<string> {
  const ids = new Set(log.flatMap(({ id, type }) => (type === 'corrected' ? [id] : [])));
  for (const event of log) if (event.type === 'undone' && ids.has(event.body.of)) ids.add(event.id);
  return ids;
}

/**
 * The session as it happened, then what was written afterwards, by the time on its stamp. Each device counts its events from a
 * number of its own: what a second one corrects would else stand before the session's first event.
 */
export function sessionOrder(log: readonly SessionEvent[]): readonly SessionEvent[] {
  const begun = log.find(({ type }) => type === 'session-started');
  if (!begun || log.every(({ device }) => device === begun.device)) return log;
  const review = writtenInReview(log.filter(({ device }) => device === begun.device));
  const isAfter = ({ id, device }: SessionEvent) => device !== begun.device || review.has(id);
  const after = log.filter(isAfter).toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return [...log.filter((event) => !isAfter(event)), ...after];
}
