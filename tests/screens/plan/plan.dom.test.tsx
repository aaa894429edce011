/** The plan as the handler meets it: stairs to read, steps to change, and a rule whose speed one sees. */
import { act, fireEvent, render, screen, within } from '@testing-library/react';
import axe from 'axe-core';
import { expect, test } from 'vitest';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { create } from 'zustand';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { checkPlan } from '../../../src/core/check-plan.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import type { HandlingStep, Plan } from '../../../src/core/plan.ts';
import type { Rule } from '../../../src/core/rule.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { PlanScreen } from '../../../src/screens/plan/plan.tsx';
import type { App } from '../../../src/session/app.ts';

/** As much of the app as the plan asks for: a library, saving, ids, and a dog with 8 of 9 kept where it goes on. */
function fakeApp(plan: Plan, known = { kept: 8, of: 9 }): App & { saved: Plan[] } {
  const saved: Plan[] = [];
  const use = create(() => ({ library: { dogs: [DEMO_DOG], plans: [plan], sounds: [], settings: null } }));
  let ids = 0;
  const intents = {
    savePlan: async (changed: Plan) => void saved.push(changed),
    newId: () => `new-${++ids}`,
    practise: async () => {},
    startOf: async () => ({ ...firstStart(plan.steps), startStepId: 'hold-5', known }),
  };
  return Object.assign(use, { intents, saved }) as unknown as App & { saved: Plan[] };
}

async function show(plan: Plan = DEMO_PLAN, planId = plan.id, app = fakeApp(plan)) {
  const { hook, history } = memoryLocation({ record: true });
  await act(async () => {
    render(
      <AppProvider value={app}>
        <Router hook={hook}>
          <main>
            <PlanScreen planId={planId} />
          </main>
        </Router>
      </AppProvider>,
    );
  });
  return { app, history };
}

const stairs = () => within(screen.getByRole('list', { name: 'Steps, hardest first' }));
const titles = () =>
  stairs()
    .getAllByRole('button', { expanded: false })
    .map((each) => each.textContent ?? '');
const open = (title: string) => fireEvent.click(stairs().getByRole('button', { name: new RegExp(`^${title}`) }));
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
const withRule = (rule: Exclude<Rule, { kind: 'percentile' }>): Plan => ({ ...DEMO_PLAN, rule });

test('the hardest step stands on top, the easiest at the bottom', async () => {
  await show();
  expect(titles()[0]).toContain('One stroke of the file');
  expect(titles().at(-1)).toContain('Lie flat, paid at once');
});

test('the step where the next session starts is marked', async () => {
  await show();
  expect(titles().filter((title) => title.includes('next session'))).toEqual(['Lie flat 5 snext session']);
});

test('a caution stands before the first step that it holds for, once, and the steps bear its sign', async () => {
  await show();
  expect(screen.getAllByText(/question for your veterinarian/)).toHaveLength(1);
  expect(stairs().getAllByRole('img', { name: 'with caution' })).toHaveLength(5);
});

test('a half step is put in, kept at once, and taken back by undo', async () => {
  const { app } = await show();
  open('Lie flat 5 s');
  press('Put half a step before it');
  expect(titles().join()).toContain('Lie flat 4.5 shalf step');
  expect(app.saved.at(-1)?.steps).toHaveLength(DEMO_PLAN.steps.length + 1);
  press('Undo');
  expect(titles().join()).not.toContain('half step');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('the lowest step cannot be halved or moved down, the highest not moved up', async () => {
  await show();
  open('Lie flat, paid at once');
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Put half a step before it' }).disabled).toBe(true);
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Move down' }).disabled).toBe(true);
  open('One stroke of the file');
  expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Move up' }).disabled).toBe(true);
});

test('a step that would make the ladder go down is left as it was, and it says why', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '1' } });
  press('Change');
  const form = within(screen.getByLabelText('Seconds').closest('form') as HTMLElement);
  expect(form.getByRole('alert').textContent).toBe('1 s would be less than the step below, Lie flat 2 s.');
  expect(app.saved).toEqual([]);
});

