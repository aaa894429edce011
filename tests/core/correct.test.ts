/** A review puts right what the ear got wrong; what was heard stays readable, and the rule is asked again. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { events, feed, open, say, sessionStart, type, typedHeard } from '../../demo/typed-session.ts';
import { type CorrectedSession, checkCorrection, foldCorrected } from '../../src/core/correct.ts';
import { type Correction, REP_WORDS, type RepWord } from '../../src/core/correction.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { fold, type Rep, type SessionState } from '../../src/core/fold.ts';
import type { Plan } from '../../src/core/plan.ts';

const SEED = 20261125;

/** One step only: no call can move the dog, so the reps hang on the words alone. */
const ONE_STEP: Plan = { ...DEMO_PLAN, steps: DEMO_PLAN.steps.slice(1, 2) };

const typedLog = (reps: string, plan = ONE_STEP): readonly SessionEvent[] => events(type(open(sessionStart(plan)), reps));

function stateOf(log: readonly SessionEvent[]): SessionState {
  const folded = fold(log);
  if (!folded.ok) throw new Error(folded.problem.kind);
  return folded.state;
}

function correctedOf(log: readonly SessionEvent[]): CorrectedSession {
  const folded = foldCorrected(log);
  if (!folded.ok) throw new Error(folded.problem.kind);
  return folded.session;
}

/** Writes one more event at the end of a log. */
function write(log: readonly SessionEvent[], draft: Pick<SessionEvent, 'type' | 'body'>): readonly SessionEvent[] {
  const seq = log.length + 1;
  const last = log[0] as SessionEvent;
  return [...log, { ...last, id: `demo:c${seq}`, seq, at: '2026-03-04T09:00:00.000+01:00', ...draft } as SessionEvent];
}

const correct = (log: readonly SessionEvent[], ...corrections: readonly Correction[]) =>
  corrections.reduce((so, body) => write(so, { type: 'corrected', body }), log);
const undo = (log: readonly SessionEvent[], of: string | null) =>
  of === null ? log : write(log, { type: 'undone', body: { of } });

const wordIds = (log: readonly SessionEvent[]) => log.flatMap(({ id, type: kind }) => (kind === 'word-heard' ? [id] : []));
const told = ({ holdAtS, endAtS, outcome, voidReason, restarts }: Rep) => ({ holdAtS, endAtS, outcome, voidReason, restarts });
const outcomes = (log: readonly SessionEvent[]) => correctedOf(log).state.reps.map(({ outcome }) => outcome);

const someReps = fc
  .array(fc.constantFrom('k', 'l', 's', 'v', 'n', 'u'), { minLength: 1, maxLength: 12 })
  .map((reps) => reps.join(''));

interface Deed {
  readonly kind: 'relabel' | 'move' | 'insert' | 'void' | 'undo' | 'redo';
  readonly pick: number;
  readonly word: RepWord | null;
  readonly at: number;
}

const deeds: fc.Arbitrary<readonly Deed[]> = fc.array(
  fc.record({
    kind: fc.constantFrom('relabel', 'move', 'insert', 'void', 'undo', 'redo'),
    pick: fc.nat(50),
    word: fc.option(fc.constantFrom(...REP_WORDS)),
    at: fc.integer({ min: 0, max: 80_000 }),
  }),
  { maxLength: 10 },
);

/** No two words at one moment: thousandths that no other word has. */
const momentOf = (deed: Deed, nth: number): number => deed.at / 1000 + (nth + 1) / 1e6;

function carryOut(log: readonly SessionEvent[], deed: Deed, nth: number): readonly SessionEvent[] {
  const session = correctedOf(log);
  const ids = session.hearings.map(({ id }) => id);
  const of = ids[deed.pick % Math.max(1, ids.length)];
  const startedAtS = momentOf(deed, nth);
  switch (deed.kind) {
    case 'insert':
      return correct(log, { do: 'insert', word: deed.word ?? 'hold', startedAtS });
    case 'undo':
      return undo(log, session.canUndo);
    case 'redo':
      return undo(log, session.canRedo);
    case 'relabel':
      return of ? correct(log, { do: 'relabel', of, as: deed.word }) : log;
    case 'move':
      return of ? correct(log, { do: 'move', of, startedAtS }) : log;
    case 'void': {
      const rep = session.state.reps[deed.pick % Math.max(1, session.state.reps.length)];
      return rep ? correct(log, { do: 'void', of: rep.endedBy, reason: 'a cat' }) : log;
    }
  }
}

