/**
 * Compares the charts of progress with files that one can open in a browser. After a wanted change, look at the new ones and
 * keep them: `npx vitest run --project node tests/screens/progress/golden.test.ts --update`.
 */
import { createElement, type ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { Choice } from '../../../src/core/progress/choice.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { CALENDAR_HEIGHT_PX, CalendarAxis, CalendarPlot } from '../../../src/screens/progress/calendar-chart.tsx';
import { HOLD_HEIGHT_PX, HoldAxis, HoldPlot } from '../../../src/screens/progress/hold-chart.tsx';
import { KEPT_HEIGHT_PX, KeptAxis, KeptPlot } from '../../../src/screens/progress/kept-chart.tsx';
import { RATE_HEIGHT_PX, RateAxis, RatePlot } from '../../../src/screens/progress/rate-chart.tsx';
import { layoutSlots } from '../../../src/screens/progress/slots.ts';
import { folded, fortySessions, nothing, oneSession } from './histories.ts';

/** What the screen's style sheet does, in short, so that a file opened alone looks like the screen. */
const STYLE = `
svg{background:#faf6ee;--paper:#faf6ee;--ink:#221c16;--soft:#5d544b;--line:#cdc4b4;--kept:#00706c;--lifted:#bd4b00}
path{fill:none}.guide,.goal{stroke:var(--line)}.goal{stroke:var(--soft);stroke-dasharray:2 4}.phase{stroke:var(--ink)}
.gap{stroke:var(--soft);stroke-width:2;stroke-dasharray:.1 5;stroke-linecap:round}.joined,.whisker,.latest{stroke:var(--kept)}
.joined{stroke-width:2}.latest{stroke-width:3}.liftedJoined,.cross{stroke:var(--lifted);stroke-width:2}.dot,.practised{fill:var(--kept)}
.few{fill:var(--paper);stroke:var(--kept)}.curve{stroke:var(--soft);stroke-width:1.75}.censored{stroke:var(--soft)}
.rest{fill:none;stroke:var(--soft)}.outside{fill:var(--line)}text{font:14px sans-serif;fill:var(--soft)}.number{fill:var(--paper)}
.label{fill:var(--ink);stroke:var(--paper);stroke-width:3;paint-order:stroke}
`;

const AXIS_PX = 60;

function svgOf(digests: readonly SessionDigest[], choice: Partial<Choice> = {}): string {
  const { points, weeks, calendar } = folded(digests, choice);
  const common = { key: 'plot', points, medium: 'paper' } as const;
  const charts: readonly (readonly [heightPx: number, axis: ReactElement, plot: ReactElement])[] = [
    [KEPT_HEIGHT_PX, createElement(KeptAxis, { key: 'axis' }), createElement(KeptPlot, common)],
    [HOLD_HEIGHT_PX, createElement(HoldAxis, { key: 'axis' }), createElement(HoldPlot, { ...common, weeks })],
    [RATE_HEIGHT_PX, createElement(RateAxis, { key: 'axis', points }), createElement(RatePlot, common)],
    [
      CALENDAR_HEIGHT_PX,
      createElement(CalendarAxis, { key: 'axis' }),
      createElement(CalendarPlot, { key: 'plot', weeks: calendar }),
    ],
  ];
  let topPx = 12;
  const drawn = charts.map(([heightPx, axis, plot], nth) => {
    const at = `translate(0,${topPx})`;
    topPx += heightPx + 24;
    const shifted = createElement('g', { key: 'plot', transform: `translate(${AXIS_PX})` }, plot);
    return createElement('g', { key: String(nth), transform: at }, [axis, shifted]);
  });
  const widthPx = Math.max(620, AXIS_PX + layoutSlots(points, 'paper').widthPx);
  const size = { width: widthPx, height: topPx, viewBox: `0 0 ${widthPx} ${topPx}` };
  const parts = [createElement('style', { key: 'style' }, STYLE), ...drawn];
  const svg = renderToStaticMarkup(createElement('svg', { xmlns: 'http://www.w3.org/2000/svg', ...size }, parts));
  // One element a line, and the class as the style sheet's author wrote it.
  return `${svg.replaceAll(/class="_([\w-]+?)_[0-9a-z]+(?:_\d+)?"/g, 'class="$1"').replaceAll('><', '>\n<')}\n`;
}

const PICTURES: readonly (readonly [title: string, file: string, digests: readonly SessionDigest[], choice: Partial<Choice>])[] =
  [
    ['before the first session there are scales and no ink', 'nothing', nothing, {}],
    ['one session is one point that nothing is joined to', 'one-session', oneSession(), {}],
    ['forty sessions are broken at every change and at both gaps', 'forty-sessions', fortySessions(), {}],
    ['one step over forty sessions is joined where nothing else changed', 'one-step', fortySessions(), { stepId: 'paw-lift' }],
  ];

test.each(PICTURES)('%s', async (_, file, digests, choice) => {
  await expect(svgOf(digests, choice)).toMatchFileSnapshot(`../../golden/progress-${file}.svg`);
});

test('no number in a chart is none', () => {
  for (const digests of [nothing, oneSession(), fortySessions()]) expect(svgOf(digests)).not.toMatch(/NaN|Infinity|undefined/);
});
