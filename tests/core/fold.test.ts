/** The log and its fold: what is written is what is seen, and nothing else. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { calls, events, feed, LONG, open, type Played, say, sessionStart, type } from '../../demo/typed-session.ts';
import type { Call } from '../../src/core/call.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { append, fold, type SessionState } from '../../src/core/fold.ts';
import { firstStart } from '../../src/core/next-start.ts';
import type { Step } from '../../src/core/plan.ts';
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
    fc.property(wordsInOrder, fc.constantFrom('hold', 'mark', 'lifted', 'void', 'easier', 'harder', 'stay'), (words, word) => {
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

/** A split session, with something changed in the call that put the half step in. */
function withSplit(change: (call: Call) => Partial<Call>): readonly SessionEvent[] {
  const log = events(type(open(sessionStart(DEMO_PLAN)), 'h ll'));
  return log.map((event) =>
    event.type === 'called' && event.body.inserted ? { ...event, body: { ...event.body, ...change(event.body) } } : event,
  );
}

const halfBetween = (belowId: string, aboveId: string) => (call: Call) => ({
  inserted: { ...(call.inserted as Step), halfOf: { belowId, aboveId } },
});

test.each([
  ['lies below a step that is not there', halfBetween('hold-0', 'nowhere'), 'unknown-step'],
  ['lies above a step that is not there', halfBetween('nowhere', 'hold-1'), 'unknown-step'],
  ['goes by the name of another', (call: Call) => ({ inserted: { ...(call.inserted as Step), id: 'hold-3' } }), 'doubled-step'],
  ['lies where it should', () => ({}), undefined],
])('a half step that %s: the log is taken only when it makes sense', (_, change, kind) => {
  const result = fold(withSplit(change));
  expect(result.ok ? undefined : result.problem.kind).toBe(kind);
});

test('a ladder that has one step twice is refused', () => {
  const twice = { ...DEMO_PLAN, steps: [...DEMO_PLAN.steps, ...DEMO_PLAN.steps.slice(0, 1)] };
  const log = events(type(open(sessionStart(DEMO_PLAN)), 'k'));
  const doubled = log.map((event) =>
    event.type === 'session-started' ? { ...event, body: { ...event.body, steps: twice.steps } } : event,
  );
  expect(fold(doubled)).toMatchObject({ ok: false, problem: { kind: 'doubled-step', at: 'demo:1' } });
});

test('a half step whose cause alone was undone leaves nothing that a later call can name', () => {
  const log = events(type(open(sessionStart(DEMO_PLAN)), 'h ll kkkkk'));
  const cause = log.find((event) => event.type === 'called' && event.body.inserted) as SessionEvent & { type: 'called' };
  const undo = { ...(log[0] as SessionEvent), id: 'x:1', type: 'undone', body: { of: cause.body.because } } as SessionEvent;
  expect(fold([...log, undo])).toMatchObject({ ok: false, problem: { kind: 'unknown-step' } });
});

const someStepId = fc.constantFrom('hold-0', 'hold-1', 'hold-2', 'hold-0~hold-1', 'hold-1~hold-2', 'paw-rest', 'nowhere');
const mutation: fc.Arbitrary<(log: readonly SessionEvent[]) => readonly SessionEvent[]> = fc.oneof(
  fc.nat().map((n) => (log: readonly SessionEvent[]) => log.filter((_, i) => i !== n % log.length)),
  fc.tuple(fc.nat(), fc.nat()).map(
    ([from, to]) =>
      (log: readonly SessionEvent[]) =>
        log.toSpliced(to % (log.length + 1), 0, log[from % log.length] as SessionEvent),
  ),
  fc.tuple(fc.nat(), fc.nat()).map(([n, of]) => (log: readonly SessionEvent[]) => [
    ...log,
    { ...log[n % log.length], id: `x:${n}`, type: 'undone', body: { of: log[of % log.length]?.id } } as SessionEvent,
  ]),
  fc.tuple(fc.nat(), fc.constantFrom('fromStepId', 'toStepId', 'startStepId', 'because'), someStepId).map(
    ([n, key, id]) =>
      (log: readonly SessionEvent[]) =>
        changed(log, n, (body) => (key in body ? { ...body, [key]: id } : body)),
  ),
  fc.tuple(fc.nat(), someStepId, someStepId, someStepId).map(
    ([n, id, belowId, aboveId]) =>
      (log: readonly SessionEvent[]) =>
        changed(log, n, (body) =>
          'inserted' in body ? { ...body, inserted: { ...DEMO_PLAN.steps[1], id, halfOf: { belowId, aboveId } } } : body,
        ),
  ),
  fc.tuple(fc.nat(), fc.nat()).map(
    ([n, kind]) =>
      (log: readonly SessionEvent[]) =>
        changed(log, n, (body) =>
          'kind' in body ? { ...body, kind: ['raise', 'return', 'split', 'rest', 'stay', 'begin', 'remain'][kind % 7] } : body,
        ),
  ),
);

/** Changes the n-th of the events that can be changed so. */
function changed(log: readonly SessionEvent[], n: number, change: (body: object) => object): readonly SessionEvent[] {
  const able = log.filter(({ body }) => change(body) !== body);
  const at = able[n % Math.max(1, able.length)];
  return log.map((event) => (event === at ? ({ ...event, body: change(event.body) } as SessionEvent) : event));
}

test('however a log is torn, it folds to a session or is refused; nothing breaks', () => {
  const reps = fc.array(fc.constantFrom('k', 'k', 'l', 'l', 'n', 'e', 'h', 't', 'u'), { maxLength: 40 });
  fc.assert(
    fc.property(reps, fc.array(mutation, { minLength: 1, maxLength: 6 }), (letters, mutations) => {
      const log = events(type(open(sessionStart(DEMO_PLAN)), letters.join('')));
      const torn = mutations.reduce((so, mutate) => (so.length === 0 ? so : mutate(so)), log);
      const result = fold(torn);
      if (result.ok) expect(result.state.standing.steps.some(({ id }) => id === result.state.standing.stepId)).toBe(true);
    }),
    { seed: SEED, numRuns: 1500 },
  );
});

test('a word that two ears heard is one event', () => {
  const held = say(begin(), 'hold', 7);
  const twice = feed(held, { kind: 'heard', heard: { ...(held.state.lastHeard as Heard), startedAtS: 7.1, by: 'own-words' } });
  expect(twice.state.log).toEqual(held.state.log);
  expect(say(held, 'hold', 7.6).state.phase).toMatchObject({ phase: 'holding', sinceS: 7.6, restarts: 1 });
});
