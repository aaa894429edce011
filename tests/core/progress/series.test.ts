/** Sessions along: what is joined, what is cut, and what so few sessions may claim. */
import { expect, test } from 'vitest';
import { inventedHistory } from '../../../demo/history.ts';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { ANY, choose } from '../../../src/core/progress/choice.ts';
import { digestOf } from '../../../src/core/progress/digest.ts';
import { pooled, pooledRate, seriesOf, stretchesOf, trendOf } from '../../../src/core/progress/series.ts';
import { holdWeeks } from '../../../src/core/progress/weeks.ts';
import { digest, on } from './digests.ts';

const seven = (k: number) => on('hold-3', k, 10);

test('sessions are laid along by their time, whichever device wrote first', () => {
  const points = seriesOf(choose([digest(3, seven(9)), digest(1, seven(7)), digest(2, seven(8))], ANY));
  expect(points.map(({ kept, n }) => [n, kept])).toEqual([
    [1, 7],
    [2, 8],
    [3, 9],
  ]);
});

test('four trials are counted, not estimated', () => {
  const [four, five] = seriesOf([digest(1, on('hold-3', 4, 4)), digest(2, on('hold-3', 4, 5))]);
  expect(four?.interval).toBeNull();
  // Wilson 4/5 (C, FACTS: .3755-.9638).
  expect(five?.interval?.lower).toBeCloseTo(0.3755, 4);
  expect(five?.interval?.upper).toBeCloseTo(0.9638, 4);
});

test('a session of void reps only has no share, and no point', () => {
  expect(seriesOf([digest(1, on('hold-3', 0, 0)), digest(2, seven(9))]).map(({ n }) => n)).toEqual([1]);
});

test.each([
  ['another place', digest(2, seven(9), { place: 'garden' }), [{ kind: 'place', to: 'garden' }]],
  ['another person', digest(2, seven(9), { handler: 'Ro' }), [{ kind: 'handler', to: 'Ro' }]],
  ['another rule', digest(2, seven(9), { rule: { kind: 'cautious' } }), [{ kind: 'rule', to: 'Cautious' }]],
  ['another plan', digest(2, seven(9), { planId: 'ears', planTitle: 'Ears' }), [{ kind: 'plan', to: 'Ears' }]],
  ['another step', digest(2, on('hold-5', 9, 10)), [{ kind: 'step', to: 'hold-5' }]],
  ['fourteen days', digest(15, seven(9)), [{ kind: 'gap', days: 14 }]],
])('points are not joined across %s', (_, second, changes) => {
  const points = seriesOf([digest(1, seven(8)), second]);
  expect(points[1]?.changes).toEqual(changes);
  expect(stretchesOf(points).map(({ length }) => length)).toEqual([1, 1]);
});

test('a plan that was given another name is still the same plan', () => {
  expect(stretchesOf(seriesOf([digest(1, seven(8)), digest(2, seven(9), { planTitle: 'Renamed' })]))).toHaveLength(1);
});

test('thirteen days are no gap', () => {
  expect(stretchesOf(seriesOf([digest(1, seven(8)), digest(14, seven(9))]))).toHaveLength(1);
});

test('seven sessions are drawn, not tested; the eighth is tested', () => {
  const rising = (n: number) => Array.from({ length: n }, (_, i) => digest(i + 1, seven(2 + i)));
  expect(trendOf(seriesOf(rising(7)))).toEqual({ kind: 'too-few', n: 7, need: 8 });
  const trend = trendOf(seriesOf(rising(8)));
  // Eight values in strictly rising order: one order of 8! either way (C).
  expect(trend).toMatchObject({ kind: 'tested', n: 8, chance: expect.closeTo(2 / 40320, 12) });
  expect(trend.kind === 'tested' && trend.slopePer100).toBeCloseTo(10, 10);
});

test('a trend is looked for within the latest phase only', () => {
  const rising = Array.from({ length: 8 }, (_, i) => digest(i + 1, seven(2 + i)));
  expect(trendOf(seriesOf([...rising, digest(9, seven(9), { place: 'garden' })]))).toMatchObject({ kind: 'too-few', n: 1 });
});

test('a rate counts over the time on the step, and zero lifts are still a rate', () => {
  const points = seriesOf([digest(1, { ...on('hold-3', 9, 9), spanS: 90 })]);
  expect(points[0]?.perMinute).toEqual({ kept: 6, lifted: 0 });
  expect(pooledRate(points)?.kept.perMinute).toBeCloseTo(6, 12);
  expect(pooledRate(seriesOf([digest(1, { ...on('hold-3', 9, 9), spanS: 0 })]))).toBeNull();
});

test('a choice of steps, places and people parts the trials without losing one', () => {
  const wish = { plan: DEMO_PLAN, sessions: 40, seed: 5, places: ['bathroom', 'garden'], handlers: ['one', 'two'] };
  const digests = inventedHistory(wish).map(({ state }) => digestOf(state));
  const all = pooled(seriesOf(choose(digests, ANY)));
  const parts = ['bathroom', 'garden'].flatMap((place) =>
    ['one', 'two'].flatMap((handler) =>
      (['position', 'paws'] as const).map((area) => pooled(seriesOf(choose(digests, { ...ANY, place, handler, area })))),
    ),
  );
  expect(parts.filter(({ of }) => of > 0).length).toBeGreaterThan(3);
  expect(parts.reduce((sum, { kept }) => sum + kept, 0)).toBe(all.kept);
  expect(parts.reduce((sum, { of }) => sum + of, 0)).toBe(all.of);
  expect(all.of).toBeGreaterThan(200);
});

test('a week with four holds has no curve, and marks do not pull a curve down', () => {
  const marked = { ...on('hold-3', 5, 5), markedS: [3, 3, 3, 3, 4], liftedS: [] };
  const few = { ...on('hold-3', 4, 4), markedS: [3, 3, 3, 4], liftedS: [] };
  // 2 January 1970 is a Friday, the 9th is in the week after.
  const weeks = holdWeeks([digest(1, marked), digest(8, few), digest(15, { ...marked, liftedS: [1] })], 4);
  expect(weeks.map(({ holds, lifts }) => [holds, lifts])).toEqual([
    [5, 0],
    [6, 1],
  ]);
  expect(weeks[0]?.curve.drops).toEqual([]);
  expect(weeks[1]?.curve.drops.map(({ survival }) => survival)).toEqual([expect.closeTo(5 / 6, 12)]);
});
