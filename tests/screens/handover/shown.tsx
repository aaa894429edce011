/** Shows the screens of homework on the real app, with fakes for the browser; one can go from one to the other. */
import { Blob } from 'node:buffer';
import { act, fireEvent, render, screen } from '@testing-library/react';
import { vi } from 'vitest';
import { Route, Router, Switch } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import type { Homework } from '../../../src/core/handover/homework.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { GiveScreen } from '../../../src/screens/handover/give.tsx';
import { HomeworkScreen } from '../../../src/screens/handover/homework.tsx';
import { OnHome } from '../../../src/screens/handover/on-home.tsx';
import { SheetScreen } from '../../../src/screens/handover/sheet.tsx';
import { PlanScreen } from '../../../src/screens/plan/plan.tsx';
import { ReviewRoom } from '../../../src/screens/review-list/review-room.tsx';
import { openedApp, settle } from '../../session/opened-app.ts';

// The one of the simulated page cannot be read as a stream, which packing a code needs.
vi.stubGlobal('Blob', Blob);

export type Opened = Awaited<ReturnType<typeof openedApp>>;

export const calm = () => act(settle);

export async function shown(all: Opened, at: string) {
  const { hook, navigate } = memoryLocation({ path: at });
  const view = render(
    <AppProvider value={all.app}>
      <Router hook={hook}>
        <main>
          <Switch>
            <Route path="/give/:id">{({ id }) => <GiveScreen planId={id} />}</Route>
            <Route path="/homework">{() => <HomeworkScreen />}</Route>
            <Route path="/homework/of/:id">{({ id }) => <HomeworkScreen planId={id} />}</Route>
            <Route path="/plan/:id">{({ id }) => <PlanScreen planId={id} />}</Route>
            <Route path="/review/:id">{({ id }) => <ReviewRoom sessionId={id} />}</Route>
            <Route path="/sheet/:id">{({ id }) => <SheetScreen homeworkId={id} />}</Route>
            <Route component={OnHome} />
          </Switch>
        </main>
      </Router>
    </AppProvider>,
  );
  await calm();
  const go = async (to: string) => {
    act(() => navigate(to));
    await calm();
  };
  return { ...view, go };
}

export async function type(label: string, text: string): Promise<void> {
  fireEvent.change(screen.getByLabelText(label), { target: { value: text } });
  await calm();
}

export async function tap(role: 'button' | 'link', name: string): Promise<void> {
  fireEvent.click(screen.getByRole(role, { name }));
  await calm();
}

const WISH = {
  planId: DEMO_PLAN.id,
  forDog: { kind: 'new', name: 'Biscuit' },
  ...{ trainer: 'Alex', ownerName: 'Kim', words: { hold: 'chin', mark: 'yes', lifted: 'up' } },
  ...{ caution: 'Her left hip is sore.', sessionsAWeek: 3, note: 'After her walk.' },
} as const;

/** A trainer who has given homework for Biscuit, and the plan that it was given from. */
export async function trainerWhoGave(): Promise<Opened & { homework: Homework; planId: string }> {
  const trainer = await openedApp({ device: 'trainer' });
  const homework = await trainer.app.intents.giveHomework(WISH);
  if (!homework) throw new Error('the plan is not here');
  return { ...trainer, homework, planId: trainer.app.getState().library.homework.given[0]?.planId ?? '' };
}

/** An owner who has accepted homework, and the plan that it became. */
export async function ownerWhoAccepted(): Promise<Opened & { homework: Homework; planId: string }> {
  const { homework } = await trainerWhoGave();
  const owner = await openedApp({ device: 'owner' });
  const planId = await owner.app.intents.acceptHomework(homework, { kind: 'new', name: 'Biscuit' });
  return { ...owner, homework, planId: planId ?? '' };
}

/** One rep on this plan, kept and finished; its id. */
export async function practised({ app, press }: Opened, planId: string, atS: number): Promise<string> {
  await app.intents.practise(planId);
  await settle();
  await press('hold', atS);
  await press('mark', atS + 1);
  await app.intents.finish();
  await settle();
  return app.getState().heads[0]?.id ?? '';
}
