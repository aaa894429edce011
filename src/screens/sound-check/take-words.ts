/** Words what the ear finds in takes: never blaming, always with what would help. */
import type { CaughtTake, Enrolled } from '../../session/app-state.ts';

type Forecast = Extract<Enrolled, { ok: true }>['forecast'][number];

export function sayReport(take: CaughtTake): string {
  return take.caught.cut ? 'That was long for a word: leave a pause after it.' : 'Kept. Again, the same way.';
}

export function sayForecast({ takes, expectedMissShare, expectedFalseShare }: Forecast): string {
  const misses = Math.round(20 * expectedMissShare);
  const wrong = Math.round(20 * expectedFalseShare);
  return `From ${takes} takes: about ${misses} of 20 may need saying again, about ${wrong} of 20 other words may be taken for it.`;
}
