/** The picture by name, by key and by table: what is seen is also heard. */
import { fireEvent, render, screen } from '@testing-library/react';
import { expect, test, vi } from 'vitest';
import type { SessionState } from '../../../src/core/fold.ts';
import { callsInOrder } from '../../../src/core/placed-calls.ts';
import { sayHeld } from '../../../src/core/summary.ts';
import { Key } from '../../../src/screens/picture/key.tsx';
import { type Picked, Stairs } from '../../../src/screens/picture/stairs.tsx';
import { StairsTable } from '../../../src/screens/picture/table.tsx';
import { fiveHundredReps, nothing, oneRep, wholeSession } from './sessions.ts';

function draw(state: SessionState, onPick: (picked: Picked) => void = () => {}) {
  render(<Stairs reps={state.reps} steps={state.standing.steps} calls={callsInOrder(state)} onPick={onPick} />);
  return screen.getAllByRole('button');
}

test('the picture is named by its finding', () => {
  const { reps, standing } = wholeSession();
  render(<Stairs reps={reps} steps={standing.steps} variant="thumbnail" />);
  expect(screen.getByRole('img').getAttribute('aria-label')).toMatch(
    /^Bars on stairs: \d+ reps on \d+ steps\. \d+ of \d+ trials kept\.$/,
  );
});

test('every outcome is said in words', () => {
  draw(wholeSession());
  const kept = screen.getByRole('button', { name: 'Rep 3, Lie flat 3 s. Kept, held 3.5 s.' });
  expect(kept).toBeDefined();
  screen.getByRole('button', { name: 'Rep 1, warm-up, Lie flat 2 s. Kept, held 2.5 s.' });
  screen.getByRole('button', { name: 'Rep 5, Lie flat 3 s. Short after 1.5 s.' });
  screen.getByRole('button', { name: 'Rep 6, Lie flat 3 s. Not a trial: a slip or a distraction after 1.5 s.' });
  screen.getByRole('button', { name: 'Rep 11, Lie flat 4 s. Lifted after 2.0 s.' });
  screen.getByRole('button', { name: 'Rep 13, Lie flat 3.5 s. Not a trial: not offered.' });
});

test('every flag says after which rep it was called', () => {
  draw(wholeSession());
  const flags = screen.getAllByRole('button', { name: /^After rep/ }).map((flag) => flag.getAttribute('aria-label'));
  expect(flags).toHaveLength(callsInOrder(wholeSession()).length);
  expect(flags.slice(0, 3)).toEqual(['After rep 2: warm-up over', 'After rep 9: next step', 'After rep 12: half a step']);
});

test('the tab key stops once, on the newest', () => {
  const items = draw(wholeSession());
  const stops = items.filter((item) => item.getAttribute('tabindex') === '0');
  expect(stops).toEqual([items.at(-1)]);
});

test('the arrows walk through time, bar and flag alike, and stop at either end', () => {
  const items = draw(wholeSession());
  const press = (key: string) => fireEvent.keyDown(document.activeElement as Element, { key });
  const last = items.at(-1) as HTMLElement;
  last.focus();
  press('ArrowRight');
  expect(document.activeElement).toBe(last);
  press('ArrowLeft');
  expect(document.activeElement).toBe(items.at(-2));
  press('Home');
  expect(document.activeElement).toBe(items[0]);
  press('ArrowLeft');
  expect(document.activeElement).toBe(items[0]);
  for (const item of items.slice(1)) {
    press('ArrowRight');
    expect(document.activeElement).toBe(item);
  }
  press('End');
  expect(document.activeElement).toBe(last);
  expect(items.filter((item) => item.getAttribute('tabindex') === '0')).toEqual([last]);
});

test('enter, space and a tap pick a bar or a flag', () => {
  const onPick = vi.fn();
  draw(wholeSession(), onPick);
  fireEvent.click(screen.getByRole('button', { name: /^Rep 3,/ }));
  fireEvent.keyDown(screen.getByRole('button', { name: /^Rep 4,/ }), { key: 'Enter' });
  fireEvent.keyDown(screen.getByRole('button', { name: 'After rep 9: next step' }), { key: ' ' });
  expect(onPick.mock.calls.map(([picked]) => picked)).toEqual([
    { kind: 'rep', n: 3 },
    { kind: 'rep', n: 4 },
    { kind: 'call', afterRep: 9, index: 0 },
  ]);
});

