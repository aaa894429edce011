/** A schedule that only writes down what was asked of it, for tests without a sound card. */
import type { Seconds } from '../core/units.ts';
import type { AudioClock } from './clock.ts';
import type { SoundName } from './names.ts';
import { LEAD_S, type Schedule } from './schedule.ts';

export interface Noted {
  readonly name: SoundName;
  readonly fromS: Seconds;
  readonly toS: Seconds;
  /** When it was put on the schedule. */
  readonly askedAtS: Seconds;
  withdrawnAtS: Seconds | null;
}

export interface FakeSchedule extends Schedule {
  readonly notes: readonly Noted[];
  /** What a listener would have heard begin. */
  heard(): readonly { readonly name: SoundName; readonly atS: Seconds }[];
}

export function createFakeSchedule(clock: AudioClock, lengthS: Seconds = 0.2): FakeSchedule {
  const notes: Noted[] = [];
  return {
    notes,
    soonestS: () => clock.now() + LEAD_S,
    play: (name, atS) => {
      const note: Noted = { name, fromS: atS, toS: atS + lengthS, askedAtS: clock.now(), withdrawnAtS: null };
      notes.push(note);
      return {
        name,
        fromS: note.fromS,
        toS: note.toS,
        withdraw: () => {
          note.withdrawnAtS = clock.now();
        },
      };
    },
    heard: () =>
      notes
        .filter((note) => note.withdrawnAtS === null || note.withdrawnAtS > note.fromS)
        .map(({ name, fromS }) => ({ name, atS: fromS })),
  };
}
