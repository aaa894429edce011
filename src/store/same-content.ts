/** Tells whether two records say the same, whoever made them: order of keys and absent-or-undefined do not matter. */

export function sameContent(a: unknown, b: unknown): boolean {
  // Both ways: NaN is itself, and a file cannot tell -0 from 0.
  if (Object.is(a, b) || a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || kindOf(a) !== kindOf(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => sameContent((a as Fields)[key], (b as Fields)[key]));
}

export interface Difference {
  /** From field to field. */
  readonly path: readonly string[];
  readonly a: unknown;
  readonly b: unknown;
}

/** Where two records begin to say something else; null: they say the same. */
export function firstDifference(a: unknown, b: unknown): Difference | null {
  if (sameContent(a, b)) return null;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return { path: [], a, b };
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const inside = firstDifference((a as Fields)[key], (b as Fields)[key]);
    if (inside) return { ...inside, path: [key, ...inside.path] };
  }
  return { path: [], a, b };
}

type Fields = Readonly<Record<string, unknown>>;

// By its tag, not by its class: records cross windows and workers.
function kindOf(value: object): string {
  return Object.prototype.toString.call(value);
}
