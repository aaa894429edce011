/** Checks which beats are due in a stretch of a hold. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { beatTimes, type Hold } from '../../src/audio/beat-times.ts';

function list(hold: Hold, fromS: number, toS: number): readonly string[] {
  return beatTimes(hold, fromS, toS).map(({ kind, atS }) => `${kind} ${Number(atS.toFixed(6))}`);
}

describe('what a trainer hears', () => {
  test('a hold of three seconds taps one, two, and says enough on the third', () => {
    expect(list({ onsetS: 0, criterionS: 3 }, 0.1, 3.5)).toEqual(['beat 1', 'beat 2', 'enough 3']);
  });

  test('seconds count from the word, wherever it fell', () => {
    expect(list({ onsetS: 12.34, criterionS: 2 }, 12.6, 15)).toEqual(['beat 13.34', 'enough 14.34']);
  });

  test('a dog that stays on is counted on', () => {
    expect(list({ onsetS: 0, criterionS: 1 }, 0.1, 4)).toEqual(['enough 1', 'beat 2', 'beat 3']);
  });

  test('half a second in the criterion stands between the taps', () => {
    expect(list({ onsetS: 0, criterionS: 2.5 }, 0.1, 3.5)).toEqual(['beat 1', 'beat 2', 'enough 2.5', 'beat 3']);
  });

  test('a tap that would touch the enough gives way, before it or after it', () => {
    expect(list({ onsetS: 0, criterionS: 2.2 }, 0.1, 3.5)).toEqual(['beat 1', 'enough 2.2', 'beat 3']);
    expect(list({ onsetS: 0, criterionS: 1.8 }, 0.1, 3.5)).toEqual(['beat 1', 'enough 1.8', 'beat 3']);
  });

  test('a quarter of a second is room enough for a tap beside the enough', () => {
    expect(list({ onsetS: 0, criterionS: 1.25 }, 0.1, 2.5)).toEqual(['beat 1', 'enough 1.25', 'beat 2']);
  });

  test('a criterion that arithmetic left a hair off a whole second gets no second tap', () => {
    expect(list({ onsetS: 0, criterionS: 0.1 + 0.2 + 0.7 }, 0.1, 1.5)).toEqual(['enough 1']);
    expect(list({ onsetS: 0, criterionS: 3 - 1e-9 }, 2.5, 3.5)).toEqual(['enough 3']);
  });

  test('paid at once: no enough, since the word is understood only after it', () => {
    expect(list({ onsetS: 0, criterionS: 0 }, 0, 2.5)).toEqual(['beat 1', 'beat 2']);
  });

  test('a word understood late brings no burst of beats: what has gone by stays silent', () => {
    expect(list({ onsetS: 0, criterionS: 2 }, 2.3, 4.5)).toEqual(['beat 3', 'beat 4']);
  });

  test('a stretch ends before its end, so that the next one begins with it', () => {
    expect(list({ onsetS: 0, criterionS: 9 }, 1, 2)).toEqual(['beat 1']);
    expect(list({ onsetS: 0, criterionS: 9 }, 2, 3)).toEqual(['beat 2']);
  });
});

const aHold = fc.record({
  onsetS: fc.double({ min: 0, max: 1e5, noNaN: true }),
  criterionS: fc.double({ min: 0, max: 60, noNaN: true }),
});

describe('whatever the hold', () => {
  test('looking ahead in pieces gives each beat once, as looking at once would', () => {
    const pieces = fc.array(fc.double({ min: 0, max: 1.7, noNaN: true }), { maxLength: 40 });
    fc.assert(
      fc.property(aHold, fc.double({ min: 0, max: 3, noNaN: true }), pieces, (hold, lateS, widths) => {
        const edges = [hold.onsetS + lateS];
        for (const width of widths) edges.push((edges.at(-1) ?? 0) + width);
        const inPieces = edges.slice(1).flatMap((toS, i) => beatTimes(hold, edges[i] ?? 0, toS));
        expect(inPieces).toEqual(beatTimes(hold, edges[0] ?? 0, edges.at(-1) ?? 0));
      }),
    );
  });

  test('no two sounds come closer than a quarter of a second, and all lie in the stretch asked for', () => {
    fc.assert(
      fc.property(
        aHold,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (hold, a, b) => {
          const [fromS, toS] = [hold.onsetS + Math.min(a, b), hold.onsetS + Math.max(a, b)];
          const times = beatTimes(hold, fromS, toS).map(({ atS }) => atS);
          for (const atS of times) expect(atS >= fromS && atS < toS).toBe(true);
          const gaps = times.slice(1).map((atS, i) => atS - (times[i] ?? 0));
          for (const gapS of gaps) expect(gapS).toBeGreaterThan(0.25 - 1e-6);
        },
      ),
    );
  });
});
