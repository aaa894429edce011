/** Counts lifts by body area, to ask in time whether something hurts, and says how often it would ask for nothing. */
import type { Share } from '../units.ts';
import { absorb, type Edge } from './absorb.ts';

/** Whether the step of a trial had been passed before: a lift on what was easy weighs double. */
export type StepAge = 'passed' | 'new';

/** At this score: leave the area and look (CRITERION, confirmed). */
export const ALARM_LOOK = 5;
/** At this score: ask a veterinarian (CRITERION, confirmed). It also fires for 19 % of healthy dogs over a ladder, so it asks. */
export const ALARM_ASK = 7;

/** The area's score after one more trial: lift +2 on a passed step, +1 on a new one, kept -1, never below 0. */
export function alarmScore(score: number, kept: boolean, age: StepAge): number {
  if (kept) return Math.max(0, score - 1);
  return score + (age === 'passed' ? 2 : 1);
}

/**
 * Mean trials from score 0 until the score reaches `threshold`, all trials on steps of one age, exact.
 * @throws RangeError unless `threshold` is a whole number of at least 1 and 0 < liftShare <= 1.
 */
export function meanTrialsToAlarm(threshold: number, age: StepAge, liftShare: Share): number {
  if (!Number.isInteger(threshold) || threshold < 1) throw new RangeError(`expected a threshold of at least 1, got ${threshold}`);
  if (!(liftShare > 0 && liftShare <= 1)) throw new RangeError(`expected a share of lifts above 0, got ${liftShare}`);
  const to = (score: number) => (score >= threshold ? -1 : score);
  const rows = Array.from({ length: threshold }, (_, score): Edge[] => [
    { to: to(alarmScore(score, true, age)), chance: 1 - liftShare },
    { to: to(alarmScore(score, false, age)), chance: liftShare },
  ]);
  return absorb(rows, 1).steps[0] as number;
}
