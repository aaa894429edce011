/** Estimates how much of a dog's day its treats may be. Estimates: dogs of one weight vary up to threefold. */

/** Energy at rest, kcal a day: 70 · kg^.75 (Kleiber 1961; WSAVA). @throws RangeError unless kg > 0. */
export function restingEnergyKcal(kg: number): number {
  if (!(kg > 0 && Number.isFinite(kg))) throw new RangeError(`expected a weight above 0 kg, got ${kg}`);
  return 70 * kg ** 0.75;
}

/** Daily need of a neutered adult over its energy at rest; others print 1.2 to 1.6. */
export const NEUTERED_ADULT = 1.6;

/** The same of an adult that is not neutered (M: the feeding guides print 1.8). */
export const INTACT_ADULT = 1.8;

/** Treats are at most a tenth of the daily energy (WSAVA, AAHA). */
export const TREATS_SHARE = 0.1;

/** Treats a day, kcal. @param factor daily need over resting energy. @throws RangeError unless kg > 0 and factor > 0. */
export function treatBudgetKcal(kg: number, factor: number = NEUTERED_ADULT): number {
  if (!(factor > 0 && Number.isFinite(factor))) throw new RangeError(`expected a factor above 0, got ${factor}`);
  return TREATS_SHARE * factor * restingEnergyKcal(kg);
}
