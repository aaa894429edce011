/**
 * Compares the picture with files that one can open in a browser. After a wanted change, look at the new ones and keep them:
 * `npx vitest run tests/screens/picture/golden.test.ts --update`.
 */
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import { Drawing, Guides, Names } from '../../../src/screens/picture/ink.tsx';
import type { StairsInput, StairsLayout } from '../../../src/screens/picture/layout.ts';
import { layoutFull } from '../../../src/screens/picture/variants.ts';
import { fiveHundredReps, inputOf, nothing, oneRep, wholeSession } from './sessions.ts';

/** What the screen's style sheet does, in short, so that a file opened alone looks like the screen. */
const STYLE = `
svg{background:#faf6ee;--paper:#faf6ee;--ink:#221c16;--soft:#5d544b;--kept:#00706c;--lifted:#bd4b00}
path{fill:none}.ground{fill:#f2ece0}.guide{stroke:#cdc4b4}.stairs,.warm-up,.break{stroke:var(--ink);stroke-width:2}
.warm-up{stroke-dasharray:5 3}.break{stroke-dasharray:.1 5;stroke-linecap:round}.kept{fill:var(--kept)}.lifted{fill:var(--lifted)}
.short{stroke:var(--kept)}.void{stroke:var(--soft);stroke-dasharray:.1 4;stroke-linecap:round}.notch{stroke:var(--paper);opacity:.55}
.marker,.cloth{fill:var(--ink)}.pole,.plainCloth{stroke:var(--ink)}.plainCloth{fill:var(--paper)}
text{fill:var(--soft);stroke:var(--paper);stroke-width:3;paint-order:stroke;font:16px sans-serif}
`;

function svgOf(layout: StairsLayout): string {
  const { heightPx, levels } = layout;
  // Room for a name beside a single bar.
  const widthPx = Math.max(320, layout.widthPx);
  const parts = [
    createElement('style', { key: 'style' }, STYLE),
    createElement(Guides, { key: 'guides', levels, widthPx }),
    createElement(Drawing, { key: 'drawing', layout }),
    createElement(Names, { key: 'names', levels }),
  ];
  const size = { width: widthPx, height: heightPx, viewBox: `0 0 ${widthPx} ${heightPx}` };
  const svg = renderToStaticMarkup(createElement('svg', { xmlns: 'http://www.w3.org/2000/svg', ...size }, parts));
  // One element a line, and the class as the style sheet's author wrote it.
  return `${svg.replaceAll(/class="_([\w-]+?)_[0-9a-z]+(?:_\d+)?"/g, 'class="$1"').replaceAll('><', '>\n<')}\n`;
}

const PICTURES: readonly (readonly [title: string, file: string, input: StairsInput])[] = [
  ['before the first rep there is only paper', 'nothing', inputOf(nothing())],
  ['one rep lies on one tread', 'one-rep', inputOf(oneRep())],
  ['a raise, a half step, a return and a rest are each seen in the stairs', 'whole-session', inputOf(wholeSession())],
  ['five hundred reps are still bars', 'five-hundred-reps', inputOf(fiveHundredReps())],
];

test.each(PICTURES)('%s', async (_, file, input) => {
  await expect(svgOf(layoutFull(input))).toMatchFileSnapshot(`../../golden/stairs-${file}.svg`);
});
