/** An audio clock that a test moves by hand. */
import type { Seconds } from '../core/units.ts';
import type { AudioClock } from './clock.ts';

export interface FakeClock extends AudioClock {
  set(nowS: Seconds): void;
  advance(byS: Seconds): void;
}

export function createFakeClock(startS: Seconds = 0): FakeClock {
  let nowS = startS;
  return {
    now: () => nowS,
    set: (toS) => {
      nowS = toS;
    },
    advance: (byS) => {
      nowS += byS;
    },
  };
}
