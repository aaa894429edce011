/** Asks for the digests of all sessions, and again whenever the list of sessions changes. */
import { useEffect, useState } from 'react';
import type { Progress } from '../../session/progress.ts';
import { useApp, useIntents } from '../app-context.tsx';

export function useProgress(): Progress | null {
  const { readProgress } = useIntents();
  const heads = useApp((state) => state.heads);
  const [progress, setProgress] = useState<Progress | null>(null);
  useEffect(() => {
    let wanted = heads.length >= 0;
    void readProgress().then((read) => wanted && read && setProgress(read));
    return () => {
      wanted = false;
    };
  }, [heads, readProgress]);
  return progress;
}
