/** Reads the desk, and again whenever sessions or homework changed. */
import { useEffect, useState } from 'react';
import type { Desk } from '../../session/desk.ts';
import { useApp, useIntents } from '../app-context.tsx';

/** Null until it is read. */
export function useDesk(): Desk | null {
  const { readDesk } = useIntents();
  const heads = useApp((state) => state.heads);
  const library = useApp((state) => state.library);
  const [desk, setDesk] = useState<Desk | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the two are what the desk is made of.
  useEffect(() => {
    let here = true;
    void readDesk().then((read) => here && read && setDesk(read));
    return () => {
      here = false;
    };
  }, [readDesk, heads, library]);
  return desk;
}
