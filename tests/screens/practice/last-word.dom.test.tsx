/** The last word on the practice screen, and the one that was taken back. */
import { render, screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../../demo/scenario.ts';
import { open, sessionStart, type } from '../../../demo/typed-session.ts';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { LastWord } from '../../../src/screens/practice/last-word.tsx';
import type { App } from '../../../src/session/app.ts';

function shown(reps: string): string {
  const { state, atS } = type(open(sessionStart(DEMO_PLAN)), reps);
  const app = Object.assign(() => null, {
    intents: { say: () => {}, sessionS: () => atS, after: () => () => {} },
  }) as unknown as App;
  const { container, unmount } = render(
    <AppProvider value={app}>
      <LastWord live={state} />
    </AppProvider>,
  );
  screen.getByRole('button', { name: 'Undo' });
  const text = container.querySelector('span')?.textContent ?? '';
  unmount();
  return text;
}

test('a word stands there when it was heard, and is named when it was taken back', () => {
  expect(shown('k')).toBe('“mark”');
  expect(shown('kl')).toBe('“lifted”');
  expect(shown('klu')).toBe('“lifted” taken back');
  expect(shown('kluk')).toBe('“mark”');
});
