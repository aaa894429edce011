/** Sessions on homework that the trainer has not seen as they are now, told at once from what the app holds. */
import { type HomeworkReceived, type Practised, sessionsToReturn } from '../../core/handover/homework.ts';
import { useApp } from '../app-context.tsx';

export function useToReturn(mine: readonly HomeworkReceived[]): readonly Practised[] {
  const { homework } = useApp((state) => state.library);
  const heads = useApp((state) => state.heads);
  const live = useApp(({ live }) => (live && live.phase.phase !== 'ended' ? live.log[0]?.session : undefined));
  if (mine.length === 0) return [];
  const practised = heads
    .filter(({ id }) => id !== live)
    .map(({ id, events, started }) => ({ id, events, planId: started.body.planId }));
  return mine.flatMap((each) => sessionsToReturn(each.homework.id, practised, homework));
}
