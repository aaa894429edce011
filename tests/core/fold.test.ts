/** The log and its fold: what is written is what is seen, and nothing else. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, events, feed, LONG, open, type Played, say, sessionStart, type } from '../../demo/typed-session.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { append, fold, type SessionState } from '../../src/core/fold.ts';
import { firstStart } from '../../src/core/next-start.ts';
import type { Input } from '../../src/core/step.ts';
import { type Heard, WORDS } from '../../src/core/word.ts';

const SEED = 20260302;
const begin = (): Played =>
  open(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: 'hold-2' }, { ...LONG, reps: 20 }));

const wordsInOrder = fc.array(
  fc.record({ word: fc.constantFrom(...WORDS), gapS: fc.integer({ min: 3, max: 80 }).map((t) => t / 10) }),
  {
    maxLength: 60,
  },
);

function sayAll(words: readonly { word: (typeof WORDS)[number]; gapS: number }[], from = begin()): Played {
  return words.reduce((played, { word, gapS }) => say(played, word, played.atS + gapS), from);
}

function folded(log: readonly SessionEvent[]): SessionState {
  const result = fold(log);
  if (!result.ok) throw new Error(result.problem.kind);
  return result.state;
}

test('the fold of the log is what the handler saw live, whatever was said', () => {
  fc.assert(
    fc.property(wordsInOrder, (words) => {
      const played = sayAll(words);
      expect(folded(events(played))).toEqual(played.state);
      expect(played.state.log).toEqual(events(played));
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('a log cut anywhere and taken up again gives the same session', () => {
  fc.assert(
    fc.property(wordsInOrder, fc.nat(), (words, cut) => {
      const log = events(sayAll(words));
      const at = 1 + (cut % log.length);
      const resumed = log.slice(at).reduce(append, folded(log.slice(0, at)));
      expect(resumed).toEqual(folded(log));
    }),
    { seed: SEED, numRuns: 200 },
  );
});

test('undo takes the last word back exactly, calls included', () => {
  const { log: _ignored, ...none } = begin().state;
  expect(none.reps).toEqual([]);
  fc.assert(
    fc.property(wordsInOrder, fc.constantFrom('hold', 'mark', 'lifted', 'void', 'easier', 'harder'), (words, word) => {
      const before = sayAll(words);
      if (before.state.phase.phase === 'paused' || before.state.phase.phase === 'ended') return;
      const after = say(say(before, word, before.atS + 1), 'undo');
      const { log: a, ...now } = after.state;
      const { log: b, ...then } = folded(before.state.log);
      expect(now).toEqual(then);
      expect(a.length).toBeGreaterThan(b.length);
    }),
    { seed: SEED, numRuns: 300 },
  );
});

test('an undo of an undo, by its event, brings the word back', () => {
  const held = say(begin(), 'hold', 5);
  const taken = say(held, 'undo');
  const undo = taken.state.log.at(-1);
  const again = folded([
    ...taken.state.log,
    { ...(undo as SessionEvent), id: 'demo:99', seq: 99, type: 'undone', body: { of: undo?.id ?? '' } } as SessionEvent,
  ]);
  expect(again.phase).toEqual(held.state.phase);
});

test('undo twice takes back the word before as well', () => {
  const played = say(say(type(begin(), 'k'), 'undo'), 'undo');
  expect(played.state.reps).toEqual([]);
  expect(played.state.phase.phase).toBe('waiting');
});

test('an undone marker takes the raise with it', () => {
  const opened = open(sessionStart(DEMO_PLAN));
  const raised = type(opened, 'kkkkk');
  expect(calls(raised)).toEqual(['raise hold-1']);
  const back = say(raised, 'undo');
  expect(calls(back)).toEqual([]);
  expect(back.state.standing.stepId).toBe('hold-0');
  expect(back.state.phase.phase).toBe('holding');
});

test('every event has its own number, one after the other, and names its device', () => {
  const log = events(type(begin(), 'kl sv nk u e k h kkkk'));
  expect(log.map(({ seq }) => seq)).toEqual(log.map((_, i) => i + 1));
  expect(log.every(({ id, device, seq }) => id === `${device}:${seq}`)).toBe(true);
});

test('void and short reps between trials change no call', () => {
  const trials = fc.array(fc.constantFrom('k', 'l'), { maxLength: 30 });
  fc.assert(
    fc.property(trials, fc.array(fc.tuple(fc.nat(), fc.constantFrom('v', 's')), { maxLength: 12 }), (letters, extras) => {
      const mixed: string[] = [...letters];
      for (const [at, extra] of extras) mixed.splice(at % (mixed.length + 1), 0, extra);
      const bare = open(sessionStart(DEMO_PLAN));
      // The lowest step is paid at once, so a short rep is impossible there: begin higher.
      const high = { ...bare, state: { ...bare.state, standing: { ...bare.state.standing, stepId: 'hold-3' } } };
      expect(calls(type(high, mixed.join('')))).toEqual(calls(type(high, letters.join(''))));
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test('nothing is called during a hold', () => {
  fc.assert(
    fc.property(wordsInOrder, (words) => {
      let played = begin();
      for (const { word, gapS } of words) {
        const after = say(played, word, played.atS + gapS);
        const called = after.effects.slice(played.effects.length).some((effect) => effect.do === 'call');
        if (called) expect(after.state.phase.phase).not.toBe('holding');
        played = after;
      }
    }),
    { seed: SEED, numRuns: 200 },
  );
});

test('beats start with the hold, from its onset, and stop with the word that ends it', () => {
  const held = say(begin(), 'hold', 7);
  expect(held.effects.at(-1)).toEqual({ do: 'startBeats', sinceS: 7, criterionS: 1 });
  expect(say(held, 'lifted', 9).effects.some((effect) => effect.do === 'stopBeats')).toBe(true);
});

test('a hold said again starts the beats afresh', () => {
  const again = say(say(begin(), 'hold', 7), 'hold', 9);
  expect(again.effects.slice(-2)).toEqual([
    { do: 'stopBeats', atS: 9.3 },
    { do: 'startBeats', sinceS: 9, criterionS: 1 },
  ]);
});

test('words said in a pause are not reps; a hold that the pause broke off is void', () => {
  const paused = say(say(begin(), 'hold', 5), 'pause', 6);
  expect(paused.state.reps).toMatchObject([{ outcome: 'void', voidReason: 'paused' }]);
  const talked = say(say(paused, 'hold', 7), 'mark', 9);
  expect(talked.state.reps).toHaveLength(1);
  const resumed = say(talked, 'resume', 36);
  expect(resumed.state).toMatchObject({ phase: { phase: 'waiting' }, pausedS: 30 });
});

test('after the end nothing more is written, but the end itself can be taken back', () => {
  const ended = say(type(begin(), 'k'), 'finish');
  expect(ended.state.phase.phase).toBe('ended');
  expect(say(ended, 'hold').state.log).toEqual(ended.state.log);
  expect(say(ended, 'undo').state.phase.phase).toBe('waiting');
});

test('a session that was closed in a hold folds to one that is still holding', () => {
  const cut = events(say(type(begin(), 'kk'), 'hold'));
  expect(folded(cut).phase.phase).toBe('holding');
  const input: Input = { kind: 'pause', atS: folded(cut).latestS, why: 'closed' };
  expect(feed({ ...begin(), state: folded(cut) }, input).state.reps.at(-1)).toMatchObject({
    outcome: 'void',
    voidReason: 'paused',
  });
});

test('a log that is no session is refused with where it went wrong', () => {
  const log = events(type(begin(), 'k'));
  expect(fold([])).toEqual({ ok: false, problem: { kind: 'empty', at: '' } });
  expect(fold(log.slice(1))).toEqual({ ok: false, problem: { kind: 'no-start', at: 'demo:2' } });
  expect(fold([...log, log[0] as SessionEvent])).toMatchObject({ ok: false, problem: { kind: 'two-starts' } });
});

test('a log that names a step its ladder never had is refused, not folded to nonsense', () => {
  const log = events(type(open(sessionStart(DEMO_PLAN)), 'kkkkk'));
  const astray = log.map((event) =>
    event.type === 'called' ? { ...event, body: { ...event.body, toStepId: 'nowhere' } } : event,
  );
  expect(fold(astray)).toMatchObject({ ok: false, problem: { kind: 'unknown-step' } });
});

test('a word that two ears heard is one event', () => {
  const held = say(begin(), 'hold', 7);
  const twice = feed(held, { kind: 'heard', heard: { ...(held.state.lastHeard as Heard), startedAtS: 7.1, by: 'own-words' } });
  expect(twice.state.log).toEqual(held.state.log);
  expect(say(held, 'hold', 7.6).state.phase).toMatchObject({ phase: 'holding', sinceS: 7.6, restarts: 1 });
});
