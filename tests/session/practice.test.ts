/** The live session with hand-advanced clocks: written before shown, sounded at once, closed and taken up again. */
import { expect, test } from 'vitest';
import { DEMO_PLAN } from '../../demo/scenario.ts';
import { sessionStart } from '../../demo/typed-session.ts';
import type { SessionEvent, StoredEvent } from '../../src/core/event.ts';
import { fold, type SessionState } from '../../src/core/fold.ts';
import { firstStart } from '../../src/core/next-start.ts';
import type { Word } from '../../src/core/word.ts';
import { createPractice } from '../../src/session/practice.ts';
import type { WallClock } from '../../src/session/wall-clock.ts';
import { createWriter } from '../../src/session/writer.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';
import type { StoreProblem } from '../../src/store/problem.ts';

async function room(store = createMemoryStore({ newId: () => 'phone' })) {
  const clock = { nowS: 100, wallMs: Date.UTC(2026, 2, 2, 17, 0, 0) };
  const did: string[] = [];
  const expected: (readonly string[] | null)[] = [];
  const shown: SessionState[] = [];
  const problems: (StoreProblem | null)[] = [];
  let ids = 0;
  const wall: WallClock = { now: () => new Date(clock.wallMs), monoMs: () => 1000 * clock.nowS, newId: () => `id-${++ids}` };
  const watched = {
    ...store,
    append: async (events: readonly StoredEvent[]) => {
      const result = await store.append(events);
      did.push(`wrote ${events.map(({ type }) => type).join('+')}`);
      return result;
    },
  };
  const writer = await createWriter(watched, wall.newId, (problem) => problems.push(problem));
  const practice = createPractice({
    nowS: () => clock.nowS,
    wall,
    writer,
    beats: {
      start: ({ onsetS, criterionS }) => did.push(`beats from ${onsetS} to ${criterionS}`),
      stop: () => did.push('beats stop'),
    },
    calls: {
      call: (kind) => did.push(`call ${kind}`),
      ...{ holdBegan: () => {}, holdEnded: () => {}, voice: () => {}, silence: () => {} },
    },
    expect: (words) => expected.push(words),
    show: (state) => {
      shown.push(state);
      did.push('showed');
    },
  });
  const say = (word: Word, atS: number) => {
    clock.nowS = atS + 0.5;
    return practice.hear({ word, startedAtS: atS, endedAtS: atS + 0.3, decidedAtS: atS + 0.5, confidence: 0.9, by: 'own-words' });
  };
  const begin = () => practice.begin(sessionStart(DEMO_PLAN, { ...firstStart(DEMO_PLAN.steps), startStepId: 'hold-0' }));
  return { clock, did, expected, shown, problems, practice, say, begin, store, writer };
}

test('every word is on the device before the screen tells, and the beats do not wait for either', async () => {
  const { did, say, begin } = await room();
  await begin();
  await say('hold', 103);
  await say('mark', 104);
  expect(did).toEqual([
    'wrote session-started',
    'showed',
    'beats from 103 to 0',
    'wrote word-heard',
    'showed',
    'beats stop',
    'wrote word-heard',
    'showed',
  ]);
});

test('the session has its own clock from 0, and holds are measured from the onset of the word', async () => {
  const { shown, say, begin } = await room();
  await begin();
  await say('hold', 103);
  await say('mark', 104.5);
  expect(shown.at(-1)?.reps).toMatchObject([{ holdAtS: 3, heldForS: 1.5, outcome: 'kept' }]);
});

test('words that come faster than they can be written keep their order', async () => {
  const { shown, say, begin, store } = await room();
  await begin();
  await Promise.all([say('hold', 101), say('mark', 102), say('hold', 103), say('lifted', 104)]);
  expect(shown.at(-1)?.reps.map(({ outcome }) => outcome)).toEqual(['kept', 'lifted']);
  const kept = await store.session('id-1');
  if (!kept.ok) throw new Error(kept.problem.kind);
  expect(fold(kept.value.events)).toEqual({ ok: true, state: shown.at(-1) });
});

test('the ear is told what makes sense now: a hold while waiting, its end while holding, all alike afterwards', async () => {
  const { expected, say, begin, practice } = await room();
  await begin();
  await say('hold', 103);
  await say('mark', 104);
  await practice.end('handler');
  const asked = expected.map((words) => words && ['hold', 'mark', 'lifted'].filter((word) => words.includes(word)));
  expect(asked).toEqual([['hold'], ['mark', 'lifted'], ['hold'], null]);
  expect(expected[0]).toContain('undo');
});

