/** Two observers of one session: the published example, what counts as a difference, and lining up. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { open, sessionStart, type } from '../../../demo/typed-session.ts';
import { alignmentAt, bestAlignment, byFirstHold } from '../../../src/core/observe/align.ts';
import { compareObservers, countsIn, INTERVAL_S, sharedSpan, WINDOW_S } from '../../../src/core/observe/compare.ts';
import { type Observed, sessionWords, shifted } from '../../../src/core/observe/observation.ts';

const SEED = 20261125;

/** [interval]: so many marks in it, spread inside of it. */
function marksIn(counts: readonly number[]): readonly Observed[] {
  return counts.flatMap((count, nth) =>
    Array.from({ length: count }, (_, i) => ({ word: 'mark' as const, atS: nth * INTERVAL_S + 1 + 1.5 * i })),
  );
}

const said = (line: string): readonly Observed[] =>
  line.split(' ').map((each) => {
    const [letter = '', at = ''] = [each[0], each.slice(1)];
    const words = { h: 'hold', m: 'mark', l: 'lifted', v: 'void' } as const;
    return { word: words[letter as keyof typeof words], atS: Number(at) };
  });

const session = said('h2 m4 h8 l9 h14 m17 h22 m26 v31');
const span = { fromS: 0, toS: 40 };

describe('the measures', () => {
  test('the published example: all in total, 70 % mean, 66.7 % exact, 73.3 % interval by interval (R2: Reed & Azulay 2011, BAP)', () => {
    const first = marksIn([1, 1, 1, 2, ...Array<number>(11).fill(0)]);
    const second = marksIn([0, 0, 0, 1, ...Array<number>(10).fill(0), 4]);
    const [mark] = compareObservers(first, second, { fromS: 0, toS: 15 * INTERVAL_S }).byWord;
    expect(mark).toMatchObject({ word: 'mark', firstCount: 5, secondCount: 5, intervals: 15, total: 1 });
    expect(mark?.meanPerInterval).toBeCloseTo(0.7, 12);
    expect(mark?.exactPerInterval).toBeCloseTo(10 / 15, 12);
    expect(mark?.intervalByInterval).toBeCloseTo(11 / 15, 12);
  });

  test('an observer agrees fully with themselves', () => {
    const { all, outcomes, disagreements } = compareObservers(session, session, span);
    expect(all).toMatchObject({ total: 1, meanPerInterval: 1, exactPerInterval: 1, intervalByInterval: 1 });
    expect(all?.window).toMatchObject({ agreed: 9, share: 1 });
    expect(outcomes.kappa?.kappa).toBe(1);
    expect(disagreements).toEqual([]);
  });

  test('a mark that the other saw as a lift is one disagreement, not two, and no agreement in any measure', () => {
    const other = said('h2 m4 h8 l9 h14 l17.4 h22 m26 v31');
    const { disagreements, outcomes, all } = compareObservers(session, other, span);
    expect(disagreements).toEqual([{ kind: 'other-word', word: 'mark', second: 'lifted', atS: 17 }]);
    // By hand, on five reps: marked-marked 2, lifted-lifted 1, no trial 1, marked-lifted 1.
    expect(outcomes.table).toEqual([
      [2, 1, 0],
      [0, 1, 0],
      [0, 0, 1],
    ]);
    // Observed 4/5; by chance (3·2 + 1·2 + 1·1) / 25 = 9/25; kappa = (20/25 - 9/25) / (16/25) = 11/16 (C).
    expect(outcomes.kappa?.kappa).toBeCloseTo(11 / 16, 12);
    expect(all?.window).toMatchObject({ agreed: 8, onlyFirst: 1, onlySecond: 1 });
  });

  test('a word seen a second late is the same word; a little later it is missed by one and seen alone by the other', () => {
    const late = (byS: number) => session.map((each) => (each.atS === 9 ? { ...each, atS: 9 + byS } : each));
    expect(compareObservers(session, late(1), span).disagreements).toEqual([]);
    expect(compareObservers(session, late(1.01), span).disagreements).toEqual([
      { kind: 'only-first', word: 'lifted', atS: 9 },
      { kind: 'only-second', word: 'lifted', atS: 10.01 },
    ]);
  });

  test('what the recording does not show is not held against anybody', () => {
    const part = { fromS: 12, toS: 40 };
    const seen = session.filter(({ atS }) => atS >= 12);
    const { outside, disagreements, all } = compareObservers(session, seen, part);
    expect({ outside, disagreements }).toEqual({ outside: 4, disagreements: [] });
    expect(all?.total).toBe(1);
  });

  test('a rep that only one saw is told apart from the kappa, which knows reps of both alone', () => {
    const { outcomes } = compareObservers(session, said('h2 m4 h8 l9 h22 m26 v31'), span);
    expect(outcomes).toMatchObject({ onlyFirst: 1, onlySecond: 0 });
    expect(outcomes.table.flat().reduce((sum, n) => sum + n, 0)).toBe(4);
  });

  test('nothing scored by either is nothing to compare', () => {
    expect(compareObservers([], [], span)).toMatchObject({ all: null, byWord: [], outcomes: { kappa: null }, disagreements: [] });
  });

  test('the last second of the session counts in the last interval', () => {
    expect(countsIn([0, 9.99, 10, 40], span)).toEqual([2, 1, 0, 1]);
    expect(countsIn([41.5], { fromS: 0, toS: 41.5 })).toEqual([0, 0, 0, 0, 1]);
  });

  test('what both have seen is the recording where it covers the session', () => {
    expect(sharedSpan(100, 60, -5)).toEqual({ fromS: 0, toS: 55 });
    expect(sharedSpan(100, 200, 20)).toEqual({ fromS: 20, toS: 100 });
    expect(sharedSpan(100, 60, 120)).toBeNull();
  });
});

