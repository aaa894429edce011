/** What outlives sessions: the last word on a dog or a plan stands, a removed take is gone, and two phones come to agree. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEMO_DOG, DEMO_PLAN } from '../../demo/scenario.ts';
import type { LibraryEvent } from '../../src/core/event.ts';
import { foldLibrary, inOrder, takesOf } from '../../src/core/library.ts';

const SEED = 20260302;

type Draft = LibraryEvent extends infer E ? (E extends LibraryEvent ? Pick<E, 'type' | 'body'> : never) : never;

function eventOf(
  draft: Draft,
  seq: number,
  device = 'phone',
  at = `2026-03-02T18:00:${String(seq).padStart(2, '0')}Z`,
): LibraryEvent {
  return { id: `${device}:${seq}`, device, seq, session: null, version: 1, at, monoMs: 0, ...draft } as LibraryEvent;
}

const dog = (name: string, id = 'd1'): Draft => ({ type: 'dog-saved', body: { ...DEMO_DOG, id, name } });
const take = (word: string, handler = 'Noor'): Draft => ({
  type: 'sound-taught',
  body: { word, handler, said: word, sampleRateHz: 16_000, samples: new Int16Array(2) },
});
const remove = (of: string): Draft => ({ type: 'sound-removed', body: { of } });

test('an empty app knows no dog and no settings', () => {
  expect(foldLibrary([])).toEqual({
    ...{ dogs: [], plans: [], sounds: [], learned: [], settings: null },
    ...{ handlers: [], places: [], observations: [], exams: [], copies: new Map() },
    ...{ homework: { given: [], received: [], returned: [] } },
  });
});

test('a dog that is renamed keeps its place in the list', () => {
  const log = [dog('Pixel'), dog('Bo', 'd2'), dog('Pix')].map((draft, nth) => eventOf(draft, nth + 1));
  expect(foldLibrary(log).dogs.map(({ name }) => name)).toEqual(['Pix', 'Bo']);
});

test('a plan that is saved again is one plan', () => {
  const log = [DEMO_PLAN, { ...DEMO_PLAN, title: 'File two claws' }].map((body, nth) =>
    eventOf({ type: 'plan-saved', body }, nth + 1),
  );
  expect(foldLibrary(log).plans.map(({ title }) => title)).toEqual(['File two claws']);
});

test('the takes of one handler are found by word, without the removed one', () => {
  const log = [take('hold'), take('mark'), take('hold'), take('hold', 'Sam'), remove('phone:1')].map((draft, nth) =>
    eventOf(draft, nth + 1),
  );
  const takes = takesOf(foldLibrary(log), 'Noor');
  const ids = [...takes].map(([word, of]) => [word, of.map(({ id }) => id)]);
  expect(Object.fromEntries(ids)).toEqual({ hold: ['phone:3'], mark: ['phone:2'] });
});

test('what a correction taught stands beside the takes until it is taken back', () => {
  const stretch = {
    ...{ features: 'cepstra', dims: 1, steps: 1, from: 0, to: 1 },
    ...{ bytes: new Uint8Array(1), base: new Float32Array(1), scale: new Float32Array(1) },
  };
  const learned: Draft = { type: 'take-learned', body: { of: 'phone:90', session: 's', word: 'hold', handler: 'Noor', stretch } };
  const log = [learned, take('hold'), learned].map((draft, nth) => eventOf(draft, nth + 1));
  expect(foldLibrary(log).learned.map(({ id, of }) => [id, of])).toEqual([
    ['phone:1', 'phone:90'],
    ['phone:3', 'phone:90'],
  ]);
  const back = foldLibrary([...log, eventOf(remove('phone:1'), 4)]);
  expect(back.learned.map(({ id }) => id)).toEqual(['phone:3']);
  expect(back.sounds).toHaveLength(1);
});

test('a take that one phone removed stays removed when the other phone, its clock ahead, taught it', () => {
  const taught = eventOf(take('hold'), 1, 'ahead', '2027-01-01T00:00:00Z');
  expect(foldLibrary([eventOf(remove('ahead:1'), 1), taught]).sounds).toEqual([]);
});

test('a clock set back does not bring an old name back', () => {
  const log = [eventOf(dog('old'), 1, 'phone', '2026-03-02T18:00:00Z'), eventOf(dog('new'), 2, 'phone', '2026-03-02T09:00:00Z')];
  expect(foldLibrary(log).dogs.map(({ name }) => name)).toEqual(['new']);
});

test('a time counts as the moment it names, wherever the clock stood', () => {
  const later = eventOf(dog('later'), 1, 'a', '2026-03-02T18:30:00+01:00');
  const earlier = eventOf(dog('earlier'), 1, 'b', '2026-03-02T17:00:00Z');
  expect(inOrder([later, earlier])).toEqual([earlier, later]);
});

const logs = fc
  .array(
    fc.record({
      device: fc.constantFrom('a', 'b', 'c'),
      seq: fc.integer({ min: 1, max: 9 }),
      minute: fc.integer({ min: 0, max: 5 }),
      draft: fc.oneof(
        fc.constantFrom('Pixel', 'Bo', 'Pix').map((name) => dog(name)),
        fc.constantFrom('hold', 'mark').map((word) => take(word)),
        fc.tuple(fc.constantFrom('a', 'b', 'c'), fc.integer({ min: 1, max: 9 })).map(([of, seq]) => remove(`${of}:${seq}`)),
      ),
    }),
    { maxLength: 24 },
  )
  .map((rows) => {
    const log = rows.map(({ device, seq, minute, draft }) => eventOf(draft, seq, device, `2026-03-02T18:0${minute}:00Z`));
    return [...new Map(log.map((event) => [event.id, event])).values()];
  });

test('two phones that swapped their logs agree, whichever way they were put together', () => {
  fc.assert(
    fc.property(
      logs.chain((log) => fc.tuple(fc.constant(log), fc.shuffledSubarray(log, { minLength: log.length }))),
      ([log, shuffled]) => {
        expect(inOrder(shuffled)).toEqual(inOrder(log));
        expect(foldLibrary(shuffled)).toEqual(foldLibrary(log));
      },
    ),
    { seed: SEED, numRuns: 500 },
  );
});

test('the events of one phone keep their order, whatever its clock did', () => {
  fc.assert(
    fc.property(logs, (log) => {
      for (const device of ['a', 'b', 'c']) {
        const seqs = inOrder(log).flatMap((event) => (event.device === device ? [event.seq] : []));
        expect(seqs).toEqual(seqs.toSorted((a, b) => a - b));
      }
    }),
    { seed: SEED, numRuns: 500 },
  );
});