test('in a pause the ear is told to wait for nothing but its end', async () => {
  const { expected, say, begin } = await room();
  await begin();
  await say('pause', 103);
  expect(expected.at(-1)).toEqual(['resume']);
  await say('resume', 110);
  expect(expected.at(-1)).toContain('hold');
});

test('a call is sounded when it falls due, and written with its reasons', async () => {
  const { did, say, begin } = await room();
  await begin();
  for (let i = 0; i < 5; i++) {
    await say('hold', 110 + 5 * i);
    await say('mark', 111 + 5 * i);
  }
  expect(did.slice(-4)).toEqual(['beats stop', 'call raise', 'wrote word-heard+called', 'showed']);
});

test('stay after a raise sounds the way down again, is written, and is taken back by undo', async () => {
  const { did, say, begin, shown } = await room();
  await begin();
  for (let i = 0; i < 5; i++) {
    await say('hold', 101 + 4 * i);
    await say('mark', 102 + 4 * i);
  }
  expect(shown.at(-1)?.standing.stepId).toBe('hold-1');
  await say('stay', 122);
  expect(did.slice(-3)).toEqual(['call return', 'wrote word-heard+called', 'showed']);
  expect(shown.at(-1)?.standing.stepId).toBe('hold-0');
  await say('undo', 124);
  expect(shown.at(-1)?.standing.stepId).toBe('hold-1');
});

test('stay with nothing called is written and sounds nothing', async () => {
  const { did, say, begin } = await room();
  await begin();
  await say('stay', 102);
  expect(did.slice(-2)).toEqual(['wrote word-heard', 'showed']);
});

test('a session closed in a hold is whole up to the last word and goes on after a pause', async () => {
  const first = await room();
  await first.begin();
  await first.say('hold', 103);
  await first.say('mark', 104);
  await first.say('hold', 110);
  // The page is gone; a new one opens with another clock, ten minutes later.
  const second = await room(first.store);
  second.clock.nowS = 5;
  second.clock.wallMs = Date.UTC(2026, 2, 2, 17, 10, 0);
  const kept = await first.store.session('id-1');
  if (!kept.ok) throw new Error(kept.problem.kind);
  await second.practice.goOn(kept.value.events);
  const paused = second.shown.at(-1);
  expect(paused?.phase.phase).toBe('paused');
  expect(paused?.reps.map(({ outcome, voidReason }) => [outcome, voidReason])).toEqual([
    ['kept', null],
    ['void', 'paused'],
  ]);
  await second.practice.resume();
  await second.say('hold', 8);
  await second.say('mark', 9);
  expect(second.shown.at(-1)?.reps).toHaveLength(3);
  // Ten minutes closed are not ten minutes practised.
  expect(second.shown.at(-1)?.pausedS).toBeGreaterThan(590);
});

test('a wall clock set back while the page was closed does not turn time back', async () => {
  const first = await room();
  await first.begin();
  await first.say('hold', 103);
  await first.say('mark', 104);
  const second = await room(first.store);
  second.clock.nowS = 1;
  second.clock.wallMs = Date.UTC(2020, 0, 1);
  const kept = await first.store.session('id-1');
  if (!kept.ok) throw new Error(kept.problem.kind);
  await second.practice.goOn(kept.value.events);
  expect(second.practice.sessionS()).toBeGreaterThanOrEqual(first.shown.at(-1)?.latestS ?? 0);
});

test('a full device loses nothing: the reps go on, wait in memory, and are written when there is room', async () => {
  const store = createMemoryStore({ newId: () => 'phone' });
  let full = false;
  const cramped = {
    ...store,
    append: (events: readonly StoredEvent[]) =>
      full ? Promise.resolve({ ok: false as const, problem: { kind: 'quota' as const, cause: 'test' } }) : store.append(events),
  };
  const { shown, say, begin, problems, writer } = await room(cramped);
  await begin();
  full = true;
  await say('hold', 103);
  await say('mark', 104);
  expect(shown.at(-1)?.reps).toHaveLength(1);
  expect(problems.at(-1)).toMatchObject({ kind: 'quota' });
  expect(writer.waiting()).toHaveLength(2);
  full = false;
  await say('hold', 110);
  expect(writer.waiting()).toHaveLength(0);
  expect(problems.at(-1)).toBeNull();
  const kept = await store.session('id-1');
  if (!kept.ok) throw new Error(kept.problem.kind);
  expect(kept.value.events.map(({ type }: SessionEvent) => type)).toEqual([
    'session-started',
    'word-heard',
    'word-heard',
    'word-heard',
  ]);
});

test('nothing is taken before a session began', async () => {
  const { practice, say, did } = await room();
  await say('hold', 101);
  expect(practice.state()).toBeNull();
  expect(did).toEqual([]);
});
