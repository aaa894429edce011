/** The session clock on the screen: drawn when what is shown changes, at no other time. */
import { act, render, screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { AppProvider } from '../../../src/screens/app-context.tsx';
import { useWhole, useWithin } from '../../../src/screens/practice/use-clock.ts';
import type { App } from '../../../src/session/app.ts';
import { createFakeTimers } from '../../../src/session/timers.fake.ts';

const Counted = ({ part }: { part: () => string }) => <output>{part()}</output>;

/** A part of the screen on a clock that begins at `fromS`; `advance` moves the timers, and the clock with them or by a little less. */
function onClock(read: () => string, fromS: number) {
  const timers = createFakeTimers();
  let nowS = fromS;
  let drawn = 0;
  let asked = 0;
  const after = (ms: number, work: () => void) => {
    asked += 1;
    return timers.after(ms, work);
  };
  const app = Object.assign(() => null, { intents: { sessionS: () => nowS, after } }) as unknown as App;
  const part = () => {
    drawn += 1;
    return read();
  };
  render(
    <AppProvider value={app}>
      <Counted part={part} />
    </AppProvider>,
  );
  const advance = (ms: number, lateMs = 0) =>
    act(() => {
      nowS += (ms - lateMs) / 1000;
      timers.advance(ms);
    });
  return { advance, shown: () => screen.getByRole('status').textContent, drawn: () => drawn, asked: () => asked };
}

test('seconds are drawn as each is full, and at no other time', () => {
  const { advance, shown, drawn } = onClock(() => String(useWhole(10, 1)), 10.25);
  expect(shown()).toBe('0');
  for (let ms = 0; ms < 700; ms += 50) advance(50);
  expect([shown(), drawn()]).toEqual(['0', 1]);
  advance(50);
  expect([shown(), drawn()]).toEqual(['1', 2]);
  for (let ms = 0; ms < 1_000; ms += 50) advance(50);
  expect([shown(), drawn()]).toEqual(['2', 3]);
});

test('a timer that comes a moment early looks again', () => {
  const { advance, shown } = onClock(() => String(useWhole(0, 1)), 0);
  advance(1_000, 0.5);
  expect(shown()).toBe('0');
  advance(4);
  expect(shown()).toBe('1');
});

test('what stands for a while goes when the while is over, and then nothing is waited for', () => {
  const { advance, shown, asked } = onClock(() => String(useWithin(2, 5)), 5.5);
  expect(shown()).toBe('true');
  advance(1_400);
  expect(shown()).toBe('true');
  advance(100);
  expect(shown()).toBe('false');
  const before = asked();
  advance(60_000);
  expect(asked()).toBe(before);
});

test('without a beginning nothing runs', () => {
  const { shown, asked } = onClock(() => `${useWhole(null, 1)} ${useWithin(2, null)}`, 5);
  expect([shown(), asked()]).toEqual(['null false', 0]);
});
