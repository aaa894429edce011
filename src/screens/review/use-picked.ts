/** Remembers which rep or flag is picked. A rep is found again by the moment it ended: corrections change how many there are. */
import { useState } from 'react';
import type { Rep } from '../../core/fold.ts';
import type { Seconds } from '../../core/units.ts';
import type { Picked } from '../picture/stairs.tsx';

type Anchor =
  | { readonly kind: 'rep'; readonly endAtS: Seconds }
  | { readonly kind: 'call'; readonly afterRep: number; readonly index: number };

/** An end that was nudged a few times, or moved back by undo, is still the same rep, s (tried by hand, no source). */
const NEAR_S: Seconds = 0.55;

export function usePicked(reps: readonly Rep[]) {
  const [anchor, setAnchor] = useState<Anchor | null>(null);
  const rep = anchor?.kind === 'rep' ? repAt(reps, anchor.endAtS) : null;
  // Follows what is picked as its end moves.
  if (anchor?.kind === 'rep' && rep && rep.endAtS !== anchor.endAtS) setAnchor({ kind: 'rep', endAtS: rep.endAtS });
  const picked: Picked | null = anchor?.kind === 'call' ? anchor : rep ? { kind: 'rep', n: rep.n } : null;
  const pick = (next: Picked) => {
    const endAtS = next.kind === 'rep' ? reps[next.n - 1]?.endAtS : undefined;
    if (next.kind === 'call') setAnchor(next);
    else if (endAtS !== undefined) setAnchor({ kind: 'rep', endAtS });
  };
  return { picked, pick, follow: (endAtS: Seconds) => setAnchor({ kind: 'rep', endAtS }) };
}

/** The rep that ended then or very near it; else the one that spans the moment; else the last. */
function repAt(reps: readonly Rep[], endAtS: Seconds): Rep | null {
  const away = (rep: Rep) => Math.abs(rep.endAtS - endAtS);
  const nearest = reps.toSorted((a, b) => away(a) - away(b))[0];
  if (nearest && away(nearest) <= NEAR_S) return nearest;
  return reps.find((rep) => rep.endAtS >= endAtS) ?? reps.at(-1) ?? null;
}