test('what is picked says so', () => {
  const { reps, standing } = wholeSession();
  render(<Stairs reps={reps} steps={standing.steps} selected={{ kind: 'rep', n: 3 }} onPick={() => {}} />);
  const pressed = screen.getAllByRole('button', { pressed: true });
  expect(pressed.map((item) => item.getAttribute('aria-label'))).toEqual(['Rep 3, Lie flat 3 s. Kept, held 3.5 s.']);
});

test('a picture that cannot be picked has nothing to tab to', () => {
  const { reps, standing } = wholeSession();
  for (const variant of ['full', 'strip', 'thumbnail'] as const) {
    const { unmount } = render(<Stairs reps={reps} steps={standing.steps} variant={variant} />);
    expect(screen.getByRole('img')).toBeDefined();
    expect(document.querySelector('[tabindex]')).toBeNull();
    unmount();
  }
});

test('the table tells the same as the picture, row by bar', () => {
  for (const state of [oneRep(), wholeSession(), fiveHundredReps()]) {
    const { unmount } = render(<StairsTable reps={state.reps} calls={callsInOrder(state)} />);
    const rows = [...screen.getByRole('table').querySelectorAll<HTMLElement>('tbody tr')];
    const bars = state.reps.map(({ step, outcome, voidReason, heldForS }) => [
      step.title,
      voidReason === 'not-offered' ? '' : sayHeld(heldForS),
      outcome === 'void' ? 'not a trial' : outcome,
    ]);
    expect(rows.map(told)).toEqual(bars);
    unmount();
  }
  // Five hundred rows are slow to find in a simulated page.
}, 30_000);

function told(row: HTMLElement): readonly (string | undefined)[] {
  const [step, held, outcome] = [...row.querySelectorAll('td')].map(({ textContent }) => textContent?.replaceAll('\u00a0', ' '));
  return [step, held, outcome?.split(/[:,]/)[0]];
}

test('the table says what was called after which rep', () => {
  const state = wholeSession();
  render(<StairsTable reps={state.reps} calls={callsInOrder(state)} />);
  const called = screen
    .getAllByRole('row')
    .slice(1)
    .map((row) => row.querySelector('td:last-child')?.textContent);
  expect(called.slice(0, 12)).toEqual(['', 'warm-up over', '', '', '', '', '', '', 'next step', '', '', 'half a step']);
});

test('the key names every shape', () => {
  render(<Key />);
  const names = screen.getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(names).toEqual(['kept', 'lifted', 'short', 'not a trial', 'warm-up', 'call']);
});

test('the key of a session explains the flags that it shows, each once, and the ring where there is one', () => {
  render(<Key calls={callsInOrder(wholeSession())} hasPutRight />);
  const names = screen.getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(names.slice(5)).toEqual(['not called out, or your own word', 'a step', 'half a step', 'rest', 'put right']);
});

test('a picture that opens at its start is entered there', () => {
  const { reps, standing } = wholeSession();
  render(<Stairs reps={reps} steps={standing.steps} from="start" onPick={() => {}} />);
  const stops = screen.getAllByRole('button').filter((item) => item.getAttribute('tabindex') === '0');
  expect(stops.map((item) => item.getAttribute('aria-label'))).toEqual(['Rep 1, warm-up, Lie flat 2 s. Kept, held 2.5 s.']);
});

test('a rep that was put right says so, and has a ring under its bar', () => {
  const { reps, standing } = wholeSession();
  const { container } = render(<Stairs reps={reps} steps={standing.steps} putRight={new Set([3])} onPick={() => {}} />);
  const marked = screen.getAllByRole('button').filter((item) => item.querySelector('circle'));
  expect(marked.map((item) => item.getAttribute('aria-label'))).toEqual(['Rep 3, Lie flat 3 s. Kept, held 3.5 s. Put right.']);
  // On the screen and on paper.
  expect(container.querySelectorAll('circle')).toHaveLength(2);
});

test('an empty picture is a picture', () => {
  const { reps, standing } = nothing();
  render(<Stairs reps={reps} steps={standing.steps} onPick={() => {}} />);
  expect(screen.getByRole('group').getAttribute('aria-label')).toBe('Bars on stairs: no reps yet.');
});
