/** Lays the reps of a session out as rows for a spreadsheet. Its heads and numbers are the same in every language, so that sheets can be put together. */
import type { SessionState } from '../../core/fold.ts';
import { callsInOrder } from '../../core/placed-calls.ts';
import { criterionS } from '../../core/plan.ts';

const HEAD = [
  ...['rep', 'hold at, s', 'end at, s', 'held, s', 'criterion, s', 'step', 'outcome', 'why no trial', 'warm-up', 'called'],
  ...['dog', 'plan', 'place', 'with'],
] as const;

/** Hundredths: the ear is no finer. */
const rounded = (x: number): number => Math.round(100 * x) / 100;

export function sessionSheet(state: SessionState): {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
} {
  const calls = callsInOrder(state);
  const { dogName, planTitle, place, handler } = state.start;
  const rows = state.reps.map((rep) => [
    ...[rep.n, rounded(rep.holdAtS), rounded(rep.endAtS), rounded(rep.heldForS), rounded(criterionS(rep.step)), rep.step.title],
    ...[rep.outcome, rep.voidReason, rep.isWarmUp ? 'yes' : 'no'],
    calls.flatMap(({ afterRep, call }) => (afterRep === rep.n ? [call.kind] : [])).join(' '),
    ...[dogName, planTitle, place, handler],
  ]);
  return { head: HEAD, rows };
}
