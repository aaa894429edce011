/** The session clock as a screen may use it: looked at on every frame, drawn only when what is shown changes. */
import { useCallback, useEffect, useState } from 'react';
import type { SessionState } from '../../core/fold.ts';
import { useIntents } from '../app-context.tsx';

/** A value of the session clock, s, redrawn when it changes. `read` must be cheap: it runs on every frame. */
export function useClock<T extends number | boolean>(read: (sessionS: number) => T): T {
  const { sessionS } = useIntents();
  const [value, setValue] = useState(() => read(sessionS()));
  useEffect(() => {
    let frame = 0;
    const look = () => {
      setValue(read(sessionS()));
      frame = requestAnimationFrame(look);
    };
    look();
    return () => cancelAnimationFrame(frame);
  }, [read, sessionS]);
  return value;
}

/** How long a question about an unclear word stands, s: longer, and it would speak of something forgotten. */
const UNSURE_S = 4;

/** Was something nearly a word a moment ago? */
export function useUnsure({ lastUnsure }: SessionState): boolean {
  const atS = lastUnsure?.decidedAtS ?? Number.NEGATIVE_INFINITY;
  return useClock(useCallback((nowS) => nowS - atS < UNSURE_S, [atS]));
}
