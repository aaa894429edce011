/** Hold curves as a trainer meets them: a mark is not an end, and what was not seen is not claimed. */
import { describe, expect, it } from 'vitest';
import { dropBand, type Hold, holdCurve, medianHold, survivalAt } from '../../../src/core/statistics/hold-time.ts';
import { logRank } from '../../../src/core/statistics/log-rank.ts';
import { PLACEBO, SIX_MP } from './freireich.ts';

const lifted = (...times: number[]): Hold[] => times.map((heldForS) => ({ heldForS, end: 'lifted' }));
const marked = (...times: number[]): Hold[] => times.map((heldForS) => ({ heldForS, end: 'marked' }));

describe('hold curve', () => {
  it('says nothing without holds', () => {
    expect(holdCurve([])).toEqual({ drops: [], holds: 0, longestS: null });
    expect(medianHold(holdCurve([]))).toEqual({ medianS: null, lowerS: null, upperS: null });
    expect(survivalAt(holdCurve([]), 1)).toBeNull();
  });
  it('never drops when every hold was marked, and then has no median', () => {
    const curve = holdCurve(marked(3, 3, 5));
    expect(curve.drops).toEqual([]);
    expect(medianHold(curve).medianS).toBeNull();
    expect(survivalAt(curve, 5)).toBe(1);
  });
  it('says nothing beyond the longest hold', () => {
    expect(survivalAt(holdCurve(SIX_MP), 36)).toBeNull();
    expect(survivalAt(holdCurve(SIX_MP), 35)).toBeCloseTo(0.448, 3);
    expect(survivalAt(holdCurve(PLACEBO), 99)).toBe(0);
  });
  it('counts a hold marked at the very moment of a lift as still at risk', () => {
    expect(holdCurve([...lifted(2), ...marked(2)]).drops[0]).toMatchObject({ atRisk: 2, lifts: 1, survival: 0.5 });
  });
  it('counts a median that meets one half exactly as reached', () => {
    expect(medianHold(holdCurve(lifted(1, 2, 3, 4))).medianS).toBe(2);
  });
  it('knows no error and no upper end once every head has lifted at once', () => {
    const curve = holdCurve(lifted(4, 4, 4));
    expect(curve.drops[0]).toMatchObject({ survival: 0, standardError: null });
    expect(dropBand(curve.drops[0] as never)).toBeNull();
    expect(medianHold(curve)).toEqual({ medianS: 4, lowerS: 4, upperS: null });
  });
  it('keeps its band between 0 and 1', () => {
    for (const drop of holdCurve(SIX_MP).drops) {
      const band = dropBand(drop);
      expect(band?.lower).toBeGreaterThanOrEqual(0);
      expect(band?.upper).toBeLessThanOrEqual(1);
    }
  });
  it('refuses a hold below 0 s by its number', () => {
    expect(() => holdCurve(lifted(-1))).toThrow('got -1');
    expect(() => holdCurve(lifted(Number.NaN))).toThrow('got NaN');
  });
});

describe('log-rank test', () => {
  it('finds nothing between two equal sets', () => {
    expect(logRank(SIX_MP, SIX_MP)).toMatchObject({ chiSquare: 0, p: 1 });
  });
  it('is the same whichever set comes first', () => {
    expect(logRank(PLACEBO, SIX_MP)?.chiSquare).toBeCloseTo(logRank(SIX_MP, PLACEBO)?.chiSquare ?? 0, 12);
  });
  it('has no answer when no head lifted or one set is empty', () => {
    expect(logRank(marked(1, 2), marked(3))).toBeNull();
    expect(logRank(lifted(1, 2), [])).toBeNull();
  });
});
