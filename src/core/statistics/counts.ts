/** Refuses counts that no session can yield, so that a broken caller is seen at once and not drawn. */

/** @throws RangeError unless 0 <= k <= n, n >= 1, both whole numbers. */
export function requireCounts(k: number, n: number): void {
  if (!(Number.isInteger(k) && Number.isInteger(n) && n >= 1 && k >= 0 && k <= n))
    throw new RangeError(`expected k of n with 0 <= k <= n and n >= 1, whole numbers, got ${k} of ${n}`);
}

/** @throws RangeError unless `count` is a whole number of at least 0. */
export function requireCount(count: number): void {
  if (!(Number.isInteger(count) && count >= 0)) throw new RangeError(`expected a count of at least 0, got ${count}`);
}

/** @throws RangeError unless every number is finite. */
export function requireFinite(numbers: readonly number[]): void {
  const bad = numbers.find((x) => !Number.isFinite(x));
  if (bad !== undefined) throw new RangeError(`expected finite numbers, got ${bad}`);
}

/** @throws RangeError unless both lists have one length. */
export function requirePaired(a: readonly unknown[], b: readonly unknown[]): void {
  if (a.length !== b.length) throw new RangeError(`expected two lists of one length, got ${a.length} and ${b.length}`);
}
