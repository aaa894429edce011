/** Computes the incomplete beta integral and its inverse, which exact intervals for shares rest on. */
import { logGamma } from './gamma.ts';
import { solveRising } from './solve.ts';

/** log of the beta function B(a, b), a, b > 0. */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/** Regularised incomplete beta I_x(a, b), a, b > 0: the chance that a Beta(a, b) variable is at most x. */
export function betaBelow(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // The fraction settles fast only left of the mean; right of it the mirror image does.
  return x < (a + 1) / (a + b + 2) ? betaFraction(x, a, b) : 1 - betaFraction(1 - x, b, a);
}

/** The x with I_x(a, b) = share, 0 <= share <= 1, to about 1e-15. */
export function betaQuantile(share: number, a: number, b: number): number {
  return solveRising((x) => betaBelow(x, a, b), share, 0, 1);
}

const MOST_STEPS = 10_000;

/** Abramowitz & Stegun 26.5.8 by Lentz's method. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  const turn = (top: number) => {
    d = 1 / (1 + top * d);
    c = 1 + top / c;
    fraction *= c * d;
  };
  for (let m = 1; m < MOST_STEPS; m++) {
    turn((m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)));
    turn((-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)));
    if (Math.abs(c * d - 1) < 4 * Number.EPSILON) break;
  }
  return (fraction * Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b))) / a;
}
