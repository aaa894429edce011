/** The session clock as a screen may use it: looked at on every frame, drawn only when what is shown changes. */
import { useEffect, useState } from 'react';
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
