/** Putting a session right in the review, as the handler does it. */
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import axe from 'axe-core';
import { useState } from 'react';
import { expect, test, vi } from 'vitest';
import { checkCorrection, foldCorrected } from '../../../src/core/correct.ts';
import type { Correction } from '../../../src/core/correction.ts';
import type { SessionEvent } from '../../../src/core/event.ts';
import { endedOnLift, fold, type SessionState } from '../../../src/core/fold.ts';
import { nextStart } from '../../../src/core/next-start.ts';
import { Review } from '../../../src/screens/review/review.tsx';
import { hardOfHearing, wholeSession } from '../picture/sessions.ts';

// Roles are slow to find in a simulated page of this size, on two busy cores.
vi.setConfig({ testTimeout: 30_000 });

/** The review over a log that grows, as the app keeps it. */
function Kept({ heard }: { heard: SessionState }) {
  const [log, setLog] = useState<readonly SessionEvent[]>(heard.log);
  const corrected = foldCorrected(log);
  const original = fold(log);
  if (!corrected.ok || !original.ok) throw new Error('the sample does not fold');
  const write = (draft: Pick<SessionEvent, 'type' | 'body'>) =>
    setLog((so) => [...so, { ...so[0], id: `demo:c${so.length}`, seq: so.length + 1, ...draft } as SessionEvent]);
  const { session } = corrected;
  const onCorrect = async (body: Correction) => {
    const problem = checkCorrection(log, body);
    if (!problem) write({ type: 'corrected', body });
    return problem && `refused: ${problem.kind}`;
  };
  const undo = (of: string | null) => of && write({ type: 'undone', body: { of } });
  return (
    <main>
      <Review
        state={session.state}
        next={nextStart(session.state.standing, endedOnLift(session.state), 0)}
        correcting={{
          ...{ session, original: original.state, onCorrect },
          onUndo: () => undo(session.canUndo),
          onRedo: () => undo(session.canRedo),
        }}
      />
    </main>
  );
}

const finding = () => screen.getByRole('region', { name: 'What happened' }).textContent ?? '';
const putRight = () => screen.getByRole('region', { name: 'What was put right' });
const told = () =>
  [...document.querySelectorAll('[role=status]')].map(({ textContent }) => textContent?.replaceAll('\u00a0', ' ')).join(' ');
const seconds = 'It began, in seconds of the session';
const pick = (rep: number) => fireEvent.click(screen.getByRole('button', { name: new RegExp(`^Rep ${rep},`) }));
const panel = (rep: number) => within(screen.getByRole('region', { name: `Put rep ${rep} right` }));
const press = (within_: ReturnType<typeof panel>, name: string, nth = 0) =>
  fireEvent.click(within_.getAllByRole('button', { name, hidden: true })[nth] as HTMLElement);

test('a lift that was a mark: the rep changes, the count changes, what was heard stays beside it, and undo brings it back', async () => {
  const before = wholeSession();
  render(<Kept heard={before} />);
  const heard = finding();
  pick(11);
  press(panel(11), 'It was mark', 1);
  await waitFor(() => expect(finding()).not.toBe(heard));
  expect(screen.getByRole('button', { name: /^Rep 11,/ }).getAttribute('aria-label')).toMatch(/[Ss]hort/);
  expect(screen.getByRole('region', { name: 'What was put right' }).textContent).toContain('1 correction. As heard:');
  fireEvent.click(screen.getByRole('checkbox', { name: 'Show it as it was heard' }));
  expect(finding()).toBe(heard);
  fireEvent.click(screen.getByRole('checkbox', { name: 'Show it as it was heard' }));
  fireEvent.click(within(putRight()).getByRole('button', { name: 'Undo: rep 11, it was mark' }));
  await waitFor(() => expect(finding()).toBe(heard));
  fireEvent.click(within(putRight()).getByRole('button', { name: 'Redo: rep 11, it was mark' }));
  await waitFor(() => expect(finding()).not.toBe(heard));
});

test('where the rule would have called otherwise, both calls are told', async () => {
  render(<Kept heard={wholeSession()} />);
  for (const rep of [11, 12]) {
    pick(rep);
    fireEvent.change(panel(rep).getByLabelText('Why'), { target: { value: 'the door bell' } });
    press(panel(rep), 'Do not count it');
    await waitFor(() => panel(rep).getByText('No trial: the door bell'));
  }
  const notes = screen.getByRole('heading', { name: 'Your notes' }).parentElement?.textContent;
  expect(notes).toBe('Your notesrep 11No trial: the door bellrep 12No trial: the door bell');
  expect(screen.getByRole('region', { name: 'What was put right' }).textContent).toMatch(
    /After rep 12 it called .+; put right, it would have called nothing\./,
  );
});

