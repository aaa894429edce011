/** Sessions on homework that the trainer has not seen as they are now, told at once from what the app holds. */
import { type HomeworkReceived, type Practised, practisedOf, sessionsToReturn } from '../../core/handover/homework.ts';
import { useApp } from '../app-context.tsx';

export function useToReturn(received: readonly HomeworkReceived[]): readonly Practised[] {
  const book = useApp((state) => state.library.homework);
  const heads = useApp((state) => state.heads);
  const running = useApp(({ live }) => (live && live.phase.phase !== 'ended' ? (live.log[0]?.session ?? null) : null));
  if (received.length === 0) return [];
  const practised = practisedOf(heads, running);
  return received.flatMap(({ homework }) => sessionsToReturn(homework.id, practised, book));
}
