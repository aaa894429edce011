/** What one session came to, in a line and as a small picture; read when the line is shown. */
import { useEffect, useState } from 'react';
import type { SessionState } from '../../core/fold.ts';
import { sayMoves, summarize } from '../../core/summary.ts';
import { useIntents } from '../app-context.tsx';
import { Stairs } from '../picture/stairs.tsx';
import { unbroken } from '../picture/unbroken.ts';
import css from './review-list.module.css';

/** @param lastAt when the last event of the session was written, as the list has it: one that has grown since is read again. */
export function Result({ sessionId, lastAt }: { sessionId: string; lastAt: string }) {
  const { readSession } = useIntents();
  const [state, setState] = useState<SessionState | null>(null);
  useEffect(() => {
    let wanted = lastAt !== '';
    void readSession(sessionId).then((read) => wanted && setState(read));
    return () => {
      wanted = false;
    };
  }, [sessionId, lastAt, readSession]);
  if (!state) return null;
  const moves = sayMoves(state);
  return (
    <span className={css.result}>
      <span>
        {summarize(state).finding} {moves ? <span className="soft">{unbroken(moves)}</span> : null}
      </span>
      {state.reps.length === 0 ? null : <Stairs variant="thumbnail" reps={state.reps} steps={state.standing.steps} />}
    </span>
  );
}
