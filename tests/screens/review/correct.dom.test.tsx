/** Putting a session right in the review, as the handler does it. */
import { fireEvent, render, screen, waitFor, within } from '@testing-library/react';
import axe from 'axe-core';
import { useState } from 'react';
import { expect, test } from 'vitest';
import { checkCorrection, foldCorrected } from '../../../src/core/correct.ts';
import type { Correction } from '../../../src/core/correction.ts';
import type { SessionEvent } from '../../../src/core/event.ts';
import { endedOnLift, fold, type SessionState } from '../../../src/core/fold.ts';
import { nextStart } from '../../../src/core/next-start.ts';
import { Review } from '../../../src/screens/review/review.tsx';
import { hardOfHearing, wholeSession } from '../picture/sessions.ts';

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
  fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
  await waitFor(() => expect(finding()).toBe(heard));
  fireEvent.click(screen.getByRole('button', { name: 'Redo' }));
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
  expect(screen.getByRole('region', { name: 'What was put right' }).textContent).toMatch(
    /After rep 12 it called .+; put right, it would have called nothing\./,
  );
});

test('a missed word is put in at its second, and a second outside the session is refused', async () => {
  render(<Kept heard={hardOfHearing()} />);
  pick(4);
  const reps = screen.getAllByRole('button', { name: /^Rep \d/ }).length;
  fireEvent.change(panel(4).getByLabelText('Word'), { target: { value: 'void' } });
  fireEvent.change(panel(4).getByLabelText('Seconds into the session'), { target: { value: '99999' } });
  press(panel(4), 'Put it in');
  expect((await panel(4).findByRole('alert')).textContent).toBe('refused: time-outside-the-session');
  fireEvent.change(panel(4).getByLabelText('Seconds into the session'), { target: { value: '0.5' } });
  press(panel(4), 'Put it in');
  await waitFor(() => expect(screen.getAllByRole('button', { name: /^Rep \d/ })).toHaveLength(reps + 1));
});

test('a note is kept by its rep', async () => {
  render(<Kept heard={wholeSession()} />);
  pick(3);
  fireEvent.change(panel(3).getByLabelText('Note'), { target: { value: '<b>wind</b>' } });
  press(panel(3), 'Keep the note');
  await waitFor(() => screen.getByText('1 correction.', { exact: false }));
  pick(4);
  pick(3);
  expect((panel(3).getByLabelText('Note') as HTMLTextAreaElement).value).toBe('<b>wind</b>');
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
