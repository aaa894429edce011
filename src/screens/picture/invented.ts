/** An invented session for screens that have nothing to show yet: the real engine, typed words, the dog of our scenario. */
import type { SessionStart, Stamp } from '../../core/event.ts';
import type { SessionState } from '../../core/fold.ts';
import { t } from '../../core/language.ts';
import { firstStart } from '../../core/next-start.ts';
import type { DurationStep } from '../../core/plan.ts';
import { start, step } from '../../core/step.ts';
import type { Seconds } from '../../core/units.ts';
import type { Word } from '../../core/word.ts';

const lieFlat = (holdForS: Seconds): DurationStep => ({
  ...{ kind: 'duration', id: `lie-flat-${holdForS}`, title: t('Lie flat {n} s', { n: holdForS }), holdForS },
});

function startNow(): SessionStart {
  return {
    ...{ dogId: 'invented', dogName: 'Pixel', planId: 'invented', planTitle: t('File one claw'), rule: 'steady' },
    ...{
      position: t('Lying on her side on the bath mat'),
      handler: '',
      place: '',
      limits: { reps: 20, minutes: 5, treats: null },
    },
    ...firstStart([1, 2, 4].map(lieFlat)),
    startStepId: 'lie-flat-2',
  };
}

/** How each rep ended and how long it was held, s. */
const REPS: readonly (readonly [ends: Word, heldForS: Seconds])[] = [
  ...([1.4, 1.6].map((s) => ['mark', s]) as [Word, Seconds][]),
  ...([2.3, 2.4, 2.2, 2.6, 2.3].map((s) => ['mark', s]) as [Word, Seconds][]),
  ...[['mark', 4.3] as const, ['void', 1.2] as const, ['lifted', 2.4] as const, ['mark', 2.0] as const, ['lifted', 1.8] as const],
  ...([3.2, 3.4].map((s) => ['mark', s]) as [Word, Seconds][]),
];

/** Seconds between reps. */
const REST_S: Seconds = 4;

export function inventedSession(): SessionState {
  const stamp: Stamp = { device: 'invented', seq: 1, session: 'invented', at: '2026-03-02T18:00:00.000+01:00', monoMs: 0 };
  const begun = start(startNow(), stamp);
  let holdAtS = REST_S;
  let { state } = begun;
  const say = (word: Word, startedAtS: Seconds) => {
    const heard = { word, startedAtS, endedAtS: startedAtS + 0.3, decidedAtS: startedAtS + 0.5, confidence: 0.9 };
    state = step(state, { kind: 'heard', heard: { ...heard, by: 'key' } }, { ...begun.stamp, seq: state.log.length + 1 }).state;
  };
  for (const [ends, heldForS] of REPS) {
    say('hold', holdAtS);
    say(ends, holdAtS + heldForS);
    holdAtS += heldForS + REST_S;
  }
  return state;
}
