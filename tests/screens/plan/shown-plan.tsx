/** Shows a plan on a faked app, and what its tests do with it: open a step, press, change a field. */
import { act, fireEvent, render, screen, within } from '@testing-library/react';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { create } from 'zustand';
import { DEMO_DOG, DEMO_PLAN } from '../../../demo/scenario.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import type { Plan } from '../../../src/core/plan.ts';
import type { Rule } from '../../../src/core/rule.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { PlanScreen } from '../../../src/screens/plan/plan.tsx';
import type { App } from '../../../src/session/app.ts';

/** As much of the app as the plan asks for: a library, saving, ids, and a dog with 8 of 9 kept where it goes on. */
export function fakeApp(plan: Plan, known = { kept: 8, of: 9 }): App & { saved: Plan[] } {
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

export async function show(plan: Plan = DEMO_PLAN, planId = plan.id, app = fakeApp(plan)) {
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

export const stairs = () => within(screen.getByRole('list', { name: 'Steps, hardest first' }));
export const titles = () =>
  stairs()
    .getAllByRole('button', { expanded: false })
    .map((each) => each.textContent ?? '');
export const open = (title: string) => fireEvent.click(stairs().getByRole('button', { name: new RegExp(`^${title}`) }));
export const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));
export const withRule = (rule: Exclude<Rule, { kind: 'percentile' }>): Plan => ({ ...DEMO_PLAN, rule });
export const change = (label: string | RegExp, value: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value } });
