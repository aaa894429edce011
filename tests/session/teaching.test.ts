/** Teaching, with an ear that only remembers what it was given: whose takes, which words, what is forgotten and brought back. */
import { expect, test } from 'vitest';
import { handlersIn } from '../../src/core/named.ts';
import { TALK } from '../../src/core/word.ts';
import type { Enrolled } from '../../src/ears/enrolled.ts';
import type { CaughtTake } from '../../src/ears/messages.ts';
import type { Teaching as Taught } from '../../src/hearing/enrol.ts';
import { createLibraryKeeper } from '../../src/session/library.ts';
import { createTeaching, type TeachingState } from '../../src/session/teaching.ts';
import { createWriter } from '../../src/session/writer.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';

async function room() {
  const store = createMemoryStore({ newId: () => 'phone' });
  const writer = await createWriter(
    store,
    () => 'phone',
    () => {},
  );
  const wall = { now: () => new Date(0), monoMs: () => 0, newId: () => 'id' };
  const keeper = createLibraryKeeper([], { wall, writer, show: () => {} });
  const given: Taught[] = [];
  const who = { handler: 'Noor' };
  const enrolled: Enrolled = { ok: false, problems: [] };
  const ear = {
    teach: () => {},
    close: () => {},
    enrol: async (teaching: Taught) => {
      given.push(teaching);
      return enrolled;
    },
  };
  const shown: boolean[] = [];
  const states: TeachingState[] = [];
  const teaching = createTeaching({
    ...{ ear, keeper, handler: () => who.handler },
    show: (state, _taught, isWorking) => {
      shown.push(isWorking);
      states.push(state);
    },
  });
  const teach = async (word: string, samples: readonly number[]) => {
    await teaching.addRecording(word, word, { samples: Float32Array.from(samples), sampleRateHz: 16_000 });
  };
  const counts = async () => {
    await teaching.refresh();
    const { words, talk } = given.at(-1) ?? { words: {}, talk: [] };
    return { ...Object.fromEntries(Object.entries(words).map(([word, takes]) => [word, takes.length])), [TALK]: talk.length };
  };
  return { teaching, teach, counts, keeper, who, given, shown, states };
}

test('any command can be taught beside the three, and is listened for only once it has a take', async () => {
  const { teach, counts } = await room();
  await teach('hold', [0.1]);
  expect(await counts()).toEqual({ hold: 1, talk: 0 });
  await teach('undo', [0.2]);
  await teach('finish', [0.2]);
  await teach(TALK, [0.3]);
  expect(await counts()).toEqual({ hold: 1, undo: 1, finish: 1, talk: 1 });
});

test('what is promised of a take is not shown as final before it is worked out, from a file too', async () => {
  const { teaching, teach, shown } = await room();
  await teach('hold', [0.1]);
  const worked = teaching.refresh();
  expect(shown.at(-1)).toBe(true);
  await worked;
  await Promise.resolve();
  expect(shown.at(-1)).toBe(false);
});

test('two handlers share the device, not their words', async () => {
  const { teach, counts, keeper, who } = await room();
  await teach('hold', [0.1]);
  await teach('hold', [0.1]);
  who.handler = 'Ilse';
  await teach('mark', [0.1]);
  expect(await counts()).toEqual({ mark: 1, talk: 0 });
  who.handler = 'Noor';
  expect(await counts()).toEqual({ hold: 2, talk: 0 });
  expect(handlersIn(keeper.library(), 'Ilse').map(({ name }) => name)).toEqual(['Noor', 'Ilse']);
  expect(handlersIn(keeper.library(), 'somebody new').map(({ name }) => name)).toEqual(['Noor', 'Ilse', 'somebody new']);
});

test('a model is built anew when the handler changes, and not when nothing has changed', async () => {
  const { teaching, teach, who, counts } = await room();
  await teach('hold', [0.1]);
  await counts();
  const before = await teaching.current();
  expect(await teaching.current()).toBe(before);
  who.handler = 'Ilse';
  expect(await teaching.current()).toBeNull();
});

