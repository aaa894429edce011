/** Parts whose code comes when it is asked for: nothing until then, at once the next time, and an error that is thrown where it is drawn. */
import { act, render, screen } from '@testing-library/react';
import { Component, type ReactNode } from 'react';
import { expect, test, vi } from 'vitest';
import { fetched } from '../../../src/screens/parts/fetched.tsx';

const Greeting = ({ name }: { name: string }) => <p>Good evening, {name}</p>;

test('it draws nothing until the code is here, and then draws it in the same turn', async () => {
  let arrive: (part: typeof Greeting) => void = () => {};
  const Later = fetched<{ name: string }>(
    () =>
      new Promise((done) => {
        arrive = done;
      }),
  );
  const { container } = render(<Later name="Wilma" />);
  expect(container.textContent).toBe('');
  // No timer runs: React's lazy would hold it back for 300 ms here.
  vi.useFakeTimers();
  await act(async () => arrive(Greeting));
  vi.useRealTimers();
  expect(screen.getByText('Good evening, Wilma')).toBeTruthy();
});

test('what is here is drawn at once the next time, and is not fetched again', async () => {
  const load = vi.fn(async () => Greeting);
  const Later = fetched(load);
  const first = render(<Later name="Wilma" />);
  await act(async () => {});
  first.unmount();
  render(<Later name="Otto" />);
  expect(screen.getByText('Good evening, Otto')).toBeTruthy();
  expect(load).toHaveBeenCalledTimes(1);
});

test('what cannot be fetched is an error of drawing, and drawing it again asks again', async () => {
  const load = vi
    .fn<() => Promise<typeof Greeting>>()
    .mockRejectedValueOnce(new TypeError('the file is gone'))
    .mockResolvedValue(Greeting);
  const Later = fetched(load);
  const logged = vi.spyOn(console, 'error').mockImplementation(() => {});
  render(
    <Catching>
      <Later name="Wilma" />
    </Catching>,
  );
  await act(async () => {});
  expect(screen.getByRole('alert').textContent).toBe('the file is gone');
  logged.mockRestore();
  render(<Later name="Otto" />);
  await act(async () => {});
  expect(screen.getByText('Good evening, Otto')).toBeTruthy();
});

class Catching extends Component<{ children: ReactNode }, { error: Error | null }> {
  override state = { error: null as Error | null };
  static getDerivedStateFromError(error: Error) {
    return { error };
  }
  override render() {
    return this.state.error ? <p role="alert">{this.state.error.message}</p> : this.props.children;
  }
}
