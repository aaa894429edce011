/** The little of jstat that the tests ask as an oracle; it ships no types. */
declare module 'jstat' {
  interface Distribution<P extends unknown[]> {
    cdf(x: number, ...parameters: P): number;
    inv(share: number, ...parameters: P): number;
  }
  export const jStat: {
    readonly normal: Distribution<[mean: number, deviation: number]>;
    readonly beta: Distribution<[a: number, b: number]>;
    readonly chisquare: Distribution<[degrees: number]>;
    readonly poisson: { cdf(k: number, mean: number): number };
    readonly hypgeom: { pdf(k: number, all: number, marked: number, drawn: number): number };
    readonly gammaln: (x: number) => number;
  };
}