test('who asks for the model while it is being built waits for that one; a new take makes another', async () => {
  const { teaching, teach, given } = await room();
  await teach('hold', [0.1]);
  const both = await Promise.all([teaching.refresh(), teaching.current(), teaching.refresh()]);
  expect(given).toHaveLength(1);
  expect(new Set(both).size).toBe(1);
  const building = teaching.refresh();
  await teach('hold', [0.2]);
  await Promise.all([building, teaching.refresh()]);
  expect(given.map(({ words }) => words.hold?.length)).toEqual([1, 1, 2]);
});

const blip: CaughtTake = {
  caught: { samples: Float32Array.of(0.1), sampleRateHz: 16_000, startedAtS: 0, endedAtS: 0.4, cut: false },
  report: {
    ...{ levelDb: -70, noiseDb: -80, clippedShare: 0, speechStartsAtS: 0, speechEndsAtS: 0.4, speechLengthS: 0.4 },
    ...{ faults: ['too-quiet'], isClick: false },
  },
};

test('a take with a fault is told and not kept; in talk any piece serves', async () => {
  const { teaching, keeper } = await room();
  teaching.catchTakes('hold', 'steady');
  await teaching.caught(blip);
  expect(keeper.library().sounds).toHaveLength(0);
  teaching.catchTakes(TALK, TALK);
  await teaching.caught(blip);
  expect(keeper.library().sounds).toHaveLength(1);
});

const spoken = (speechLengthS: number): CaughtTake =>
  ({
    caught: { samples: new Float32Array(8), sampleRateHz: 16_000, startedAtS: 0, endedAtS: 1, cut: false },
    report: { speechLengthS, faults: [], isClick: false },
  }) as unknown as CaughtTake;

test('a word that is begun while the last one is worked out goes on, and what is said is kept', async () => {
  const { teaching, teach, states, keeper } = await room();
  await teach('hold', [0.1]);
  teaching.catchTakes('mark', 'mark');
  const stopped = teaching.stop();
  expect(states.at(-1)).toEqual({ kind: 'working' });
  teaching.catchTakes(TALK, TALK);
  await stopped;
  expect(states.at(-1)).toMatchObject({ kind: 'catching', word: TALK });
  await teaching.caught(spoken(0.5));
  expect(keeper.library().sounds.map(({ word }) => word)).toEqual(['hold', TALK]);
  await teaching.stop();
  expect(states.at(-1)).toEqual({ kind: 'idle' });
});

test('a take that is forgotten while the last word is worked out leaves nothing working for ever', async () => {
  const { teaching, teach, states, keeper } = await room();
  await teach('hold', [0.1]);
  await teach('hold', [0.2]);
  teaching.catchTakes('hold', 'hold');
  const stopped = teaching.stop();
  await teaching.remove(keeper.library().sounds[0]?.id ?? '');
  await Promise.all([stopped, teaching.refresh()]);
  await Promise.resolve();
  expect(states.at(-1)).toEqual({ kind: 'idle' });
});

test('a take far longer or shorter than those before it is told while it is recorded, of talk nothing is', async () => {
  const { teaching, states } = await room();
  const said = async (lengthS: number) => {
    await teaching.caught(spoken(lengthS));
    const state = states.findLast(({ kind }) => kind === 'catching');
    return state?.kind === 'catching' ? state.unlike : undefined;
  };
  teaching.catchTakes('hold', 'hold');
  expect([await said(0.5), await said(0.6), await said(1.1), await said(0.25), await said(0.5)]).toEqual([
    ...[null, null, 'longer', 'shorter', null],
  ]);
  teaching.catchTakes('mark', 'mark');
  expect([await said(1.6), await said(1.5)]).toEqual(['long', 'long']);
  teaching.catchTakes(TALK, TALK);
  expect([await said(1.6), await said(0.2)]).toEqual([null, null]);
});
