/** How many treats a dog may have in a day and in a session. An estimate from its weight; the bowl and the veterinarian know better. */
import type { Dog } from './event.ts';
import { INTACT_ADULT, NEUTERED_ADULT, restingEnergyKcal, treatBudgetKcal } from './statistics/treats.ts';

export interface TreatBudget {
  readonly restingKcal: number;
  readonly dailyKcal: number;
  /** A tenth of the daily energy. */
  readonly treatsKcal: number;
  /** Whole treats a day; null: what one of them holds is not known. */
  readonly treatsADay: number | null;
}

/** Null: the weight is not known. A dog of which it is not said counts as neutered: the smaller estimate. */
export function treatBudget({ weightKg, neutered, kcalPerTreat }: Dog): TreatBudget | null {
  if (weightKg === undefined) return null;
  const factor = neutered === false ? INTACT_ADULT : NEUTERED_ADULT;
  const treatsKcal = treatBudgetKcal(weightKg, factor);
  const restingKcal = restingEnergyKcal(weightKg);
  // From whole kcal, as they are shown: 63 kcal in treats of 3 are 21, whatever stands behind the point.
  const treatsADay = kcalPerTreat === undefined ? null : Math.floor(Math.round(treatsKcal) / kcalPerTreat);
  return { restingKcal, dailyKcal: factor * restingKcal, treatsKcal, treatsADay };
}

/** What is left of the day's treats; null: no budget is known. */
export function treatsLeftToday(dog: Dog, givenToday: number): number | null {
  const aDay = treatBudget(dog)?.treatsADay ?? null;
  return aDay === null ? null : Math.max(0, aDay - givenToday);
}

/** How many treats a session counts down from, and which of the bounds that is. */
export interface TreatBound {
  readonly treats: number;
  readonly by: 'day' | 'session' | 'at-hand';
}

/**
 * The least of what the day has left, what the handler wants to give in one session and what is at hand.
 * Null: none of these is known, and treats are not counted.
 */
export function treatBound(dog: Dog, atHand: number | null, givenToday: number): TreatBound | null {
  const bounds = [
    { by: 'day', treats: treatsLeftToday(dog, givenToday) },
    { by: 'session', treats: dog.treatsPerSession ?? null },
    { by: 'at-hand', treats: atHand },
  ] as const;
  const known = bounds.filter((bound): bound is typeof bound & TreatBound => bound.treats !== null);
  return known.toSorted((a, b) => a.treats - b.treats)[0] ?? null;
}

export function treatsForSession(dog: Dog, atHand: number | null, givenToday: number): number | null {
  return treatBound(dog, atHand, givenToday)?.treats ?? null;
}
