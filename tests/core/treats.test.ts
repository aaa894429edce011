/** How many treats: the published example, and the least of hand, wish and day. */
import { describe, expect, test } from 'vitest';
import { DEMO_DOG } from '../../demo/scenario.ts';
import { treatBound, treatBudget, treatsForSession, treatsLeftToday } from '../../src/core/treats.ts';

const tenKg = { ...DEMO_DOG, weightKg: 10, neutered: true };

describe('the budget of a day', () => {
  test('a neutered dog of 10 kg: 394 kcal at rest, 630 a day, 63 in treats (R2, C)', () => {
    const budget = treatBudget(tenKg);
    expect(Math.round(budget?.restingKcal ?? 0)).toBe(394);
    expect(Math.round(budget?.dailyKcal ?? 0)).toBe(630);
    expect(Math.round(budget?.treatsKcal ?? 0)).toBe(63);
  });

  test('treats of 3 kcal: 21 whole ones a day (C: 63 / 3), and never a part of one', () => {
    expect(treatBudget({ ...tenKg, kcalPerTreat: 3 })?.treatsADay).toBe(21);
    expect(treatBudget({ ...tenKg, kcalPerTreat: 3.01 })?.treatsADay).toBe(20);
  });

  test('a dog that is not neutered may have an eighth more (M: 1.8 against 1.6)', () => {
    const ratio = (treatBudget({ ...tenKg, neutered: false })?.dailyKcal ?? 0) / (treatBudget(tenKg)?.dailyKcal ?? 1);
    expect(ratio).toBeCloseTo(1.125, 12);
  });

  test('where it is not said, the smaller estimate stands', () => {
    expect(treatBudget({ ...DEMO_DOG, weightKg: 10 })).toEqual(treatBudget(tenKg));
  });

  test('without a weight there is no estimate, and without a kcal no number of treats', () => {
    expect(treatBudget(DEMO_DOG)).toBeNull();
    expect(treatBudget(tenKg)?.treatsADay).toBeNull();
    expect(treatsLeftToday(tenKg, 3)).toBeNull();
  });
});

describe('the treats of a session', () => {
  const dog = { ...tenKg, kcalPerTreat: 3, treatsPerSession: 12 };

  test.each([
    ['what is wished, on a fresh day with a full pouch', dog, 50, 0, 12],
    ['what is at hand', dog, 8, 0, 8],
    ['what the day has left after 16 of 21', dog, 50, 16, 5],
    ['none, when the day has had more than its share', dog, 50, 23, 0],
    ['at hand alone, of a dog nothing is known of', DEMO_DOG, 8, 40, 8],
  ])('%s', (_, of, atHand, given, left) => {
    expect(treatsForSession(of, atHand, given)).toBe(left);
  });

  test('name the bound that wins, and the day first where two are equal', () => {
    expect(treatBound(dog, 50, 0)?.by).toBe('session');
    expect(treatBound(dog, 8, 0)?.by).toBe('at-hand');
    expect(treatBound(dog, 50, 16)?.by).toBe('day');
    expect(treatBound(dog, 12, 9)?.by).toBe('day');
  });

  test('are not counted where nothing bounds them', () => {
    expect(treatsForSession(DEMO_DOG, null, 40)).toBeNull();
  });
});
