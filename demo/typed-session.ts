/** Types a session: a line of reps becomes words with times, and drives the real engine. The tests, the demo and the pictures use it. */

import type { SessionEvent, SessionStart, Stamp } from '../src/core/event.ts';
import type { SessionState } from '../src/core/fold.ts';
import type { Limits } from '../src/core/limits.ts';
import { firstStart, type NextStart } from '../src/core/next-start.ts';
import type { Plan } from '../src/core/plan.ts';
import { type Effect, type Input, start, step } from '../src/core/step.ts';
import type { Heard, Word } from '../src/core/word.ts';

/** A played session with everything it asked the shell to do. */
export interface Played {
  readonly state: SessionState;
  readonly effects: readonly Effect[];
  readonly stamp: Stamp;
  readonly atS: number;
}

export const LONG: Limits = { reps: 1000, minutes: 1000, treats: null };

/** How long a typed word lasts, s. */
const WORD_S = 0.3;

export function typedHeard(word: Word, startedAtS: number): Heard {
  const endedAtS = startedAtS + WORD_S;
  return { word, startedAtS, endedAtS, decidedAtS: endedAtS + 0.2, confidence: 0.9, by: 'key' };
}

export function sessionStart(
  plan: Plan,
  next: Omit<NextStart, 'known'> = firstStart(plan.steps),
  limits: Limits = LONG,
): SessionStart {
  const { id: planId, dogId, title: planTitle, position } = plan;
  const { steps, startStepId, carried } = next;
  return {
    ...{ dogId, dogName: 'Pixel', planId, planTitle, position, steps, startStepId, carried, limits },
    rule: 'steady',
    handler: 'demo handler',
    place: 'bathroom',
  };
}

export function open(body: SessionStart, stamp: Partial<Stamp> = {}): Played {
  const first = { device: 'demo', seq: 1, session: 'demo-session', at: '2026-03-02T18:00:00.000+01:00', monoMs: 0, ...stamp };
  const { state, effects, stamp: next } = start(body, first);
  return { state, effects, stamp: next, atS: 1 };
}

export function feed(played: Played, input: Input): Played {
  const { state, effects, stamp } = step(played.state, input, { ...played.stamp, monoMs: 1000 * played.atS });
  return { ...played, state, effects: [...played.effects, ...effects], stamp };
}

export function say(played: Played, word: Word, atS: number = played.atS): Played {
  return { ...feed({ ...played, atS }, { kind: 'heard', heard: typedHeard(word, atS) }), atS: atS + WORD_S };
}

/**
 * Types reps: `k` kept, `l` lifted, `s` short, `v` void in the hold, `n` never offered, `u` undo, `e` easier, `h` harder, `t` stay; a space is nothing.
 * A kept rep lasts the criterion and half a second; a lift comes half-way.
 */
export function type(played: Played, reps: string): Played {
  return [...reps.replaceAll(' ', '')].reduce(typeOne, played);
}

const SINGLE: Readonly<Record<string, Word>> = { n: 'void', u: 'undo', e: 'easier', h: 'harder', t: 'stay' };
const ENDS: Readonly<Record<string, Word>> = { k: 'mark', l: 'lifted', s: 'mark', v: 'void' };

function typeOne(played: Played, letter: string): Played {
  const rested = { ...played, atS: played.atS + 4 };
  const single = SINGLE[letter];
  if (single) return say(rested, single);
  const end = ENDS[letter];
  if (!end) throw new Error(`typed session: no rep is called "${letter}"`);
  const holding = say(rested, 'hold');
  const { standing } = holding.state;
  const at = standing.steps.find(({ id }) => id === standing.stepId);
  const criterion = at?.kind === 'duration' ? at.holdForS : (at?.forS ?? 0);
  const heldS = letter === 'k' ? criterion + 0.5 : Math.max(0.3, criterion / 2);
  return say(holding, end, rested.atS + heldS);
}

export function events(played: Played): readonly SessionEvent[] {
  return played.effects.flatMap((effect) => (effect.do === 'keep' ? [effect.event] : []));
}

/** The calls so far, as `raise hold-1` or `rest second-return`. */
export function calls(played: Played): readonly string[] {
  return played.state.reps.flatMap((rep) =>
    rep.calls.map((call) => `${call.kind} ${call.kind === 'rest' ? call.reasons[0]?.kind : call.toStepId}`),
  );
}
