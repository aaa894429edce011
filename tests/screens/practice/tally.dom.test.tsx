/** The thin line under the practice: what it says of the minutes. */
import { render, screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { create } from 'zustand';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { feed, open, type Played, say, sessionStart } from '../../../demo/typed-session.ts';
import { USUAL_LIMITS } from '../../../src/core/limits.ts';
import { firstStart } from '../../../src/core/next-start.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { Tally } from '../../../src/screens/practice/tally.tsx';
import type { App } from '../../../src/session/app.ts';

const begun = (): Played => open(sessionStart(DEMO_PLAN, firstStart(DEMO_PLAN.steps), USUAL_LIMITS));

/** The line as it stands `nowS` seconds into the session. */
function showAt({ state }: Played, nowS: number): void {
  const app = Object.assign(
    create(() => ({})),
    { intents: { sessionS: () => nowS, after: () => () => {} } },
  ) as unknown as App;
  render(
    <AppProvider value={app}>
      <Tally live={state} />
    </AppProvider>,
  );
}

test('the minutes run while one practises', () => {
  showAt(begun(), 130);
  expect(screen.getByText('2 of 5 min')).toBeTruthy();
});

test('the minutes stand still in a pause, however long it lasts', () => {
  showAt(say(begun(), 'pause', 70), 900);
  expect(screen.getByText('1 of 5 min')).toBeTruthy();
});

test('after the pause they go on where they stood', () => {
  showAt(feed(say(begun(), 'pause', 70), { kind: 'resume', atS: 900 }), 960);
  expect(screen.getByText('2 of 5 min')).toBeTruthy();
});

test('when practice has ended they stand', () => {
  showAt(say(begun(), 'finish', 70), 900);
  expect(screen.getByText('1 of 5 min')).toBeTruthy();
});
