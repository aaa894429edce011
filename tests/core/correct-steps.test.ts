/** Corrections put words right, never what was practised: each rep stays on the step on which the dog stood then, and the rule is asked anew only beside it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { events, open, sessionStart, type } from '../../demo/typed-session.ts';
import { type CorrectedSession, changedReps, foldCorrected, hearingsIn } from '../../src/core/correct.ts';
import { type Correction, REP_WORDS } from '../../src/core/correction.ts';
import type { SessionEvent } from '../../src/core/event.ts';
import { fold, type SessionState } from '../../src/core/fold.ts';
import { STEADY, STEADY_AHEAD, type StoredRule } from '../../src/core/rule.ts';
import { summarize } from '../../src/core/summary.ts';

const SEED = 20261125;
const REVIEWED_AT = '2026-03-20T09:00:00.000+01:00';

const logOf = (reps: string, rule: StoredRule = STEADY): readonly SessionEvent[] =>
  events(type(open({ ...sessionStart(DEMO_PLAN), rule }), reps));

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

const write = (log: readonly SessionEvent[], draft: Pick<SessionEvent, 'type' | 'body'>): readonly SessionEvent[] => [
  ...log,
  { ...log[0], id: `demo:c${log.length}`, seq: log.length + 1, at: REVIEWED_AT, ...draft } as SessionEvent,
];

const correct = (log: readonly SessionEvent[], ...corrections: readonly Correction[]) =>
  corrections.reduce((so, body) => write(so, { type: 'corrected', body }), log);

const someReps = fc
  .array(fc.constantFrom('k', 'k', 'k', 'k', 'l', 'l', 's', 'v', 'n', 'u', 'e', 'h', 't'), { minLength: 1, maxLength: 40 })
  .map((reps) => reps.join(''));

const someDeeds = fc.array(
  fc.record({
    pick: fc.nat(200),
    as: fc.option(fc.constantFrom(...REP_WORDS)),
    kind: fc.constantFrom('relabel', 'move', 'insert', 'void'),
    byS: fc.double({ min: -3, max: 3, noNaN: true }),
  }),
  { maxLength: 6 },
);

function carryOut(
  log: readonly SessionEvent[],
  { pick, as, kind, byS }: { pick: number; as: (typeof REP_WORDS)[number] | null; kind: string; byS: number },
) {
  const { hearings, state } = correctedOf(log);
  const heard = hearings[pick % Math.max(1, hearings.length)];
  const rep = state.reps[pick % Math.max(1, state.reps.length)];
  if (!heard) return log;
  if (kind === 'relabel') return correct(log, { do: 'relabel', of: heard.id, as });
  const startedAtS = Math.max(0, heard.startedAtS + byS);
  if (kind === 'move') return correct(log, { do: 'move', of: heard.id, startedAtS });
  if (kind === 'insert') return correct(log, { do: 'insert', word: as ?? 'mark', startedAtS });
  return rep ? correct(log, { do: 'void', of: rep.endedBy, reason: 'a cat' }) : log;
}

describe('the steps of a corrected session', () => {
  test('without corrections the rule would call what it called', () => {
    fc.assert(
      fc.property(someReps, fc.constantFrom(STEADY, STEADY_AHEAD), (reps, rule) => {
        for (const { called, wouldCall } of correctedOf(logOf(reps, rule)).calls) expect(wouldCall).toEqual(called);
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('every rep that its own words still make is on the step on which it was done', () => {
    fc.assert(
      fc.property(someReps, someDeeds, (reps, deeds) => {
        const log = logOf(reps);
        const heard = stateOf(log);
        const { state } = correctedOf(deeds.reduce(carryOut, log));
        const steps = new Map(heard.reps.map(({ endedBy, step }) => [endedBy, step.id]));
        for (const { endedBy, step } of state.reps) if (steps.has(endedBy)) expect(step.id).toBe(steps.get(endedBy));
        expect(state.standing.stepId).toBe(heard.standing.stepId);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });

  test('however a corrected log is torn, it folds or is refused; nothing breaks', () => {
    const folded = { ok: 0, refused: 0 };
    fc.assert(
      fc.property(someReps, someDeeds, fc.infiniteStream(fc.nat(9)), (reps, deeds, chance) => {
        const whole = deeds.reduce(carryOut, logOf(reps));
        const undone = whole.at(-1);
        const log = undone ? write(whole, { type: 'undone', body: { of: undone.id } }) : whole;
        const torn = log.filter((_, nth) => nth === 0 || (chance.next().value as number) > 0);
        const { ok } = foldCorrected(torn);
        folded[ok ? 'ok' : 'refused']++;
      }),
      { seed: SEED, numRuns: 300 },
    );
    expect(folded.ok).toBeGreaterThan(0);
    expect(folded.refused).toBeGreaterThan(0);
  });

  test('the onset of a lift that was answered with half a step is nudged: its rep stays on the step it was too big on', () => {
    const log = logOf('h ll k');
    const [, second] = stateOf(log).reps;
    if (second?.outcome !== 'lifted') throw new Error('the session is not as it was typed');
    const [before, after] = [
      stateOf(log),
      correctedOf(correct(log, { do: 'move', of: second.endedBy, startedAtS: second.endAtS - 0.1 })).state,
    ];
    expect(after.reps.map(({ step }) => step.id)).toEqual(before.reps.map(({ step }) => step.id));
    expect(after.reps[1]?.calls).toEqual(second.calls);
    expect(after.standing).toEqual(before.standing);
  });

  test('a moved word is still found in the rep that it ends, whatever its tenths', () => {
    const log = logOf('kkk');
    const { endedBy: of = '', endAtS = 0 } = stateOf(log).reps[1] ?? {};
    for (let tenths = -9; tenths < 10; tenths++) {
      const session = correctedOf(correct(log, { do: 'move', of, startedAtS: endAtS + tenths / 10 }));
      expect(hearingsIn(session, 2).map(({ id }) => id)).toContain(of);
    }
  });

  test('a mark that was none: the hold went on through the call, on its own step, until it really ended', () => {
    const log = logOf('kkkkk k');
    const raised = stateOf(log).reps.findIndex(({ calls }) => calls.some(({ kind }) => kind === 'raise'));
    const rep = stateOf(log).reps[raised];
    if (!rep) throw new Error('nothing was called');
    const { state, calls } = correctedOf(
      correct(log, { do: 'relabel', of: rep.endedBy, as: null }, { do: 'insert', word: 'lifted', startedAtS: rep.endAtS + 1 }),
    );
    expect(state.reps[raised]).toMatchObject({ outcome: 'lifted', endAtS: rep.endAtS + 1, step: rep.step });
    // It was called all the same, and is told beside what should have been.
    expect(calls[raised]?.called.map(({ kind }) => kind)).toContain('raise');
    expect(calls[raised]?.wouldCall).toEqual([]);
    expect(state.reps.at(-1)?.step).toEqual(stateOf(log).reps.at(-1)?.step);
  });
});

describe('which reps are marked as put right', () => {
  const changed = (log: readonly SessionEvent[]) => [...changedReps(correctedOf(log))];

  test('none, while the ear was only said to be right', () => {
    const log = logOf('kkk');
    expect(changed(log)).toEqual([]);
    expect(changed(correct(log, { do: 'confirm', of: stateOf(log).reps[1]?.endedBy ?? '' }))).toEqual([]);
  });

  test('the rep of a word that was another, moved or put in, and one that was no trial', () => {
    const log = logOf('kkk');
    const { endedBy: of = '', endAtS = 0 } = stateOf(log).reps[1] ?? {};
    expect(changed(correct(log, { do: 'relabel', of, as: 'lifted' }))).toEqual([2]);
    expect(changed(correct(log, { do: 'relabel', of, as: 'lifted' }, { do: 'relabel', of, as: 'mark' }))).toEqual([]);
    expect(changed(correct(log, { do: 'move', of, startedAtS: endAtS + 0.1 }))).toEqual([2]);
    expect(changed(correct(log, { do: 'void', of, reason: 'a cat' }))).toEqual([2]);
    expect(changed(correct(log, { do: 'insert', word: 'void', startedAtS: endAtS + 1 }))).toEqual([3]);
    // Without its mark it went on until the next hold, and that one is the rep now.
    expect(changed(correct(log, { do: 'relabel', of, as: null }))).toEqual([2]);
    expect(correctedOf(correct(log, { do: 'relabel', of, as: null })).state.reps).toHaveLength(2);
  });
});

describe('what a correction leaves alone', () => {
  test('words taken back in the session are still told; corrections taken back are not among them', () => {
    const log = logOf('kk u k');
    const of = stateOf(log).reps[0]?.endedBy ?? '';
    const corrected = correct(log, { do: 'relabel', of, as: 'lifted' }, { do: 'void', of, reason: 'a cat' });
    const undone = write(corrected, { type: 'undone', body: { of: corrected.at(-1)?.id ?? '' } });
    const redone = write(undone, { type: 'undone', body: { of: undone.at(-1)?.id ?? '' } });
    for (const each of [log, corrected, undone, redone])
      expect(summarize(correctedOf(each).state).grounds).toContain('1 word was taken back.');
  });

  test('a word put in days later was said in the session: the days since are counted from then', () => {
    const log = logOf('kk');
    const { state } = correctedOf(correct(log, { do: 'insert', word: 'hold', startedAtS: 20 }));
    expect(state.reps).toHaveLength(2);
    expect(state.log).toHaveLength(log.length + 1);
    expect(state.log.map(({ at }) => at)).not.toContain(REVIEWED_AT);
  });
});
