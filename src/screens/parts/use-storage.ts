/** How safe what is kept is, as it stands now. */
import { useEffect, useState } from 'react';
import type { StorageStatus } from '../../session/app-state.ts';
import { useApp, useIntents } from '../app-context.tsx';

/** Asked anew after every session and every copy. Null: not known yet. */
export function useStorage(): StorageStatus | null {
  const { lookAtStorage } = useIntents();
  const heads = useApp((state) => state.heads);
  const copies = useApp((state) => state.library.copies);
  const [status, setStatus] = useState<StorageStatus | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of these two is what is waited for.
  useEffect(() => {
    let wanted = true;
    void lookAtStorage().then((found) => wanted && setStatus(found));
    return () => {
      wanted = false;
    };
  }, [heads, copies, lookAtStorage]);
  return status;
}
