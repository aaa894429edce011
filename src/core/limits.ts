/** When a session has been long enough. */

/** When to stop while ahead. */
export interface Limits {
  readonly reps: number;
  readonly minutes: number;
  /** null: treats are not counted. */
  readonly treats: number | null;
}

/** CRITERION.md: rest at 20 reps or 5 minutes (common practice, no source). */
export const USUAL_LIMITS: Limits = { reps: 20, minutes: 5, treats: null };
