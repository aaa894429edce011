/**
 * Compares the picture of two heaps with files that one can open in a browser, and its sentences with what a trainer would say.
 * After a wanted change: `npx vitest run tests/screens/compare/compare.test.ts --update`, and look at the new files.
 */
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { inventedHistory } from '../../../demo/history.ts';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { compare } from '../../../src/core/progress/compare.ts';
import { csvOf } from '../../../src/core/progress/csv.ts';
import { digestOf, type SessionDigest } from '../../../src/core/progress/digest.ts';
import { BESIDE_PX, BesidePlot, besideHeightPx } from '../../../src/screens/compare/beside-chart.tsx';
import { heapsOf, pairOf } from '../../../src/screens/compare/heaps.ts';
import { compareSheet, findDifference, rowsOf, sayAround } from '../../../src/screens/compare/words.ts';
import { digest, on } from '../../core/progress/digests.ts';

/** What the style sheets do, in short, so that a file opened alone looks like the screen. */
const STYLE = `
svg{background:#faf6ee;--paper:#faf6ee;--ink:#221c16;--soft:#5d544b;--kept:#00706c}
path{fill:none}.guide{stroke:#cdc4b4}.whisker{stroke:var(--kept);stroke-width:1.25}.dot{fill:var(--kept)}
.second{fill:var(--paper);stroke:var(--kept);stroke-width:2}.none{stroke:var(--soft);stroke-dasharray:2 3}
.difference{stroke:var(--ink);stroke-width:2}.found{stroke:var(--ink);stroke-width:3.5}
text{fill:var(--ink);font:14px sans-serif}.tick{fill:var(--soft)}
`;

const HISTORY = inventedHistory({
  ...{ plan: DEMO_PLAN, sessions: 40, seed: 4, gaps: { 14: 17, 27: 25 } },
  ...{ places: ['at home', 'garden', 'surgery'], handlers: ['me', 'Ro'] },
}).map(({ state }) => digestOf(state));

const inPlace = (place: string) => HISTORY.filter((one) => one.place === place);

const PICTURES: readonly (readonly [string, string, readonly SessionDigest[], readonly SessionDigest[]])[] = [
  ['nothing beside nothing is only paper', 'nothing', [], []],
  [
    'one rep beside one rep has no interval',
    'one-rep',
    [digest(1, on('Lie flat 2 s', 1, 1))],
    [digest(2, on('Lie flat 2 s', 0, 1))],
  ],
  ['forty sessions, at home and in the surgery', 'places', inPlace('at home'), inPlace('surgery')],
];

describe.each(PICTURES)('%s', (_, file, first, second) => {
  const rows = rowsOf(
    compare(
      first,
      second,
      DEMO_PLAN.steps.map(({ id }) => id),
    ),
  );

  test('as a picture', async () => {
    const heightPx = besideHeightPx(rows.length);
    const parts = [createElement('style', { key: 'style' }, STYLE), createElement(BesidePlot, { key: 'plot', rows })];
    const size = { width: BESIDE_PX.width, height: heightPx, viewBox: `0 0 ${BESIDE_PX.width} ${heightPx}` };
    const svg = renderToStaticMarkup(createElement('svg', { xmlns: 'http://www.w3.org/2000/svg', ...size }, parts));
    const plain = svg.replaceAll(/class="_([\w-]+?)_[0-9a-z]+(?:_\d+)?"/g, 'class="$1"').replaceAll('><', '>\n<');
    await expect(`${plain}\n`).toMatchFileSnapshot(`../../golden/compare-${file}.svg`);
  });

  test('as a table', async () => {
    const { head, rows: cells } = compareSheet(rows);
    await expect(csvOf(head, cells).replaceAll('\r', '')).toMatchFileSnapshot(`../../golden/compare-${file}.csv`);
  });
});

describe('the finding', () => {
  const find = (a: readonly [number, number], b: readonly [number, number]) =>
    findDifference(compare([digest(1, on('x', ...a))], [digest(2, on('x', ...b))]));

  test('says the counts, the difference and its range', () => {
    // Newcombe 1998, Stat Med 17:873-890, table II, method 10 (M): 56/70 less 48/80 is .2000, .0524 to .3339.
    expect(find([48, 80], [56, 70])).toBe(
      'On the one step that both practised: A kept 48 of 80, B kept 56 of 70. B keeps 20 of 100 more; such counts fit anything from 5 of 100 more to 33 of 100 more.',
    );
  });

  test('does not choose between two that the counts do not tell apart', () => {
    expect(find([8, 10], [9, 10])).toMatch(/^On the one step .* So they do not tell which is better\.$/);
  });

  test('with four trials on one side keeps to the counts', () => {
    expect(find([4, 4], [9, 10])).toContain('A kept 4 of 4, B kept 9 of 10. Below 5 trials');
  });

  test('without a step in common says so', () => {
    expect(findDifference(compare([digest(1, on('x', 9, 10))], [digest(2, on('y', 9, 10))]))).toMatch(/^They share no step/);
  });
});

test('what only one of them practised is named, and not weighed', () => {
  const [a, b, ...only] = sayAround(compare([digest(1, on('x', 9, 10))], [digest(2, [on('x', 9, 10), on('y', 1, 2)])]));
  expect(a).toMatch(/^A: 1 session, 9 of 10 trials kept on all steps\./);
  expect(b).toMatch(/^B: 1 session, 10 of 12 trials kept on all steps\./);
  expect(only).toEqual(['Only in B, so not weighed: y.']);
});

describe('what is offered to compare', () => {
  const sessions = [
    digest(4, on('x', 5, 10), { place: 'garden' }),
    digest(5, on('y', 9, 10)),
    digest(12, on('x', 9, 10), { handler: 'Ro' }),
    digest(13, on('x', 0, 0)),
  ];

  test('the newest session, and the one before it on the same step', () => {
    const heaps = heapsOf('sessions', sessions);
    expect(heaps.map(({ key }) => key)).toEqual(['s-12', 's-5', 's-4']);
    expect(pairOf(heaps, [null, null])?.map(({ key }) => key)).toEqual(['s-4', 's-12']);
    expect(pairOf(heaps, ['s-5', null])?.map(({ key }) => key)).toEqual(['s-5', 's-12']);
  });

  test('weeks, places and people, each session in exactly one heap', () => {
    for (const kind of ['weeks', 'places', 'people'] as const) {
      const heaps = heapsOf(kind, sessions);
      expect(heaps.length).toBe(2);
      expect(heaps.flatMap(({ digests }) => digests.map(({ id }) => id)).toSorted()).toEqual(['s-12', 's-4', 's-5']);
    }
  });

  test('one heap alone is no pair', () => {
    expect(pairOf(heapsOf('places', sessions.slice(1)), [null, null])).toBeNull();
  });
});
