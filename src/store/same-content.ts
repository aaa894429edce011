/** Tells whether two records say the same, whoever made them: order of keys and absent-or-undefined do not matter. */

export function sameContent(a: unknown, b: unknown): boolean {
  // Both ways: NaN is itself, and a file cannot tell -0 from 0.
  if (Object.is(a, b) || a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || kindOf(a) !== kindOf(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => sameContent((a as Fields)[key], (b as Fields)[key]));
}

type Fields = Readonly<Record<string, unknown>>;

// By its tag, not by its class: records cross windows and workers.
function kindOf(value: object): string {
  return Object.prototype.toString.call(value);
}