/** The same session as if it had been typed right at once: a plain list of words, changed by each deed, undone by going back in a history. */
function typedRight(log: readonly SessionEvent[], all: readonly Deed[]): readonly Rep[] {
  interface Said {
    readonly id: string;
    readonly word: RepWord | null;
    readonly voided: boolean;
    readonly startedAtS: number;
  }
  const first: readonly Said[] = correctedOf(log).hearings.map(({ id, is, startedAtS }) => ({
    ...{ id, word: is as RepWord | null, voided: false, startedAtS },
  }));
  let history: (readonly Said[])[] = [first];
  let future: (readonly Said[])[] = [];
  const inOrder = (list: readonly Said[]) => list.toSorted((a, b) => a.startedAtS - b.startedAtS);
  const play = (list: readonly Said[]) =>
    inOrder(list)
      .reduce((so, { word, startedAtS }) => (word === null ? so : say(so, word, startedAtS)), open(sessionStart(ONE_STEP)))
      .state.reps.map((rep): Rep => {
        const ender = list.find(({ startedAtS }) => startedAtS === rep.endAtS);
        return ender?.voided && rep.voidReason === null ? { ...rep, outcome: 'void', voidReason: 'handler-says' } : rep;
      });
  /** Which of the words ends each rep: found by its moment, which no other word has. */
  const enders = (list: readonly Said[]) => play(list).map((rep) => list.find(({ startedAtS }) => startedAtS === rep.endAtS)?.id);
  all.forEach((deed, nth) => {
    const now = history.at(-1) as readonly Said[];
    if (deed.kind === 'undo' || deed.kind === 'redo') {
      const [from, to] = deed.kind === 'undo' ? [history, future] : [future, history];
      if (deed.kind === 'undo' ? history.length > 1 : future.length > 0) to.push(from.pop() as readonly Said[]);
      return;
    }
    const of = inOrder(now)[deed.pick % Math.max(1, now.length)]?.id;
    const startedAtS = momentOf(deed, nth);
    const ends = enders(now);
    const voided = ends[deed.pick % Math.max(1, ends.length)];
    const change = (id: string | undefined, to: Partial<Said>) => now.map((each) => (each.id === id ? { ...each, ...to } : each));
    const next = {
      insert: () => [...now, { id: `new ${nth}`, word: deed.word ?? 'hold', voided: false, startedAtS }],
      relabel: () => change(of, { word: deed.word }),
      move: () => change(of, { startedAtS }),
      void: () => change(voided, { voided: true }),
    }[deed.kind]();
    if (deed.kind === 'void' ? voided === undefined : deed.kind !== 'insert' && of === undefined) return;
    history = [...history, next];
    future = [];
  });
  return play(history.at(-1) as readonly Said[]);
}

