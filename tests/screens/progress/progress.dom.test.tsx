/** Progress by finding, by key and by table: what is seen is also heard and can be counted. */
import { fireEvent, render, screen, within } from '@testing-library/react';
import { beforeEach, expect, test, vi } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { ANY } from '../../../src/core/progress/choice.ts';
import type { SessionDigest } from '../../../src/core/progress/digest.ts';
import { seriesOf } from '../../../src/core/progress/series.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { CalendarChart, KeptChart } from '../../../src/screens/progress/charts.tsx';
import { EmptyProgress } from '../../../src/screens/progress/empty.tsx';
import { Folds } from '../../../src/screens/progress/folds.tsx';
import type { App } from '../../../src/session/app.ts';
import { folded, fortySessions, nothing } from './histories.ts';

// Only files are handed out, and none is here.
const APP = Object.assign(() => undefined, { intents: { after: () => () => {} } }) as unknown as App;

function draw(digests: readonly SessionDigest[], stepId: string | null = null) {
  const choice = { ...ANY, planId: DEMO_PLAN.id, stepId };
  const today = (digests.at(-1)?.day ?? 0) + 1;
  render(
    <AppProvider value={APP}>
      <Folds {...{ digests, choice, today }} ladder={DEMO_PLAN.steps} dogName="Pixel" />
    </AppProvider>,
  );
}

/** Asked for by selector: the accessibility tree of five charts and their tables takes seconds to compute. */
const all = (selector: string): readonly HTMLElement[] => [...document.querySelectorAll<HTMLElement>(selector)];
const chart = (name: string): HTMLElement => all(`section[aria-label="${name}"]`)[0] as HTMLElement;
const dotsOf = (part: HTMLElement): readonly HTMLElement[] => [...part.querySelectorAll<HTMLElement>('g[role="button"]')];
const FORTY = fortySessions();

beforeEach(() => {
  document.body.innerHTML = '';
});

test('every chart is named by its finding, with its n', () => {
  draw(FORTY);
  const names = all('svg[role="group"]').map((group) => group.getAttribute('aria-label'));
  expect(names).toHaveLength(4);
  expect(names[0]).toMatch(
    /^Kept, session by session\. 40 sessions: \d+ of \d+ trials kept, in the long run between \d+ and \d+ of 100\./,
  );
  expect(names.join(' ')).not.toContain('%');
});

test('the table under a chart tells the same sessions as its dots, in the same order', () => {
  draw(FORTY, 'paw-lift');
  const { points } = folded(FORTY, { stepId: 'paw-lift' });
  const kept = chart('Kept, session by session');
  const dots = dotsOf(kept);
  expect(dots).toHaveLength(points.length);
  const rows = [...kept.querySelectorAll('tbody tr')].map((row) =>
    [...row.children].slice(0, 4).map(({ textContent }) => textContent),
  );
  expect(rows.map(([n, , k, of]) => [n, k, of])).toEqual(points.map(({ n, kept: k, of }) => [n, k, of].map(String)));
});

test('the arrows walk from session to session, and enter tells what stands there', () => {
  draw(FORTY, 'paw-lift');
  const kept = chart('Kept, session by session');
  const dots = dotsOf(kept);
  expect(dots.filter((dot) => dot.getAttribute('tabindex') === '0')).toEqual([dots.at(-1)]);
  dots.at(-1)?.focus();
  fireEvent.keyDown(document.activeElement as Element, { key: 'ArrowLeft' });
  expect(document.activeElement).toBe(dots.at(-2));
  fireEvent.keyDown(document.activeElement as Element, { key: 'Enter' });
  expect(dots.at(-2)?.getAttribute('aria-pressed')).toBe('true');
  expect(within(kept).getByText(/mostly Lift the paw/)).toBeDefined();
  fireEvent.keyDown(document.activeElement as Element, { key: 'Home' });
  expect(document.activeElement).toBe(dots[0]);
});

test('a long life with a dog is shown forty sessions at a time, the newest first', () => {
  const many = [...Array(3)].flatMap((_, nth) =>
    FORTY.map((digest) => ({
      ...digest,
      id: `${nth} ${digest.id}`,
      day: digest.day + 120 * nth,
      atMs: digest.atMs + nth,
    })),
  );
  render(
    <AppProvider value={APP}>
      <KeptChart points={seriesOf(many)} name="Pixel" />
    </AppProvider>,
  );
  const kept = chart('Kept, session by session');
  expect(within(kept).getByText('Sessions 81 to 120 of 120')).toBeDefined();
  fireEvent.click(within(kept).getByText('Earlier'));
  expect(within(kept).getByText('Sessions 41 to 80 of 120')).toBeDefined();
  expect(dotsOf(kept)).toHaveLength(40);
});

test('the grid says in words where a step was never tried', () => {
  draw(FORTY);
  const row = all('tbody tr').find(({ textContent }) => textContent?.startsWith('One stroke of the file'));
  expect(within(row as HTMLElement).getAllByText('never tried').length).toBeGreaterThan(1);
});

test('the comma file of a chart is asked for by a button that names it', () => {
  const clicked = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => {});
  vi.stubGlobal('matchMedia', () => ({ matches: false }));
  URL.createObjectURL = () => 'blob:here';
  render(
    <AppProvider value={APP}>
      <CalendarChart weeks={folded(FORTY).calendar} name="Pixel" />
    </AppProvider>,
  );
  fireEvent.click(within(chart('Practice and rest')).getByText('CSV'));
  expect(clicked.mock.contexts.map((link) => (link as HTMLAnchorElement).download)).toEqual(['Pixel-days.csv']);
  clicked.mockRestore();
  vi.unstubAllGlobals();
});

test('before the first session the screen teaches with invented data, and says that they are', () => {
  render(
    <AppProvider value={APP}>
      <EmptyProgress />
    </AppProvider>,
  );
  expect(screen.getByText('Invented, to show how it is read:')).toBeDefined();
  expect(screen.getByText('Practise a first session')).toBeDefined();
  expect(screen.queryByText('Its review')).toBeNull();
});

test('a choice in which nothing was practised is no error', () => {
  draw(nothing);
  expect(screen.getByText('No trials here yet.')).toBeDefined();
});