const anyWords = fc
  .array(
    fc.record({ word: fc.constantFrom('hold', 'mark', 'lifted', 'void'), atS: fc.double({ min: 0, max: 300, noNaN: true }) }),
    {
      maxLength: 60,
    },
  )
  .map((words) => (words as Observed[]).toSorted((a, b) => a.atS - b.atS));

describe('whatever two observers score', () => {
  const whole = { fromS: 0, toS: 300 };

  test('every word is agreed on or stands in the list of disagreements, none is lost or doubled', () => {
    fc.assert(
      fc.property(anyWords, anyWords, (first, second) => {
        const { all, disagreements } = compareObservers(first, second, whole);
        const agreed = all?.window.agreed ?? 0;
        const weight = disagreements.reduce((sum, { kind }) => sum + (kind === 'other-word' ? 2 : 1), 0);
        expect(2 * agreed + weight).toBe(first.length + second.length);
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  test('it does not matter who is called the first', () => {
    fc.assert(
      fc.property(anyWords, anyWords, (first, second) => {
        const [a, b] = [compareObservers(first, second, whole), compareObservers(second, first, whole)];
        expect(b.all && { ...b.all, window: b.all.window.agreed }).toEqual(
          a.all && { ...a.all, firstCount: a.all.secondCount, secondCount: a.all.firstCount, window: a.all.window.agreed },
        );
        expect(b.disagreements.length).toBe(a.disagreements.length);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe('lining up', () => {
  test('a recording that began 3.7 s before the session is found, by the first hold and by the best fit', () => {
    const recorded = shifted(session, 3.7);
    expect(byFirstHold(session, recorded)).toBeCloseTo(-3.7, 12);
    expect(bestAlignment(session, recorded, WINDOW_S)).toMatchObject({ met: 9, first: 9, second: 9 });
    expect(bestAlignment(session, recorded, WINDOW_S)?.offsetS).toBeCloseTo(-3.7, 6);
  });

  test('where the first hold was missed, the first hold leads astray and the best fit does not', () => {
    const recorded = shifted(session.slice(1), 3.7);
    expect(byFirstHold(session, recorded)).not.toBeCloseTo(-3.7, 1);
    expect(bestAlignment(session, recorded, WINDOW_S)?.offsetS).toBeCloseTo(-3.7, 6);
  });

  test('an observer who is always 0.4 s late is not late after lining up', () => {
    const best = bestAlignment(session, shifted(session, 0.4), WINDOW_S);
    expect(best?.offsetS).toBeCloseTo(-0.4, 6);
  });

  test('without a word in common there is nothing to line up', () => {
    expect(bestAlignment(said('h2'), said('m2'), WINDOW_S)).toBeNull();
    expect(byFirstHold(said('m2'), session)).toBeNull();
    expect(alignmentAt(session, [], 0, WINDOW_S)).toMatchObject({ met: 0, first: 9, second: 0 });
  });

  test('a real ladder with jitter, misses and slips is lined up to within a fifth of a second', () => {
    const typed = sessionWords(type(open(sessionStart(DEMO_PLAN)), 'kkklkskkvkkklkkknkkklkkk').state);
    fc.assert(
      fc.property(
        fc.double({ min: -120, max: 120, noNaN: true }),
        fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: typed.length, maxLength: typed.length }),
        fc.set(fc.nat({ max: typed.length - 1 }), { maxLength: 6 }),
        (byS, jitter, missed) => {
          const other = typed.map(({ word, atS }, i) => ({ word, atS: atS + byS + (jitter[i] ?? 0) }));
          const best = bestAlignment(
            typed,
            other.filter((_, i) => !missed.has(i)),
            WINDOW_S,
          );
          expect(Math.abs((best?.offsetS ?? 0) + byS)).toBeLessThan(0.2);
        },
      ),
      { seed: SEED, numRuns: 100 },
    );
  });

  test('five hundred reps are lined up within a second', () => {
    const long = Array.from({ length: 1000 }, (_, i) => ({
      word: i % 2 ? ('mark' as const) : ('hold' as const),
      atS: 4 * i + (i % 7) / 3,
    }));
    const before = performance.now();
    expect(bestAlignment(long, shifted(long, 41), WINDOW_S)?.offsetS).toBeCloseTo(-41, 6);
    expect(performance.now() - before).toBeLessThan(1000);
  });
});
