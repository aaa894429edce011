/** Reads the reference values where they lie, beside the repository; a clone without them skips visibly. */
import { existsSync, readFileSync } from 'node:fs';

const FOLDER = new URL('../../../../shared/reference/', import.meta.url);

/** The parsed file, or null when this clone has no reference folder beside it. */
export function reference<T>(name: 'criterion.json' | 'values.json' | 'window_rules.json'): T | null {
  const file = new URL(name, FOLDER);
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as T) : null;
}

/** One entry of criterion.json. Numbers carry ten significant digits unless `second_way` is printed shorter. */
export interface Check {
  readonly value?: number | readonly number[];
  readonly second_way?: number | readonly number[];
  readonly values?: Readonly<Record<string, number | null>>;
  readonly published_M?: number;
  readonly greenwood_se?: number;
  readonly flag: string;
}

/** Half a unit of the tenth significant digit, which is the last that criterion.json prints (JSON drops closing zeros). */
export function halfTenthDigit(value: number): number {
  return value === 0 ? 1e-12 : 0.5000001 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 9);
}

/** Half a unit of the last of so many printed decimals. */
export function halfDecimal(decimals: number): number {
  return 0.5000001 * 10 ** -decimals;
}