describe('a corrected session', () => {
  test('without a correction it is the session as it was heard', () => {
    fc.assert(
      fc.property(someReps, (reps) => {
        for (const plan of [ONE_STEP, DEMO_PLAN]) {
          const log = typedLog(reps, plan);
          const heard = stateOf(log);
          const { state } = correctedOf(log);
          expect({ ...state, log: null }).toEqual({ ...heard, log: null });
        }
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test('any corrections, undone and redone, give the session that was typed right at once; what was heard stays as it was', () => {
    fc.assert(
      fc.property(someReps, deeds, (reps, all) => {
        const log = typedLog(reps);
        const corrected = all.reduce(carryOut, log);
        expect(correctedOf(corrected).state.reps.map(told)).toEqual(typedRight(log, all).map(told));
        expect({ ...stateOf(corrected), log: null }).toEqual({ ...stateOf(log), log: null });
        expect(corrected.slice(0, log.length)).toEqual(log);
      }),
      { seed: SEED, numRuns: 250 },
    );
  });

  test('every correction taken back leaves the session as it was heard', () => {
    fc.assert(
      fc.property(someReps, deeds, (reps, all) => {
        let log = all.reduce(carryOut, typedLog(reps));
        for (let last = correctedOf(log).canUndo; last !== null; last = correctedOf(log).canUndo) log = undo(log, last);
        expect({ ...correctedOf(log).state, log: null }).toEqual({ ...stateOf(log), log: null });
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});

describe('what a handler puts right', () => {
  test('on another device counts just the same, and its latest correction is the one taken back', () => {
    const log = typedLog('kkk');
    const marks = wordIds(log).filter((_, nth) => nth % 2 === 1);
    const [begun] = log as [SessionEvent];
    // A trainer's device has written few events: its numbers are lower than the session's own, and a store sorts by number.
    const there = (seq: number, minute: number, body: Correction) =>
      ({
        ...begun,
        id: `trainer:${seq}`,
        device: 'trainer',
        seq,
        at: `2027-01-01T10:0${minute}:00.000Z`,
        type: 'corrected',
        body,
      }) as SessionEvent;
    const first = there(0, 1, { do: 'relabel', of: marks[0] ?? '', as: 'lifted' });
    const second = there(0.5, 2, { do: 'relabel', of: marks[2] ?? '', as: 'lifted' });
    const shuffled = [second, first, ...log];
    expect(outcomes(shuffled)).toEqual(['lifted', 'kept', 'lifted']);
    expect(correctedOf(shuffled)).toMatchObject({ canUndo: second.id, undoes: second.body });
    expect(correctedOf(shuffled)).toEqual(correctedOf([...log, first, second]));
  });

  test('a mark that was taken for a lift: the rep is kept, and the rule would have raised', () => {
    const log = typedLog('kkkk kkkk l', DEMO_PLAN);
    const last = wordIds(log).at(-1) ?? '';
    const { state, calls } = correctedOf(correct(log, { do: 'relabel', of: last, as: 'mark' }));
    expect(state.reps.at(-1)?.outcome).toBe('short');
    expect(calls.at(-1)?.called).toEqual([]);
    // Said half-way through the criterion it was short; moved to where it was said, it is kept.
    const moved = correctedOf(
      correct(
        log,
        { do: 'relabel', of: last, as: 'mark' },
        { do: 'move', of: last, startedAtS: (state.reps.at(-1)?.endAtS ?? 0) + 9 },
      ),
    );
    expect(moved.state.reps.at(-1)?.outcome).toBe('kept');
  });

  test('two lifts that were none: the return was called all the same, and is shown beside what would have been', () => {
    const opened = open(sessionStart(DEMO_PLAN));
    const log = events(type(opened, 'kk kkkkk ll k'));
    const heard = stateOf(log);
    const returned = heard.reps.findIndex(({ calls }) => calls.some(({ kind }) => kind === 'return' || kind === 'split'));
    expect(returned).toBeGreaterThan(0);
    const lifts = heard.reps.filter(({ outcome }) => outcome === 'lifted').map(({ endedBy }) => endedBy);
    const { calls, state } = correctedOf(
      correct(log, ...lifts.map((of) => ({ do: 'void', of, reason: 'the door bell' }) as const)),
    );
    expect(calls[returned]?.called.map(({ kind }) => kind)).toEqual(heard.reps[returned]?.calls.map(({ kind }) => kind));
    expect(calls[returned]?.wouldCall).toEqual([]);
    // The reps after it were done on the lower step, whatever should have been called.
    expect(state.reps.at(-1)?.step).toEqual(heard.reps.at(-1)?.step);
  });

  test('no trial stays no trial whatever its last word is called, and makes no rep where its hold was none', () => {
    const log = typedLog('kkk');
    const { reps } = stateOf(log);
    const rep = reps[1] as Rep;
    const hold = wordIds(log)[2] ?? '';
    const voided = correct(log, { do: 'void', of: rep.endedBy, reason: 'the bell' });
    expect(outcomes(voided)).toEqual(['kept', 'void', 'kept']);
    expect(outcomes(correct(voided, { do: 'relabel', of: rep.endedBy, as: 'lifted' }))).toEqual(['kept', 'void', 'kept']);
    expect(outcomes(correct(voided, { do: 'relabel', of: hold, as: null }))).toEqual(['kept', 'kept']);
    // The word itself was heard right: a second observer who wrote the same word agrees.
    expect(correctedOf(voided).hearings.map(({ is }) => is)).toEqual(correctedOf(log).hearings.map(({ is }) => is));
  });

  test('a missed mark that is put in ends its hold there, also when the session broke it off', () => {
    const holding = say(open(sessionStart(ONE_STEP)), 'hold', 10);
    const log = events(feed(holding, { kind: 'end', atS: 30, why: 'handler' }));
    expect(outcomes(log)).toEqual(['void']);
    expect(outcomes(correct(log, { do: 'insert', word: 'mark', startedAtS: 14 }))).toEqual(['kept']);
    // The session was ended in the moment in which it was said.
    expect(outcomes(correct(log, { do: 'insert', word: 'mark', startedAtS: 30.2 }))).toEqual(['kept']);
  });

  test('an unsure stretch becomes the word that it was, or none', () => {
    const holding = say(open(sessionStart(ONE_STEP)), 'hold', 10);
    const { word: _, ...stretch } = typedHeard('mark', 15);
    const log = events(feed(holding, { kind: 'unsure', unsure: { ...stretch, nearest: [{ word: 'mark', confidence: 0.4 }] } }));
    const unsure = log.at(-1)?.id ?? '';
    expect(outcomes(log)).toEqual([]);
    expect(outcomes(correct(log, { do: 'relabel', of: unsure, as: 'mark' }))).toEqual(['kept']);
    expect(correctedOf(correct(log, { do: 'relabel', of: unsure, as: null })).hearings.at(-1)).toMatchObject({
      ...{ was: 'unsure', is: null, judged: true },
    });
  });

  test('notes stand by the rep and by the session, the latest one, and an empty one takes it away', () => {
    const log = typedLog('kk');
    const of = wordIds(log)[1] ?? '';
    const noted = correct(
      log,
      { do: 'note', of, text: 'wind' },
      { do: 'note', of: null, text: 'new mat' },
      { do: 'note', of, text: 'a dog outside' },
    );
    expect([...correctedOf(noted).notes]).toEqual([
      [of, 'a dog outside'],
      ['', 'new mat'],
    ]);
    expect([...correctedOf(correct(noted, { do: 'note', of, text: '' })).notes.keys()]).toEqual(['']);
  });

  test('a correction of nothing, or at no time of the session, is refused with what was wrong', () => {
    const log = typedLog('kk');
    const [hold = '', mark = ''] = wordIds(log);
    expect(checkCorrection(log, { do: 'confirm', of: 'nowhere' })).toEqual({ kind: 'unknown-word', got: 'nowhere' });
    expect(checkCorrection(log, { do: 'void', of: hold, reason: '' })).toEqual({ kind: 'no-rep-ends-there', got: hold });
    for (const startedAtS of [Number.NaN, -1, 1e6, Number.POSITIVE_INFINITY]) {
      expect(checkCorrection(log, { do: 'insert', word: 'mark', startedAtS })?.kind).toBe('time-outside-the-session');
      expect(checkCorrection(log, { do: 'move', of: mark, startedAtS })?.kind).toBe('time-outside-the-session');
    }
    expect(checkCorrection(log, { do: 'relabel', of: mark, as: 'lifted' })).toBeNull();
    expect(checkCorrection(log, { do: 'note', of: null, text: 'fine' })).toBeNull();
  });
});
