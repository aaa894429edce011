/** Wald's sequential test with real-valued bounds, for checking published designs; the app's own rule uses whole numbers. */

export interface Design {
  readonly p0: number;
  readonly p1: number;
  readonly a: number;
  readonly b: number;
}

/** Decide for p1 when events >= h2 + s n, for p0 when events <= -h1 + s n (Wald 1947). */
export function bounds({ p0, p1, a, b }: Design): { h1: number; h2: number; s: number } {
  const g = Math.log((p1 * (1 - p0)) / (p0 * (1 - p1)));
  return { h1: Math.log((1 - a) / b) / g, h2: Math.log((1 - b) / a) / g, s: Math.log((1 - p0) / (1 - p1)) / g };
}

/** Wald's approximation of the mean number of trials at p0 and at p1; it ignores the overshoot. */
export function approximateMeans({ p0, p1, a, b }: Design): { at0: number; at1: number } {
  const step = (p: number) => p * Math.log(p1 / p0) + (1 - p) * Math.log((1 - p1) / (1 - p0));
  const [low, high] = [Math.log(b / (1 - a)), Math.log((1 - b) / a)];
  return { at0: ((1 - a) * low + a * high) / step(p0), at1: (b * low + (1 - b) * high) / step(p1) };
}

/** Exact mean number of trials at p: the undecided chance summed over n, each (n, events) being one state. */
export function exactMean(design: Design, p: number): number {
  const { h1, h2, s } = bounds(design);
  let here = new Map([[0, 1]]);
  let mean = 0;
  for (let n = 1; here.size > 0; n++) {
    const next = new Map<number, number>();
    for (const [events, chance] of here) {
      mean += chance;
      for (const [to, more] of [
        [events, chance * (1 - p)],
        [events + 1, chance * p],
      ] as const)
        if (more > 1e-20 && to < h2 + s * n && to > s * n - h1) next.set(to, (next.get(to) ?? 0) + more);
    }
    here = next;
  }
  return mean;
}
