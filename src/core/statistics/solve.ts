/** Finds where a rising function passes a value, by halving: slow, sure, the same everywhere. */

/** The x between `from` and `to` where the rising f passes `value`, to the last bit or nearly. */
export function solveRising(f: (x: number) => number, value: number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (f(middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