test('a missed word is put in at its second, and a second outside the session is refused', async () => {
  render(<Kept heard={hardOfHearing()} />);
  pick(4);
  const reps = screen.getAllByRole('button', { name: /^Rep \d/ }).length;
  fireEvent.change(panel(4).getByLabelText('Word'), { target: { value: 'void' } });
  fireEvent.change(panel(4).getAllByLabelText(seconds).at(-1) as HTMLElement, { target: { value: '99999' } });
  press(panel(4), 'Put it in');
  expect((await panel(4).findByRole('alert')).textContent).toBe('refused: time-outside-the-session');
  fireEvent.change(panel(4).getAllByLabelText(seconds).at(-1) as HTMLElement, { target: { value: '0.5' } });
  press(panel(4), 'Put it in');
  await waitFor(() => expect(screen.getAllByRole('button', { name: /^Rep \d/ })).toHaveLength(reps + 1));
});

test('a note is kept by its rep', async () => {
  render(<Kept heard={wholeSession()} />);
  pick(3);
  fireEvent.change(panel(3).getByLabelText('A note on rep 3'), { target: { value: '<b>wind</b>' } });
  press(panel(3), 'Keep the note');
  await waitFor(() => screen.getByText('1 correction.', { exact: false }));
  pick(4);
  pick(3);
  expect((panel(3).getByLabelText('A note on rep 3') as HTMLTextAreaElement).value).toBe('<b>wind</b>');
});

test('a note on the session is kept, and read among the notes', async () => {
  render(<Kept heard={wholeSession()} />);
  fireEvent.change(screen.getByLabelText('A note on this session'), { target: { value: 'new mat' } });
  fireEvent.click(screen.getByRole('button', { name: 'Keep the note' }));
  const notes = await screen.findByRole('heading', { name: 'Your notes' });
  expect(notes.parentElement?.textContent).toBe('Your notessessionnew mat');
});

test('a rep that was put right is marked in the picture and in the table, and tells how it was heard', async () => {
  render(<Kept heard={wholeSession()} />);
  pick(11);
  expect(screen.queryByRole('button', { name: /Put right\./ })).toBeNull();
  press(panel(11), 'It was mark', 1);
  const bar = await screen.findByRole('button', { name: /Put right\./ });
  expect(bar.getAttribute('aria-label')).toMatch(/^Rep 11,/);
  expect(told()).toContain('Put right. As heard: lifted, held 2.0 s.');
  const rows = screen.getAllByRole('row', { hidden: true }).filter(({ textContent }) => textContent?.includes('(put right)'));
  expect(rows).toHaveLength(1);
  // To say that the ear was right puts nothing right.
  pick(3);
  press(panel(3), 'Right');
  await screen.findByText('2 corrections.', { exact: false });
  expect(screen.getAllByRole('button', { name: /Put right\./ })).toHaveLength(1);
});

test('the end of a hold is moved, by a nudge and by a number, and its rep stays open', async () => {
  render(<Kept heard={wholeSession()} />);
  pick(11);
  for (const heldS of ['1.9', '1.8', '1.7']) {
    press(panel(11), '0.1 s earlier', 1);
    await waitFor(() => expect(told()).toContain(`held ${heldS} s of 4 s`));
  }
  const end = panel(11).getAllByLabelText(seconds)[1] as HTMLInputElement;
  fireEvent.change(end, { target: { value: String(Number(end.value) + 2) } });
  press(panel(11), 'Move it', 1);
  await waitFor(() => expect(told()).toContain('held 3.7 s of 4 s'));
});

test('a mark that was no word: the rep goes on to the end of the next, and undo parts them again', async () => {
  render(<Kept heard={wholeSession()} />);
  const reps = () => screen.getAllByRole('button', { name: /^Rep \d/ }).length;
  const before = reps();
  pick(4);
  press(panel(4), 'Not a word', 1);
  await waitFor(() => expect(reps()).toBe(before - 1));
  expect(told()).toContain('Hold was said again once');
  fireEvent.click(within(putRight()).getByRole('button', { name: 'Undo: rep 4, it was no word' }));
  await waitFor(() => expect(reps()).toBe(before));
});

test('what the ear was not sure of is listed with its nearest words, and answered there', async () => {
  render(<Kept heard={hardOfHearing()} />);
  const list = () => within(screen.getByRole('region', { name: 'What the ear was not sure of' }));
  expect(list().getByText('0 of 1 answered.')).toBeTruthy();
  expect(list().getByText('unsure (by ear: mark 0.48)')).toBeTruthy();
  fireEvent.click(list().getByRole('button', { name: 'It was mark', hidden: true }));
  await waitFor(() => list().getByText('1 of 1 answered.'));
  expect(list().getByText('mark (heard as unsure: mark 0.48)')).toBeTruthy();
});

test('who opens a review arrives at its title, and the page bears it until they leave', () => {
  const before = document.title;
  const { unmount } = render(<Kept heard={wholeSession()} />);
  expect(document.activeElement).toBe(screen.getByRole('heading', { level: 1 }));
  expect(document.title).toContain('Pixel: File one claw');
  unmount();
  expect(document.title).toBe(before);
});

test('the open panels leave nobody out (axe)', async () => {
  render(<Kept heard={hardOfHearing()} />);
  pick(4);
  for (const details of document.querySelectorAll('details')) details.open = true;
  press(panel(4), 'Not a word');
  await waitFor(() => screen.getByRole('region', { name: 'What was put right' }));
  const { violations } = await axe.run(document.body, {
    rules: { 'color-contrast': { enabled: false }, region: { enabled: false } },
  });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}, 60_000);
