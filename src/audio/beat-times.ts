/** Decides which beats of a hold fall into a stretch of time: a tap each second, and the doubled tap at the criterion. */
import type { Seconds } from '../core/units.ts';
import type { BeatKind } from './names.ts';

export interface Hold {
  /** When the handler began to say the word, not when it was understood. */
  readonly onsetS: Seconds;
  /** Seconds to be held; 0 is paid at once. */
  readonly criterionS: Seconds;
}

export interface Beat {
  readonly kind: BeatKind;
  readonly atS: Seconds;
}

/** Two sounds nearer than this melt into one figure; the length of `enough` (0.29 s) sets the scale. */
const CROWDED_S: Seconds = 0.25;

/** Beats with `fromS <= atS < toS`, in order. What lies before `fromS` is gone: beats that come late would bunch. */
export function beatTimes({ onsetS, criterionS }: Hold, fromS: Seconds, toS: Seconds): readonly Beat[] {
  const beats = taps(onsetS, fromS, toS).filter((tap) => !crowds(tap.atS - onsetS, criterionS));
  const enoughAtS = onsetS + criterionS;
  // A criterion of 0 is met before the word is understood: there is no moment left to sound it at.
  if (criterionS > 0 && enoughAtS >= fromS && enoughAtS < toS) beats.push({ kind: 'enough', atS: enoughAtS });
  return beats.sort((a, b) => a.atS - b.atS);
}

function taps(onsetS: Seconds, fromS: Seconds, toS: Seconds): Beat[] {
  const beats: Beat[] = [];
  for (let second = firstSecond(onsetS, fromS); onsetS + second < toS; second++) {
    beats.push({ kind: 'beat', atS: onsetS + second });
  }
  return beats;
}

/** Compared as it will be emitted, onset + k: `ceil` of a rounded difference could give one beat twice or not at all. */
function firstSecond(onsetS: Seconds, fromS: Seconds): number {
  const near = Math.max(1, Math.floor(fromS - onsetS) - 1);
  return [near, near + 1, near + 2].find((second) => onsetS + second >= fromS) ?? near + 3;
}

/** At a whole criterion `enough` stands in the tap's place; beside a broken one, the tap that touches it gives way. */
function crowds(tapS: Seconds, criterionS: Seconds): boolean {
  return criterionS > 0 && Math.abs(tapS - criterionS) < CROWDED_S;
}