test.each([
  ['6', '6 s would be more than the step above, Lie flat 4 s.'],
  ['4', '4 s would be as long as the step above, Lie flat 4 s.'],
  ['', 'Say how many seconds; 0 is paid at once.'],
  ['700', '700 s is too long: 600 s is the most.'],
])('seconds of "%s" are refused in words of the ladder, beside the field', async (value, said) => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value } });
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe(said);
  expect(app.saved).toEqual([]);
});

test('what was refused on one step is not said on another, and goes away with the next change', async () => {
  await show();
  open('Lie flat 3 s');
  press('Move up');
  expect(screen.getByRole('alert').textContent).toBe('3 s would be less than the step below, Lie flat 4 s.');
  open('Lie flat 2 s');
  expect(screen.queryByRole('alert')).toBeNull();
  open('Lie flat 3 s');
  press('Put half a step before it');
  expect(screen.queryByRole('alert')).toBeNull();
});

test('words and seconds changed together are kept in one change, and taken back in one', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('In a few words'), { target: { value: 'Flat on the mat' } });
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '3.5' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]).toMatchObject({ title: 'Flat on the mat', holdForS: 3.5 });
  press('Undo');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('a title follows the seconds that it names', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('Seconds'), { target: { value: '3.5' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]).toMatchObject({ title: 'Lie flat 3.5 s', holdForS: 3.5 });
});

test('new words are kept, and a step above is put in and may be kept', async () => {
  const { app } = await show();
  open('Lie flat 3 s');
  fireEvent.change(screen.getByLabelText('In a few words'), { target: { value: 'Flat for three' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[3]?.title).toBe('Flat for three');
  press('Put a step above');
  const plan = app.saved.at(-1) as Plan;
  expect(plan.steps[4]).toMatchObject({ id: 'new-1', holdForS: 3.5 });
  expect(checkPlan(plan)).toEqual([]);
});

const change = (label: string | RegExp, value: string) => fireEvent.change(screen.getByLabelText(label), { target: { value } });

test('what the hand does, the place and the caution are changed together', async () => {
  const { app } = await show();
  open('Touch the top of the paw');
  change('What the hand does', 'one finger on the toe');
  change('Place', 'coat-and-tail');
  change('Caution, said before the step', '');
  press('Change');
  const { caution: _, ...bare } = DEMO_PLAN.steps[6] as HandlingStep;
  expect(app.saved.at(-1)?.steps[6]).toEqual({ ...bare, area: 'coat-and-tail', extent: 'one finger on the toe' });
});

test.each([
  ['What the hand does', ' ', 'Change', 'Say what the hand does.'],
  ['Half of it, in a few words: less of the place, less pressure or less time', '', 'Change', 'The half needs a few words.'],
  ['What the hand does in the half', '', 'Change', 'Say what the hand does in the half.'],
  ['Seconds the half lasts', '3', 'Change', 'The half lasts 3 s: it cannot be longer than the whole, 2 s.'],
  ['Seconds the half lasts', '', 'Change', 'Say how many seconds the half lasts; 0 is a touch and away.'],
  ['Seconds the half lasts', '2', 'Change', 'The half is the whole: make it less of the place, less pressure or less time.'],
  ['Seconds it lasts', '0.5', 'Change', 'The half lasts 1 s: it cannot be longer than the whole, 0.5 s.'],
  ['Seconds it lasts', '', 'Change', 'Say how many seconds; 0 is paid at once.'],
])('%s "%s" is refused beside the field', async (label, value, button, said) => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change(label, value);
  press(button);
  expect(screen.getByRole('alert').textContent).toBe(said);
  expect(app.saved).toEqual([]);
});

test('near the face a caution that does not name the veterinarian is refused', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('Place', 'eyes');
  change('Caution, said before the step', 'Be gentle.');
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe('Near the face a step needs its caution, and it names the veterinarian.');
  expect(app.saved).toEqual([]);
});

