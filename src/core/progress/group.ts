/** Sorts things into heaps by a key, heaps in the order in which they began (`Map.groupBy`, which older browsers lack). */

export function groupBy<T, K>(things: readonly T[], keyOf: (thing: T) => K): ReadonlyMap<K, readonly T[]> {
  const heaps = new Map<K, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const heap = heaps.get(key);
    if (heap) heap.push(thing);
    else heaps.set(key, [thing]);
  }
  return heaps;
}
