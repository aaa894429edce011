/** A record that went bad is told with path, value and bound; the good ones beside it stay readable. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { StoredEvent } from '../../src/core/event.ts';
import { createMemoryStore } from '../../src/store/memory-store.ts';
import { sayDamage } from '../../src/store/problem.ts';
import { checkEvent } from '../../src/store/record-check.ts';
import { sameContent } from '../../src/store/same-content.ts';
import { DEVICE, firstEvening, playedSession, value, wholeLibrary } from './event-samples.ts';

const SEED = 20260302;
const evening = firstEvening();
const heard = evening.find(({ type }) => type === 'word-heard') as StoredEvent;

function complaint(record: unknown): string | null {
  const checked = checkEvent(record);
  return checked.ok ? null : sayDamage(checked.damage);
}

test('everything the engine writes is a good record, whatever the handler does', () => {
  const reps = fc
    .array(fc.constantFrom('k', 'l', 's', 'v', 'n', 'u', 'e', 'h'), { maxLength: 60 })
    .map((typed) => typed.join(''));
  fc.assert(
    fc.property(reps, (typed) => {
      expect(playedSession('s', 1, DEVICE, typed).map(complaint)).toEqual(playedSession('s', 1, DEVICE, typed).map(() => null));
    }),
    { seed: SEED, numRuns: 100 },
  );
  expect(wholeLibrary().map(complaint)).toEqual(wholeLibrary().map(() => null));
});

test.each([
  [{ ...heard, body: { ...heard.body, startedAtS: Number.NaN } }, 'body › startedAtS: expected a finite number, got NaN'],
  [{ ...heard, body: { ...heard.body, confidence: 1.5 } }, 'body › confidence: expected a number from 0 to 1, got 1.5'],
  [{ ...heard, body: { ...heard.body, word: 'sit' } }, 'body › word: expected one of hold, mark, lifted'],
  [{ ...heard, body: null }, 'body: expected a record, got null'],
  [{ ...heard, body: {} }, 'body › word: expected a value, got nothing'],
  [{ ...heard, version: 2 }, 'version: expected 1, got 2'],
  [{ ...heard, type: 'barked' }, 'type: expected one of session-started'],
  [{ ...heard, at: '2026-03-02 18:00' }, 'at: expected an ISO time with its offset, got "2026-03-02 18:00"'],
  [{ ...heard, seq: 0 }, 'seq: expected a whole number of at least 1, got 0'],
  [{ ...heard, seq: heard.seq + 1 }, `id: expected ${DEVICE}:${heard.seq + 1}, got "${heard.id}"`],
])('a damaged word says what is wrong with it (%#)', (record, expected) => {
  expect(complaint(record)).toContain(`session evening › event ${heard.id} › ${expected}`);
});

test.each([
  ['startStepId', 'nowhere', 'startStepId: expected the id of one of its steps, got "nowhere"'],
  ['rule', { kind: 'k-of-m', kept: 9, of: 5, window: 'blocks' }, 'rule: expected a rule that a session can run, got {'],
])('a session whose %s leads nowhere says so', (field, put, expected) => {
  const started = evening.find(({ type }) => type === 'session-started') as StoredEvent;
  expect(complaint({ ...started, body: { ...started.body, [field]: put } })).toContain(`› body › ${expected}`);
});

test('a record that holds what no file can hold is told, not tripped over', () => {
  const circle: Record<string, unknown> = {};
  circle.self = circle;
  expect(complaint({ ...heard, at: circle })).toContain('at: expected an ISO time with its offset, got object');
  expect(complaint({ ...heard, at: 7n })).toContain('got 7');
});

test.each([
  [{ steps: 5 }],
  [{ from: 4 }],
  [{ bytes: [0, 255] }],
  [{ base: Float32Array.of(Number.NaN, 0) }],
  [{ dims: 1e9 }],
  [{ scale: undefined }],
])('features whose lengths or numbers do not agree are refused, not learnt from (%#)', (put) => {
  const learned = wholeLibrary().find(({ type }) => type === 'take-learned');
  if (learned?.type !== 'take-learned') throw new Error('the samples hold one');
  const bad = { ...learned, body: { ...learned.body, stretch: { ...learned.body.stretch, ...put } } };
  expect(complaint(bad)).toContain('› body › stretch: expected features whose lengths agree');
});

test.each([
  ['weightKg', 0, 'expected a weight from 0.1 to 150 kg, got 0'],
  ['weightKg', 1000, 'expected a weight from 0.1 to 150 kg, got 1000'],
  ['kcalPerTreat', Number.NaN, 'expected kcal a treat from 0.1 to 500, got NaN'],
  ['treatsPerSession', 2.5, 'expected a whole number of at least 1, got 2.5'],
  ['neutered', 'yes', 'expected true or false, got "yes"'],
  ['pain', 7, 'expected text, got 7'],
])('a dog whose %s is %j says so', (field, put, expected) => {
  const saved = wholeLibrary().find(({ type }) => type === 'dog-saved') as StoredEvent;
  expect(complaint({ ...saved, body: { ...saved.body, [field]: put } })).toContain(`› body › ${field}: ${expected}`);
});

test('a dog that was saved before its notes stood apart is a good record', () => {
  const saved = wholeLibrary().find(({ type }) => type === 'dog-saved') as StoredEvent;
  const old = { id: 'd', name: 'Bo', notes: 'sore hip', invented: false };
  expect(complaint({ ...saved, body: old })).toBeNull();
});

test.each([
  [{ offsetS: Number.POSITIVE_INFINITY }, 'offsetS: expected a finite number, got Infinity'],
  [{ by: 'guess' }, 'by: expected one of keys, ear, got "guess"'],
  [{ words: [{ word: 'sit', atS: 1 }] }, 'words[0] › word: expected one of hold, mark, lifted, void, got "sit"'],
  [{ words: [{ word: 'hold', atS: -1 }] }, 'words[0] › atS: expected a finite number of at least 0, got -1'],
])('an observation that cannot be says what is wrong with it (%#)', (put, expected) => {
  const saved = wholeLibrary().find(({ type }) => type === 'observation-saved') as StoredEvent;
  expect(complaint({ ...saved, body: { ...saved.body, ...put } })).toContain(`› body › ${expected}`);
});

test('a word without its session says so', () => {
  expect(complaint({ ...heard, session: null })).toBe(`event ${heard.id} › session: expected text, got null`);
});

test.each([[null], [undefined], [7], ['text'], [[]], [{}]])('%j is no record', (record) => {
  expect(complaint(record)).toMatch(/^event without an id/);
});

test('a field that only a newer version knows survives reading', async () => {
  const newer = { ...heard, mood: 'keen', body: { ...heard.body, pitchHz: 220 } } as unknown as StoredEvent;
  const store = createMemoryStore({ newId: () => DEVICE, records: [newer] });
  expect((await value(store.session('evening'))).events).toEqual([newer]);
});

test('one damaged word costs no other word, no other session and no taught sound', async () => {
  const nth = evening.indexOf(heard);
  const bad = { ...heard, body: { ...heard.body, confidence: 'high' } } as unknown as StoredEvent;
  const store = createMemoryStore({ newId: () => DEVICE, records: evening.with(nth, bad) });
  const session = await value(store.session('evening'));
  expect(session.events).toEqual(evening.filter((event) => event.session && event !== heard));
  expect(session.damaged).toMatchObject([{ expected: 'a number from 0 to 1', got: '"high"', record: bad }]);
  expect((await value(store.library())).damaged).toEqual([]);
  expect((await value(store.sessionHeads())).heads).toHaveLength(1);
});

test('a session whose first record is damaged is told in the list, not passed over', async () => {
  const started = evening.find(({ type }) => type === 'session-started') as StoredEvent;
  const bad = { ...started, body: { ...started.body, steps: [] } } as unknown as StoredEvent;
  const store = createMemoryStore({ newId: () => DEVICE, records: evening.with(evening.indexOf(started), bad) });
  const { heads, damaged } = await value(store.sessionHeads());
  expect(heads).toEqual([]);
  expect(damaged.map(sayDamage)).toEqual([
    `session evening › event ${started.id} › body › steps: expected at least one step, got []`,
  ]);
});

test('a session with a damaged end is listed, and the damage told, each time anew', async () => {
  const ended = evening.find(({ type }) => type === 'session-ended') as StoredEvent;
  const bad = { ...ended, body: { ...ended.body, why: 'tired' } } as unknown as StoredEvent;
  const store = createMemoryStore({ newId: () => DEVICE, records: evening.with(evening.indexOf(ended), bad) });
  const list = () => value(store.sessionHeads());
  const first = await list();
  expect(first.heads.map(({ id, ended }) => [id, ended])).toEqual([['evening', false]]);
  expect(first.damaged).toHaveLength(1);
  expect(await list()).toEqual(first);
});

test('a kind of record that this version does not know is told with the library', async () => {
  const strange = { ...wholeLibrary()[0], type: 'cat-saved' };
  const store = createMemoryStore({ newId: () => DEVICE, records: [strange] });
  expect((await value(store.library())).damaged).toMatchObject([{ got: '"cat-saved"' }]);
});

test('two records say the same when only the order of their fields differs', () => {
  const turned = Object.fromEntries(Object.entries(heard).reverse());
  expect(sameContent(heard, turned)).toBe(true);
  expect(sameContent({ ...heard, note: undefined }, heard)).toBe(true);
  expect(sameContent({ ...heard, monoMs: -0 }, { ...heard, monoMs: 0 })).toBe(true);
  expect(sameContent({ ...heard, seq: 99 }, heard)).toBe(false);
  expect(sameContent(Int16Array.of(1, 2), Int16Array.of(1, 3))).toBe(false);
  expect(sameContent(Int16Array.of(1, 2), [1, 2])).toBe(false);
});

test.each([
  ['date', '2026-02-30', 'date: expected a day such as 2026-03-01, got "2026-02-30"'],
  ['items', 7, 'items: expected a list, got 7'],
  ['items', [{ id: 'i', area: 'wings', what: 'look', forS: 1 }], 'items[0] › area: expected one of position, ears'],
  ['items', [{ id: 'i', area: 'ears', what: ' ', forS: 1 }], 'items[0] › what: expected some words'],
  ['items', [{ id: 'i', area: 'ears', what: 'look', forS: 601 }], 'items[0] › forS: expected 0 to 600 s, got 601'],
  ['items', ['i', 'i'].map((id) => ({ id, area: 'ears', what: 'look', forS: 1 })), 'items: expected items with ids of their own'],
])('an examination whose %s cannot be says so (%#)', (field, put, expected) => {
  const exam = wholeLibrary().find(({ type }) => type === 'exam-planned') as StoredEvent;
  expect(complaint({ ...exam, body: { ...exam.body, [field]: put } })).toContain(`› body › ${expected}`);
});

test('a session of another kind than an examination is refused', () => {
  const started = evening.find(({ type }) => type === 'session-started') as StoredEvent;
  expect(complaint({ ...started, body: { ...started.body, kind: 'exam' } })).toBeNull();
  expect(complaint({ ...started, body: { ...started.body, kind: 'show' } })).toContain(
    '› body › kind: expected exam, got "show"',
  );
});
