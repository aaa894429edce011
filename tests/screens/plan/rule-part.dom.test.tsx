/** The rule of a plan as the handler meets it: chosen, told in a sentence, and its speed for whoever asks. */
import { fireEvent, screen, within } from '@testing-library/react';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { fakeApp, show, withRule } from './shown-plan.tsx';

test('four of five is told to be too fast before it is chosen for good', async () => {
  const { app } = await show();
  fireEvent.change(screen.getByLabelText('Rule'), { target: { value: 'k-of-m 4/5 sliding' } });
  expect(app.saved.at(-1)?.rule).toEqual({ kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' });
  expect(screen.getByRole('figure').textContent).toContain(
    'Too fast: a dog that truly keeps 7 of 10 is raised in 65 of 100 visits before it goes back; one that keeps 9 of 10 in 96 of 100.',
  );
  expect(screen.getByRole('img', { name: /^Too fast/ })).toBeTruthy();
});

test('steady is told with the exact chances of the specification: .291 and .902', async () => {
  await show();
  expect(screen.getByRole('figure').textContent).toContain('7 of 10 is raised in 29 of 100 visits');
  expect(screen.getByRole('figure').textContent).toContain('9 of 10 in 90 of 100');
});

test('the dog’s own trials stand beside the rule with their n and their interval (Wilson, 8 of 9)', async () => {
  await show();
  expect(screen.getByText(/^8 of 9 kept/).textContent).toBe(
    '8 of 9 kept on the step that comes next: in the long run that can mean anything from 5.7 to 9.8 of 10.',
  );
});

test('four trials are too few for an interval, and none says so', async () => {
  await show(DEMO_PLAN, DEMO_PLAN.id, fakeApp(DEMO_PLAN, { kept: 4, of: 4 }));
  expect(screen.getByText('4 of 4 kept on the step that comes next: too few to say more.')).toBeTruthy();
});

test('a number of one’s own stays within what can be counted', async () => {
  const { app } = await show(withRule({ kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' }));
  fireEvent.change(screen.getByLabelText('of'), { target: { value: '3' } });
  expect(app.saved.at(-1)?.rule).toEqual({ kind: 'k-of-m', kept: 3, of: 3, window: 'sliding' });
});

test('what speaks for a rule says of how many dogs it is', async () => {
  await show();
  expect(screen.getByText(/^Of 2000 invented dogs/).textContent).toBe(
    'Of 2000 invented dogs trained by this app 89.1 of 100 reach the top, after 558 reps and 85.6 lifts on average; 4.3 of 100 raises come too early.',
  );
  expect(screen.getByText(/^Of 4000 other invented dogs/)).toBeTruthy();
});

test('the rule that halves ahead can be chosen, and is as patient as the usual one', async () => {
  const { app } = await show();
  fireEvent.change(screen.getByLabelText('Rule'), { target: { value: 'steady ahead' } });
  expect(app.saved.at(-1)?.rule).toEqual({ kind: 'steady', halving: 'ahead' });
  expect(screen.getByRole('figure').textContent).toContain('Patient: a dog that truly keeps 7 of 10');
});

test('the rules stand side by side, the chosen one marked, and four of five is told to be too fast', async () => {
  await show();
  const table = within(screen.getByRole('table', { name: 'The rules side by side' }));
  const row = (name: string) => table.getByRole('row', { name: new RegExp(`^${name}`) });
  expect(row('Steady 29').getAttribute('aria-current')).toBe('true');
  expect(row('Steady 29').textContent).toBe('Steady2990864.3');
  expect(row('4 of 5').textContent).toBe('4 of 5, sliding65 too fast9613122.3');
  expect(screen.getByRole('option', { name: '4 of 5, sliding: too fast' })).toBeTruthy();
});

test('k of m is chosen in one’s own numbers, and in blocks', async () => {
  const { app } = await show();
  fireEvent.change(screen.getByLabelText('Rule'), { target: { value: 'own' } });
  expect(app.saved.at(-1)?.rule).toEqual({ kind: 'k-of-m', kept: 8, of: 10, window: 'sliding' });
  fireEvent.change(screen.getByLabelText('counted'), { target: { value: 'blocks' } });
  fireEvent.change(screen.getByLabelText('of'), { target: { value: '12' } });
  fireEvent.change(screen.getByLabelText('Kept'), { target: { value: '11' } });
  expect(app.saved.at(-1)?.rule).toEqual({ kind: 'k-of-m', kept: 11, of: 12, window: 'blocks' });
  expect(screen.getByRole('table', { name: 'The rules side by side' }).textContent).toContain('11 of 12, in blocks');
  expect(screen.getByRole('figure').textContent).toMatch(/truly keeps 7 of 10 is raised in \d+ of 100 visits/);
});

test('half a trial is refused beside the rule, with the reason', async () => {
  const { app } = await show(withRule({ kind: 'k-of-m', kept: 4, of: 5, window: 'sliding' }));
  fireEvent.change(screen.getByLabelText('Kept'), { target: { value: '3.5' } });
  expect(screen.getByRole('alert').textContent).toBe('Kept and of are whole numbers; kept is at least 1 and not more than of.');
  expect(app.saved).toEqual([]);
});

test('the chance to raise within ten trials is drawn when it is asked for', async () => {
  await show();
  const line = () =>
    screen
      .getByRole('img', { name: /^Patient/ })
      .querySelector('path[class*=handling]')
      ?.getAttribute('d');
  const before = line();
  fireEvent.click(screen.getByLabelText('within 10 trials'));
  expect(line()).not.toBe(before);
});

test('what the chain says is said in sentences: trials to raise and to return, and the long run', async () => {
  await show();
  expect(screen.getByText(/^At 9 of 10 the raise comes after/).textContent).toContain('within 10 trials in 74 of 100 visits');
  expect(screen.getByText(/^A dog that never learned/).textContent).toContain('77 of 100 trials');
  expect(screen.getByRole('img', { name: /^A dog that never learned/ }).querySelectorAll('rect')).toHaveLength(7);
});

test('why percentile is not on offer is said, and which hold it would ask to beat (k of m and w)', async () => {
  await show();
  expect(screen.getByText(/not offered for marked holds/)).toBeTruthy();
  const table = screen.getByRole('table', { name: /^Which hold/ });
  // k = (m + 1)(1 - w): 5 and .5 give 3, 10 give 5.5, 20 give 10.5 (M: Platt 1973, Galbicka 1994; C).
  expect([...table.querySelectorAll('tbody tr')].map((row) => row.querySelector('td')?.textContent)).toEqual([
    '3.',
    '5. (k = 5.5)',
    '10. (k = 10.5)',
  ]);
});

test('a newcomer reads one sentence on how fast the rule is; the figures wait behind a summary', async () => {
  await show();
  const summary = screen.getByText('How fast it is, drawn and in figures');
  const folded = summary.closest('details') as HTMLDetailsElement;
  expect(folded.open).toBe(false);
  expect(within(folded).getByRole('table', { name: 'The rules side by side' })).toBeTruthy();
  expect(folded.textContent).not.toContain('A dog that truly keeps');
  expect(screen.getByText(/^Patient: a dog that truly keeps 7 of 10/).closest('details')).toBeNull();
});