test('a handling is put above a hold, at the place that the plan handles, and may be kept', async () => {
  const { app } = await show();
  open('Lie flat 5 s');
  press('Put a handling above');
  const plan = app.saved.at(-1) as Plan;
  expect(plan.steps[6]).toMatchObject({ kind: 'handling', id: 'new-1', area: 'paws', forS: 0 });
  expect(checkPlan(plan)).toEqual([]);
});

test('the seconds inside a handling are changed, and its title follows', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('Seconds it lasts', '4');
  press('Change');
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({ forS: 4, title: 'Rest a hand on the paw 4 s' });
});

test('a half that is no longer prepared can be worded anew, with its extent and its seconds', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  press('Prepare no half');
  expect(app.saved.at(-1)?.steps[7]).not.toHaveProperty('halfway');
  change(/^Half of it/, 'Two fingers 1.5 s');
  change('What the hand does in the half', 'two fingers, no weight');
  change('Seconds the half lasts', '1.5');
  press('Change');
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({
    halfway: { title: 'Two fingers 1.5 s', extent: 'two fingers, no weight', forS: 1.5 },
  });
});

test('the half of a handling is worded by the handler', async () => {
  const { app } = await show();
  open('Touch the top of the paw');
  fireEvent.change(screen.getByLabelText(/^Half of it/), { target: { value: 'Touch the elbow' } });
  press('Change');
  expect(app.saved.at(-1)?.steps[6]).toMatchObject({ halfway: { title: 'Touch the elbow' } });
});

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

test('a new plan is a ready ladder for the position and place chosen', async () => {
  const { app, history } = await show(DEMO_PLAN, 'new');
  fireEvent.click(screen.getByLabelText('Standing on a mat'));
  fireEvent.click(screen.getByLabelText('Mouth'));
  expect(screen.getByText(/sore teeth and gums are for your veterinarian/)).toBeTruthy();
  await act(async () => press('Keep this plan'));
  const plan = app.saved.at(-1) as Plan;
  expect(plan).toMatchObject({ id: 'new-1', dogId: DEMO_DOG.id, title: 'Mouth: standing on a mat' });
  expect(history?.at(-1)).toBe('/plan/new-1');
});

test('a plan that is not on this device says so and offers a new one', async () => {
  await show(DEMO_PLAN, 'nowhere');
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('There is no such plan on this device');
  expect(screen.getByRole('link', { name: 'Make a plan' })).toBeTruthy();
});

test.each(['demo-plan', 'new', 'nowhere'])('axe finds nothing on the plan "%s", a step open', async (planId) => {
  await show(DEMO_PLAN, planId);
  if (planId === 'demo-plan') open('Rest a hand on the paw 2 s');
  const { violations } = await axe.run(document.body, { rules: { region: { enabled: false } } });
  expect(violations.map(({ id, nodes }) => [id, nodes[0]?.html])).toEqual([]);
});

test('one button keeps all that was written of a step, and one undo takes it back', async () => {
  const { app } = await show();
  open('Rest a hand on the paw 2 s');
  change('In a few words', 'Hand on the paw');
  change('What the hand does', 'the palm rests, no weight');
  change('Seconds it lasts', '3');
  change('Seconds the half lasts', '2.5');
  press('Change');
  expect(app.saved).toHaveLength(1);
  expect(app.saved.at(-1)?.steps[7]).toMatchObject({
    ...{ title: 'Hand on the paw', extent: 'the palm rests, no weight', forS: 3 },
    halfway: { forS: 2.5 },
  });
  press('Undo');
  expect(app.saved.at(-1)).toEqual(DEMO_PLAN);
});

test('what is typed in one field stays while a refused change and a move of the step are answered', async () => {
  await show();
  open('Rest a hand on the paw 2 s');
  change('What the hand does', 'the palm rests, no weight');
  change('Seconds it lasts', '');
  press('Change');
  expect(screen.getByRole('alert').textContent).toBe('Say how many seconds; 0 is paid at once.');
  press('Prepare no half');
  press('Move down');
  expect(screen.getByLabelText<HTMLInputElement>('What the hand does').value).toBe('the palm rests, no weight');
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
