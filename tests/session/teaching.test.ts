/** Teaching, with an ear that only remembers what it was given: whose takes, which words, what is forgotten and brought back. */
import { expect, test } from 'vitest';
import { handlersIn } from '../../src/core/named.ts';
import { TALK } from '../../src/core/word.ts';
import type { Enrolled } from '../../src/ears/enrolled.ts';
import type { CaughtTake } from '../../src/ears/messages.ts';
import type { Teaching as Taught } from '../../src/hearing/enrol.ts';
import { createLibraryKeeper } from '../../src/session/library.ts';
import { createTeaching } from '../../src/session/teaching.ts';
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
  const teaching = createTeaching({
    ...{ ear, keeper, handler: () => who.handler },
    show: (_state, _taught, isWorking) => shown.push(isWorking),
  });
  const teach = async (word: string, samples: readonly number[]) => {
    await teaching.addRecording(word, word, { samples: Float32Array.from(samples), sampleRateHz: 16_000 });
  };
  const counts = async () => {
    await teaching.refresh();
    const { words, talk } = given.at(-1) ?? { words: {}, talk: [] };
    return { ...Object.fromEntries(Object.entries(words).map(([word, takes]) => [word, takes.length])), [TALK]: talk.length };
  };
  return { teaching, teach, counts, keeper, who, given, shown };
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
