/** Every call of a session that stands, with its place among the reps. */
import type { Call } from './call.ts';
import type { SessionState } from './fold.ts';
import { standingEvents } from './standing.ts';

/** A call and its place: after which rep (0: before the first). Holds what the handler overruled, too. */
export interface PlacedCall {
  readonly call: Call;
  readonly afterRep: number;
}

/** Every call that stands, in the order made. */
export function callsInOrder(state: SessionState): readonly PlacedCall[] {
  const endedAt = new Map(state.reps.map((rep) => [rep.endedBy, rep.n]));
  const placed: PlacedCall[] = [];
  let afterRep = 0;
  for (const event of standingEvents(state.log)) {
    afterRep = endedAt.get(event.id) ?? afterRep;
    if (event.type !== 'called') continue;
    const { because: _because, ...call } = event.body;
    placed.push({ call, afterRep });
  }
  return placed;
}

/** Moved by the handler's word, not by the rule. */
export function isOverruled(call: Call): boolean {
  return call.reasons.some(({ kind }) => kind === 'handler-says');
}
