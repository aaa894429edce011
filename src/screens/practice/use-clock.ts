/** The session clock as a screen may use it: looked at when what is shown changes, and not on every frame: the main thread is for words and taps. */
import { useEffect, useReducer } from 'react';
import type { SessionState } from '../../core/fold.ts';
import type { Seconds } from '../../core/units.ts';
import { useIntents } from '../app-context.tsx';

/** Timers may come early by the resolution of their clock; then it is looked at again this much later, ms. */
const AGAIN_MS = 4;
/** Timers hold no more, ms. */
const LONGEST_MS = 2 ** 31 - 1;

/** The session clock now, s; the part is drawn anew when it stands at `changesAtS(now)`. */
function useNow(changesAtS: (nowS: Seconds) => Seconds | null): Seconds {
  const { sessionS, after } = useIntents();
  const [, look] = useReducer((n: number) => n + 1, 0);
  const nowS = sessionS();
  const nextS = changesAtS(nowS);
  useEffect(() => {
    if (nextS === null) return;
    // Asked anew: between drawing and now time has passed.
    const waitMs = 1000 * (nextS - sessionS());
    return after(Math.min(LONGEST_MS, Math.max(AGAIN_MS, waitMs)), look);
  });
  return nowS;
}

/** Whole lots of `lotS` seconds since a time of the session clock; null while there is none. */
export function useWhole(sinceS: Seconds | null, lotS: Seconds): number | null {
  const whole = (nowS: Seconds, fromS: Seconds) => Math.max(0, Math.floor((nowS - fromS) / lotS));
  const nowS = useNow((now) => (sinceS === null ? null : sinceS + lotS * (whole(now, sinceS) + 1)));
  return sinceS === null ? null : whole(nowS, sinceS);
}

/** Is it less than `lastsS` since then? */
export function useWithin(lastsS: Seconds, sinceS: Seconds | null): boolean {
  const endS = sinceS === null ? null : sinceS + lastsS;
  const nowS = useNow((now) => (endS !== null && now < endS ? endS : null));
  return endS !== null && nowS < endS;
}

/** How long a question about an unclear word stands, s: longer, and it would speak of something forgotten. */
const UNSURE_S = 4;

/** Was something nearly a word a moment ago? */
export function useUnsure({ lastUnsure }: SessionState): boolean {
  return useWithin(UNSURE_S, lastUnsure?.decidedAtS ?? null);
}
