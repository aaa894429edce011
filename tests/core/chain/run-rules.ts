/** Control-chart run rules on the exact chain: more than two outcomes a step, the general form of `absorb`. */
import { absorb, type Edge } from '../../../src/core/chain/absorb.ts';
import { chiSquareTail } from '../../../src/core/statistics/chi-square.ts';

/** Rules of Champ & Woodall (1987) besides C1, one point beyond three sigma. */
export type RunRule = '2of3' | '4of5' | '8run';

/** Signed zone of a point: 1 within one sigma, ... 4 beyond three; the sign is the side. */
type Zone = -4 | -3 | -2 | -1 | 1 | 2 | 3 | 4;

/** Chance of a standard normal beyond x on one side. */
const beyond = (x: number) => chiSquareTail(x * x) / 2;

const ZONES = ([1, 2, 3, 4] as const).flatMap((zone): { zone: Zone; chance: number }[] => {
  const chance = beyond(zone - 1) - (zone === 4 ? 0 : beyond(zone));
  return [
    { zone, chance },
    { zone: -zone as Zone, chance },
  ];
});

/** Does the latest point, with those before it, signal? `zones` are the last eight, oldest first. */
function signals(zones: readonly Zone[], rules: readonly RunRule[]): boolean {
  const beyondIn = (side: number, least: number, of: number) => zones.slice(-of).filter((zone) => zone * side >= least).length;
  return [1, -1].some(
    (side) =>
      beyondIn(side, 4, 1) >= 1 ||
      (rules.includes('2of3') && beyondIn(side, 3, 3) >= 2) ||
      (rules.includes('4of5') && beyondIn(side, 2, 5) >= 4) ||
      (rules.includes('8run') && beyondIn(side, 1, 8) >= 8),
  );
}

/** What the rules can still see of the past: the side run, who was beyond one sigma in the last four, beyond two in the last two. */
function keyOf(zones: readonly Zone[], rules: readonly RunRule[]): string {
  const side = Math.sign(zones.at(-1) ?? 0);
  const run = zones.length - 1 - zones.findLastIndex((zone) => Math.sign(zone) !== side);
  const marks = (of: number, least: number) =>
    zones
      .slice(-of)
      .map((zone) => (Math.abs(zone) >= least ? Math.sign(zone) : 0))
      .join();
  return [
    rules.includes('8run') ? `${side}*${run}` : '',
    rules.includes('4of5') ? marks(4, 2) : '',
    rules.includes('2of3') ? marks(2, 3) : '',
  ].join('|');
}

/** Mean points until a signal when nothing is wrong. */
export function meanRunLength(rules: readonly RunRule[]): number {
  const numbers = new Map([[keyOf([], rules), 0]]);
  const states: Zone[][] = [[]];
  const rows: Edge[][] = [];
  const numberOf = (zones: Zone[]) => {
    const key = keyOf(zones, rules);
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, states.length);
    return states.push(zones) - 1;
  };
  for (const state of states)
    rows.push(
      ZONES.map(({ zone, chance }) => {
        const zones = [...state, zone].slice(-8);
        return { to: signals(zones, rules) ? -1 : numberOf(zones), chance };
      }),
    );
  return absorb(rows, 1).steps[0] as number;
}
