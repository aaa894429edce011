/** Lets the words of a recording run through the real engine, and tells the reps and what was called. */
import type { SessionStart } from '../core/event.ts';
import type { SessionState } from '../core/fold.ts';
import { USUAL_LIMITS } from '../core/limits.ts';
import { firstStart } from '../core/next-start.ts';
import type { Step } from '../core/plan.ts';
import { start, step } from '../core/step.ts';
import { type Heard, isWord } from '../core/word.ts';

/** A word of a recording, as the ear reports it; times are seconds of the recording. */
export interface RecordedWord {
  readonly word: string;
  readonly startedAtS: number;
  readonly endedAtS: number;
  readonly decidedAtS: number;
  readonly confidence: number;
}

export interface RecordedRep {
  readonly holdAtS: number;
  readonly heldS: number;
  /** The word that ended it, or `void`. */
  readonly outcome: 'mark' | 'lifted' | 'void';
  /** What the engine made of it: a marker before the criterion is `short`. */
  readonly judged: string;
  readonly step: string;
  /** What was called after it, as in `raise` or `return, rest`; null: stay. */
  readonly call: string | null;
}

/** The ladder a recording is held against: paid at once, then a second a step (common practice, no source). */
const LADDER: readonly Step[] = [0, 1, 2, 3, 4, 5].map((holdForS) => ({
  kind: 'duration',
  id: `hold-${holdForS}`,
  title: `Hold ${holdForS} s`,
  holdForS,
}));

function opening(): SessionStart {
  const { steps, startStepId, carried } = firstStart(LADDER);
  return {
    ...{ dogId: 'recording', dogName: '', planId: 'recording', planTitle: '', position: '', steps, startStepId, carried },
    ...{ rule: 'steady', limits: USUAL_LIMITS, handler: '', place: '' },
  };
}

/** The whole session that these words make, with its log. Words the engine has no meaning for are passed over. */
export function sessionOf(words: readonly RecordedWord[]): SessionState {
  const at = '1970-01-01T00:00:00.000+00:00';
  const opened = start(opening(), { device: 'recording', seq: 1, session: 'recording', at, monoMs: 0 });
  return words.reduce(
    (so, word) => (isWord(word.word) ? step(so.state, { kind: 'heard', heard: heardIn(word) }, so.stamp) : so),
    opened,
  ).state;
}

function heardIn(word: RecordedWord): Heard {
  return { ...word, word: word.word as Heard['word'], by: 'recording' };
}

export function repsOf(words: readonly RecordedWord[]): readonly RecordedRep[] {
  const state = sessionOf(words);
  return state.reps.map((rep) => ({
    holdAtS: rounded(rep.holdAtS),
    heldS: rounded(rep.heldForS),
    outcome: rep.outcome === 'lifted' || rep.outcome === 'void' ? rep.outcome : 'mark',
    judged: rep.isWarmUp ? `warm-up, ${rep.outcome}` : rep.outcome,
    step: rep.step.title,
    call: rep.calls.map(({ kind }) => kind).join(', ') || null,
  }));
}

/** To a tenth of a millisecond: more is noise. */
function rounded(seconds: number): number {
  return Math.round(seconds * 1e4) / 1e4;
}
