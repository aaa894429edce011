/** Writes corrections of the reviewed session: each is one more event, and the review is folded anew. */
import { type CorrectionProblem, checkCorrection } from '../core/correct.ts';
import type { Correction } from '../core/correction.ts';
import { type Draft, type SessionEvent, stampEvent } from '../core/event.ts';
import { t } from '../core/language.ts';
import { openReview, readLog } from './read-back.ts';
import type { Rooms } from './rooms.ts';
import { isoWithOffset } from './wall-clock.ts';

/** Null, or why it was not kept. */
export async function correct(rooms: Rooms, correction: Correction): Promise<string | null> {
  const sessionId = rooms.use.getState().reviewed?.sessionId;
  const log = sessionId === undefined ? null : await readLog(rooms, sessionId);
  if (!sessionId || !log) return t('This session cannot be read right now.');
  const problem = checkCorrection(log, correction);
  if (problem) return sayProblem(problem);
  await keep(rooms, sessionId, { type: 'corrected', body: correction });
  return null;
}

export async function undoCorrection(rooms: Rooms): Promise<void> {
  const reviewed = rooms.use.getState().reviewed;
  if (reviewed?.session.canUndo)
    await keep(rooms, reviewed.sessionId, { type: 'undone', body: { of: reviewed.session.canUndo } });
}

export async function redoCorrection(rooms: Rooms): Promise<void> {
  const reviewed = rooms.use.getState().reviewed;
  if (reviewed?.session.canRedo)
    await keep(rooms, reviewed.sessionId, { type: 'undone', body: { of: reviewed.session.canRedo } });
}

async function keep(rooms: Rooms, session: string, draft: Draft<SessionEvent>): Promise<void> {
  const { writer, parts } = rooms;
  const { wall } = parts;
  const { event } = stampEvent(draft, { ...writer.next(), session, at: isoWithOffset(wall.now()), monoMs: wall.monoMs() });
  await writer.write([event]);
  await openReview(rooms, session);
}

function sayProblem({ kind, got }: CorrectionProblem): string {
  switch (kind) {
    case 'unknown-word':
      return t('There is no such word in this session ({what}).', { what: got });
    case 'no-rep-ends-there':
      return t('No rep ends with this word ({what}).', { what: got });
    case 'time-outside-the-session':
      return t('The time must lie within the session, got {s} s.', { s: got });
  }
}
